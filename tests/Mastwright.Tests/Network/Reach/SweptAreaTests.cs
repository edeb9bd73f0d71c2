using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Propagation.Area;
using Mastwright.Tests.Ground;

namespace Mastwright.Tests.Network.Reach;

public sealed class SweptAreaTests
{
    /// <summary>Hills some kilometres across on points 3 arc-seconds and a half apart.</summary>
    private static readonly GroundMosaic Downs = GroundMosaic.Of([GroundSamples.Tile(46, -19, 1001, (latitude, longitude) =>
        100 + (50 * Math.Sin(latitude * 130)) + (50 * Math.Cos(longitude * 100)))]);

    /// <summary>The outer bounds are those asked of a fast map against each cell's own straight path at 3 arc-seconds: 0.6 dB at 95 and 1.5 dB at 99 %, with the centre's own offset from the sweep's places on top.</summary>
    [Fact]
    public void It_agrees_with_every_cells_own_path()
    {
        ReachFieldInput input = ReachSamples.Input(8_000, 160);
        ReachField direct = DirectArea.Evaluate(input, Downs);
        ReachField swept = SweptArea.Evaluate(input, Downs);
        Assert.Equal(direct.Frame, swept.Frame);
        Assert.True(direct.Flags.SequenceEqual(swept.Flags));
        double[] off = Differences(direct.LossDb, swept.LossDb);
        Assert.True(off.Length > 7_000);
        Assert.True(off[off.Length / 2] < 0.15 && off[off.Length * 95 / 100] < 1 && off[off.Length * 99 / 100] < 2.5, $"{off[off.Length / 2]:0.000} {off[off.Length * 95 / 100]:0.00} {off[off.Length * 99 / 100]:0.00}");
        double[] angles = Differences(direct.StationElevationDegrees, swept.StationElevationDegrees);
        Assert.True(angles[angles.Length * 95 / 100] < 0.2, $"{angles[angles.Length * 95 / 100]:0.000}");
    }

    /// <summary>The rule worked out here again, cell by cell: bilinear between the four places of the sweep around the cell, found by the geodesic.</summary>
    [Fact]
    public void A_cell_lies_between_the_places_of_the_sweep()
    {
        ReachFieldInput input = ReachSamples.Input(4_000, 70);
        ReachField field = SweptArea.Evaluate(input, Downs);
        double step = field.SweepStepMetres!.Value;
        SweepGround ground = SweepGround.Read(Downs, SweepFrame.Around(input.Station, input.RadiusMetres + (2 * step), step), cancellation: TestContext.Current.CancellationToken);
        SweepResult sweep = AreaSweep.Run(ground.Raster, SweptArea.Input(input), cancellation: TestContext.Current.CancellationToken);
        int compared = 0;
        for (int i = 0; i < field.LossDb.Length; i++)
        {
            if (field.Flags[i] != ReachFlags.None)
            {
                continue;
            }

            GeodesicSegment way = Geodesic.Inverse(input.Station, ReachGrid.Centre(field.Frame, i % field.Frame.Columns, i / field.Frame.Columns));
            (double sin, double cos) = Math.SinCos(double.DegreesToRadians(way.InitialBearingDegrees));
            double column = (way.DistanceMetres * sin / step) + ground.Raster.Reach;
            double row = ground.Raster.Reach - (way.DistanceMetres * cos / step);
            (double loss, double steepest) = Bilinear(sweep.LossDb, sweep.Side, column, row);
            (double elevation, double steepestElevation) = Bilinear(sweep.ElevationDegrees, sweep.Side, column, row);

            // The plane of the grid is known to 2 mm (GridLatticeTests).
            Assert.Equal(loss, field.LossDb[i], 1e-4 + (steepest * 0.002 / step));
            Assert.Equal(elevation, field.StationElevationDegrees[i], 1e-5 + (steepestElevation * 0.002 / step));
            compared++;
        }

        Assert.True(compared > 9_000, $"{compared}");
    }

    [Fact]
    public void The_same_bytes_come_whatever_the_number_of_threads()
    {
        ReachFieldInput input = ReachSamples.Input(5_000, 90);
        ReachField one = SweptArea.Evaluate(input, Downs, threads: 1);
        ReachField many = SweptArea.Evaluate(input, Downs, threads: 7);
        Assert.True(one.LossDb.SequenceEqual(many.LossDb));
        Assert.True(one.StationElevationDegrees.SequenceEqual(many.StationElevationDegrees));
        Assert.True(one.Flags.SequenceEqual(many.Flags));
        Assert.Equal(Downs.Heights[0].ResolutionMetres, one.SweepStepMetres!.Value, 1e-9);
    }

