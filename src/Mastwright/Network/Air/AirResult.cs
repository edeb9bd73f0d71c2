using System.Collections.Immutable;

namespace Mastwright.Network.Air;

/// <summary>What became of a day on the channel.</summary>
public sealed record AirResult
{
    /// <summary>Simulated time in seconds.</summary>
    public required double DurationSeconds { get; init; }

    /// <summary>What each station met with.</summary>
    public required ImmutableArray<AirStation> Stations { get; init; }

    /// <summary>Deliveries by the number of hops they took: by 1, by 2, …</summary>
    public required ImmutableArray<AirHop> Hops { get; init; }

    /// <summary>Deliveries of each pair, at origin · number of stations + receiver.</summary>
    public required ImmutableArray<int> Delivered { get; init; }

    /// <summary>Sum over them of the seconds from a packet's making to its arrival, in the same order.</summary>
    public required ImmutableArray<double> DelaySeconds { get; init; }

    /// <summary>Deliveries that there would be on an ideal channel: packets made, each to every station within the hop limit.</summary>
    public required long Wanted { get; init; }

    /// <summary>Packets made.</summary>
    public long Made => Stations.Sum(station => (long)station.Made);

    /// <summary>Packets sent, own and relayed.</summary>
    public long Sent => Stations.Sum(station => (long)station.Sent);

    /// <summary>Receptions strong enough to be received, of one transmission at one station.</summary>
    public required long Strong { get; init; }

    /// <summary>Those of them that were received.</summary>
    public required long Received { get; init; }

    /// <summary>Those lost because another packet was on the air there.</summary>
    public required long LostToOverlap { get; init; }

    /// <summary>Those lost because the station was sending itself.</summary>
    public required long LostToSending { get; init; }

    /// <summary>Events that were worked off.</summary>
    public required long Events { get; init; }

    /// <summary>Share of the wanted deliveries that came about; 0 when nothing was wanted. With fading it may exceed 1 by lucky far ones.</summary>
    public double DeliveredShare => Wanted == 0 ? 0 : (double)Hops.Sum(hop => hop.Count) / Wanted;
}

/// <summary>A station's day.</summary>
/// <param name="Made">Own packets.</param>
/// <param name="Sent">Packets sent, own and relayed.</param>
/// <param name="AirSeconds">Its time on the air.</param>
/// <param name="BusySeconds">Time in which it sent, or heard something that it could receive.</param>
/// <param name="Deferred">How often it found the channel busy and waited.</param>
/// <param name="Stalled">How often the lawful limit made it wait.</param>
/// <param name="StalledSeconds">For how long altogether.</param>
/// <param name="Dropped">Packets dropped because too many were waiting.</param>
/// <param name="Cancelled">Packets not passed on because others had.</param>
public readonly record struct AirStation(int Made, int Sent, double AirSeconds, double BusySeconds, int Deferred, int Stalled, double StalledSeconds, int Dropped, int Cancelled)
{
    /// <summary>Own packets, packets sent and time on the air.</summary>
    public override string ToString() => FormattableString.Invariant($"{Made} made, {Sent} sent, {AirSeconds:0.#} s on the air");
}

/// <summary>Deliveries that took so many hops.</summary>
/// <param name="Count">Number of them.</param>
/// <param name="MeanSeconds">Mean of the seconds from a packet's making to its arrival.</param>
/// <param name="MostSeconds">The longest.</param>
public readonly record struct AirHop(long Count, double MeanSeconds, double MostSeconds)
{
    /// <summary>Number and mean.</summary>
    public override string ToString() => FormattableString.Invariant($"{Count} in {MeanSeconds:0.##} s");
}
