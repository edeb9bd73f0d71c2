using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.HoldUp;

/// <summary>How long a battery feeds what hangs on it, as a range.</summary>
/// <remarks>
/// t = C·V·(age)·[(temperature)·(rate)·(1 − charge at cut-off) − what it was short of full]/P. The low end puts the coldest temperature, the oldest
/// battery, the shortest life, the least charge and the greatest load together, the high end their opposites: the ends are rarer than the inputs' own.
/// </remarks>
public static class HoldUpTime
{
    /// <summary>Computes it.</summary>
    /// <param name="battery">The battery.</param>
    /// <param name="load">What hangs on it.</param>
    /// <returns>Null when nothing is drawn.</returns>
    public static HoldUpResult? Of(ChargedBattery battery, BatteryLoad load)
    {
        ArgumentNullException.ThrowIfNull(battery);
        ArgumentNullException.ThrowIfNull(load);
        if (!(load.MeanWatts.Low > 0))
        {
            return null;
        }

        CellRow cell = battery.Pack.Cell;
        Estimate life = cell.LifeYears;
        BatteryUse poor = Use(battery, load.PeakWatts, load, load.MeanWatts.High, battery.AgeYears.High, life.Low, battery.Celsius.Low, range => range.Low);
        BatteryUse middle = Use(battery, load.PeakWatts, load, load.MeanWatts.Median, battery.AgeYears.Median, life.Median, battery.Celsius.Median, range => range.Median);
        BatteryUse good = Use(battery, load.PeakWatts, load, load.MeanWatts.Low, battery.AgeYears.Low, life.High, battery.Celsius.High, range => range.High);
        double low = Hours(battery, poor, battery.ChargeAtStart.Low, load.MeanWatts.High);
        double median = Hours(battery, middle, battery.ChargeAtStart.Median, load.MeanWatts.Median);
        double high = Hours(battery, good, battery.ChargeAtStart.High, load.MeanWatts.Low);
        low = Math.Min(low, median);
        high = Math.Max(high, median);
        return new()
        {
            Hours = Estimate.Of(low, median, high),
            Poor = poor,
            Middle = middle,
            Good = good,
            Ledger = Account(battery, load, middle, low, high),
            RechargeHours = battery.IsFed ? Recharge(battery, load, middle) : null,
        };
    }

    private static BatteryUse Use(
        ChargedBattery battery, double peakWatts, BatteryLoad load, double meanWatts, double years, double lifeYears, double celsius, Func<Estimate, double> pick)
    {
        double age = BatteryPack.AgeFactor(years, battery.Celsius.Median, lifeYears);
        return BatteryUse.Of(battery.Pack, age, celsius, pick(battery.Pack.Cell.CapacityByCelsius.At(celsius)), meanWatts, peakWatts, load.CutOffVolts);
    }

    /// <summary>Hours that it lasts at a temperature, all else at its median.</summary>
    internal static double HoursAt(ChargedBattery battery, BatteryLoad load, double celsius, out BatteryUse use)
    {
        use = Use(battery, load.PeakWatts, load, load.MeanWatts.Median, battery.AgeYears.Median, battery.Pack.Cell.LifeYears.Median, celsius, range => range.Median);
        return Hours(battery, use, battery.ChargeAtStart.Median, load.MeanWatts.Median);
    }

    private static double Hours(ChargedBattery battery, BatteryUse use, double charge, double watts) =>
        battery.Pack.WattHours * use.AgeFactor * use.ShareFrom(charge) / watts;

