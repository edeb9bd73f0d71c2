using CsCheck;
using Mastwright.Station.Rules;

namespace Mastwright.Tests.Station.Rules;

public sealed class TrafficEstimateTests
{
    /// <summary>By hand: 60 packets of 0.6 s an hour are 36 s, which is 1 % of an hour.</summary>
    [Fact]
    public void Packets_times_time_on_air_is_a_share_of_the_hour()
    {
        TrafficEstimate traffic = TrafficEstimate.Of(new() { OwnMean = 10, OwnWorst = 20, RelayedMean = 50, RelayedWorst = 100 }, 0.6, "traffic");

        Assert.Equal(1, traffic.MeanPercent, 1e-9);
        Assert.Equal(2, traffic.WorstPercent, 1e-9);
        Assert.Equal(60, traffic.PacketsIn(1));
        Assert.False(traffic.IsAssumed);
    }

    [Fact]
    public void Each_number_that_is_missing_is_listed_with_its_place()
    {
        TrafficEstimate traffic = TrafficEstimate.Of(new() { OwnMean = 10 }, 0.6, "sites/west/traffic");

        Assert.Equal(
            ["sites/west/traffic/relayed", "sites/west/traffic/own-worst-hour", "sites/west/traffic/relayed-worst-hour"],
            traffic.Assumptions.Select(assumption => assumption.PlanPath));
        Assert.Equal(TrafficEstimate.AssumedPeak * (10 + TrafficEstimate.AssumedRelayed), traffic.WorstPackets, 1e-9);
    }

    [Fact]
    public void A_busiest_hour_below_the_average_is_refused() =>
        Assert.Throws<ArgumentException>(() => TrafficEstimate.Of(new() { OwnMean = 10, OwnWorst = 5 }, 0.6, ""));

    [Fact]
    public void A_packet_takes_time() => Assert.Throws<ArgumentOutOfRangeException>(() => TrafficEstimate.Of(new(), 0, ""));

    /// <summary>All packets of the busiest hour may fall into the six minutes that are averaged over, and no more than all of it is on the air.</summary>
    [Fact]
    public void A_span_holds_all_packets_of_the_busiest_hour_or_is_full()
    {
        TrafficEstimate traffic = TrafficEstimate.Of(new() { OwnMean = 0, OwnWorst = 0, RelayedMean = 10, RelayedWorst = 100 }, 0.9, "");

        Assert.Equal(0.25, traffic.ShareOf(360), 1e-12);
        Assert.Equal(1, traffic.ShareOf(60), 1e-12);
    }

    [Fact]
    public void More_packets_are_never_less_time() =>
        Gen.Select(Gen.Double[0, 500], Gen.Double[0, 500], Gen.Double[0.01, 5]).Sample((packets, more, seconds) =>
            Of(packets + more, seconds).WorstPercent >= Of(packets, seconds).WorstPercent);

    /// <summary>ETSI EN 300 220-2 V3.3.1 Table 18, worked out in the check values: 15 slices of band L are 1500 s an hour (41.7 %), band O is 125 s (3.47 %).</summary>
    [Theory]
    [InlineData(3e6, 1500, 41.7)]
    [InlineData(250e3, 125, 3.47)]
    public void Polite_access_gives_100_seconds_for_each_200_kHz(double widthHz, double seconds, double percent)
    {
        Assert.Equal(seconds, PoliteAccess.SecondsPerHour(widthHz), 1e-9);
        Assert.Equal(percent, PoliteAccess.SecondsPerHour(widthHz) / 36, 0.05);
        Assert.Equal(seconds / 36, PoliteAccess.Percent(15, 250e3, widthHz), 1e-9);
    }

    private static TrafficEstimate Of(double packets, double seconds) =>
        TrafficEstimate.Of(new() { OwnMean = packets, OwnWorst = packets, RelayedMean = 0, RelayedWorst = 0 }, seconds, "");
}
