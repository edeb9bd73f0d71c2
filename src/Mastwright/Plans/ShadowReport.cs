using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Network.Shadow;

namespace Mastwright.Plans;

/// <summary>What a station does not reach directly, why, and what relays reach of it.</summary>
public sealed record ShadowReport
{
    /// <summary>What the map was worked out from.</summary>
    public required ReachSetup Setup { get; init; }

    /// <summary>The map.</summary>
    public required ShadowMap Shadow { get; init; }

    /// <summary>Most hops that count.</summary>
    public required int HopLimit { get; init; }

    /// <summary>The areas by cause.</summary>
    public required ImmutableArray<ShadowPart> Parts { get; init; }

    /// <summary>Points of the ridges that throw the shadow.</summary>
    public ImmutableArray<RidgePoint> Ridge { get; init; } = [];

    /// <summary>The relays whose maps were laid over it, with the hops to them.</summary>
    public ImmutableArray<(LinkStation Station, int Hops)> Relays { get; init; } = [];

    /// <summary>What is to be said of it.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>What was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>The area with a value as a ledger in km²: by cause.</summary>
    public required Ledger Areas { get; init; }
}
