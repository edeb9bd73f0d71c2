using System.Globalization;
using Mastwright.Plans;
using Mastwright.Station.Sun;
using Mastwright.Storage.Plans;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Plans;

/// <summary>A solar panel and its weather as a plan gives them.</summary>
public sealed class SolarPlanTests
{
    private const string Months = "[1, 2, 3, 4, 5, 6, 6, 5, 4, 3, 2, 1]";

    private static string Text(string solar = "panel: 20 W, tilt: 60°, azimuth: 180°", string site = "    climate: {light: " + Months + ", temperature: " + Months + "}\n") =>
        "mastwright: 1\nname: One\n" + SamplePlans.Modem
        + "sites:\n  one:\n    position: \"46.4, -18.7\"\n" + site
        + "    fit-outs:\n      a:\n        antenna: {height: 10 m}\n        solar: {" + solar + "}\n";

    [Fact]
    public void Every_value_arrives_in_its_unit()
    {
        using PlanFolderFixture folder = new();
        Site site = PlanFileTests.Good(folder.Read(Text(
            "panel: 20 W, tilt: 60°, azimuth: 190°, losses: 12 %, ground-reflects: 70 %, controller-efficiency: 75 %, covered-days: 3.5, battery-rise: 5 K, hours-without: 12 h, days-without-sun: 6 d, horizon: [0, 5, 10, 2]"))).Plan.Sites[0];
        SolarFit fit = site.FitOuts[0].Solar!;
        Assert.Equal((20, 60, 190), (fit.PanelWatts, fit.TiltDegrees, fit.AzimuthDegrees));
        Assert.Equal((0.12, 0.7, 0.75), (fit.LossShare, fit.GroundReflects, fit.ControllerEfficiency));
        Assert.Equal((3.5, 5, 12, 6), (fit.CoveredDays, fit.BatteryRiseKelvin, fit.WantedHoursWithout, fit.WantedDays));
        Assert.Equal([0, 5, 10, 2], fit.HorizonDegrees);
        Assert.Equal(4, site.Climate!.LightKilowattHours[3]);
    }

    [Theory]
    [InlineData("panel: -5 W, tilt: 60°, azimuth: 180°", "sites/one/fit-outs/a/solar/panel")]
    [InlineData("panel: 20 W, tilt: 91°, azimuth: 180°", "sites/one/fit-outs/a/solar/tilt")]
    [InlineData("panel: 20 W, tilt: 60°, azimuth: 400°", "sites/one/fit-outs/a/solar/azimuth")]
    [InlineData("panel: 20 W, tilt: 60°", "sites/one/fit-outs/a/solar")]
    [InlineData("panel: 20 W, tilt: 60°, azimuth: 180°, covered-days: 400", "sites/one/fit-outs/a/solar/covered-days")]
    [InlineData("panel: 20 W, tilt: 60°, azimuth: 180°, horizon: [95]", "sites/one/fit-outs/a/solar/horizon/1")]
    public void What_cannot_be_is_refused_with_its_key(string solar, string path)
    {
        using PlanFolderFixture folder = new();
        Assert.Contains(folder.Read(Text(solar)).Problems, problem => problem.Path == path && problem.Line > 0 && problem.Wanted.Length > 0);
    }

