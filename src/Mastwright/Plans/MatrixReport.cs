using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Network.Links;

namespace Mastwright.Plans;

/// <summary>The links between every two stations of a plan.</summary>
public sealed record MatrixReport
{
    /// <summary>The plan.</summary>
    public required Plan Plan { get; init; }

    /// <summary>What every path was computed with.</summary>
    public required PathSettings Settings { get; init; }

    /// <summary>The links.</summary>
    public required LinkMatrix Matrix { get; init; }

    /// <summary>What is to be said of them.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>What was assumed for all of them.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];
}
