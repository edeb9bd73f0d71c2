using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Propagation.Area;
using Mastwright.Tests.Ground;

namespace Mastwright.Tests.Network.Reach;

/// <summary>A field in pieces against the same field in one.</summary>
public sealed class ReachPiecesTests
{
    private static readonly CoverTable Table = CoverTable.Of([new(7, "trees", CoverClass.UrbanOrTrees, 15, "test", "test")]);

    /// <summary>Hills over two tiles, woods in stripes, the sea in the south-west.</summary>
    private static readonly GroundMosaic Coast = MakeCoast();

    private static readonly GroundExtent CoastExtent = GroundExtent.Of(Coast);

    [Theory]
    [InlineData(9_000, 1)]
    [InlineData(22_000, 20)]
    public void Every_place_of_a_sector_has_the_very_loss_that_the_whole_sweep_gives_it(double radiusMetres, int placesInThousands)
    {
        ReachFieldInput input = ReachSamples.Input(radiusMetres, 300) with { TimePercent = 10, LocationPercent = 70, LocationSigmaDb = 4 };
        double step = Coast.Heights[0].ResolutionMetres;
        ReachPieces pieces = ReachPieces.Of(input, step, placesInThousands * 1000);
        Assert.True(pieces.Count > 8);
        SweepGround whole = SweepGround.Read(Coast, pieces.Plane, cancellation: TestContext.Current.CancellationToken);
        Assert.True(whole.Raster is { HasCover: true, HasZones: true });
        SweepResult expected = AreaSweep.Run(whole.Raster, SweptArea.Input(input), cancellation: TestContext.Current.CancellationToken);
        int compared = 0;
        for (int index = 0; index < pieces.Count; index++)
        {
            (SweepFrame plane, SweepLayout layout, SweepResult actual) = pieces.Sweep(index, CoastExtent, new(), out _, TestContext.Current.CancellationToken);
            for (int north = -plane.Reach; north <= plane.Reach; north++)
            {
                for (int east = -plane.Reach; east <= plane.Reach; east++)
                {
                    if (pieces.IsIn(index, east, north) && (east * east) + (north * north) <= pieces.Plane.Reach * pieces.Plane.Reach)
                    {
                        int there = whole.Raster.Layout.At(east, north);
                        int here = layout.At(east, north);
                        compared++;
                        if (expected.LossDb[there] != actual.LossDb[here] || expected.ElevationDegrees[there] != actual.ElevationDegrees[here])
                        {
                            Assert.Fail($"{index}: {east} east {north} north: {expected.LossDb[there]:R} dB in one, {actual.LossDb[here]:R} dB in pieces");
                        }
                    }
                }
            }
        }

        // Each place belongs to just one piece.
        int places = Enumerable.Range(-pieces.Plane.Reach, pieces.Plane.Side)
            .Sum(north => Enumerable.Range(-pieces.Plane.Reach, pieces.Plane.Side).Count(east => (east * east) + (north * north) <= pieces.Plane.Reach * pieces.Plane.Reach));
        Assert.Equal(places, compared);
    }

    [Fact]
    public void The_cells_of_the_pieces_are_those_of_the_field_swept_at_once()
    {
        ReachFieldInput input = ReachSamples.Input(18_000, 200);
        ReachField whole = SweptArea.Evaluate(input, Coast);
        ReachField one = InPieces(input, 1e9, Coast, out int onePiece);
        ReachField many = InPieces(input, 6_000, Coast, out int manyPieces);
        Assert.Equal(1, onePiece);
        Assert.True(manyPieces > 16, $"{manyPieces}");
        Assert.Equal(whole.Frame, many.Frame);

        // However it is cut, the bytes are the same.
        Assert.True(one.LossDb.SequenceEqual(many.LossDb));
        Assert.True(one.StationElevationDegrees.SequenceEqual(many.StationElevationDegrees));
        Assert.True(one.Flags.SequenceEqual(many.Flags));

        Assert.True(whole.LossDb.SequenceEqual(many.LossDb));
        Assert.True(whole.StationElevationDegrees.SequenceEqual(many.StationElevationDegrees));
        Assert.True(whole.Flags.SequenceEqual(many.Flags));

        ReachField together = ReachPieces.Of(input, Coast.Heights[0].ResolutionMetres, 6_000)
            .EvaluateAll(CoastExtent, null, new() { CancellationToken = TestContext.Current.CancellationToken, MaxDegreeOfParallelism = 2 });
        Assert.True(whole.LossDb.SequenceEqual(together.LossDb));
        Assert.True(whole.StationElevationDegrees.SequenceEqual(together.StationElevationDegrees));
        Assert.True(whole.Flags.SequenceEqual(together.Flags));
    }