    [Fact]
    public void A_cell_has_a_loss_just_where_the_radius_and_the_ground_reach() =>
        Gen.Select(Gen.Double[46.02, 46.98], Gen.Double[-18.98, -18.005], Gen.Double[400, 6_000], Gen.Double[30, 300]).Sample(
            (latitude, longitude, radius, cell) =>
            {
                ReachFieldInput input = ReachSamples.Input(radius, Math.Min(cell, radius)) with { Station = new(latitude, longitude) };
                ReachField field = SweptArea.Evaluate(input, Downs);
                for (int i = 0; i < field.LossDb.Length; i++)
                {
                    // FromCells has refused any cell whose loss and flags disagree; what is left is that they say the right thing.
                    double metres = Geodesic.Inverse(input.Station, ReachGrid.Centre(field.Frame, i % field.Frame.Columns, i / field.Frame.Columns)).DistanceMetres;
                    bool isOutside = (field.Flags[i] & ReachFlags.Outside) != ReachFlags.None;

                    // The plane of the grid is known to 2 mm (GridLatticeTests): nearer to the radius a cell may lie on either side.
                    Assert.True(isOutside == metres > radius || Math.Abs(metres - radius) < 0.003, $"{metres}");
                    Assert.False(float.IsInfinity(field.LossDb[i]) || field.LossDb[i] < 0 || field.LossDb[i] > 400);
                }
            },
            iter: 20);

    [Fact]
    public void Ground_that_is_missing_leaves_its_cells_empty_and_is_named()
    {
        ReachField field = SweptArea.Evaluate(ReachSamples.Input(4_000, 200) with { Station = new(46.5, -18.025) }, Downs);
        ReachGap gap = Assert.Single(field.Gaps);
        Assert.Equal("N46W018", gap.Tile);
        Assert.False(gap.IsVoid);
        Assert.Equal(field.Flags.ToArray().Count(flag => (flag & ReachFlags.GroundMissing) != ReachFlags.None), gap.Cells);
        double edge = Geodesic.Inverse(new(46.5, -18.025), new(46.5, -18)).DistanceMetres;
        Assert.InRange(gap.NearestMetres, edge - 120, edge + 200);
        Assert.InRange(gap.BearingDegrees, 60, 120);
    }

    [Fact]
    public void Progress_is_told_and_work_can_be_stopped()
    {
        List<int> told = [];
        SweptArea.Evaluate(ReachSamples.Input(2_000, 100), Downs, new Teller(told), threads: 1);
        Assert.NotEmpty(told);
        using CancellationTokenSource stop = new();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => SweptArea.Evaluate(ReachSamples.Input(2_000, 100), Downs, cancellation: stop.Token));
    }

    [Fact]
    public void A_surface_model_and_clutter_in_place_of_cover_are_left_to_the_cells_own_paths()
    {
        GroundMosaic surface = GroundMosaic.Of([GroundSamples.Tile(46, -19, 101, (_, _) => 50, kind: HeightKind.Surface)]);
        ReachFieldInput input = ReachSamples.Input(1_000, 100);
        Assert.True(SweptArea.Fits(input, Downs));
        Assert.False(SweptArea.Fits(input, surface));
        Assert.False(SweptArea.Fits(input, GroundMosaic.Empty));
        Assert.False(SweptArea.Fits(input with { ReplacesCoverAtStation = true }, Downs));
        Assert.Throws<ArgumentException>(() => SweptArea.Evaluate(input, surface));
    }

    private static (double Value, double Apart) Bilinear(ReadOnlySpan<float> values, int side, double column, double row)
    {
        (int c, int r) = ((int)column, (int)row);
        (double across, double down) = (column - c, row - r);
        double[] around = [values[(r * side) + c], values[(r * side) + c + 1], values[((r + 1) * side) + c], values[((r + 1) * side) + c + 1]];
        double value = (around[0] * (1 - across) * (1 - down)) + (around[1] * across * (1 - down)) + (around[2] * (1 - across) * down) + (around[3] * across * down);
        return (value, 2 * (around.Max() - around.Min()));
    }

    private static double[] Differences(ReadOnlySpan<float> one, ReadOnlySpan<float> other) =>
        [.. one.ToArray().Zip(other.ToArray(), (a, b) => (double)Math.Abs(a - b)).Where(off => !double.IsNaN(off)).Order()];

    private sealed class Teller(List<int> told) : IProgress<int>
    {
        public void Report(int value) => told.Add(value);
    }
}
