namespace Mastwright.Station.Rules;

/// <summary>How many packets a station sends. A null is "nobody said".</summary>
public sealed record TrafficRate
{
    /// <summary>Own packets an hour, on average: zero or more.</summary>
    public double? OwnMean { get; init; }

    /// <summary>Own packets in the busiest hour.</summary>
    public double? OwnWorst { get; init; }

    /// <summary>Packets an hour that it passes on for others, on average.</summary>
    public double? RelayedMean { get; init; }

    /// <summary>Packets that it passes on in the busiest hour.</summary>
    public double? RelayedWorst { get; init; }
}
