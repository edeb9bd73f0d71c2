using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;

namespace Mastwright.Tests.Network.Reach;

public sealed class ReachWeightsTests
{
    /// <summary>West to east margins of 38, 18, 8, −2 dB where the station is heard, 1 dB less where it hears; weights of 1, 2, 4, 8 in them, 16 without ground, 32 outside, 64 far away.</summary>
    [Fact]
    public void Places_are_summed_by_class_and_none_is_lost()
    {
        ReachMap map = ReachMap.Of(Row(110, 130, 140, 150, 999, double.NaN), ReachSamples.Budget());
        ReachWeights weights = new(map.Field.Frame);
        for (int column = 0; column < 6; column++)
        {
            weights.Add(ReachGrid.Centre(map.Field.Frame, column, 2), 1 << column);
        }

        weights.Add(new(-46.5, 120), 64);
        ReachWeightShares heard = weights.Shares(map, ReachDirection.Heard);
        Assert.Equal([8.0, 4, 2, 0, 1], heard.InClass);
        Assert.Equal(7, heard.Reached);
        Assert.Equal((16.0, 96.0), (heard.WithoutGround, heard.Outside));
        Assert.Equal(127, weights.Total);
        Assert.Equal(7, weights.Count);
        Assert.Equal(weights.Total, heard.InClass.Sum() + heard.Outside + heard.WithoutGround);

        // A dB less to spare: 20 dB and more stays, 147.5 dB of loss would not.
        ReachMap edge = ReachMap.Of(Row(147.5, 147.5, 147.5, 147.5, 147.5, 147.5), ReachSamples.Budget());
        Assert.Equal(63, weights.Shares(edge, ReachDirection.Heard).Reached);
        Assert.Equal(0, weights.Shares(edge, ReachDirection.Hears).Reached);
        Assert.Equal(0, weights.Shares(edge, ReachDirection.Both).Reached);
    }

    /// <summary>A cell of counts of 300 m over nine cells of 100 m: each gets a ninth, and the sum is the count.</summary>
    [Fact]
    public void A_count_is_spread_over_its_cell_and_its_sum_is_kept()
    {
        GridFrame frame = ReachSamples.Field(6, 100, (_, _) => 120).Frame;
        GridFrame counts = GridFrame.Utm(27, true, frame.OriginX + 100, frame.OriginY - 100, 300, 300, 2, 2, samplesAreAreas: true);
        ReachWeights weights = new(frame);
        weights.AddCell(counts, 0, 0, 900);
        Assert.Equal(0, weights.OffGrid);
        for (int cell = 0; cell < 36; cell++)
        {
            Assert.Equal(cell % 6 < 3 && cell / 6 < 3 ? 100 : 0, weights.InCell[cell], 1e-9);
        }
    }

    /// <summary>Counts in degrees over and around the grid, of a raster much coarser than it and of one much finer: all of them are on the grid or off it.</summary>
    [Theory]
    [InlineData(0.02, 12)]
    [InlineData(0.0004, 80)]
    public void The_sum_of_a_raster_is_kept_whatever_its_cells(double stepDegrees, int side)
    {
        ReachField field = ReachSamples.Field(40, 50, (_, _) => 120);
        GeoPoint middle = ReachGrid.Centre(field.Frame, 20, 20);
        GridFrame counts = GridFrame.Geographic(
            middle.LongitudeDegrees - (stepDegrees * side / 2), middle.LatitudeDegrees + (stepDegrees * side / 2), stepDegrees, stepDegrees, side, side, samplesAreAreas: true);
        ReachWeights weights = new(field.Frame);
        double sum = 0;
        for (int i = 0; i < side * side; i++)
        {
            weights.AddCell(counts, i % side, i / side, 4);
            sum += 4;
        }

        Assert.Equal(sum, weights.Total);
        Assert.Equal(sum, weights.InCell.ToArray().Sum() + weights.OffGrid, sum * 1e-12);
        Assert.True(weights.InCell.ToArray().Sum() > 0 && weights.OffGrid > 0);

        // Where counts are even, the grid has its area's share of them, within what the edges of the parts leave.
        double perSquareMetre = 4 / (stepDegrees * stepDegrees * 111_160 * 111_320 * Math.Cos(double.DegreesToRadians(46.5)));
        double inside = weights.InCell.ToArray().Sum() / (40 * 40 * 2500);
        Assert.Equal(1, inside / perSquareMetre, 0.05);
    }

    [Fact]
    public void What_several_stations_reach_is_summed_by_their_number()
    {
        ReachField first = Row(140, 140, 160, 160, 999, double.NaN);
        BestServers servers = BestServers.Before(first.Frame, 2);
        servers.Take(1, ReachMap.Of(first, ReachSamples.Budget()));
        servers.Take(2, ReachMap.Of(Row(145, 160, 145, 160, 999, double.NaN), ReachSamples.Budget()));
        ReachWeights weights = new(first.Frame);
        for (int column = 0; column < 6; column++)
        {
            weights.Add(ReachGrid.Centre(first.Frame, column, 3), 1 << column);
        }

        ServedWeights shares = weights.Shares(servers, ReachDirection.Heard);
        Assert.Equal([8.0, 6, 1], shares.ByCount);
        Assert.Equal([3.0, 4], shares.Best);
        Assert.Equal((16.0, 32.0), (shares.WithoutGround, shares.Outside));
    }

    [Fact]
    public void A_weight_that_is_none_is_refused()
    {
        ReachWeights weights = new(ReachSamples.Field(4, 100, (_, _) => 120).Frame);
        Assert.Throws<ArgumentOutOfRangeException>(() => weights.Add(ReachSamples.Station, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => weights.Add(ReachSamples.Station, double.NaN));
        Assert.Throws<ArgumentException>(() => weights.Shares(ReachMap.Of(ReachSamples.Field(6, 100, (_, _) => 120), ReachSamples.Budget()), ReachDirection.Heard));
    }

    /// <summary>Six columns of one loss each; 999 for ground that is missing, NaN for what lies outside.</summary>
    private static ReachField Row(params double[] losses)
    {
        ReachField made = ReachSamples.Field(6, 100, (east, _) => losses[(int)Math.Round((east / 100) + 2.5)] is double loss && loss < 999 ? loss : double.NaN);
        ReachFlags[] flags = [.. Enumerable.Range(0, 36).Select(cell => losses[cell % 6] == 999 ? ReachFlags.GroundMissing : double.IsNaN(losses[cell % 6]) ? ReachFlags.Outside : ReachFlags.None)];
        return ReachField.FromCells(made.Input, made.Frame, made.LossDb.ToArray(), made.StationElevationDegrees.ToArray(), flags, []);
    }
}
