using System.Collections.Immutable;
using Mastwright.Network.Air;

namespace Mastwright.Tests.Network.Air;

public sealed class AirSimulationTests
{
    private static readonly AirSettings Second = new() { AirtimeSeconds = 1, PreambleSeconds = 0.1, HopLimit = 1, CaptureDb = double.PositiveInfinity };

    /// <summary>One packet of station 0 an hour, nobody else says anything; the hour is long enough for it to be over.</summary>
    private static AirResult OnePacket(int stations, IEnumerable<(int One, int Other)> links, AirSettings settings, double marginDb = 20) =>
        OnePacket(stations, links.SelectMany(link => ((int, int, double)[])[(link.One, link.Other, marginDb), (link.Other, link.One, marginDb)]), settings);

    private static AirResult OnePacket(int stations, IEnumerable<(int, int, double)> ways, AirSettings settings) => AirSimulation.Run(
        new([new(0.5, 0), .. Enumerable.Repeat(default(AirTraffic), stations - 1)], ways), settings with { DurationSeconds = 7200 });

    /// <summary>
    /// N. Abramson, "The ALOHA system", AFIPS 37 (1970): S = G·e^(−2G); L. G. Roberts, "ALOHA packet system with and without slots and capture", 1972:
    /// S = G·e^(−G). Four hundred stations that do not hear one another stand for very many: (1 − 1/400)^k for e^(−k/400) is within 0.2 %.
    /// </summary>
    [Theory]
    [InlineData(0.1, false)]
    [InlineData(0.5, false)]
    [InlineData(1.2, false)]
    [InlineData(0.5, true)]
    [InlineData(1.0, true)]
    [InlineData(2.0, true)]
    public void One_cell_reaches_the_limits_of_pure_and_slotted_Aloha(double offered, bool slotted)
    {
        const int Stations = 400;
        const double Seconds = 60_000;
        AirNetwork cell = new(
            [default, .. Enumerable.Repeat(new AirTraffic(0, 3600 * offered / Stations), Stations)], Enumerable.Range(1, Stations).Select(station => (station, 0, 20.0)));

        // A slot is a thousandth longer than a packet, so that neighbours in time do not touch.
        AirResult result = AirSimulation.Run(cell, Second with { DurationSeconds = Seconds, SlotSeconds = slotted ? 1.001 : 0 });
        double load = result.Sent / Seconds * (slotted ? 1.001 : 1);
        double throughput = result.Received / Seconds * (slotted ? 1.001 : 1);
        double law = load * Math.Exp(-(slotted ? 1 : 2) * load);
        Assert.Equal(offered, load, (4 * Math.Sqrt(offered / Seconds)) + (0.001 * offered));
        Assert.Equal(law, throughput, (4 * Math.Sqrt(law / Seconds)) + (0.01 * law));
        Assert.InRange(result.Strong - result.Received - result.LostToOverlap, 0, 1);
    }

    [Fact]
    public void Along_a_line_a_packet_takes_a_packet_and_a_wait_a_hop()
    {
        (int, int)[] line = [(0, 1), (1, 2), (2, 3), (3, 4)];
        AirSettings settings = Second with { HopLimit = 3, Delay = RelayDelay.Fixed, MostDelaySeconds = 2 };
        AirResult result = OnePacket(5, line, settings);
        Assert.Equal([0, 1, 1, 1, 0], result.Delivered.Take(5));
        Assert.Equal([1.0, 4, 7], result.Hops.Select(hop => Math.Round(hop.MeanSeconds, 6)));
        Assert.Equal(7, result.DelaySeconds[3], 1e-6);
        Assert.Equal((3, 3), (result.Sent, result.Wanted));
        Assert.Equal([1, 1, 1, 0, 0], result.Stations.Select(one => one.Sent));

        // Busy: 0 sends and hears 1; 1 sends, hears 0 and 2; 4 hears nobody, for 3 does not send.
        Assert.Equal([2.0, 3, 2, 1, 0], result.Stations.Select(one => Math.Round(one.BusySeconds, 6)));
        Assert.Equal(4, OnePacket(5, line, settings with { HopLimit = 9 }).Delivered.Take(5).Sum());
        Assert.Equal(0, OnePacket(5, line, settings with { RelayProbability = 0 }).Delivered[2]);
    }

