using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Tests.Ground;
using Mastwright.Tests.Plans;
using Mastwright.Tests.Station.Radio;

namespace Mastwright.Tests.Network.Reach;

public sealed class DirectAreaTests
{
    [Fact]
    public void Each_cell_has_the_loss_and_the_elevation_of_the_link_to_its_centre()
    {
        ReachFieldInput input = ReachSamples.Input(6_000, 600) with { StationHeightMetres = 5, ReceiverHeightMetres = 7, RefractivityGradient = 45, FrequencyHz = 868e6 };
        ReachField field = DirectArea.Evaluate(input, ReachSamples.Hills);
        int seen = 0;
        foreach ((int column, int row) in new[] { (3, 9), (10, 2), (15, 14), (9, 17), (6, 6) })
        {
            int cell = (row * field.Frame.Columns) + column;
            Plan plan = FlatPlan.Of(new() { RefractivityGradient = 45, SurfaceRefractivity = 325 });
            plan = plan with
            {
                Sites = [plan.Sites[0] with { Position = new(input.Station, 0) }],
                Neighbours = [plan.Neighbours[0] with { Position = new(ReachGrid.Centre(field.Frame, column, row), 0), Height = new(Estimate.Exactly(7), HeightAbove.Ground) }],
            };
            LinkReport link = Assert.Single(new Assessment(plan, SensitivityTests.Catalogue, (_, _) => ReachSamples.Hills).Run(new Dictionary<string, string>(StringComparer.Ordinal)).Links);
            Assert.Equal(link.Path.Out!.LossDb, field.LossDb[cell], 1e-4);
            Assert.Equal(link.Path.Clearance!.TransmitterElevationDegrees, field.StationElevationDegrees[cell], 1e-5);
            seen++;
        }

        Assert.Equal(5, seen);
    }

    [Fact]
    public void The_same_bytes_come_whatever_the_number_of_threads()
    {
        ReachFieldInput input = ReachSamples.Input(2_000, 150);
        ReachField one = DirectArea.Evaluate(input, ReachSamples.Hills, threads: 1);
        ReachField many = DirectArea.Evaluate(input, ReachSamples.Hills, threads: 7);
        Assert.True(one.LossDb.SequenceEqual(many.LossDb));
        Assert.True(one.StationElevationDegrees.SequenceEqual(many.StationElevationDegrees));
        Assert.True(one.Flags.SequenceEqual(many.Flags));
    }

    [Fact]
    public void The_cells_of_a_disc_have_its_area()
    {
        ReachField field = DirectArea.Evaluate(ReachSamples.Input(3_000, 100), ReachSamples.Hills);
        double area = field.CellCount * field.CellAreaSquareMetres;

        // The count of centres in a circle of 30 cells differs from its area by some tens of cells at most; the grid's scale by 0.1 %.
        Assert.Equal(Math.PI * 9e6, area, Math.PI * 9e6 * 0.01);
    }

    [Fact]
    public void Near_cells_are_marked_and_none_is_without_a_number()
    {
        GridFrame frame = ReachGrid.Of(ReachSamples.Station, 1_000, 100);
        GeoPoint onCentre = ReachGrid.Centre(frame, 10, 10);
        ReachField field = DirectArea.Evaluate(ReachSamples.Input(1_000, 100) with { Station = onCentre }, ReachSamples.Hills);
        int near = 0;
        for (int i = 0; i < field.Flags.Length; i++)
        {
            bool outside = (field.Flags[i] & ReachFlags.Outside) != ReachFlags.None;
            Assert.Equal(outside, float.IsNaN(field.LossDb[i]));
            double metres = Geodesic.Inverse(onCentre, ReachGrid.Centre(field.Frame, i % field.Frame.Columns, i / field.Frame.Columns)).DistanceMetres;
            Assert.Equal(metres < 250, (field.Flags[i] & ReachFlags.ShortPath) != ReachFlags.None);
            near += metres < 1 ? 1 : 0;
        }

        Assert.Equal(1, near);
    }

    [Fact]
    public void Ground_that_is_missing_leaves_its_cells_empty_and_is_named()
    {
        // Only the tile in the west is there; the station stands 1.9 km west of its eastern edge.
        GroundMosaic west = GroundMosaic.Of([GroundSamples.Tile(46, -19, 101, (_, _) => 50)]);
        ReachField field = DirectArea.Evaluate(ReachSamples.Input(4_000, 200) with { Station = new(46.5, -18.025) }, west);
        ReachGap gap = Assert.Single(field.Gaps);
        Assert.Equal("N46W018", gap.Tile);
        Assert.False(gap.IsVoid);
        Assert.Equal(field.Flags.ToArray().Count(flag => (flag & ReachFlags.GroundMissing) != ReachFlags.None), gap.Cells);
        double edge = Geodesic.Inverse(new(46.5, -18.025), new(46.5, -18)).DistanceMetres;
        Assert.InRange(gap.NearestMetres, edge, edge + 1_200);
        Assert.InRange(gap.BearingDegrees, 60, 120);
        Assert.InRange(gap.Cells, 1, field.CellCount / 2);
        Assert.Equal(gap.Cells + field.Flags.ToArray().Count(flag => (flag & ReachFlags.Outside) != ReachFlags.None), field.LossDb.ToArray().Count(float.IsNaN));
    }

    [Fact]
    public void The_cells_done_are_told_and_work_can_be_stopped()
    {
        Counter counter = new();
        ReachField field = DirectArea.Evaluate(ReachSamples.Input(1_000, 100), ReachSamples.Hills, counter, threads: 1);
        Assert.Equal(field.CellCount, counter.Last);
        using CancellationTokenSource stop = new();
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => DirectArea.Evaluate(ReachSamples.Input(1_000, 100), ReachSamples.Hills, cancellation: stop.Token));
    }

    [Fact]
    public void A_field_whose_flags_and_losses_disagree_is_refused()
    {
        GridFrame frame = GridFrame.Utm(27, true, 600_000, 5_000_000, 90, 90, 2, 1, samplesAreAreas: true);
        ReachFieldInput input = ReachSamples.Input(1_000, 90);
        Assert.Throws<ArgumentException>(() => ReachField.FromCells(input, frame, [100, float.NaN], [0, float.NaN], new ReachFlags[2], []));
        Assert.Throws<ArgumentException>(() => ReachField.FromCells(input, frame, [100, 100], [0, 0], [ReachFlags.None, ReachFlags.Outside], []));
        Assert.Throws<ArgumentException>(() => ReachField.FromCells(input, frame, [100], [0, 0], new ReachFlags[2], []));
    }

    private sealed class Counter : IProgress<int>
    {
        internal int Last { get; private set; }

        public void Report(int value) => Last = value;
    }
}
