using System.Collections.Immutable;
using CsCheck;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Hops;
using Mastwright.Network.Links;
using Mastwright.Quantities;

namespace Mastwright.Tests.Network.Hops;

public sealed class FloodTrialTests
{
    private static readonly HopSettings Many = new() { HopLimit = 3, Worlds = 20_000, Packets = 10, Seed = 7 };

    /// <summary>A matrix with a median margin for some pairs, both ways alike; none for the others.</summary>
    internal static LinkMatrix Matrix(int count, IReadOnlyDictionary<(int, int), double> margins, double unknownDb = 8, double fadingDb = 3, string keys = "abcdefghijklmnop")
    {
        LinkOneWay Way(double? margin) => margin is not { } db ? new() { Verdict = Verdict.Unknown } : new()
        {
            Verdict = LinkBudget.Judge(db, 10), MarginDb = Estimate.Exactly(db), LevelDbm = Estimate.Exactly(db - 130), CentreDb = db, UnknownDb = unknownDb, FadingDb = fadingDb, Odds = LinkOdds.From(db, unknownDb, fadingDb),
        };
        return new(
            [.. Enumerable.Range(0, count).Select(i => new MatrixStation($"{keys[i]}", $"{keys[i]}", $"{keys[i]}", new(46, -18 + (0.01 * i)), true))],
            Enumerable.Range(0, LinkMatrix.PairCount(count)).Select(index =>
            {
                (int from, int to) = LinkMatrix.StationsOf(index, count);
                LinkOneWay way = Way(margins.TryGetValue((from, to), out double db) ? db : null);
                return new LinkPair(from, to, 1000, 90, way, way);
            }));
    }

    [Theory]
    [InlineData(-4)]
    [InlineData(2)]
    [InlineData(9)]
    public void One_link_comes_out_as_its_odds(double marginDb)
    {
        LinkOdds odds = LinkOdds.From(marginDb, 8, 3);
        FloodedStation reached = FloodTrial.Run(Matrix(2, new Dictionary<(int, int), double> { [(0, 1)] = marginDb }), 0, Many)[1];

        // Four standard errors of 20,000 worlds; packets of a world hang together, so they count as one.
        Assert.Equal(odds.Works, reached.Confidence, 4 * Math.Sqrt(odds.Works * (1 - odds.Works) / Many.Worlds));
        Assert.Equal(odds.DeliversIfItWorks, reached.DeliversIfReached, 4 * 0.5 / Math.Sqrt(Many.Worlds * odds.Works));
        Assert.Equal(1, reached.TypicalHops);
    }

    [Fact]
    public void Two_links_in_a_row_multiply_and_two_ways_make_up_for_one_another()
    {
        LinkOdds odds = LinkOdds.From(3, 8, 3);
        FloodedStation row = FloodTrial.Run(Matrix(3, new Dictionary<(int, int), double> { [(0, 1)] = 3, [(1, 2)] = 3 }), 0, Many)[2];
        Assert.Equal(odds.Works * odds.Works, row.Confidence, 0.014);
        Assert.Equal(odds.DeliversIfItWorks * odds.DeliversIfItWorks, row.DeliversIfReached, 0.01);
        Assert.Equal(2, row.TypicalHops);

        // Over b or over c: 1 − (1 − p²)².
        FloodedStation both = FloodTrial.Run(Matrix(4, new Dictionary<(int, int), double> { [(0, 1)] = 3, [(1, 3)] = 3, [(0, 2)] = 3, [(2, 3)] = 3 }), 0, Many)[3];
        Assert.Equal(1 - Math.Pow(1 - (odds.Works * odds.Works), 2), both.Confidence, 0.014);
        Assert.Equal(0, FloodTrial.Run(Matrix(3, new Dictionary<(int, int), double> { [(0, 1)] = 3, [(1, 2)] = 3 }), 0, Many with { HopLimit = 1, Worlds = 100 })[2].Confidence);
    }

    [Fact]
    public void Hops_are_counted_by_world()
    {
        // Sure over b, in half of the worlds directly as well.
        FloodedStation far = FloodTrial.Run(Matrix(3, new Dictionary<(int, int), double> { [(0, 1)] = 60, [(1, 2)] = 60, [(0, 2)] = 0 }), 0, Many)[2];
        Assert.Equal(1, far.Confidence);
        Assert.Equal([0.5, 0.5, 0], far.ByHops.Select(share => Math.Round(share, 1)));

        // 1.96 √(p (1 − p) / n); never nothing, for none of n worlds may still be one of many.
        Assert.Equal(0.0098, new FloodedStation(0, 0.5, 1, 1, []).HalfRange(10_000), 1e-6);
        Assert.Equal(1.96 / 20_000, far.HalfRange(20_000), 1e-9);
    }

    [Fact]
    public void The_same_draws_give_the_same_numbers_whatever_the_order_of_the_stations()
    {
        HopSettings few = Many with { Worlds = 500 };
        Dictionary<(int, int), double> margins = new() { [(0, 1)] = 3, [(1, 2)] = 1, [(0, 2)] = -5 };
        ImmutableArray<FloodedStation> one = FloodTrial.Run(Matrix(3, margins), 0, few);
        ImmutableArray<FloodedStation> again = FloodTrial.Run(Matrix(3, margins), 0, few);
        Dictionary<(int, int), double> turned = new() { [(1, 2)] = 3, [(0, 1)] = 1, [(0, 2)] = -5 };
        ImmutableArray<FloodedStation> other = FloodTrial.Run(Matrix(3, turned, keys: "cba"), 2, few);
        Assert.Equal(one.Select(Text), again.Select(Text));
        Assert.Equal(one.Select(Text), other.Reverse().Select(Text));
        Assert.NotEqual(one.Select(Text), FloodTrial.Run(Matrix(3, margins), 0, few with { Seed = 8 }).Select(Text));
        static string Text(FloodedStation station) => FormattableString.Invariant($"{station.Confidence:R} {station.DeliversIfReached:R} {string.Join(' ', station.ByHops)}");
    }

    [Fact]
    public void Another_station_never_lowers_the_reach() => Gen.Select(Gen.Double[-12, 12].Array[6], Gen.Double[-12, 12].Array[4], Gen.Int[1, 4]).Sample(
        (margins, more, limit) =>
        {
            HopSettings few = new() { HopLimit = limit, Worlds = 60, Packets = 3, Seed = 3 };
            Dictionary<(int, int), double> pairs = [];
            for (int i = 0; i < 6; i++)
            {
                pairs[LinkMatrix.StationsOf(i, 4)] = margins[i];
            }

            ImmutableArray<FloodedStation> before = FloodTrial.Run(Matrix(4, pairs), 0, few);
            for (int i = 0; i < 4; i++)
            {
                pairs[(i, 4)] = more[i];
            }

            ImmutableArray<FloodedStation> after = FloodTrial.Run(Matrix(5, pairs), 0, few);
            return before.All(station => after[station.Station].Confidence >= station.Confidence);
        },
        iter: 60);
}
