using Mastwright.Ground;
using Mastwright.Network.Reach;

namespace Mastwright.Tests.Network.Reach;

public sealed class ReachRangeTests
{
    /// <summary>Best guess 8 dB in the west and −2 dB in the east; once 5 dB more everywhere, once 10 dB less: 0 dB and more over none, half and all of 16 ha.</summary>
    [Fact]
    public void Least_and_most_margins_are_kept_whatever_the_order()
    {
        ReachMap best = Map((east, _) => east < 0 ? 140 : 150);
        ReachMap[] tries = [Map((east, _) => east < 0 ? 135 : 145), Map((east, _) => east < 0 ? 150 : 160)];
        foreach (ReachMap[] order in new[] { tries, [tries[1], tries[0]] })
        {
            ReachRange range = new(best);
            foreach (ReachMap map in order)
            {
                range.Take(map);
            }

            Assert.Equal(3, range.Count);
            Assert.Equal((0, 8e4, 16e4), range.AreaSquareMetres(ReachDirection.Heard));
            Assert.Equal((10, 5), range.TypicalMove());
            Assert.All(range.LowDb(ReachDirection.Heard).Zip(best.MarginsDb(ReachDirection.Heard)), pair => Assert.Equal(pair.Second - 10, pair.First, 1e-4));
            Assert.All(range.HighDb(ReachDirection.Hears).Zip(best.MarginsDb(ReachDirection.Hears)), pair => Assert.Equal(pair.Second + 5, pair.First, 1e-4));
        }
    }

    /// <summary>The grid of a station one cell to the east: what it has beside the best guess's is left out, what it lacks stays as it was.</summary>
    [Fact]
    public void A_map_some_cells_aside_counts_where_the_two_overlap()
    {
        ReachMap best = Map((_, _) => 140);
        ReachField aside = ReachSamples.Field(4, 100, (_, _) => 130);
        GridFrame moved = GridFrame.Utm(27, true, aside.Frame.OriginX + 100, aside.Frame.OriginY, 100, 100, 4, 4, samplesAreAreas: true);
        ReachRange range = new(best);
        range.Take(ReachMap.Of(ReachField.FromCells(aside.Input, moved, aside.LossDb.ToArray(), aside.StationElevationDegrees.ToArray(), aside.Flags.ToArray(), []), ReachSamples.Budget()));
        Assert.All(Enumerable.Range(0, 16), cell => Assert.Equal(cell % 4 == 0 ? 8 : 18, range.HighDb(ReachDirection.Heard)[cell], 1e-4));
        GridFrame between = GridFrame.Utm(27, true, aside.Frame.OriginX + 50, aside.Frame.OriginY, 100, 100, 4, 4, samplesAreAreas: true);
        Assert.Throws<ArgumentException>(() => range.Take(ReachMap.Of(ReachField.FromCells(aside.Input, between, aside.LossDb.ToArray(), aside.StationElevationDegrees.ToArray(), aside.Flags.ToArray(), []), ReachSamples.Budget())));
    }

    private static ReachMap Map(Func<double, double, double> lossAt) => ReachMap.Of(ReachSamples.Field(4, 100, lossAt), ReachSamples.Budget());
}
