using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Network;
using Mastwright.Station;

namespace Mastwright.Plans;

/// <summary>Everything that was worked out of one link.</summary>
public sealed record LinkReport
{
    /// <summary>The first station.</summary>
    public required LinkStation From { get; init; }

    /// <summary>The second station.</summary>
    public required LinkStation To { get; init; }

    /// <summary>The radio chain of the first station.</summary>
    public required StationChainResult FromChain { get; init; }

    /// <summary>The radio chain of the second station.</summary>
    public required StationChainResult ToChain { get; init; }

    /// <summary>Distance and bearing from the first to the second.</summary>
    public required GeodesicSegment Segment { get; init; }

    /// <summary>The path.</summary>
    public required LinkPath Path { get; init; }

    /// <summary>From the first to the second.</summary>
    public required LinkDirection Out { get; init; }

    /// <summary>From the second to the first.</summary>
    public required LinkDirection Back { get; init; }

    /// <summary>The judgement on the link: that of its weaker direction.</summary>
    public required Finding Finding { get; init; }

    /// <summary>Everything else to be said of it.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>What was assumed for this link alone.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>The weaker direction: the one with the worse verdict, then with the smaller margin.</summary>
    public LinkDirection Weaker => LinkVerdict.Weaker(Out, Back);

    /// <summary>Both names and the verdict.</summary>
    public override string ToString() => $"{From.Name} ~ {To.Name}: {Finding.Verdict}";
}
