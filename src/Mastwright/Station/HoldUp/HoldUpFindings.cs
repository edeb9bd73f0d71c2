using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Supply;

namespace Mastwright.Station.HoldUp;

/// <summary>Judgements on a battery.</summary>
internal static class HoldUpFindings
{
    /// <summary>Kelvin below the most that a cell bears from which on it is called tight.</summary>
    private const double HotMarginKelvin = 5;

    internal static ImmutableArray<Finding> Of(string path, ChargedBattery battery, BatteryLoad load, HoldUpResult result, ImmutableArray<string> assumptions, bool starts) =>
    [
        Time(path, battery, load, result, assumptions),
        CutOff(path, battery, load, result),
        Rate(path, battery, load),
        Temperature(path, battery),
        .. battery.IsFed ? Charging(path, battery, result, starts) : [Unfed(path, result)],
    ];

    /// <summary>A battery that gives nothing has nothing to take in again: its hold-up says so, and a time of no hours would sound well.</summary>
    private static ImmutableArray<Finding> Charging(string path, ChargedBattery battery, HoldUpResult result, bool starts) =>
        result.Middle.UsableShare > 0 ? [Cold(path, battery), Recharge(path, battery, result, starts)] : [Cold(path, battery)];

    private static Finding Time(string path, ChargedBattery battery, BatteryLoad load, HoldUpResult result, ImmutableArray<string> assumptions)
    {
        Estimate hours = result.Hours;
        double wanted = battery.WantedHours;
        return new()
        {
            Code = "hold-up",
            Subject = path,
            Verdict = hours.Low >= wanted ? Verdict.Ok : hours.Median >= wanted ? Verdict.Tight : hours.High >= wanted ? Verdict.Unknown : Verdict.Fails,
            Quantity = "time on battery",
            Unit = "h",
            Value = hours,
            Limit = wanted,
            Margin = hours.Median - wanted,
            Assumptions = assumptions,
            Source = assumptions.Contains("hold-up-wanted") ? "common practice" : path + "/hold",
            Details = FindingDetails.Of(
                ("hours", Hours(hours)),
                ("wanted", Hours(wanted)),
                ("held", Listed(load.Held)),
                ("not-held", load.NotHeld.IsEmpty ? "" : $"; not {Listed(load.NotHeld)}"),
                ("load", Text($"{load.MeanWatts.Median:0.00} W"))),
        };
    }

    private static Finding CutOff(string path, ChargedBattery battery, BatteryLoad load, HoldUpResult result)
    {
        BatteryPack pack = battery.Pack;
        double Half(BatteryUse use) => pack.TerminalVolts(0.5, load.PeakWatts, use.Ohms) ?? 0;
        double poor = Half(result.Poor);
        double middle = Half(result.Middle);
        double good = Half(result.Good);
        double low = Math.Min(poor, Math.Min(middle, good));
        double high = Math.Max(poor, Math.Max(middle, good));
        Estimate volts = Estimate.Of(low, Math.Clamp(middle, low, high), high);
        bool isTooCold = battery.Celsius.Low < pack.Cell.DischargeLeastCelsius;
        return new()
        {
            Code = "hold-up-cut-off",
            Subject = path,
            Verdict = !result.Middle.HoldsPeak || isTooCold ? Verdict.Fails : volts.Low < load.CutOffVolts ? Verdict.Tight : Verdict.Ok,
            Quantity = "battery voltage under the peak, half charged",
            Unit = "V",
            Value = volts,
            Limit = load.CutOffVolts,
            Margin = volts.Median - load.CutOffVolts,
            Source = load.CutOffFrom,
            Details = FindingDetails.Of(
                ("peak", Text($"{load.PeakWatts:0.00} W")),
                ("volts", Text($"{volts.Median:0.00} V")),
                ("cold-volts", isTooCold ? "none" : volts.Low > 0 ? Text($"{volts.Low:0.00} V") : "not at all"),
                ("cold", Celsius(battery.Celsius.Low)),
                ("limit", Text($"{load.CutOffVolts:0.00} V")),
                ("left", isTooCold ? $"a {pack.Cell.Name} is not to be discharged below {Celsius(pack.Cell.DischargeLeastCelsius)}"
                    : result.Poor.HoldsPeak ? Text($"of its charge then the cut-off leaves {100 * result.Poor.LeftAtCutOff:0} % unused, and cold and rate withhold {100 * result.Poor.Withheld:0} %")
                    : "even a full battery is pulled under it then")),
        };
    }

    private static Finding Rate(string path, ChargedBattery battery, BatteryLoad load)
    {
        double amperes = load.PeakWatts / load.CutOffVolts;
        double limit = battery.Pack.Cell.MostDischargeRate * battery.Pack.AmpereHours;
        return new()
        {
            Code = "battery-rate",
            Subject = path,
            Verdict = amperes > limit ? Verdict.Fails : amperes > SupplyDefaults.WantedShareOfRating * limit ? Verdict.Tight : Verdict.Ok,
            Quantity = "greatest current of the battery",
            Unit = "A",
            Value = Estimate.Exactly(amperes),
            Limit = limit,
            Margin = limit - amperes,
            Source = battery.Pack.Cell.Source,
            Details = FindingDetails.Of(("amperes", Text($"{amperes:0.00} A")), ("limit", Text($"{limit:0.0} A"))),
        };
    }

