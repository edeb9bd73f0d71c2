using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.HoldUp;
using Mastwright.Station.Sun;
using Mastwright.Station.Supply;
using Mastwright.Tests.Station.Supply;

namespace Mastwright.Tests.Station.Sun;

/// <summary>The judgements on a panel's year.</summary>
public sealed class SolarExaminationTests
{
    private static readonly SunSite Place = new(46.4, -18.6);

    // Invented for the tests: a cloudy oceanic year.
    private static readonly MonthlyClimate Climate = new()
    {
        LightKilowattHours = [1.3, 2.1, 3.4, 4.8, 5.7, 6.1, 6.0, 5.2, 4.0, 2.6, 1.5, 1.1],
        Celsius = [8, 8, 9, 10, 12, 15, 17, 18, 17, 14, 11, 9],
    };

    private static readonly SolarFit Fit = new() { PlanPath = "p/solar", PanelWatts = 10, TiltDegrees = 50, AzimuthDegrees = 180, Monthly = Climate };

    [Fact]
    public void The_hours_without_service_are_a_range_over_nine_drawn_years()
    {
        SolarResult result = Examine(Fit with { PanelWatts = 5 }, Battery(0.5));
        Estimate hours = Only(result, "solar-service").Value!.Value;
        SolarSetup setup = result.Setup!;
        double[] middles = [.. Climate.Years(Place, "key", 9, out _).Select(year => SolarYear.Run(setup with { Weather = year }, SolarYear.YieldOf(setup with { Weather = year })).HoursWithout).Order()];

        Assert.Equal(9, result.Range!.YearCount);
        Assert.True(middles[0] < middles[8]);
        Assert.Equal(middles[4], hours.Median, 1e-6);

        // The ends put good and poor cells and the least and the greatest load on top of the kindest and the hardest year.
        Assert.True(hours.Low <= middles[0] && hours.High >= middles[8]);
        Assert.Equal(hours.High, SolarYear.Run(result.Range.Poor, result.Range.PoorYield).HoursWithout, 1e-6);
    }

    [Theory]
    [InlineData(60, 12, 9, Verdict.Ok)]
    [InlineData(2, 1, 9, Verdict.Fails)]
    public void Enough_is_ok_and_far_too_little_fails(double watts, int cells, double borne, Verdict verdict)
    {
        Finding finding = Only(Examine(Fit with { PanelWatts = watts, WantedHoursWithout = borne }, Battery(0.5, cells)), "solar-service");
        Estimate hours = finding.Value!.Value;

        Assert.Equal(verdict, hours.High <= borne ? Verdict.Ok : hours.Median <= borne ? Verdict.Tight : hours.Low <= borne ? Verdict.Unknown : Verdict.Fails);
        Assert.Equal(verdict, finding.Verdict);
    }

    [Fact]
    public void Panels_and_batteries_that_keep_the_target_are_told_even_when_all_is_well()
    {
        SolarResult result = Examine(Fit with { PanelWatts = 60, WantedHoursWithout = 9 }, Battery(0.5, 12));

        Assert.True(result.Pairs.Length >= 2);
        Assert.Equal(Verdict.Ok, Only(result, "solar-service").Verdict);
        Assert.Contains(result.Pairs[0].ToString(), FindingSentences.Text(Only(result, "solar-service")), StringComparison.Ordinal);
        foreach (SolarPair pair in result.Pairs)
        {
            SolarSetup sized = result.Range!.Poor with { Panel = result.Setup!.Panel with { Watts = pair.PanelWatts }, Pack = result.Range.Poor.Pack with { Parallel = pair.Parallel } };
            Assert.True(SolarYear.Run(sized, result.Range.PoorYield).HoursWithout <= 9);

            // One panel smaller with the same battery does not do.
            int index = SolarSizes.PanelWatts.IndexOf(pair.PanelWatts);
            Assert.True(index == 0 || SolarYear.Run(sized with { Panel = sized.Panel with { Watts = SolarSizes.PanelWatts[index - 1] } }, result.Range.PoorYield).HoursWithout > 9);
        }

        Assert.Equal(result.Pairs.OrderBy(pair => pair.PanelWatts), result.Pairs);
        Assert.Equal(result.Pairs.OrderByDescending(pair => pair.Parallel), result.Pairs);
    }

