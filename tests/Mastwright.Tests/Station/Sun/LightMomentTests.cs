using CsCheck;
using Mastwright.Station.Sun;

namespace Mastwright.Tests.Station.Sun;

/// <summary>The moment of a file's light, found from light whose moment is known.</summary>
public sealed class LightMomentTests
{
    private static readonly SunSite Place = new(50, 10);

    [Fact]
    public void The_moment_that_the_light_was_made_for_is_found() =>
        Gen.Double[-0.6, 1.6].Sample(moment => Math.Abs(LightMoment.Of(Made(moment, 1), Place) - moment) < 0.02, iter: 12);

    [Fact]
    public void Light_without_a_beam_keeps_the_middle_of_the_hour()
    {
        WeatherYear dull = WeatherYear.Of("dull", 2023, 1, [.. Made(1.2, 1).Hours.Select(hour => hour with { Light = new(hour.Light.Global, 0, hour.Light.Global) })]);
        Assert.Equal(WeatherYear.MiddleOfHour, LightMoment.Of(dull, Place));
    }

    [Fact]
    public void A_year_goes_by_its_own_moment()
    {
        WeatherYear year = Made(1.2, 1).WithLightAt(1.2, -0.8);
        Assert.Equal(WeatherYear.SunAt(2023, 1, 4000, Place, 1.2), year.SunAt(4000, Place));
        Assert.Equal(year.SunAt(4000, Place), year.SunOver(Place).Places[4000]);
        Assert.Equal(-0.8, year.StatedOffsetHours);
    }

    /// <summary>A clear year whose parts fit at one moment of each hour: a beam of 700 W/m² with a sky of 80 W/m² while the sun is up.</summary>
    private static WeatherYear Made(double moment, double zone) => WeatherYear.Of("made", 2023, zone,
    [
        .. Enumerable.Range(0, WeatherYear.HourCount).Select(hour => WeatherYear.SunAt(2023, zone, hour, Place, moment).Up).Select(up =>
            new WeatherHour(up > 0 ? new((700 * up) + 80, 700, 80) : new(0, 0, 0), 10, double.NaN, double.NaN)),
    ]);
}
