using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Plans;

/// <summary>Everything that was worked out of a plan.</summary>
public sealed record PlanReport
{
    /// <summary>The plan.</summary>
    public required Plan Plan { get; init; }

    /// <summary>What its paths were computed with.</summary>
    public required PathSettings Settings { get; init; }

    /// <summary>The links, in the plan's order.</summary>
    public required ImmutableArray<LinkReport> Links { get; init; }

    /// <summary>What was worked out of each fit-out besides its radio chain, in the plan's order; its findings and assumptions stand in those of the plan too.</summary>
    public ImmutableArray<FitOutReport> FitOuts { get; init; } = [];

    /// <summary>What is to be said of the plan besides its links: stations, ground.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>Sites that do not count because they have no fit-out in use and none was chosen.</summary>
    public ImmutableArray<Site> NotCounted { get; init; } = [];

    /// <summary>Every value that was assumed, each once, by where the plan would give it.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>The judgements on the links, then all other findings.</summary>
    public IEnumerable<Finding> AllFindings => Links.Select(link => link.Finding).Concat(Links.SelectMany(link => link.Findings)).Concat(Findings);
}