    /// <summary>One degree of latitude is 111.2 km on a sphere of 6371 km; two thirds of one are within 50 km no more.</summary>
    [Theory]
    [InlineData(46.4, 0, Verdict.Ok)]
    [InlineData(46.8, 44.5, Verdict.Ok)]
    [InlineData(47.4, 111.2, Verdict.Unknown)]
    public void Weather_of_a_place_too_far_away_says_nothing(double latitude, double kilometres, Verdict verdict)
    {
        WeatherYear made = Climate.Year(Place, "key");
        WeatherYear file = WeatherYear.Of("file", made.Year, made.HoursFromUniversal, made.Hours, new(latitude, -18.6));
        SolarResult result = Examine(Fit with { PanelWatts = 60, Monthly = null, Weather = file }, Battery(0.5, 12));

        Assert.Equal(kilometres, Only(result, "solar-weather-place").Value!.Value.Median, 0.05);
        Assert.Equal(verdict, Only(result, "solar-weather-place").Verdict);
        Assert.Equal(verdict, Only(result, "solar-service").Verdict);
        Assert.Equal(verdict, Only(result, "solar-days").Verdict);
        Assert.DoesNotContain(Examine(Fit, Battery(0.5)).Examination.Findings, finding => finding.Code == "solar-weather-place");
    }

    [Fact]
    public void A_battery_colder_than_it_may_be_discharged_serves_nothing()
    {
        MonthlyClimate bitter = Climate with { Celsius = [.. Climate.Celsius.Select(celsius => celsius - 60)] };
        SolarResult result = Examine(Fit with { Monthly = bitter, PanelWatts = 60 }, Battery(0.5, 12));
        int cold = result.Setup!.Weather.Hours.Count(hour => hour.Celsius + SunDefaults.BatteryRiseKelvin < -20);

        Assert.InRange(cold, 8000, 8760);
        Assert.Equal((Verdict.Fails, cold), (Only(result, "solar-discharge-cold").Verdict, Only(result, "solar-discharge-cold").Value!.Value.Median));
        Assert.True(result.Year!.HoursWithout >= cold);
        Assert.Equal(0, Only(result, "solar-days").Value!.Value.Median);
        Assert.DoesNotContain(Examine(Fit, Battery(0.5)).Examination.Findings, finding => finding.Code == "solar-discharge-cold");
    }

    [Fact]
    public void A_hold_up_for_a_narrower_range_than_the_weathers_is_told()
    {
        SupplyBatteryResult battery = Battery(0.5);
        Finding told = Only(Examine(Fit with { Monthly = Climate with { Celsius = [.. Climate.Celsius.Select(celsius => celsius - 40)] } }, battery), "solar-temperature");
        Assert.Equal((Verdict.Unknown, -10.0), (told.Verdict, told.Limit));
        Assert.Equal(told.Value!.Value.Low - -10, told.Margin!.Value, 1e-9);

        // The oceanic year with 3 K added lies within -10 to 40 °C, and is believed before a range that nobody gave.
        SupplyBatteryResult assumed = battery with { Battery = battery.Battery with { IsCelsiusAssumed = true } };
        Assert.DoesNotContain(Examine(Fit, assumed).Examination.Findings, finding => finding.Code is "solar-temperature" or "battery-charge-cold");
        SupplyBatteryResult narrow = battery with { Battery = battery.Battery with { Celsius = Estimate.Of(-10, 10, 15) } };
        Assert.Equal(15, Only(Examine(Fit, narrow), "solar-temperature").Limit);
    }