    /// <summary>
    /// Three by three, each hears those beside, above and below; all wait one second. By hand: 0 sends from 0 to 1 s; 1 and 3 from 2 to 3 s, which collides at
    /// 4 and at 0; 2 and 6 from 4 to 5 s; 5 and 7 have it by the third hop. With more hops they send from 6 to 7 s and collide at 4 and at 8.
    /// </summary>
    [Fact]
    public void On_a_grid_equal_waits_collide_where_two_ways_meet()
    {
        AirSettings settings = Second with { HopLimit = 3, Delay = RelayDelay.Fixed, MostDelaySeconds = 1 };
        AirResult three = OnePacket(9, Grid, settings);
        Assert.Equal([0, 1, 1, 1, 0, 1, 1, 1, 0], three.Delivered.Take(9));
        Assert.Equal([1.0, 3, 5], three.Hops.Select(hop => Math.Round(hop.MeanSeconds, 6)));
        Assert.Equal([2, 2, 2], three.Hops.Select(hop => (int)hop.Count));
        Assert.Equal((5, 7), (three.Sent, three.Wanted));
        AirResult more = OnePacket(9, Grid, settings with { HopLimit = 9 });
        Assert.Equal(7, more.Sent);
        Assert.Equal(6, more.Delivered.Take(9).Sum());

        // Drawn waits get it everywhere: among 200 s no two of them meet.
        Assert.Equal(8, OnePacket(9, Grid, settings with { HopLimit = 9, Delay = RelayDelay.Random, MostDelaySeconds = 200 }).Delivered.Take(9).Sum());
    }

    [Theory]
    [InlineData(5.9, false)]
    [InlineData(6.1, true)]
    public void The_stronger_of_two_is_received_from_the_threshold_on_whichever_comes_first(double differenceDb, bool isReceived)
    {
        AirSettings settings = Second with { HopLimit = 2, Delay = RelayDelay.Fixed, MostDelaySeconds = 1, CaptureDb = CaptureThresholds.Db(9, 9) };
        foreach ((double by1, double by3) in new[] { (20.0, 20 - differenceDb), (20 - differenceDb, 20) })
        {
            // 0 is heard by 1 and 3, and both by 4.
            AirResult result = OnePacket(5, [(0, 1, 20), (0, 3, 20), (1, 4, by1), (3, 4, by3)], settings);
            Assert.Equal(isReceived ? 1 : 0, result.Delivered[4]);
            Assert.Equal(isReceived ? 1 : 2, result.LostToOverlap);
        }
    }

    [Fact]
    public void After_its_preamble_a_packet_is_not_left_for_a_stronger_one()
    {
        // 3 waits half a packet longer than 1: its level puts it later.
        AirSettings settings = Second with { HopLimit = 2, Delay = RelayDelay.ByLevel, LeastDelaySeconds = 1, MostDelaySeconds = 3, CaptureDb = 6 };
        (int, int, double)[] ways = [(0, 1, 10), (0, 3, 25), (1, 4, 10), (3, 4, 30)];
        Assert.Equal(0, OnePacket(5, ways, settings).Delivered[4]);
        Assert.Equal(1, OnePacket(5, ways, settings with { PreambleSeconds = 1 }).Delivered[4]);
    }

    [Fact]
    public void Who_sends_hears_nothing()
    {
        AirSettings settings = Second with { HopLimit = 2, Delay = RelayDelay.Fixed, MostDelaySeconds = 1 };
        AirResult result = OnePacket(3, [(0, 1), (0, 2), (1, 2)], settings);
        Assert.Equal(2, result.LostToSending);
        Assert.Equal(2, result.LostToOverlap);
        Assert.Equal((1, 1), (result.Delivered[1], result.Delivered[2]));
    }