    [Fact]
    public void Ground_that_is_missing_is_named_once_whatever_the_cut()
    {
        ReachFieldInput input = ReachSamples.Input(12_000, 200) with { Station = new(46.5, -18.9) };
        GroundMosaic west = GroundMosaic.Of([Coast.Heights.Single(window => window.Name == "N46W019")]);
        ReachGap one = Assert.Single(InPieces(input, 1e9, west, out _).Gaps);
        ReachGap many = Assert.Single(InPieces(input, 10_000, west, out int count).Gaps);
        Assert.True(count > 8);
        Assert.Equal("N46W020", one.Tile);
        Assert.False(one.IsVoid);
        Assert.Equal(one with { Cells = 0 }, many with { Cells = 0 });
        Assert.InRange(many.Cells, one.Cells * 0.95, one.Cells * 1.05);
    }

    [Fact]
    public void Bands_of_rows_put_together_are_the_field()
    {
        ReachFieldInput input = ReachSamples.Input(15_000, 250);
        ReachPieces pieces = ReachPieces.Of(input, Coast.Heights[0].ResolutionMetres, 15_000);
        List<ReachPieceBytes> parts = Parts(pieces, Coast);
        ReachField whole = ReachPieceBytes.Rows(pieces, parts, 0, pieces.Grid.Rows);
        for (int row = 0; row < pieces.Grid.Rows; row += 7)
        {
            int rows = Math.Min(7, pieces.Grid.Rows - row);
            ReachField band = ReachPieceBytes.Rows(pieces, parts, row, rows);
            Assert.True(band.LossDb.SequenceEqual(whole.LossDb.Slice(row * pieces.Grid.Columns, rows * pieces.Grid.Columns)));
            Assert.True(band.Flags.SequenceEqual(whole.Flags.Slice(row * pieces.Grid.Columns, rows * pieces.Grid.Columns)));
        }
    }

    [Fact]
    public void A_map_too_wide_for_memory_has_the_cells_and_the_counts_of_the_whole_and_an_overview_of_its_middle_cells()
    {
        ReachFieldInput input = ReachSamples.Input(14_000, 250) with { Station = new(46.5, -18.15) };
        ReachPieces pieces = ReachPieces.Of(input, Coast.Heights[0].ResolutionMetres, 15_000);
        List<ReachPieceBytes> parts = Parts(pieces, Coast);
        ReachMap whole = ReachMap.Of(ReachPieceBytes.Rows(pieces, parts, 0, pieces.Grid.Rows), ReachSamples.Budget());
        WideMap wide = WideMap.Of(pieces, parts, ReachSamples.Budget(), 1_500, TestContext.Current.CancellationToken);
        ReachTotals counted = ReachTotals.Of(whole);
        Assert.True(counted.MissingCells > 100 && counted.ShortPathCells > 0);
        Assert.Equal((counted.Cells, counted.MissingCells, counted.ShortPathCells), (wide.Totals.Cells, wide.Totals.MissingCells, wide.Totals.ShortPathCells));
        foreach (ReachDirection direction in Enum.GetValues<ReachDirection>())
        {
            Assert.Equal(counted.ClassesOf(direction).Select(one => one.Cells), wide.Totals.ClassesOf(direction).Select(one => one.Cells));
            Assert.All(counted.ClassesOf(direction).Zip(wide.Totals.ClassesOf(direction)), pair => Assert.Equal(pair.First.MeanWorks, pair.Second.MeanWorks, 1e-12));
        }

        Assert.True(wide.Band(31, 9).LevelDbm.SequenceEqual(whole.LevelDbm.Slice(31 * pieces.Grid.Columns, 9 * pieces.Grid.Columns)));
        GridFrame coarse = wide.Overview.Field.Frame;
        Assert.Equal(750, coarse.StepX);
        int compared = 0;
        for (int cell = 0; cell < coarse.Columns * coarse.Rows; cell++)
        {
            (double column, double row) = pieces.Grid.Locate(ReachGrid.Centre(coarse, cell % coarse.Columns, cell / coarse.Columns));
            if (column > -0.5 && row > -0.5 && column < pieces.Grid.Columns - 0.5 && row < pieces.Grid.Rows - 0.5)
            {
                Assert.Equal(Math.Round(column), column, 1e-4);
                compared++;
                Assert.Equal(whole.LevelDbm[((int)Math.Round(row) * pieces.Grid.Columns) + (int)Math.Round(column)], wide.Overview.LevelDbm[cell]);
            }
        }

        Assert.True(compared > 1_200);
    }

