using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.HoldUp;
using Mastwright.Station.Supply;

namespace Mastwright.Station.Sun;

/// <summary>The battery of a panel held against the temperatures that its year of weather brings.</summary>
internal static class SolarTemperature
{
    /// <summary>Kelvin by which a given range may miss the weather's and still count as the same: nobody knows it better.</summary>
    private const double Slack = 0.5;

    /// <summary>The judgements; none where the cells stay within what they bear and the plan says the same as the weather.</summary>
    internal static ImmutableArray<Finding> Of(SolarFit fit, SupplyBatteryResult battery, SolarSetup setup, SolarYearResult year) =>
        [.. Charge(fit, battery, setup, year), .. Discharge(fit, setup), .. Range(fit, battery, setup)];

    private static IEnumerable<Finding> Charge(SolarFit fit, SupplyBatteryResult battery, SolarSetup setup, SolarYearResult year)
    {
        CellRow cell = setup.Pack.Cell;
        int cold = HoursBelow(setup, cell.ChargeLeastCelsius);
        if (cold > 0)
        {
            yield return Cold(
                "solar-charge-cold",
                fit,
                battery.Battery.StopsChargeInCold switch { true => Verdict.Tight, false => Verdict.Fails, _ => Verdict.Unknown },
                "charge",
                cold,
                cell,
                cell.ChargeLeastCelsius,
                ("light", Text($"{year.ColdHours} h")),
                ("charger", battery.Battery.StopsChargeInCold switch
                {
                    true => "The charger stops there, and the year is reckoned so",
                    false => "The charger does not stop there, though the year is reckoned as if it did",
                    _ => "Whether the charger stops there is not known; the year is reckoned as if it did",
                }));
        }
        else if (!battery.Battery.IsFed && !battery.Battery.IsCelsiusAssumed && battery.Battery.Celsius.Low < cell.ChargeLeastCelsius)
        {
            // The weather never is that cold, but the plan's own range is, and the panel charges there.
            yield return HoldUpFindings.Cold(battery.PlanPath, battery.Battery);
        }
    }

    private static IEnumerable<Finding> Discharge(SolarFit fit, SolarSetup setup)
    {
        CellRow cell = setup.Pack.Cell;
        int cold = HoursBelow(setup, cell.DischargeLeastCelsius);
        if (cold > 0)
        {
            yield return Cold("solar-discharge-cold", fit, Verdict.Fails, "discharge", cold, cell, cell.DischargeLeastCelsius);
        }
    }

    private static Finding Cold(string code, SolarFit fit, Verdict verdict, string use, int hours, CellRow cell, double leastCelsius, params ReadOnlySpan<(string Key, string Value)> more) => new()
    {
        Code = code,
        Subject = fit.PlanPath,
        Verdict = verdict,
        Quantity = $"hours a year in which the battery is too cold to {use}",
        Unit = "h",
        Value = Estimate.Exactly(hours),
        Limit = 0,
        Margin = -hours,
        Source = cell.Source,
        Details = FindingDetails.Of([("hours", Text($"{hours} h")), ("limit", Celsius(leastCelsius)), ("cell", cell.Name), .. more]),
    };

    /// <summary>
    /// A hold-up that is worked out for a narrower range than the weather's says less than it seems to; and so does a year whose weather stays within what the cells bear where the plan's
    /// own range does not.
    /// </summary>
    private static IEnumerable<Finding> Range(SolarFit fit, SupplyBatteryResult battery, SolarSetup setup)
    {
        Estimate given = battery.Battery.Celsius;
        double coldest = setup.Weather.Hours.Min(hour => hour.Celsius) + setup.BatteryRiseKelvin;
        double hottest = setup.Weather.Hours.Max(hour => hour.Celsius) + setup.BatteryRiseKelvin;
        double mean = setup.Weather.Hours.Average(hour => hour.Celsius) + setup.BatteryRiseKelvin;
        double under = coldest - given.Low;
        double over = given.High - hottest;
        if (Math.Min(under, over) >= -Slack && !battery.Battery.IsCelsiusAssumed)
        {
            CellRow cell = setup.Pack.Cell;
            bool isColder = new[] { cell.ChargeLeastCelsius, cell.DischargeLeastCelsius }.Any(limit => given.Low < limit && coldest >= limit);
            bool isHotter = given.High > cell.MostCelsius && hottest <= cell.MostCelsius;
            (under, over) = (isColder ? -under : 0, isHotter ? -over : 0);
        }

        if (Math.Min(under, over) < -Slack)
        {
            yield return new()
            {
                Code = "solar-temperature",
                Subject = fit.PlanPath,
                Verdict = Verdict.Unknown,
                Quantity = "temperature of the battery, by the weather",
                Unit = "°C",
                Value = Estimate.Of(coldest, Math.Clamp(mean, coldest, hottest), hottest),
                Limit = under < over ? given.Low : given.High,
                Margin = Math.Min(under, over),
                Source = setup.Weather.Name,
                Details = FindingDetails.Of(("coldest", Celsius(coldest)), ("hottest", Celsius(hottest)), ("low", Celsius(given.Low)), ("high", Celsius(given.High))),
            };
        }
    }

    private static int HoursBelow(SolarSetup setup, double celsius) => setup.Weather.Hours.Count(hour => hour.Celsius + setup.BatteryRiseKelvin < celsius);

    private static string Celsius(double celsius) => Text($"{celsius:0.#} °C");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
