using System.Collections.Immutable;
using Mastwright.Network;
using Mastwright.Network.Reach;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Tests.Network.Reach;

public sealed class ReachMapTests
{
    /// <summary>17 dBm + 5 dBi − 120 dB + 1 dBi − 3 dB = −100 dBm, 28 dB over −128 dBm; back 14 + 1 − 3 − 120 + 5 = −103 dBm, 27 dB over −130 dBm.</summary>
    [Fact]
    public void Level_and_margins_are_those_of_the_budget_by_hand()
    {
        ReachMap map = ReachMap.Of(ReachSamples.Field(4, 100, (_, _) => 120), ReachSamples.Budget());
        Assert.Equal(-100, map.LevelDbm[5], 1e-4);
        Assert.Equal(28, map.MarginDb(5, ReachDirection.Heard), 1e-4);
        Assert.Equal(27, map.MarginDb(5, ReachDirection.Hears), 1e-4);
        Assert.Equal(27, map.MarginDb(5, ReachDirection.Both), 1e-4);
        Assert.Equal(1, map.Budget.HeardOverHearsDb, 1e-12);
        Assert.All(map.MarginsDb(ReachDirection.Hears), margin => Assert.Equal(27, margin, 1e-4));
    }

    /// <summary>Of 6 and 4 dB in power: √52 = 7.211 dB; the packets' 3 dB stay apart.</summary>
    [Fact]
    public void The_two_spreads_are_kept_apart_and_make_the_odds()
    {
        ReachMap map = ReachMap.Of(ReachSamples.Field(4, 100, (east, _) => east < 0 ? 148 : 155), ReachSamples.Budget());
        Assert.Equal(Math.Sqrt(52), map.HeardSpread.Unknown.Total, 1e-9);
        Assert.Equal(3, map.HeardSpread.Fading.Total, 1e-9);

        // 148 dB leave a margin of just 0 dB: one half; 155 dB one of −7 dB.
        Assert.Equal(0.5, map.Odds(0, ReachDirection.Heard)!.Value.Works, 1e-6);
        LinkOdds exact = LinkOdds.From(-7, Math.Sqrt(52), 3);
        Assert.Equal(exact.Works, map.Odds(3, ReachDirection.Heard)!.Value.Works, 1e-5);
        Assert.Equal(exact.DeliversIfItWorks, map.Odds(3, ReachDirection.Heard)!.Value.DeliversIfItWorks, 1e-5);
    }

    [Fact]
    public void A_location_percentage_shifts_the_margin_but_not_the_odds()
    {
        ReachField field = ReachSamples.Field(4, 100, (_, _) => 150);
        ReachMap shifted = ReachMap.Of(field, ReachSamples.Budget() with { LocationShiftDb = 5 });
        Assert.Equal(-2, shifted.MarginDb(0, ReachDirection.Heard), 1e-4);
        Assert.Equal(LinkOdds.From(3, Math.Sqrt(52), 3).Works, shifted.Odds(0, ReachDirection.Heard)!.Value.Works, 1e-5);
    }

    [Fact]
    public void A_directional_antenna_is_heard_where_it_points()
    {
        AntennaFit east = new()
        {
            GainDbi = Estimate.Exactly(10),
            Height = new(Estimate.Exactly(10), HeightAbove.Ground),
            Pattern = PatternKind.Yagi,
            ElevationBeamwidthDegrees = 40,
            AzimuthBeamwidthDegrees = 40,
            BearingDegrees = 90,
        };
        ReachMap map = ReachMap.Of(ReachSamples.Field(21, 100, (_, _) => 120), ReachSamples.Budget(east));
        int middleRow = 10 * 21;
        double ahead = map.LevelDbm[middleRow + 20];
        Assert.Equal(17 + 10 - 120 + 1 - 3, ahead, 0.05);
        Assert.True(ahead - map.LevelDbm[middleRow] > 10);
        Assert.True(ahead - map.LevelDbm[10] > 10);
    }

