using Mastwright.Geodesy;
using Mastwright.Propagation;
using Mastwright.Propagation.Area;

namespace Mastwright.Tests.Propagation.Area;

public sealed class SweepProfileTests
{
    [Theory]
    [InlineData(101, -57, 16)]
    [InlineData(-150, 3, 16)]
    [InlineData(9, 4, 8)] // 9.8 steps: between one and two are left to the radial
    [InlineData(-2, 9, 8)]
    public void Points_stand_on_the_radial_and_the_last_on_a_parallel_through_the_cell(int east, int north, int own)
    {
        SweepRaster raster = SweepScenes.Made(200, 30, (x, y) => x + (0.5 * y), withCover: true, sea: false);
        SweepInput input = new() { FrequencyHz = 868e6, StationHeightMetres = 10, ReceiverHeightMetres = 2 };
        SweepProfile path = SweepProfile.Of(raster, input, east, north)!;
        double steps = Math.Sqrt((east * east) + (north * north));
        int onRadial = path.Profile.Count - own - 1;
        Assert.Equal(steps * 30, path.Profile.LengthMetres, 1e-9);
        Assert.InRange(path.Profile.DistancesMetres[onRadial - 1], (steps - own - 1) * 30, (steps - own) * 30);
        double wedge = 2 * Math.PI / AreaSweep.RadialsOf(raster, input);
        (double sin, double cos) = Math.SinCos(Math.Round(Math.Atan2(north, east) / wedge) * wedge);

        // The ground is a plane: its heights are known exactly on the radial and beside it.
        double HeightAt(double x, double y) => 200 + 100 + x - (0.5 * y);
        for (int i = 0; i < onRadial; i++)
        {
            Assert.Equal(i * 30, path.Profile.DistancesMetres[i], 1e-9);
            Assert.Equal(HeightAt(i * cos, i * sin), path.Profile.HeightsMetres[i], 1e-3);
        }

        for (int i = 1; i <= own; i++)
        {
            Assert.Equal((steps - i) * 30, path.Profile.DistancesMetres[^(i + 1)], 1e-9);
            Assert.Equal(HeightAt(east - (i * cos), north - (i * sin)), path.Profile.HeightsMetres[^(i + 1)], 1e-3);
        }

        Assert.Equal(HeightAt(east, north), path.Profile.HeightsMetres[^1], 1e-3);
        Assert.Equal(0, path.Profile.CoverMetres[0]);
        Assert.Equal(0, path.Profile.CoverMetres[^1]);
    }

    [Fact]
    public void A_cells_own_path_has_equal_steps_all_on_its_own_bearing()
    {
        SweepRaster raster = SweepScenes.Made(200, 30, (x, y) => x + (0.5 * y), withCover: false, sea: false);
        PathProfile path = SweepProfile.Straight(raster, new() { FrequencyHz = 868e6, StationHeightMetres = 10, ReceiverHeightMetres = 2 }, -90, 41)!.Profile;
        double length = Math.Sqrt((90 * 90) + (41 * 41)) * 30;
        int steps = (int)Math.Ceiling(length / 30);
        Assert.Equal(steps + 1, path.Count);
        for (int i = 0; i <= steps; i++)
        {
            Assert.Equal(length * i / steps, path.DistancesMetres[i], 1e-9);
            Assert.Equal(200 + 100 + ((-90 - (0.5 * 41)) * i / steps), path.HeightsMetres[i], 1e-3);
        }
    }

    [Theory]
    [InlineData(0, 200)]
    [InlineData(47, 200)]
    [InlineData(-70, 200)]
    [InlineData(60, 50)]
    public void The_middle_of_a_path_lies_where_the_great_circle_has_it(double latitude, double kilometres)
    {
        SweepRaster raster = SweepScenes.Made(10, 1000, (_, _) => 0, withCover: false, sea: false, latitude);
        SweepTerms terms = new(new() { FrequencyHz = 868e6, StationHeightMetres = 10, ReceiverHeightMetres = 2 }, raster);
        GeoPoint station = new(latitude, 7);
        for (int bearing = 0; bearing < 360; bearing += 15)
        {
            (double sin, double cos) = Math.SinCos(double.DegreesToRadians(bearing));
            double expected = PathCentre.LatitudeDegrees(station, Geodesic.Direct(station, bearing, kilometres * 1000), kilometres * 1000);
            Assert.Equal(expected, terms.PathCentreLatitude(kilometres * 1000 * sin, kilometres * 1000 * cos), 0.004);
        }
    }

    [Fact]
    public void The_stations_own_cell_has_no_path()
    {
        SweepRaster raster = SweepScenes.Made(10, 30, (_, _) => 0, withCover: false, sea: false);
        Assert.Throws<ArgumentOutOfRangeException>(() => SweepProfile.Of(raster, new() { FrequencyHz = 868e6, StationHeightMetres = 10, ReceiverHeightMetres = 2 }, 0, 0));
    }
}
