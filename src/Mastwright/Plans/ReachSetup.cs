using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Network.Reach;

namespace Mastwright.Plans;

/// <summary>All that a reach map of one station is worked out from, and what is missing for it.</summary>
public sealed record ReachSetup
{
    /// <summary>The station.</summary>
    public required LinkStation Station { get; init; }

    /// <summary>Who is carried from cell to cell.</summary>
    public required ReachReceiver Receiver { get; init; }

    /// <summary>The air over the whole map: that at the station.</summary>
    public required PathAir Air { get; init; }

    /// <summary>What the losses are worked out from; null when something is missing.</summary>
    public ReachFieldInput? Field { get; init; }

    /// <summary>The budget; null when something is missing.</summary>
    public ReachBudget? Budget { get; init; }

    /// <summary>What is to be said of the station and of its place.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>What was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>Plan paths and the like without which there is no map.</summary>
    public ImmutableArray<string> Missing { get; init; } = [];
}
