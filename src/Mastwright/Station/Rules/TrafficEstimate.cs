using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;

namespace Mastwright.Station.Rules;

/// <summary>How long a station is on the air in an hour.</summary>
/// <remarks>
/// Packets times the time on air of the plan's packet. What the plan does not give is assumed and listed: 4 own packets and 60 passed
/// on an hour on average, four times as many in the busiest hour (common practice; a guess, so no verdict on it is better than unknown).
/// </remarks>
public sealed record TrafficEstimate
{
    /// <summary>Own packets an hour that are assumed.</summary>
    public const double AssumedOwn = 4;

    /// <summary>Packets passed on an hour that are assumed.</summary>
    public const double AssumedRelayed = 60;

    /// <summary>How many times the average the busiest hour has, where nobody said.</summary>
    public const double AssumedPeak = 4;

    private const double SecondsPerHour = 3600;

    /// <summary>Time on air of one packet in seconds.</summary>
    public required double PacketSeconds { get; init; }

    /// <summary>Packets in the busiest hour.</summary>
    public required double WorstPackets { get; init; }

    /// <summary>Seconds on the air in an average hour, line by line.</summary>
    public required Ledger Mean { get; init; }

    /// <summary>Seconds on the air in the busiest hour, line by line.</summary>
    public required Ledger Worst { get; init; }

    /// <summary>What was assumed; empty when the plan gives it all.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>Whether anything was assumed.</summary>
    public bool IsAssumed => !Assumptions.IsEmpty;

    /// <summary>Share of an average hour in percent.</summary>
    public double MeanPercent => 100 * Mean.Total / SecondsPerHour;

    /// <summary>Share of the busiest hour in percent: the packets overlap no other, so it may come out above 100.</summary>
    public double WorstPercent => 100 * Worst.Total / SecondsPerHour;

    /// <summary>Packets of this length that fill a share of an hour.</summary>
    /// <param name="percent">The share in percent: zero or more.</param>
    public double PacketsIn(double percent) => Math.Floor((percent / 100 * SecondsPerHour / PacketSeconds) + 1e-9);

    /// <summary>The largest share of any span of some seconds, between 0 and 1: every packet of the busiest hour may fall into it.</summary>
    /// <param name="spanSeconds">The span in seconds, greater than zero and at most an hour.</param>
    public double ShareOf(double spanSeconds) => Math.Min(1, Worst.Total / spanSeconds);

    /// <summary>The estimate of a station.</summary>
    /// <param name="rate">What the plan gives.</param>
    /// <param name="packetSeconds">Time on air of one packet in seconds, greater than zero.</param>
    /// <param name="trafficPath">Where in the plan the traffic would stand.</param>
    /// <exception cref="ArgumentException">The busiest hour is given with fewer packets than the average one.</exception>
    public static TrafficEstimate Of(TrafficRate rate, double packetSeconds, string trafficPath)
    {
        ArgumentNullException.ThrowIfNull(rate);
        if (!(packetSeconds > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(packetSeconds), "A packet takes time.");
        }

        if (rate.OwnWorst < rate.OwnMean || rate.RelayedWorst < rate.RelayedMean)
        {
            throw new ArgumentException("The busiest hour has at least as many packets as the average one.", nameof(rate));
        }

        ImmutableArray<Assumption>.Builder assumptions = ImmutableArray.CreateBuilder<Assumption>();
        double Given(double? value, double assumed, string key, string text)
        {
            if (value is { } given)
            {
                return given;
            }

            assumptions.Add(new(
                "traffic-" + key,
                string.Create(CultureInfo.InvariantCulture, $"{assumed:0.##} packets an hour {text}"),
                "common practice, a guess",
                StationDefaults.Join(trafficPath, key)));
            return assumed;
        }

        double own = Given(rate.OwnMean, Math.Min(AssumedOwn, rate.OwnWorst ?? AssumedOwn), "own", "of its own");
        double relayed = Given(rate.RelayedMean, Math.Min(AssumedRelayed, rate.RelayedWorst ?? AssumedRelayed), "relayed", "passed on");
        double ownWorst = Given(rate.OwnWorst, AssumedPeak * own, "own-worst-hour", "of its own in the busiest");
        double relayedWorst = Given(rate.RelayedWorst, AssumedPeak * relayed, "relayed-worst-hour", "passed on in the busiest");
        return new()
        {
            PacketSeconds = packetSeconds,
            WorstPackets = ownWorst + relayedWorst,
            Mean = OnAir("time on the air in an average hour", own, relayed, packetSeconds, trafficPath),
            Worst = OnAir("time on the air in the busiest hour", ownWorst, relayedWorst, packetSeconds, trafficPath),
            Assumptions = assumptions.DrainToImmutable(),
        };
    }

    private static Ledger OnAir(string title, double own, double relayed, double packetSeconds, string trafficPath) => new(title, "s",
    [
        new("own-packets", "own packets", own * packetSeconds, trafficPath, Times(own, packetSeconds)),
        new("relayed-packets", "packets passed on", relayed * packetSeconds, trafficPath, Times(relayed, packetSeconds)),
    ]);

    private static string Times(double packets, double packetSeconds) =>
        string.Create(CultureInfo.InvariantCulture, $"{packets:0.##} × {packetSeconds:0.000} s");
}