    [Fact]
    public void A_year_of_eleven_months_is_refused()
    {
        using PlanFolderFixture folder = new();
        PlanProblem problem = Assert.Single(folder.Read(Text(site: "    climate: {light: [1, 2, 3, 4, 5, 6, 6, 5, 4, 3, 2], temperature: " + Months + "}\n")).Problems);
        Assert.Equal("sites/one/climate/light", problem.Path);
        Assert.Contains("11 numbers", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void More_light_than_a_clear_sky_gives_is_refused()
    {
        using PlanFolderFixture folder = new();
        PlanProblem problem = Assert.Single(folder.Read(Text(site: "    climate: {light: [9, 2, 3, 4, 5, 6, 6, 5, 4, 3, 2, 1], temperature: " + Months + "}\n")).Problems);
        Assert.Equal("sites/one/climate/light", problem.Path);
        Assert.Contains("In month 1 9 kWh a day are more than a clear sky gives there", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(100, 3, "99", "hour '99' stands where hour 5 belongs", 4)]
    [InlineData(100, 2, "9", "day '9' stands where day 5 belongs", 3)]
    [InlineData(100, 1, "3", "month '3' stands where month 1 belongs", 2)]
    public void An_hour_of_a_weather_file_that_stands_elsewhere_is_told(int hour, int field, string value, string words, int column)
    {
        string[] rows = Epw(2023);
        string[] fields = rows[8 + hour].Split(',');
        fields[field] = value;
        rows[8 + hour] = string.Join(',', fields);
        Assert.False(WeatherText.TryParse("f", string.Join('\n', rows), new(45, 8), out _, out int line, out int at, out string problem));
        Assert.Contains(words, problem, StringComparison.Ordinal);
        Assert.Equal((8 + hour + 1, column), (line, at));
    }

    [Fact]
    public void A_leap_years_day_goes_out()
    {
        Assert.True(WeatherText.TryParse("f", string.Join('\n', Epw(2024)), new(45, 8), out WeatherYear? year, out _, out _, out string problem), problem);
        Assert.Equal(8760, year!.Hours.Length);
        Assert.Equal(new SunSite(45, 8), year.Place);
    }

    /// <summary>An EPW file of a year in which nothing happens.</summary>
    private static string[] Epw(int year)
    {
        DateTime first = new(year, 1, 1, 0, 0, 0, DateTimeKind.Unspecified);
        int hours = DateTime.IsLeapYear(year) ? 8784 : 8760;
        return
        [
            "LOCATION,a,b,c,d,e,45,8,1,250", .. Enumerable.Repeat("X", 7),
            .. Enumerable.Range(0, hours).Select(hour => first.AddHours(hour)).Select(at => string.Create(
                CultureInfo.InvariantCulture, $"{year},{at.Month},{at.Day},{at.Hour + 1},0,x,5,4,80,99000,0,0,280,0,0,0,0,0,0,0,0,3")),
        ];
    }

    [Fact]
    public void A_fault_in_the_weather_file_is_told_with_file_line_and_field()
    {
        using PlanFolderFixture folder = new();
        folder.Write("year.csv", "global,temperature\n0,5\nmany,5\n");
        PlanProblem problem = Assert.Single(folder.Read(Text(site: "    weather: year.csv\n")).Problems);
        Assert.Equal(("year.csv", 3), (problem.File, problem.Line));
        Assert.Contains("field 1: 'many' is not light in W/m² from 0 to 1500", problem.Message, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("", "empty")]
    [InlineData("a,b\n1,2\n", "global,temperature")]
    [InlineData("global,temperature,direct\n1,2,3\n", "'direct' and 'diffuse'")]
    [InlineData("global,temperature\n1,2\n", "it has 1 hours; 8760")]
    [InlineData("global,temperature\n1\n", "1 fields; 2")]
    [InlineData("LOCATION,a,b,c,d,e,1,2,x,4\n", "time zone")]
    [InlineData("LOCATION,a,b,c,d,e,1,2,1,4\nX\n", "header ends early")]
    public void A_wrong_weather_file_is_refused_with_what_would_be_right(string text, string words)
    {
        Assert.False(WeatherText.TryParse("f", text, new(46, -18), out _, out _, out _, out string problem));
        Assert.Contains(words, problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Rows_without_direct_light_are_split_by_the_sun()
    {
        string text = "global,temperature\n" + string.Concat(Enumerable.Range(0, 8760).Select(hour => FormattableString.Invariant($"{(hour % 24 is >= 10 and < 16 ? 400 : 0)},10\n")));
        Assert.True(WeatherText.TryParse("f", text, new(46, 0), out WeatherYear? year, out _, out _, out string problem), problem);
        WeatherHour noon = year!.Hours[(180 * 24) + 12];
        Assert.Equal(400, (noon.Light.Direct * year.SunAt((180 * 24) + 12, new(46, 0)).Up) + noon.Light.Diffuse, 1e-9);
    }

    /// <summary>
    /// The typical year of 45° N 8° E (European Commission, PVGIS, 2005 to 2023): read line by line here, by the fields of the format, its sums are the reader's; 1436 kWh/m² and a mean of 13.6 °C by its README.
    /// A south panel at 45° gets more than the level (1.1 to 1.3 times, common practice at this latitude), and the year's energy sums.
    /// </summary>
    [Fact]
    public void A_year_of_a_weather_service_drives_a_panel_and_keeps_its_sums()
    {
        string path = TestPlaces.Reference("weather", "pvgis_tmy_45.000N_8.000E_2005_2023.epw");
        string[][] rows = [.. File.ReadLines(path).Skip(8).Select(line => line.Split(','))];
        double Sum(int field) => rows.Sum(row => Math.Max(0, double.Parse(row[field - 1], CultureInfo.InvariantCulture)));
        SunSite place = new(45, 8);

        Assert.True(WeatherText.TryParse("pvgis", File.ReadAllText(path), place, out WeatherYear? year, out _, out _, out string problem), problem);
        Assert.Equal(Sum(14), year!.Hours.Sum(hour => hour.Light.Global), 1e-6);
        Assert.Equal(Sum(15), year.Hours.Sum(hour => hour.Light.Direct), 1e-6);
        Assert.Equal(Sum(16), year.Hours.Sum(hour => hour.Light.Diffuse), 1e-6);
        Assert.Equal(1436, year.Hours.Sum(hour => hour.Light.Global) / 1000, 1.0);
        Assert.Equal(13.6, year.Hours.Average(hour => hour.Celsius), 0.05);

        // Direct light on the level and light of the sky make up the global light where the sun is taken at the right moment.
        double level = Enumerable.Range(0, 8760).Sum(hour => (year.Hours[hour].Light.Direct * Math.Max(0, year.SunAt(hour, place).Up)) + year.Hours[hour].Light.Diffuse);
        Assert.Equal(1, level / Sum(14), 0.03);

        SolarPanel panel = new() { Watts = 1, TiltDegrees = 45, AzimuthDegrees = 180 };
        double tilted = Enumerable.Range(0, 8760).Sum(hour => panel.LightOn(year.Hours[hour].Light, year.SunAt(hour, place), HorizonLine.Level));
        Assert.InRange(tilted / Sum(14), 1.1, 1.3);
    }
}
