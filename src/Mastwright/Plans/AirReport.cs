using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Network.Air;

namespace Mastwright.Plans;

/// <summary>A day on the channel of a plan's stations.</summary>
public sealed record AirReport
{
    /// <summary>The links.</summary>
    public required MatrixReport Links { get; init; }

    /// <summary>What the simulation was run with.</summary>
    public required AirSettings Settings { get; init; }

    /// <summary>What each station sends.</summary>
    public required ImmutableArray<AirTraffic> Traffic { get; init; }

    /// <summary>What came of it.</summary>
    public required AirResult Result { get; init; }

    /// <summary>The same with more and more traffic.</summary>
    public ImmutableArray<AirGrowth> Growth { get; init; } = [];

    /// <summary>What other rules would make of the load at which it collapses; the best first.</summary>
    public ImmutableArray<AirRemedy> Remedies { get; init; } = [];

    /// <summary>What became of the receptions, and the time on the air of the busiest sender.</summary>
    public ImmutableArray<Ledger> Ledgers { get; init; } = [];

    /// <summary>What is to be said of it.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>What was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];
}

/// <summary>The channel with so many times the traffic.</summary>
/// <param name="Factor">How many times.</param>
/// <param name="DeliveredShare">Share of the wanted deliveries that come about.</param>
/// <param name="MostBusyShare">Share of time that the channel is busy where it is busiest.</param>
public sealed record AirGrowth(double Factor, double DeliveredShare, double MostBusyShare);

/// <summary>Another rule.</summary>
/// <param name="Code">Its name.</param>
/// <param name="Text">What a person reads.</param>
/// <param name="DeliveredShare">Share of the wanted deliveries that come about with it; those of the hop limit it sets do not count as wanted less.</param>
public sealed record AirRemedy(string Code, string Text, double DeliveredShare);
