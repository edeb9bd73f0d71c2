using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.HoldUp;
using Mastwright.Station.Supply;

namespace Mastwright.Station.Sun;

/// <summary>Whether a panel keeps a station going through the year: every judgement with its ledger.</summary>
public static class SolarExamination
{
    /// <summary>Examines the panel of a fit-out.</summary>
    /// <param name="fit">The panel in the plan.</param>
    /// <param name="battery">The battery that it charges; null when the supply has none, or is not known.</param>
    /// <param name="place">Where it stands.</param>
    /// <param name="stationKey">What draws of a made year belong to.</param>
    /// <param name="horizon">The horizon from the plan's ground; null when no ground was found.</param>
    public static SolarResult Of(SolarFit fit, SupplyBatteryResult? battery, SunSite place, string stationKey, HorizonLine? horizon)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(stationKey);
        string missing = string.Join(" and ", Missing(fit, battery));
        if (battery is null || missing.Length > 0)
        {
            return new()
            {
                Examination = new() { Findings = [Finding.Unknown("solar-unknown", fit.PlanPath, "hours a year without service", ("missing", missing))] },
            };
        }

        List<Assumption> assumptions = [];
        SolarSetup setup = SetupOf(fit, battery, place, stationKey, horizon, assumptions);
        SolarYield yield = SolarYear.YieldOf(setup);
        SolarYearResult year = SolarYear.Run(setup, yield);
        Estimate load = battery.Load.MeanWatts;
        double HoursAt(double watts) => SolarYear.Run(setup with { LoadWatts = watts }, yield).HoursWithout;
        Estimate hours = load.IsExact ? Estimate.Exactly(year.HoursWithout) : Rising(HoursAt(load.Low), year.HoursWithout, HoursAt(load.High));
        double borne = fit.WantedHoursWithout ?? SunDefaults.WantedHoursWithout;
        ImmutableArray<string> codes = [.. assumptions.Select(one => one.Code)];
        return new()
        {
            Setup = setup,
            Yield = yield,
            Year = year,
            Examination = new()
            {
                Ledgers = [year.Ledger],
                Findings = [Service(fit, setup, yield, year, hours, borne, codes), Days(fit, setup, battery, codes), .. Cold(fit, battery, setup, year)],
                Assumptions = [.. assumptions],
            },
        };
    }

    private static IEnumerable<string> Missing(SolarFit fit, SupplyBatteryResult? battery)
    {
        if (battery is null)
        {
            yield return "a battery with its loads in the supply";
        }

        if (fit.Weather is null && fit.Monthly is null)
        {
            yield return "a weather file or the months' light and temperature";
        }
    }

    private static SolarSetup SetupOf(SolarFit fit, SupplyBatteryResult battery, SunSite place, string stationKey, HorizonLine? horizon, List<Assumption> assumptions)
    {
        string path = fit.PlanPath;
        T Given<T>(T? value, T fallback, Assumption assumed)
            where T : struct
        {
            if (value is null)
            {
                assumptions.Add(assumed);
            }

            return value ?? fallback;
        }

        if (fit.Weather is null)
        {
            assumptions.Add(SunDefaults.Weather(path));
        }
        else if (fit.Weather.Place is not null)
        {
            assumptions.Add(SunDefaults.Elsewhere(path, fit.Weather));
        }

        HorizonLine line = fit.HorizonDegrees.IsEmpty ? horizon ?? HorizonLine.Level : HorizonLine.Of(fit.HorizonDegrees);
        if (fit.HorizonDegrees.IsEmpty && horizon is null)
        {
            assumptions.Add(SunDefaults.Level(path + "/horizon"));
        }

        double losses = Given(fit.LossShare, SunDefaults.LossShare, SunDefaults.Panel(path + "/losses"));
        WeatherYear weather = fit.Weather ?? fit.Monthly!.Year(place, stationKey);

        // Over its stated age the battery is at its oldest: that is when it has to hold.
        double celsius = weather.Hours.Average(hour => hour.Celsius);
        return new()
        {
            Panel = new()
            {
                Watts = fit.PanelWatts,
                TiltDegrees = fit.TiltDegrees,
                AzimuthDegrees = fit.AzimuthDegrees,
                LossShare = losses,
                GroundReflects = Given(fit.GroundReflects, SunDefaults.GroundReflects, SunDefaults.Reflects(path)),
            },
            Pack = battery.Battery.Pack,
            AgeFactor = BatteryPack.AgeFactor(battery.Battery.AgeYears.High, celsius, battery.Battery.Pack.Cell.LifeYears.Median),
            LoadWatts = battery.Load.MeanWatts.Median,
            PeakWatts = battery.Load.PeakWatts,
            CutOffVolts = battery.Load.CutOffVolts,
            Weather = weather,
            Place = weather.Place ?? place,
            Horizon = line,
            CoveredDays = Given(fit.CoveredDays, SunDefaults.CoveredDays, SunDefaults.Covered(path)),
            BatteryRiseKelvin = Given(fit.BatteryRiseKelvin, SunDefaults.BatteryRiseKelvin, SunDefaults.Rise(path)),
            ControllerEfficiency = Given(fit.ControllerEfficiency, SunDefaults.ControllerEfficiency, SunDefaults.Controller(path)),
        };
    }

    private static Finding Service(SolarFit fit, SolarSetup setup, SolarYield yield, SolarYearResult year, Estimate hours, double borne, ImmutableArray<string> codes)
    {
        bool isKept = hours.Median <= borne;
        return new()
        {
            Code = "solar-service",
            Subject = fit.PlanPath,
            Verdict = hours.High <= borne ? Verdict.Ok : isKept ? Verdict.Tight : hours.Low <= borne ? Verdict.Unknown : Verdict.Fails,
            Quantity = "hours a year without service",
            Unit = "h",
            Value = hours,
            Limit = borne,
            Margin = borne - hours.Median,
            Assumptions = fit.WantedHoursWithout is null ? codes.Add("solar-hours-wanted") : codes,
            Source = fit.WantedHoursWithout is null ? "common practice" : fit.PlanPath + "/hours-without",
            Details = FindingDetails.Of(
                ("why", Text($"With {setup.Panel.Watts:0.#} W of panel and {setup.Pack.WattHours:0} Wh of battery, {Percent(setup.AgeFactor)} of which age leaves, the year has {Hours(hours)} without service; {borne:0.#} h are borne. Its darkest month is {MonthName(year.WorstMonth)}, its battery down to {Percent(year.LeastCharge)}{(isKept ? "" : Sizes(setup, yield, borne))}"))),
        };
    }

    /// <summary>What would do, found only where it is wanted: each try is a year.</summary>
    private static string Sizes(SolarSetup setup, SolarYield yield, double borne)
    {
        string panel = SolarSizes.SmallestPanelWatts(setup, yield, borne) is { } watts ? Text($"A panel of {watts:0} W") : "";
        string battery = SolarSizes.FewestParallel(setup, yield, borne) is { } cells ? Text($"{cells} cells side by side in place of {setup.Pack.Parallel}") : "";
        return panel.Length + battery.Length == 0 ? ". Neither a panel of up to 400 W nor 64 cells side by side would do alone"
            : $". {(panel.Length == 0 || battery.Length == 0 ? panel + battery : $"{panel} or {battery}")} would do";
    }

    private static Finding Days(SolarFit fit, SolarSetup setup, SupplyBatteryResult battery, ImmutableArray<string> codes)
    {
        // The coldest month on the whole, at the end of the battery's age.
        double celsius = Enumerable.Range(0, 12).Min(month => setup.Weather.Hours.Skip(WeatherYear.FirstHourOf(month)).Take(24 * WeatherYear.DaysOf(month)).Average(hour => hour.Celsius)) + setup.BatteryRiseKelvin;
        BatteryPack pack = setup.Pack;
        BatteryUse use = BatteryUse.Of(pack, setup.AgeFactor, celsius, pack.Cell.CapacityByCelsius.Median.At(celsius), setup.LoadWatts, setup.PeakWatts, setup.CutOffVolts);
        double days = setup.LoadWatts > 0 ? pack.WattHours * setup.AgeFactor * use.UsableShare / setup.LoadWatts / 24 : double.PositiveInfinity;
        double wanted = fit.WantedDays ?? SunDefaults.WantedDays;
        return new()
        {
            Code = "solar-days",
            Subject = fit.PlanPath,
            Verdict = days < wanted ? Verdict.Fails : days < 1.25 * wanted ? Verdict.Tight : Verdict.Ok,
            Quantity = "days that a full battery lasts without sun",
            Unit = "d",
            Value = double.IsFinite(days) ? Estimate.Exactly(days) : null,
            Limit = wanted,
            Margin = double.IsFinite(days) ? days - wanted : null,
            Assumptions = fit.WantedDays is null ? codes.Add("solar-days-wanted") : codes,
            Source = fit.WantedDays is null ? "common practice" : fit.PlanPath + "/days-without-sun",
            Details = FindingDetails.Of(
                ("days", Text($"{days:0.#} days")),
                ("celsius", Text($"{celsius:0.#} °C")),
                ("load", Text($"{setup.LoadWatts:0.00} W")),
                ("wanted", Text($"{wanted:0.#} days")),
                ("held", HoldUpFindings.Listed(battery.Load.Held))),
        };
    }

    private static ImmutableArray<Finding> Cold(SolarFit fit, SupplyBatteryResult battery, SolarSetup setup, SolarYearResult year)
    {
        CellRow cell = setup.Pack.Cell;
        int cold = setup.Weather.Hours.Count(hour => hour.Celsius + setup.BatteryRiseKelvin < cell.ChargeLeastCelsius);
        if (cold == 0)
        {
            return [];
        }

        return
        [
            new()
            {
                Code = "solar-charge-cold",
                Subject = fit.PlanPath,
                Verdict = battery.Battery.StopsChargeInCold switch { true => Verdict.Tight, false => Verdict.Fails, _ => Verdict.Unknown },
                Quantity = "hours a year in which the battery is too cold to charge",
                Unit = "h",
                Value = Estimate.Exactly(cold),
                Limit = 0,
                Margin = -cold,
                Source = cell.Source,
                Details = FindingDetails.Of(
                    ("hours", Text($"{cold} h")),
                    ("light", Text($"{year.ColdHours} h")),
                    ("limit", Text($"{cell.ChargeLeastCelsius:0.#} °C")),
                    ("cell", cell.Name),
                    ("charger", battery.Battery.StopsChargeInCold switch
                    {
                        true => "The charger stops there, and the year is reckoned so",
                        false => "The charger does not stop there, though the year is reckoned as if it did",
                        _ => "Whether the charger stops there is not known; the year is reckoned as if it did",
                    })),
            },
        ];
    }

    private static Estimate Rising(double low, double median, double high) => Estimate.Of(Math.Min(low, median), median, Math.Max(median, high));

    private static string Hours(Estimate hours) => hours.IsExact || hours.High - hours.Low < 0.5 ? Text($"{hours.Median:0} h") : Text($"{hours.Low:0} to {hours.High:0} h");

    private static string MonthName(int month) => CultureInfo.InvariantCulture.DateTimeFormat.MonthNames[month];

    private static string Percent(double share) => Text($"{100 * share:0} %");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>What came of a panel's year.</summary>
public sealed record SolarResult
{
    /// <summary>What it was worked out from; null when something was missing.</summary>
    public SolarSetup? Setup { get; init; }

    /// <summary>What the panel gives hour by hour; null when something was missing.</summary>
    public SolarYield? Yield { get; init; }

    /// <summary>The year; null when something was missing.</summary>
    public SolarYearResult? Year { get; init; }

    /// <summary>Ledger, findings, assumptions.</summary>
    public required Examination Examination { get; init; }
}
