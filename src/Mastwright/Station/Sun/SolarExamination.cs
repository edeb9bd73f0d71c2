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
        SunTrack? sun = null;
        ImmutableArray<WeatherYear> years = fit.Weather is { } known ? [known] : fit.Monthly!.Years(place, stationKey, SunDefaults.MadeYears, out sun);
        SolarSetup setup = SetupOf(fit, battery, place, years[0], horizon, assumptions);
        sun ??= years[0].SunOver(setup.Place);
        PanelTrack track = PanelTrack.Of(setup.Panel, setup.Horizon, sun);
        SolarYield yield = SolarYear.YieldOf(setup, track);
        SolarYearResult year = SolarYear.Run(setup, yield);
        SolarRange range = SolarRange.Of(setup, years, track, battery);
        double borne = fit.WantedHoursWithout ?? SunDefaults.WantedHoursWithout;
        ImmutableArray<SolarPair> pairs = SolarSizes.Pairs(range.Poor, range.PoorYield, borne);
        double? away = fit.Weather?.Place?.KilometresTo(place);
        ImmutableArray<string> codes = [.. assumptions.Select(one => one.Code)];
        return new()
        {
            Setup = setup,
            Yield = yield,
            Year = year,
            Range = range,
            Pairs = pairs,
            Examination = new()
            {
                Ledgers = [year.Ledger],
                Findings =
                [
                    Elsewhere(Service(fit, setup, year, range, pairs, borne, away, codes), away),
                    Elsewhere(Days(fit, setup, battery, codes), away),
                    .. SolarTemperature.Of(fit, battery, setup, year),
                    .. away is { } kilometres ? [WeatherPlace(fit, kilometres)] : Array.Empty<Finding>(),
                ],
                Assumptions = [.. assumptions],
            },
        };
    }

    /// <summary>What the weather of a place too far away says of this one is not known, whichever way it goes.</summary>
    private static Finding Elsewhere(Finding finding, double? awayKilometres) =>
        awayKilometres > SunDefaults.WeatherKilometres ? finding with { Verdict = Verdict.Unknown } : finding;

    private static Finding WeatherPlace(SolarFit fit, double kilometres) => new()
    {
        Code = "solar-weather-place",
        Subject = fit.PlanPath,
        Verdict = kilometres > SunDefaults.WeatherKilometres ? Verdict.Unknown : Verdict.Ok,
        Quantity = "distance to the place of the weather file",
        Unit = "km",
        Value = Estimate.Exactly(kilometres),
        Limit = SunDefaults.WeatherKilometres,
        Margin = SunDefaults.WeatherKilometres - kilometres,
        Source = "common practice",
        Details = FindingDetails.Of(
            ("file", fit.Weather!.Name),
            ("place", fit.Weather.Place.ToString()!),
            ("away", Text($"{kilometres:0} km")),
            ("limit", Text($"{SunDefaults.WeatherKilometres:0} km"))),
    };

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

    private static SolarSetup SetupOf(SolarFit fit, SupplyBatteryResult battery, SunSite place, WeatherYear weather, HorizonLine? horizon, List<Assumption> assumptions)
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

        if (fit.Weather?.LightlessDays(fit.Weather.Place ?? place) is { IsEmpty: false } lightless)
        {
            assumptions.Add(SunDefaults.Lightless(path, fit.Weather, lightless));
        }

        if (fit.Weather is { StatedOffsetHours: { } stated })
        {
            assumptions.Add(SunDefaults.Offset(path, fit.Weather, stated));
        }

        HorizonLine line = fit.HorizonDegrees.IsEmpty ? horizon ?? HorizonLine.Level : HorizonLine.Of(fit.HorizonDegrees);
        if (fit.HorizonDegrees.IsEmpty && horizon is null)
        {
            assumptions.Add(SunDefaults.Level(path + "/horizon"));
        }

        double losses = Given(fit.LossShare, SunDefaults.LossShare, SunDefaults.Panel(path + "/losses"));

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

    private static Finding Service(
        SolarFit fit, SolarSetup setup, SolarYearResult year, SolarRange range, ImmutableArray<SolarPair> pairs, double borne, double? awayKilometres, ImmutableArray<string> codes)
    {
        Estimate hours = range.Hours;
        string years = range.YearCount > 1 ? Text($"each of {range.YearCount} made years") : "the year";
        string from = range.YearCount == 1 && awayKilometres is { } away ? Text($", by weather of a place {away:0} km away") : "";
        return new()
        {
            Code = "solar-service",
            Subject = fit.PlanPath,
            Verdict = hours.High <= borne ? Verdict.Ok : hours.Median <= borne ? Verdict.Tight : hours.Low <= borne ? Verdict.Unknown : Verdict.Fails,
            Quantity = "hours a year without service",
            Unit = "h",
            Value = hours,
            Limit = borne,
            Margin = borne - hours.Median,
            Assumptions = fit.WantedHoursWithout is null ? codes.Add("solar-hours-wanted") : codes,
            Source = fit.WantedHoursWithout is null ? "common practice" : fit.PlanPath + "/hours-without",
            Details = FindingDetails.Of(
                ("why", Text($"With {setup.Panel.Watts:0.#} W of panel and {setup.Pack.WattHours:0} Wh of battery, {Percent(setup.AgeFactor)} of which age leaves, {years} has {Hours(hours)} without service{from}; {borne:0.#} h are borne. The hardest month is {MonthName(year.WorstMonth)}, the battery down to {Percent(year.LeastCharge)}")),
                ("sizes", Sizes(setup, range, pairs))),
        };
    }

    /// <summary>Panels and batteries that keep what is borne, even where all is at its poor end.</summary>
    private static string Sizes(SolarSetup setup, SolarRange range, ImmutableArray<SolarPair> pairs)
    {
        const int most = 6;
        return pairs.IsEmpty
            ? "No panel of up to 400 W with up to 64 cells side by side keeps that at the poor end"
            : Text($"At the poor end ({(range.YearCount > 1 ? "the hardest year, " : "")}the greatest load, poor cells) that is kept with {string.Join(", ", pairs.Take(most))}; here {new SolarPair(setup.Panel.Watts, setup.Pack.Parallel)}");
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

    /// <summary>Hours a year without service as a range; null when something was missing.</summary>
    public SolarRange? Range { get; init; }

    /// <summary>Panels and batteries that keep what is borne at the poor end of the range; empty when none does, or something was missing.</summary>
    public ImmutableArray<SolarPair> Pairs { get; init; } = [];

    /// <summary>Ledger, findings, assumptions.</summary>
    public required Examination Examination { get; init; }
}