    private static Finding Temperature(string path, ChargedBattery battery)
    {
        CellRow cell = battery.Pack.Cell;
        double spare = Math.Min(battery.Celsius.Low - cell.DischargeLeastCelsius, cell.MostCelsius - battery.Celsius.High);
        bool isHot = cell.MostCelsius - battery.Celsius.High <= battery.Celsius.Low - cell.DischargeLeastCelsius;
        return new()
        {
            Code = "battery-temperature",
            Subject = path,
            Verdict = spare < 0 ? Verdict.Fails : isHot && spare < HotMarginKelvin ? Verdict.Tight : Verdict.Ok,
            Quantity = "temperature of the battery",
            Unit = "°C",
            Value = battery.Celsius,
            Limit = isHot ? cell.MostCelsius : cell.DischargeLeastCelsius,
            Margin = spare,
            Source = cell.Source,
            Details = FindingDetails.Of(
                ("low", Celsius(battery.Celsius.Low)),
                ("high", Celsius(battery.Celsius.High)),
                ("least", Celsius(cell.DischargeLeastCelsius)),
                ("most", Celsius(cell.MostCelsius))),
        };
    }

    /// <summary>Whether the battery gets too cold to charge.</summary>
    internal static Finding Cold(string path, ChargedBattery battery)
    {
        CellRow cell = battery.Pack.Cell;
        bool isCold = battery.Celsius.Low < cell.ChargeLeastCelsius;
        return new()
        {
            Code = "battery-charge-cold",
            Subject = path,
            Verdict = !isCold ? Verdict.Ok : battery.StopsChargeInCold switch { true => Verdict.Tight, false => Verdict.Fails, _ => Verdict.Unknown },
            Quantity = "coldest temperature of the battery",
            Unit = "°C",
            Value = battery.Celsius,
            Limit = cell.ChargeLeastCelsius,
            Margin = battery.Celsius.Low - cell.ChargeLeastCelsius,
            Source = cell.Source,
            Details = FindingDetails.Of(
                ("coldest", Celsius(battery.Celsius.Low)),
                ("limit", Celsius(cell.ChargeLeastCelsius)),
                ("cell", cell.Name),
                ("charger", battery.StopsChargeInCold switch
                {
                    true => "The charger stops there, so it is not recharged while it is that cold",
                    false => "The charger does not stop there",
                    _ => "Whether the charger stops there is not known",
                })),
        };
    }

    private static Finding Recharge(string path, ChargedBattery battery, HoldUpResult result, bool starts)
    {
        Estimate? hours = starts ? result.RechargeHours : null;
        BatteryPack pack = battery.Pack;
        CellRow cell = pack.Cell;
        string limits = $"outside the {Celsius(cell.ChargeLeastCelsius)} to {Celsius(cell.MostCelsius)} that a {cell.Name} may be charged at,";
        bool isRefused = pack.MostChargeAmperes(battery.Celsius.Median) == 0;
        bool isRefusedAtAnEnd = pack.MostChargeAmperes(battery.Celsius.Low) == 0 || pack.MostChargeAmperes(battery.Celsius.High) == 0;
        double wanted = SupplyDefaults.WantedRechargeHours;
        return new()
        {
            Code = "battery-recharge",
            Subject = path,
            Verdict = hours is not { } time ? Verdict.Fails : time.Median <= wanted && double.IsFinite(time.High) ? Verdict.Ok : Verdict.Tight,
            Quantity = "time to recharge while feeding the loads",
            Unit = "h",
            Value = hours is { } found && double.IsFinite(found.High) ? found : null,
            Limit = wanted,
            Margin = hours is { } middle ? wanted - middle.Median : null,
            Source = "common practice",
            Details = FindingDetails.Of(
                ("time", hours is not { } known
                        ? !starts ? "the battery is not recharged: the supply that feeds it does not start"
                            : isRefused ? $"the battery is not recharged at its {Celsius(battery.Celsius.Median)}, {limits}"
                            : "the battery never recharges: the charger gives no more than the loads draw"
                    : double.IsFinite(known.High) ? "the battery is full again in " + Hours(known)
                    : $"the battery is full again in {Hours(known.Median)}{Fastest(known)}; but never "
                        + (isRefusedAtAnEnd ? limits : "under the greatest load,")),
                ("wanted", Hours(wanted))),
        };
    }

    /// <summary>The low end of a range that is open above; nothing where it reads the same as the middle.</summary>
    private static string Fastest(Estimate hours) => Hours(hours.Low) == Hours(hours.Median) ? "" : $", {Hours(hours.Low)} at best";

    private static Finding Unfed(string path, HoldUpResult result) => new()
    {
        Code = "battery-unfed",
        Subject = path,
        Verdict = Verdict.Unknown,
        Quantity = "time on battery",
        Unit = "h",
        Value = result.Hours,
        Details = FindingDetails.Of(("hours", Hours(result.Hours))),
    };

    internal static string Hours(Estimate hours) => hours.IsExact
        ? Hours(hours.Median)
        : hours.High >= 96 && hours.Low >= 24
            ? Text($"{hours.Low / 24:0.#} to {hours.High / 24:0.#} days")
            : Text($"{Short(hours.Low)} to {Short(hours.High)} h");

    private static string Hours(double hours) => hours >= 96 ? Text($"{hours / 24:0.#} days") : Short(hours) + " h";

    private static string Short(double hours) => hours >= 10 ? Text($"{hours:0}") : Text($"{hours:0.0}");

    private static string Celsius(double celsius) => Text($"{celsius:0.#} °C");

    internal static string Listed(ImmutableArray<string> names) => names.Length switch
    {
        0 => "nothing",
        1 => names[0],
        _ => string.Join(", ", names.Take(names.Length - 1)) + " and " + names[^1],
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
