using Mastwright.Station.Sun;

namespace Mastwright.Tests.Station.Sun;

/// <summary>NREL/TP-560-34302 (Reda and Andreas, revised January 2008), the worked example of table A5.1: 17 October 2003, 12:30:30 at UTC-7, 39.742476° N, 105.1786° W.</summary>
public sealed class SunPositionTests
{
    private static readonly SunSite Golden = new(39.742476, -105.1786);

    private static double Example => SunPosition.JulianDate(2003, 290 + ((19.5 + (30 / 3600.0)) / 24));

    [Fact]
    public void The_julian_date_is_that_of_the_example() => Assert.Equal(2_452_930.312847, Example, 1e-6);

    /// <summary>Zenith 50.127954° without refraction (elevation 39.872046°), azimuth 194.340241°.</summary>
    [Fact]
    public void The_sun_stands_where_the_example_has_it()
    {
        SunPlace sun = SunPosition.Of(Example, Golden);
        Assert.Equal(39.872046, sun.ElevationDegrees, 0.02);
        Assert.Equal(194.340241, sun.AzimuthDegrees, 0.02);
        Assert.Equal(0.996542, sun.DistanceAu, 1e-4);
    }

    /// <summary>A surface of slope 30°, turned 10° from south towards east: incidence 25.187°.</summary>
    [Fact]
    public void The_beam_meets_the_panel_of_the_example_at_its_angle()
    {
        SolarPanel panel = new() { Watts = 1, TiltDegrees = 30, AzimuthDegrees = 170 };
        double incidence = double.RadiansToDegrees(Math.Acos(panel.CosineOfIncidence(SunPosition.Of(Example, Golden))));
        Assert.Equal(25.187, incidence, 0.03);
    }

    /// <summary>By 23.45·sin(360(284 + n)/365): day 172 23.450°, day 105 9.415°; that formula itself is within 0.7° of the almanac (Duffie and Beckman); here it is 0.6° off in February.</summary>
    [Theory]
    [InlineData(172, 23.450)]
    [InlineData(105, 9.415)]
    [InlineData(44, -13.946)]
    public void At_noon_on_the_equator_the_sun_is_as_far_from_the_zenith_as_it_declines(int day, double declination)
    {
        double least = 90;
        for (int minute = 690; minute < 750; minute++)
        {
            least = Math.Min(least, 90 - SunPosition.Of(SunPosition.JulianDate(2023, day + (minute / 1440.0)), new(0, 0)).ElevationDegrees);
        }

        Assert.Equal(Math.Abs(declination), least, 0.7);
    }
}
