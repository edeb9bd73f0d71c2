using System.Globalization;
using Mastwright.Plans;
using Mastwright.Station.Sun;
using Mastwright.Storage.Catalogue;
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

    [Fact]
    public void A_month_without_light_is_taken_where_the_sun_does_not_rise_and_refused_elsewhere()
    {
        using PlanFolderFixture folder = new();
        string dark = "    climate: {light: [0, 0.3, 1.5, 3.5, 4.8, 5.2, 5, 3.6, 1.8, 0.6, 0.05, 0.001], temperature: " + Months + "}\n";
        Assert.Equal(0, PlanFileTests.Good(folder.Read(Text(site: dark).Replace("46.4, -18.7", "70, 20", StringComparison.Ordinal))).Plan.Sites[0].Climate!.LightKilowattHours[0]);

        PlanProblem problem = Assert.Single(folder.Read(Text(site: dark)).Problems);
        Assert.Equal("sites/one/climate/light", problem.Path);
        Assert.Contains("In month 1 there is no light at all", problem.Message, StringComparison.Ordinal);
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

        // Direct light on the level and light of the sky make up the global light where the sun is taken at the right moment: 11 minutes after the end of each hour of this file's clock.
        // Its header says -0.8239 h, which is that moment from the hour after.
        double off = Enumerable.Range(0, 8760).Sum(hour => Math.Abs((year.Hours[hour].Light.Direct * Math.Max(0, year.SunAt(hour, place).Up)) + year.Hours[hour].Light.Diffuse - year.Hours[hour].Light.Global));
        Assert.True(off / Sum(14) < 0.003);
        Assert.Equal(-0.8239, year.StatedOffsetHours);
        Assert.Equal(2 - 0.8239, year.Moment, 0.02);

        SolarPanel panel = new() { Watts = 1, TiltDegrees = 45, AzimuthDegrees = 180 };
        double tilted = Enumerable.Range(0, 8760).Sum(hour => panel.LightOn(year.Hours[hour].Light, year.SunAt(hour, place), HorizonLine.Level));
        Assert.InRange(tilted / Sum(14), 1.1, 1.3);
    }

    /// <summary>
    /// The same file drives a whole solar year: what the ledger begins with is the file's light on the panel, formula by formula, and its lines end at what the loads got. A panel that lies flat gets the
    /// file's own global light, 1436 kWh/m² by its README: so many full hours.
    /// </summary>
    [Theory]
    [InlineData(10, 0, 0.3, 4)]
    [InlineData(10, 60, 0.3, 4)]
    [InlineData(2, 60, 0.5, 1)]
    public void A_year_of_a_weather_service_drives_a_whole_solar_year(double watts, double tilt, double load, int cells)
    {
        string path = TestPlaces.Reference("weather", "pvgis_tmy_45.000N_8.000E_2005_2023.epw");
        SunSite place = new(45, 8);
        Assert.True(WeatherText.TryParse("pvgis", File.ReadAllText(path), place, out WeatherYear? year, out _, out _, out string problem), problem);
        SolarSetup setup = new()
        {
            Panel = new() { Watts = watts, TiltDegrees = tilt, AzimuthDegrees = 180 },
            Pack = new() { Cell = StationCatalogueFile.LoadBuiltIn().Supply.Cell("lifepo4")!, Series = 4, Parallel = cells, CellAmpereHours = 1 },
            AgeFactor = 0.9,
            LoadWatts = load,
            PeakWatts = 2 * load,
            CutOffVolts = 10,
            Weather = year!,
            Place = place,
        };
        SolarYield yield = SolarYear.YieldOf(setup);
        SolarYearResult result = SolarYear.Run(setup, yield);

        double light = Enumerable.Range(0, 8760).Sum(hour => setup.Panel.LightOn(year!.Hours[hour].Light, year.SunAt(hour, place), HorizonLine.Level)) / 1000;
        Assert.Equal(light * watts, result.Ledger.Lines[0].Value, 1e-6 * light * watts);
        if (tilt == 0)
        {
            // Beam and sky on the level against the global light: as near as the file's own parts are to their whole.
            Assert.Equal(1436, light, 5.0);
        }

        Assert.Equal(result.ServedWattHours, result.Ledger.Total, 1e-9);
        Assert.Equal(result.Ledger.Total, result.Ledger.Lines.Sum(line => line.Value), 1e-6);
        Assert.Equal(result.ServedWattHours, (8760 - result.HoursWithout) * load, 1e-6 * result.ServedWattHours);
        Assert.Equal(-result.KeptWattHours, result.Ledger.Lines.Single(line => line.Code == "left").Value, 1e-6);

        // The plain of the Po in winter: 10 W carries 0.3 W through it when it stands steep, 2 W does not carry half a watt.
        if (watts < 5)
        {
            Assert.InRange(result.HoursWithout, 100, 8760);
        }
        else if (tilt > 0)
        {
            Assert.Equal(0, result.HoursWithout);
        }
    }
}