    [Fact]
    public void Listening_first_helps_those_who_hear_one_another_and_no_others()
    {
        AirTraffic often = new(0, 900);
        (int, int, double)[] hidden = [(1, 0, 20), (2, 0, 20)];
        (int, int, double)[] visible = [.. hidden, (1, 2, 20), (2, 1, 20)];
        AirSettings settings = Second with { CaptureDb = 6, DurationSeconds = 40_000 };
        AirResult Run((int, int, double)[] ways, bool listens) => AirSimulation.Run(new([default, often, often], ways), settings with { ListensFirst = listens });
        int Lost(AirResult result) => result.Made is var made ? (int)made - result.Delivered[3] - result.Delivered[6] : 0;

        // Two of load ¼ each, that queue their own: the other is idle with ¾ and begins nothing within a packet with e^(−¼): lost with 1 − ¾ e^(−¼) = 41.6 %.
        Assert.Equal(0.416, (double)Lost(Run(hidden, false)) / Run(hidden, false).Made, 0.02);
        Assert.Equal(0.416, (double)Lost(Run(hidden, true)) / Run(hidden, true).Made, 0.02);
        Assert.InRange(Lost(Run(visible, true)), 0, 20);
        Assert.True(Run(visible, true).Stations[1].Deferred > 1000);
    }

    [Fact]
    public void Nobody_sends_more_than_the_limit_of_any_hour()
    {
        AirNetwork one = new([new(100, 0), default], [(0, 1, 20)]);
        AirResult result = AirSimulation.Run(one, Second with { DutyShare = 0.01, DurationSeconds = 24 * 3600 });

        // 36 packets of a second an hour, from the first on; the rest waits and is dropped.
        Assert.InRange(result.Stations[0].Sent, 35 * 24, 36 * 24);
        Assert.True(result.Stations[0].Stalled > 500);
        Assert.True(result.Stations[0].Dropped > 1400);
        Assert.Equal(result.Stations[0].Sent, result.Stations[0].AirSeconds, 1);
        Assert.Equal(0, AirSimulation.Run(one, Second with { DutyShare = 0.0001 }).Sent);
    }

    [Fact]
    public void Hearing_others_pass_it_on_spares_copies_and_air()
    {
        // All of ten hear one another: without the rule all nine pass it on, with it only those before the first copy is over.
        (int, int)[] all = [.. from one in Enumerable.Range(0, 10) from other in Enumerable.Range(one + 1, 9 - one) select (one, other)];
        AirSettings settings = Second with { HopLimit = 3, Delay = RelayDelay.Random, MostDelaySeconds = 100 };
        AirResult every = OnePacket(10, all, settings);
        AirResult spared = OnePacket(10, all, settings with { CancelAfterCopies = 1 });
        Assert.Equal(10, every.Sent);
        Assert.InRange(spared.Sent, 2, 5);
        Assert.Equal(10 - spared.Sent, spared.Stations.Sum(one => one.Cancelled));
        Assert.Equal(9, spared.Delivered.Take(10).Sum());
    }

    [Fact]
    public void The_same_in_gives_the_same_out_and_another_seed_another_day()
    {
        AirNetwork network = new([.. Enumerable.Repeat(new AirTraffic(4, 2), 9)], Grid.SelectMany(link => ((int, int, double)[])[(link.One, link.Other, 9), (link.Other, link.One, 9)]));
        AirSettings settings = Second with { HopLimit = 4, FadingDb = 3, CaptureDb = 6, ListensFirst = true, CancelAfterCopies = 2, DurationSeconds = 20_000 };
        AirResult one = AirSimulation.Run(network, settings);
        Assert.Equal(Text(one), Text(AirSimulation.Run(network, settings)));
        Assert.NotEqual(Text(one), Text(AirSimulation.Run(network, settings with { Seed = 2 })));
        Assert.InRange(one.DeliveredShare, 0.5, 1);
        Assert.InRange(one.Strong - one.Received - one.LostToOverlap - one.LostToSending, 0, 9);
        Assert.Throws<OperationCanceledException>(() => AirSimulation.Run(network, settings, new(canceled: true)));
        static string Text(AirResult result) => FormattableString.Invariant($"{result.Sent} {result.Received} {result.Events} {string.Join(' ', result.Delivered)} {string.Join(' ', result.Stations)} {string.Join(' ', result.Hops)}");
    }

    private static readonly ImmutableArray<(int One, int Other)> Grid = [(0, 1), (1, 2), (3, 4), (4, 5), (6, 7), (7, 8), (0, 3), (3, 6), (1, 4), (4, 7), (2, 5), (5, 8)];
}
