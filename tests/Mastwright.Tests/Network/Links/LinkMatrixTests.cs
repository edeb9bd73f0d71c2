using CsCheck;
using Mastwright.Findings;
using Mastwright.Network.Links;
using Mastwright.Quantities;

namespace Mastwright.Tests.Network.Links;

public sealed class LinkMatrixTests
{
    [Fact]
    public void Every_two_stations_have_one_place_in_order()
    {
        for (int stations = 2; stations < 60; stations++)
        {
            int index = 0;
            for (int from = 0; from < stations; from++)
            {
                for (int to = from + 1; to < stations; to++)
                {
                    Assert.Equal(index, LinkMatrix.IndexOf(from, to, stations));
                    Assert.Equal((from, to), LinkMatrix.StationsOf(index, stations));
                    index++;
                }
            }

            Assert.Equal(index, LinkMatrix.PairCount(stations));
        }
    }

    [Fact]
    public void A_place_among_many_pairs_is_found_as_well() => Gen.Int[2, 20_000].SelectMany(count => Gen.Int[0, LinkMatrix.PairCount(count) - 1].Select(index => (count, index))).Sample(one =>
    {
        (int from, int to) = LinkMatrix.StationsOf(one.index, one.count);
        return from < to && to < one.count && LinkMatrix.IndexOf(from, to, one.count) == one.index;
    });

    [Fact]
    public void A_pair_is_judged_by_its_weaker_direction()
    {
        LinkOneWay good = new() { Verdict = Verdict.Ok, MarginDb = Estimate.Exactly(12), Odds = new(0.9, 0.99) };
        LinkOneWay bad = new() { Verdict = Verdict.Fails, MarginDb = Estimate.Exactly(-3), Odds = new(0.3, 0.8) };
        LinkPair pair = new(0, 1, 1000, 90, good, bad);
        Assert.Equal(Verdict.Fails, pair.Verdict);
        Assert.Equal(-3, pair.LeastMarginDb);
        Assert.Equal(0.3, pair.WorksBothWays);
        Assert.True(pair.IsOneWay);
        LinkMatrix matrix = new([Station("a"), Station("b")], [pair]);
        Assert.Equal(bad, matrix.Way(1, 0));
        Assert.Equal(good, matrix.Way(0, 1));
        Assert.Throws<ArgumentException>(() => new LinkMatrix([Station("a")], [pair]));
    }

    [Fact]
    public void A_kept_path_reads_back_to_the_bit()
    {
        PathFacts facts = new()
        {
            OutLossDb = Estimate.Of(120.1, 121.2, 130.3), BackLossDb = null, OutShiftDb = 0.1, FromElevationDegrees = -0.3, LocationDb = 5.5, EndDeviationsDb = [3, 9], Missing = ["ground: N46W019"],
        };
        PathMemory memory = new();
        Assert.Null(memory.Find("a"));
        memory.Keep("a", facts);
        PathMemory read = PathMemory.FromBytes(memory.ToBytes());
        PathFacts again = read.Find("a")!;
        Assert.Equal(facts.ToBytes(), again.ToBytes());
        Assert.Equal(facts.OutLossDb, again.OutLossDb);
        Assert.Null(again.BackLossDb);
        Assert.Null(again.ToElevationDegrees);
        Assert.Equal(facts.Missing, again.Missing);
        Assert.Equal((1, 0), (read.Found, read.Added));
    }

    private static MatrixStation Station(string key) => new(key, key, key, new(46, -18), true);
}