    private static Ledger Account(ChargedBattery battery, BatteryLoad load, BatteryUse use, double low, double high)
    {
        BatteryPack pack = battery.Pack;
        double watts = load.MeanWatts.Median;
        double nominal = pack.WattHours / watts;
        double aged = nominal * use.AgeFactor;
        double warm = aged * use.TemperatureFactor;
        double rated = warm * use.RateFactor;
        double start = battery.ChargeAtStart.Median;
        string source = "catalogue " + pack.Cell.Key + ": " + pack.Cell.Source;
        List<LedgerLine> lines =
        [
            new("nominal", "nominal energy over the mean load", nominal, source, Text($"{pack.AmpereHours:0.##} Ah at {pack.NominalVolts:0.##} V are {pack.WattHours:0.##} Wh, over {watts:0.###} W")),
            new("age", "age", aged - nominal, "square root of time, doubling each 10 K: common practice", Text($"× {use.AgeFactor:0.###} after {battery.AgeYears.Median:0.#} years at {battery.Celsius.Median:0.#} °C")),
            new("temperature", "temperature", warm - aged, source, Text($"× {use.TemperatureFactor:0.###} at {battery.Celsius.Median:0.#} °C")),
            new("rate", "rate of discharge", rated - warm, "Peukert's law", Text($"× {use.RateFactor:0.###}, exponent {pack.Cell.PeukertExponent:0.##}")),
            new("cut-off", "left in at the cut-off under the peak", -rated * use.LeastCharge, load.CutOffFrom, Text($"{load.PeakWatts:0.###} W through {1000 * use.Ohms:0.#} mΩ reach {load.CutOffVolts:0.##} V at {100 * use.LeastCharge:0.#} % charge")),
            new("charge", "not full when it takes over", aged * (start - 1), "plan or assumed", Text($"{100 * start:0.#} % charged")),
        ];
        double hours = Hours(battery, use, start, watts);
        double sum = lines.Sum(line => line.Value);
        if (sum < 0)
        {
            lines.Add(new("nothing-left", "a battery gives no less than nothing", hours - sum, ""));
        }

        return Ledger.SummingTo(hours, Text($"hold-up on battery, {low:0.#} to {high:0.#} h"), "h", [.. lines]);
    }

    /// <summary>Hours in which the battery is full again while it feeds its loads; null when on the whole it never is, or nothing came out of it.</summary>
    private static Estimate? Recharge(ChargedBattery battery, BatteryLoad load, BatteryUse use)
    {
        BatteryPack pack = battery.Pack;
        if (use.UsableShare <= 0)
        {
            return null;
        }

        double charge = pack.AmpereHours * use.AgeFactor * Math.Min(1, use.UsableShare) / pack.Cell.ChargeEfficiency;
        double Time(double celsius, double watts, double taper)
        {
            double spare = battery.ChargerAmperes - (watts / pack.NominalVolts);
            double amperes = Math.Min(spare, pack.MostChargeAmperes(celsius));
            return amperes > 0 ? charge * taper / amperes : double.PositiveInfinity;
        }

        Estimate taper = pack.Cell.ChargeTaper;
        double middle = Time(battery.Celsius.Median, load.MeanWatts.Median, taper.Median);
        double warm = Time(battery.Celsius.High, load.MeanWatts.Low, taper.Low);
        double cold = Time(battery.Celsius.Low, load.MeanWatts.High, taper.High);

        // An end at which it must not be charged, or the charger has nothing to spare, leaves the range open.
        return double.IsFinite(middle) ? Estimate.Of(Math.Min(middle, Math.Min(warm, cold)), middle, Math.Max(middle, Math.Max(warm, cold))) : null;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>How long a battery lasts.</summary>
public sealed record HoldUpResult
{
    /// <summary>Hours that it lasts.</summary>
    public required Estimate Hours { get; init; }

    /// <summary>How much of it can be used at the low end: cold, old, under the greatest load.</summary>
    public required BatteryUse Poor { get; init; }

    /// <summary>How much of it can be used in the middle.</summary>
    public required BatteryUse Middle { get; init; }

    /// <summary>How much of it can be used at the high end.</summary>
    public required BatteryUse Good { get; init; }

    /// <summary>The median hours, line by line.</summary>
    public required Ledger Ledger { get; init; }

    /// <summary>
    /// Hours in which it is full again while it feeds its loads, infinite at an end where it never is; null when it never is on the whole, nothing feeds it, or nothing came out of it.
    /// </summary>
    public required Estimate? RechargeHours { get; init; }
}
