using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Propagation;
using Mastwright.Propagation.Area;

namespace Mastwright.Tests.Propagation.Area;

/// <summary>The plane of a sweep against geodesics, and the ground on it against the mosaic and the single path.</summary>
public sealed class SweepGroundTests
{
    [Theory]
    [InlineData(50, 47.3, 11.2)]
    [InlineData(200, 47.3, 11.2)]
    [InlineData(50, 69.5, 179.9)]
    [InlineData(200, 69.5, 179.9)]
    [InlineData(200, -0.4, -78)]
    public void Distance_and_bearing_of_a_cell_are_those_of_the_geodesic(double kilometres, double latitude, double longitude)
    {
        SweepFrame frame = SweepFrame.Around(new(latitude, longitude), kilometres * 1000, 250);
        SweepWarp warp = new(GroundMosaic.Empty, frame) { Heights = [], Cover = null, Zones = null };
        double worstMetres = 0;
        double worstBearing = 0;
        for (int degrees = 0; degrees < 360; degrees++)
        {
            (double sin, double cos) = Math.SinCos(double.DegreesToRadians(degrees));
            int east = (int)(frame.Reach * sin);
            int north = (int)(frame.Reach * cos);
            GeodesicSegment segment = Geodesic.Inverse(frame.Station, warp.PointNear(east, north));
            double length = Math.Sqrt(((double)east * east) + ((double)north * north)) * frame.CellMetres;
            worstMetres = Math.Max(worstMetres, Math.Abs(segment.DistanceMetres - length));
            double bearing = double.RadiansToDegrees(Math.Atan2(east, north)) - segment.InitialBearingDegrees;
            worstBearing = Math.Max(worstBearing, Math.Abs(bearing - (360 * Math.Round(bearing / 360))));
            Assert.Equal(0, Geodesic.Inverse(frame.PointAt(east, north), warp.PointNear(east, north)).DistanceMetres, 0.06);
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{kilometres} km at {latitude}°: {worstMetres:0.0000} m, {worstBearing:0.0000000}°"));
        Assert.InRange(worstMetres, 0, 0.06);
        Assert.InRange(worstBearing, 0, 1e-4);
    }

    [Fact]
    public void A_place_is_found_again()
    {
        SweepFrame frame = SweepFrame.Around(new(46.2, -18.4), 80_000, 30);
        (double east, double north) = frame.Locate(frame.PointAt(-1234.5, 2001.25));
        Assert.Equal(-1234.5, east, 1e-6);
        Assert.Equal(2001.25, north, 1e-6);
        Assert.Equal(frame.Station, frame.PointAt(0, 0));
    }

    [Theory]
    [InlineData(89.5)]
    [InlineData(-90)]
    public void A_station_at_a_pole_is_refused(double latitude) =>
        Assert.Contains("latitude", Assert.Throws<ArgumentOutOfRangeException>(() => SweepFrame.Around(new(latitude, 0), 10_000, 30)).Message, StringComparison.Ordinal);

    [Fact]
    public void The_ground_is_the_mosaics_across_tile_borders_and_grids()
    {
        GroundWindow west = Window(GridFrame.Geographic(10.5, 47, 1.0 / 600, 1.0 / 600, 301, 601, samplesAreAreas: false), 0);
        GroundWindow east = Window(GridFrame.Geographic(11, 47, 1.0 / 600, 1.0 / 600, 301, 601, samplesAreAreas: false), 0);
        GroundWindow utm = Window(GridFrame.Utm(32, isNorth: true, 650_000, 5_170_000, 50, 50, 200, 200, samplesAreAreas: false), 0);
        GroundMosaic mosaic = GroundMosaic.Of([west, east, utm]);
        SweepFrame frame = SweepFrame.Around(new(46.5, 11), 30_000, 100);
        SweepGround ground = SweepGround.Read(mosaic, frame);
        Assert.Empty(ground.Gaps);
        for (int i = 0; i < 400; i++)
        {
            int x = ((i * 37) % 400) - 200;
            int y = ((i * 91) % 400) - 200;
            double expected = mosaic.HeightAt(frame.PointAt(x, y)).Metres;
            float actual = ground.Raster.HeightsMetres[((frame.Reach - y) * frame.Side) + frame.Reach + x];

            // Heights of the windows rise by up to 0.2 m a metre; positions agree to 0.06 m.
            Assert.Equal(expected, actual, 0.02);
        }
    }

    [Fact]
    public void Ground_that_is_missing_is_named_with_its_place()
    {
        GroundMosaic mosaic = GroundMosaic.Of([Window(GridFrame.Geographic(10.9, 47, 1.0 / 600, 1.0 / 600, 300, 601, samplesAreAreas: false), 0)]);
        SweepFrame frame = SweepFrame.Around(new(46.5, 11.1), 20_000, 100);
        SweepGround ground = SweepGround.Read(mosaic, frame);
        SweepGap gap = Assert.Single(ground.Gaps);
        Assert.Equal("N46E010", gap.Tile);
        Assert.Equal(Geodesic.Inverse(frame.Station, new(46.5, 10.9)).DistanceMetres, gap.NearestMetres, 110.0);
        Assert.Equal(270, gap.NearestBearingDegrees, 1.0);
        SweepResult map = AreaSweep.Run(ground.Raster, new() { FrequencyHz = 868e6, StationHeightMetres = 10, ReceiverHeightMetres = 2 });
        int missing = Enumerable.Range(0, frame.Side * frame.Side).Count(cell => (map.MarksOf(cell) & SweepMarks.GroundMissing) != SweepMarks.None);
        Assert.True(missing >= gap.Cells);
        Assert.DoesNotContain(map.LossDb.ToArray(), float.IsNaN);
    }

    private static GroundWindow Window(GridFrame grid, int kind)
    {
        float[] heights = new float[grid.Columns * grid.Rows];
        for (int i = 0; i < heights.Length; i++)
        {
            double x = grid.OriginX + (i % grid.Columns * grid.StepX);
            double y = grid.OriginY - (i / grid.Columns * grid.StepY);
            heights[i] = grid.IsGeographic ? (float)(300 + (200 * Math.Sin(x * 80) * Math.Cos(y * 70))) : (float)(700 + (40 * Math.Sin(x / 700) * Math.Cos(y / 900)));
        }

        return GroundWindow.FromHeights(grid, heights, $"made {kind}");
    }
}
