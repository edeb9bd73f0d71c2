using System.Globalization;
using CsCheck;
using Mastwright.Quantities;
using Mastwright.Station.BoxClimate;

namespace Mastwright.Tests.Station.BoxClimate;

public sealed class BoxYearTests
{
    private static readonly BoxModel Box = new()
    {
        Surface = new(0.2, 0.3, 0.12),
        Mounting = BoxMounting.Free,
        Material = new("plastic", 3.5, 0.9, "test"),
        Absorptivity = 0.5,
        OwnWatts = 2,
        AirChangesPerHour = Estimate.Of(0.02, 0.1, 0.5),
    };

    /// <summary>The typical year of the European Commission's PVGIS (CC BY 4.0), an EPW file: field 7 dry bulb, 9 humidity, 13 sky, 14 to 16 sun, 22 wind.</summary>
    private static readonly Lazy<BoxHour[]> Year = new(() =>
    [
        .. File.ReadLines(TestPlaces.Reference("weather", "pvgis_tmy_45.000N_8.000E_2005_2023.epw")).Skip(8).Select(line =>
        {
            double[] field = [.. line.Split(',').Select(text => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : double.NaN)];
            return new BoxHour(field[6], field[8] / 100, field[14], field[15], field[13], field[21], field[12]);
        }),
    ]);

    [Fact]
    public void A_real_year_s_totals_are_the_file_s_own_and_the_box_stays_within_them()
    {
        // The sheet beside the file: -2.34 to 34.33 °C, mean 13.6; 1436 kWh/m² on the level, at most 971 W/m²; wind at most 7.5 m/s.
        BoxHour[] hours = Year.Value;
        Assert.Equal(8760, hours.Length);
        Assert.Equal(-2.34, hours.Min(hour => hour.OutsideCelsius), 0.005);
        Assert.Equal(34.33, hours.Max(hour => hour.OutsideCelsius), 0.005);
        Assert.Equal(13.6, hours.Average(hour => hour.OutsideCelsius), 0.05);
        Assert.Equal(1436, hours.Sum(hour => hour.GlobalHorizontal) / 1000, 0.5);
        Assert.Equal(971, hours.Max(hour => hour.GlobalHorizontal), 0.5);
        Assert.Equal(7.5, hours.Max(hour => hour.WindMetresPerSecond), 0.05);

        // The mean of the box is that of the air, plus own heat, plus sun, less sky: each hour by the balance, summed here another way.
        BoxYear year = BoxYear.Of(Box, hours);
        double heat = hours.Average(hour => Box.Balance(hour.OutsideCelsius, hour.WindMetresPerSecond / 2).InsideRiseKelvin(2, 0));
        double sun = hours.Average(hour => Box.Balance(hour.OutsideCelsius, hour.WindMetresPerSecond / 2)
            .InsideRiseKelvin(0, 0.5 * Box.Surface.SunWatts(hour.DirectNormal, hour.DiffuseHorizontal, hour.GlobalHorizontal, BoxMounting.Free)));
        double sky = hours.Average(hour => Box.Balance(hour.OutsideCelsius, hour.WindMetresPerSecond / 2).InsideRiseKelvin(0, Box.SkyWatts(hour.OutsideCelsius, hour.Sky)));
        Assert.Equal(hours.Average(hour => hour.OutsideCelsius) + heat + sun - sky, year.MeanCelsius, 1e-6);
        Assert.InRange(heat, 0.5, 3);

        // By hand: some 24 W of mean sun on all faces, half of it taken up, over 0.206 m² and a film of some 11 W/(m²·K).
        Assert.InRange(sun, 3, 8);
        Assert.InRange(sky, 0.2, 3);
        Assert.InRange(year.HottestCelsius, 34.33, Box.HottestCelsius(34.33));
        Assert.InRange(year.ColdestCelsius, (Box with { OwnWatts = 0 }).NightCelsius(-2.34) - 2, -2.34 + 1);
    }

    [Fact]
    public void Dew_does_not_hang_on_the_hour_that_the_year_is_begun_in()
    {
        BoxHour[] hours = Year.Value;
        BoxYear january = BoxYear.Of(Box, hours);
        BoxYear june = BoxYear.Of(Box, [.. hours[4000..], .. hours[..4000]]);

        Assert.Equal(january.DewHours, june.DewHours);
        Assert.Equal(january.IsWetByHour[4000..], june.IsWetByHour[..^4000]);
        Assert.InRange(january.DewHours.Median, 1, 8759);
    }