    /// <summary>The oceanic year never is below the 0 °C at which the cells of the samples may be charged; the plan's own range may be.</summary>
    [Theory]
    [InlineData(-16, false, Verdict.Fails)]
    [InlineData(-16, true, Verdict.Tight)]
    [InlineData(-16, null, Verdict.Unknown)]
    public void A_plan_colder_than_its_weather_is_judged_by_the_plan(double coldest, bool? stops, Verdict verdict)
    {
        SupplyBatteryResult battery = Battery(0.5);
        SupplyBatteryResult cold = battery with { Battery = battery.Battery with { Celsius = Estimate.Of(coldest, 15, 40), StopsChargeInCold = stops } };
        SupplyBatteryResult mild = battery with { Battery = battery.Battery with { Celsius = Estimate.Of(0, 15, 40), StopsChargeInCold = stops } };
        SolarResult result = Examine(Fit, cold);

        Assert.True(result.Setup!.Weather.Hours.Min(hour => hour.Celsius) + SunDefaults.BatteryRiseKelvin > 0);
        Assert.Equal((verdict, coldest), (Only(result, "battery-charge-cold").Verdict, Only(result, "battery-charge-cold").Value!.Value.Low));
        Assert.Equal((Verdict.Unknown, coldest), (Only(result, "solar-temperature").Verdict, Only(result, "solar-temperature").Limit));
        Assert.DoesNotContain(Examine(Fit, mild).Examination.Findings, finding => finding.Code is "solar-temperature" or "battery-charge-cold" or "solar-charge-cold");
    }

    /// <summary>The 3rd of January and the 2nd of July without any light: the sun rises there on both.</summary>
    [Fact]
    public void Days_without_any_light_are_listed()
    {
        WeatherYear made = Climate.Year(Place, "key");
        int[] dark = [2, 182];
        WeatherYear file = WeatherYear.Of("file", made.Year, made.HoursFromUniversal, [.. made.Hours.Select((hour, index) => dark.Contains(index / 24) ? hour with { Light = new(0, 0, 0) } : hour)], Place);

        Assert.Equal(dark, file.LightlessDays(Place));
        Assert.Empty(made.LightlessDays(Place));
        Assert.Contains("2 days without any light", Assert.Single(Examine(Fit with { Monthly = null, Weather = file }, Battery(0.5)).Examination.Assumptions, one => one.Code == "solar-lightless-days").Text, StringComparison.Ordinal);
        Assert.Equal(["3 January", "2 July"], dark.Select(WeatherYear.DateOf));
    }

    [Fact]
    public void Every_sentence_is_filled()
    {
        MonthlyClimate bitter = Climate with { Celsius = [.. Climate.Celsius.Select(celsius => celsius - 40)] };
        WeatherYear made = bitter.Year(Place, "key");
        SolarResult result = Examine(Fit with { Monthly = null, Weather = WeatherYear.Of("file", made.Year, made.HoursFromUniversal, made.Hours, new(50, 0)) }, Battery(0.5));
        Assert.Equal(
            ["solar-charge-cold", "solar-days", "solar-discharge-cold", "solar-service", "solar-temperature", "solar-weather-place"],
            result.Examination.Findings.Select(finding => finding.Code).Order(StringComparer.Ordinal));
        Assert.All(result.Examination.Findings, finding => Assert.DoesNotContain('{', FindingSentences.Text(finding) + FindingSentences.Advice(finding)));
    }

    private static SolarResult Examine(SolarFit fit, SupplyBatteryResult battery) => SolarExamination.Of(fit, battery, Place, "key", HorizonLine.Level);

    private static Finding Only(SolarResult result, string code) => Assert.Single(result.Examination.Findings, finding => finding.Code == code);

    /// <summary>Lithium cells of the samples side by side, between -10 and 40 °C, that feed a load known within a tenth.</summary>
    private static SupplyBatteryResult Battery(double watts, int cells = 4)
    {
        ChargedBattery battery = HoldUp.HoldUpTimeTests.Charged(SupplySamples.Cell, 1, cells, 3.35, years: 4) with { Celsius = Estimate.Of(-10, 15, 40), StopsChargeInCold = true };
        BatteryLoad load = new(Estimate.Of(0.9 * watts, watts, 1.1 * watts), 3 * watts, 3, "made up", ["load"], []);
        return new("p/supply/1", battery, load, HoldUpTime.Of(battery, load)!);
    }
}