    [Fact]
    public void A_sector_takes_little_more_than_twice_its_own_area_however_it_lies()
    {
        for (int sector = 0; sector < 88; sector++)
        {
            SweepLayout layout = SweepLayout.Sector(2000, sector / 88.0, (sector + 1) / 88.0, 3);
            double own = Math.PI * 2000 * 2000 / 88;
            Assert.InRange(layout.Length, own, 2.6 * own);
            HashSet<int> taken = [];
            for (int row = 0; row < layout.Side; row += 1)
            {
                (int first, int last) = layout.Row(row);
                for (int column = first; column <= last; column++)
                {
                    int place = layout.Index(column, row);
                    Assert.InRange(place, 0, layout.Length - 1);
                    Assert.True(taken.Add(place), $"sector {sector}: two cells at {place}");
                }
            }
        }
    }

    [Fact]
    public void A_sweep_that_is_too_fine_is_refused_with_a_step_that_would_do()
    {
        ReachFieldInput input = ReachSamples.Input(200_000, 100);
        Assert.Contains("a step of 10.1 m would do", ReachPieces.Problem(input, 1), StringComparison.Ordinal);
        Assert.Equal("", ReachPieces.Problem(input, 10.1));
    }

    private static ReachField InPieces(ReachFieldInput input, double placesAPiece, GroundMosaic ground, out int count)
    {
        ReachPieces pieces = ReachPieces.Of(input, ground.Heights[0].ResolutionMetres, placesAPiece);
        count = pieces.Count;
        return ReachPieceBytes.Rows(pieces, Parts(pieces, ground), 0, pieces.Grid.Rows);
    }

    private static List<ReachPieceBytes> Parts(ReachPieces pieces, GroundMosaic ground)
    {
        GroundExtent extent = ReferenceEquals(ground, Coast) ? CoastExtent : GroundExtent.Of(ground);
        ReachRooms rooms = new();
        return
        [
            .. Enumerable.Range(0, pieces.Count).Select(index =>
            {
                byte[] bytes = ReachPieceBytes.Of(pieces.Evaluate(index, extent, rooms, TestContext.Current.CancellationToken));
                return new ReachPieceBytes((offset, into) => bytes.AsSpan((int)offset, into.Length).CopyTo(into));
            }),
        ];
    }

    private static GroundMosaic MakeCoast()
    {
        static double Height(double latitude, double longitude) => latitude + longitude < 27.75 ? 0 : 20 + ReachSamples.Rolling(latitude, longitude);
        GroundWindow east = GroundSamples.Tile(46, -19, 901, Height);
        GroundWindow west = GroundSamples.Tile(46, -20, 901, Height);
        GroundWindow woods = GroundSamples.Cover(-20, 47, 1.0 / 600, 1200, 600, (latitude, longitude) => (byte)((int)(longitude * 200) % 3 == 0 ? 7 : 0));
        GroundMosaic mosaic = GroundMosaic.Of([east, west, woods]);
        SeaMap sea = SeaMap.FromMosaic(mosaic, LatticeBounds.Along(new(46.01, -19.99), new(46.99, -18.01), 0));
        Assert.True(sea.HasSea);
        return mosaic.With([], Table, sea);
    }
}