    [Fact]
    public void The_days_and_the_months_are_rows_of_the_year()
    {
        BoxHour[] hours = Year.Value;
        BoxYear year = BoxYear.Of(Box, hours);
        Assert.Equal(8760, year.IsWetByHour.Length);
        Assert.Equal(year.DewHours.Median, year.IsWetByHour.Count(wet => wet));

        BoxMonth whole = BoxCourse.Month(Box, hours, year.IsWetByHour.Count(wet => wet));
        Assert.Equal(year.HottestCelsius, whole.InsideHighCelsius, 1e-9);
        Assert.Equal(year.MeanCelsius, whole.InsideMeanCelsius, 1e-9);
        Assert.Equal(-2.34, whole.OutsideLowCelsius, 0.005);

        // Dew point by WMO-No. 8, annex 4.B: 7.2 °C of air at 12 °C and 72.5 % (Magnus tables); below the air's own temperature in every hour.
        BoxDay day = BoxCourse.Day("any", Box, [new(12, 0.725, 0, 0, 0, 0, null)]);
        Assert.Equal(7.2, day.Points[0].DewPointCelsius, 0.05);
        Assert.All(BoxCourse.Day("first", Box, hours.AsSpan(0, 24)).Points, point => Assert.True(point.DewPointCelsius <= point.OutsideCelsius + 1e-9));
    }

    [Fact]
    public void Heat_and_a_hood_keep_a_real_year_s_dew_off()
    {
        BoxYear year = BoxYear.Of(Box, Year.Value);
        BoxYear heated = BoxYear.Of(Box with { OwnWatts = 8 }, Year.Value);
        BoxYear cold = BoxYear.Of(Box with { OwnWatts = 0 }, Year.Value);
        BoxYear hooded = BoxYear.Of(Box with { OpenShare = 0.2, OwnWatts = 0 }, Year.Value);
        Assert.True(cold.DewHours.Median > year.DewHours.Median);
        Assert.True(heated.DewHours.Median < year.DewHours.Median || year.DewHours.Median == 0);
        Assert.True(hooded.DewHours.High < cold.DewHours.High);
        Assert.InRange(cold.DewHours.High, 100, 8760);
    }

    [Fact]
    public void Hours_above_a_temperature_are_counted()
    {
        BoxYear year = BoxYear.Of(Box, Year.Value);
        Assert.Equal(0, year.HoursAbove(year.HottestCelsius));
        Assert.Equal(8760, year.HoursAbove(-100));
        Assert.Equal(Year.Value.Count(hour => Box.Of(hour).Inside > 30), year.HoursAbove(30));
    }

    [Fact]
    public void A_box_at_the_air_s_temperature_without_sky_and_sun_is_dewy_only_in_saturated_air()
    {
        BoxModel still = Box with { OwnWatts = 0, OpenShare = 0 };
        BoxHour[] dry = [.. Enumerable.Repeat(new BoxHour(10, 0.9, 0, 0, 0, 1, null), 2000)];
        BoxHour[] wet = [.. dry.Select((hour, i) => hour with { OutsideCelsius = i % 24 < 12 ? 10 : 4, Humidity = 0.98 })];
        Assert.Equal(0, BoxYear.Of(still, dry).DewHours.High);
        Assert.True(BoxYear.Of(still, wet).DewHours.High > 0);
    }

    /// <summary>The exact step against one in ten thousand small ones.</summary>
    [Fact]
    public void An_hour_of_water_is_that_of_many_small_steps() =>
        Gen.Select(Gen.Double[0, 30], Gen.Double[1, 20], Gen.Double[0, 20], Gen.Double[0, 5]).Sample(
            (water, stays, outside, changes) =>
            {
                const int Steps = 10_000;
                double m = water;
                for (int i = 0; i < Steps; i++)
                {
                    m += changes * (outside - Math.Min(m, stays)) / Steps;
                }

                Assert.Equal(m, BoxWater.AfterHour(water, stays, outside, changes), 0.02);
            },
            iter: 200);
}