    [Fact]
    public void Each_cell_is_in_one_class_and_a_disc_has_the_area_of_a_disc()
    {
        // Margin 28 dB + 120 dB − loss: it falls by 1 dB each 100 m and so passes 30, 20, 10 and 0 dB at 1, 2, 3 and 4 km.
        ReachField cone = ReachSamples.Field(201, 50, (east, north) => Math.Sqrt((east * east) + (north * north)) is double metres && metres < 5_000 ? 108 + (metres / 100) : double.NaN);
        ReachMap map = ReachMap.Of(cone, ReachSamples.Budget());
        ImmutableArray<ReachClass> classes = ReachClasses.Of(map, ReachDirection.Heard);
        Assert.Equal(cone.CellCount, classes.Sum(one => one.Cells));
        Assert.Equal([double.NegativeInfinity, 0, 10, 20, 30], classes.Select(one => one.FromDb));
        for (int i = 1; i <= 4; i++)
        {
            double outer = 5 - i;
            double inner = i == 4 ? 0 : 4 - i;
            double area = Math.PI * ((outer * outer) - (inner * inner)) * 1e6;
            Assert.Equal(area, classes[i].AreaSquareMetres, area * 0.02);
            Assert.True(classes[i].MeanWorks > classes[i - 1].MeanWorks);
        }
    }

    [Fact]
    public void No_cell_without_a_loss_gets_a_number_and_no_other_lacks_one()
    {
        ReachField holes = ReachSamples.Field(15, 100, (east, north) => east > 300 || north == 0 ? double.NaN : 130);
        ReachMap map = ReachMap.Of(holes, ReachSamples.Budget());
        float[] margins = map.MarginsDb(ReachDirection.Both);
        for (int i = 0; i < margins.Length; i++)
        {
            bool none = float.IsNaN(holes.LossDb[i]);
            Assert.Equal(none, float.IsNaN(margins[i]));
            Assert.Equal(none, float.IsNaN(map.LevelDbm[i]));
            Assert.Equal(none, map.Odds(i, ReachDirection.Both) is null);
        }
    }

    [Fact]
    public void Classes_begin_at_the_limit_and_at_the_wanted_margin()
    {
        Assert.Equal([0, 6, 16, 26], ReachClasses.Edges(6));
        Assert.Equal([0, 10, 20], ReachClasses.Edges(0));
        Assert.Equal(0, ReachClasses.IndexOf([0, 6], -0.001));
        Assert.Equal(1, ReachClasses.IndexOf([0, 6], 0));
        Assert.Equal(2, ReachClasses.IndexOf([0, 6], 6));
    }

    [Fact]
    public void A_budget_with_a_gap_is_refused()
    {
        ReachBudget budget = ReachSamples.Budget();
        ReachField field = ReachSamples.Field(4, 100, (_, _) => 120);
        Assert.Throws<ArgumentException>(() => ReachMap.Of(field, budget with { Receiver = budget.Receiver with { RequiredDbm = null } }));
        Assert.Throws<ArgumentException>(() => ReachMap.Of(field, budget with { Station = budget.Station with { PowerIntoAntennaDbm = null } }));
    }

    /// <summary>West: −2 dB against 8 dB, lost; middle: the same; east: 8 dB against −2 dB, gained. Four columns of four cells of 1 ha.</summary>
    [Fact]
    public void Two_maps_are_compared_cell_by_cell()
    {
        ReachMap one = ReachMap.Of(ReachSamples.Field(4, 100, (east, _) => east < -100 ? 150 : 140), ReachSamples.Budget());
        ReachMap other = ReachMap.Of(ReachSamples.Field(4, 100, (east, _) => east > 100 ? 150 : 140), ReachSamples.Budget());
        ReachComparison comparison = ReachComparison.Of(one, other, ReachDirection.Heard);
        Assert.Equal(16, comparison.Cells);
        Assert.Equal((-10, 0, 10), (comparison.LowDb, comparison.MedianDb, comparison.HighDb));
        Assert.Equal(4 * 1e4, comparison.GainedSquareMetres);
        Assert.Equal(4 * 1e4, comparison.LostSquareMetres);
        Assert.Throws<ArgumentException>(() => ReachComparison.Of(one, ReachMap.Of(ReachSamples.Field(5, 100, (_, _) => 140), ReachSamples.Budget()), ReachDirection.Heard));
    }
}
