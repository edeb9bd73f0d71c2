using System.Collections.Immutable;
using Mastwright.Quantities;

namespace Mastwright.Station.HoldUp;

/// <summary>How a battery empties from the moment at which its feed fails, and how long it lasts by temperature.</summary>
/// <remarks>
/// The same formula as <see cref="HoldUpTime"/>, under the mean load throughout: the charge falls evenly until what cold, rate and cut-off withhold is all that is
/// left. All but the temperature is at its median; the range that the finding tells puts the poor ends of every input together and is wider.
/// </remarks>
public sealed record HoldUpCourse
{
    private const int Steps = 48;
    private const int TemperatureSteps = 20;

    /// <summary>The battery at its coldest, on the whole and at its hottest; one run where all three are the same.</summary>
    public required ImmutableArray<HoldUpRun> Runs { get; init; }

    /// <summary>Hours that it lasts by temperature, from the least at which it may be discharged to the most that it bears.</summary>
    public required ImmutableArray<HoldUpAt> ByCelsius { get; init; }

    /// <summary>Hours that it is wanted to last.</summary>
    public required double WantedHours { get; init; }

    /// <summary>Hours that it lasts as the finding tells them.</summary>
    public required Estimate Hours { get; init; }

    /// <summary>Voltage at which it is switched off, or a load gives up.</summary>
    public required double CutOffVolts { get; init; }

    /// <summary>Temperature of the battery in °C: coldest, on the whole, hottest.</summary>
    public required Estimate Celsius { get; init; }

    /// <summary>Works it out.</summary>
    /// <param name="battery">The battery.</param>
    /// <param name="load">What hangs on it.</param>
    /// <param name="result">How long it lasts.</param>
    public static HoldUpCourse Of(ChargedBattery battery, BatteryLoad load, HoldUpResult result)
    {
        ArgumentNullException.ThrowIfNull(battery);
        ArgumentNullException.ThrowIfNull(load);
        ArgumentNullException.ThrowIfNull(result);
        CellRow cell = battery.Pack.Cell;
        double[] temperatures = [.. new[] { battery.Celsius.Low, battery.Celsius.Median, battery.Celsius.High }.Distinct()];
        return new()
        {
            Runs = [.. temperatures.Select(celsius => Run(battery, load, celsius))],
            ByCelsius =
            [
                .. Enumerable.Range(0, TemperatureSteps + 1)
                    .Select(step => cell.DischargeLeastCelsius + ((cell.MostCelsius - cell.DischargeLeastCelsius) * step / TemperatureSteps))
                    .Select(celsius => new HoldUpAt(celsius, HoldUpTime.HoursAt(battery, load, celsius, out _))),
            ],
            WantedHours = battery.WantedHours,
            Hours = result.Hours,
            CutOffVolts = load.CutOffVolts,
            Celsius = battery.Celsius,
        };
    }

    private static HoldUpRun Run(ChargedBattery battery, BatteryLoad load, double celsius)
    {
        double hours = HoldUpTime.HoursAt(battery, load, celsius, out BatteryUse use);
        double start = battery.ChargeAtStart.Median;
        double aged = battery.Pack.WattHours * use.AgeFactor;
        double watts = load.MeanWatts.Median;
        ImmutableArray<HoldUpPoint> points =
        [
            .. Enumerable.Range(0, Steps + 1).Select(step => hours * step / Steps).Select(hour =>
            {
                double charge = aged > 0 ? Math.Clamp(start - (watts * hour / aged), 0, 1) : 0;
                return new HoldUpPoint(hour, charge, battery.Pack.TerminalVolts(charge, watts, use.Ohms));
            }),
        ];
        
        // A battery that is less charged than what is withheld gives nothing; no more is in it than that.
        return new(celsius, hours, points, Math.Min(use.Withheld, points[^1].Charge));
    }
}

/// <summary>A battery that empties at one temperature.</summary>
/// <param name="Celsius">The temperature in °C.</param>
/// <param name="Hours">Hours until it gives no more.</param>
/// <param name="Points">The way there, from the failure on.</param>
/// <param name="Withheld">Share of what age has left that cold and rate keep from coming out at its end, 0 to 1; the rest of what is in then is left by the cut-off.</param>
public sealed record HoldUpRun(double Celsius, double Hours, ImmutableArray<HoldUpPoint> Points, double Withheld);

/// <summary>A battery at one moment.</summary>
/// <param name="Hour">Hours since the feed failed.</param>
/// <param name="Charge">Charge as a share of what age has left, 0 to 1.</param>
/// <param name="Volts">Voltage at its terminals under the mean load; null where it cannot give that much.</param>
public readonly record struct HoldUpPoint(double Hour, double Charge, double? Volts)
{
    /// <summary>All three, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{Hour:0.##} h: {100 * Charge:0} %, {Volts:0.00} V");
}

/// <summary>How long a battery lasts at one temperature.</summary>
/// <param name="Celsius">The temperature in °C.</param>
/// <param name="Hours">Hours, all else at its median.</param>
public readonly record struct HoldUpAt(double Celsius, double Hours)
{
    /// <summary>Both, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{Celsius:0.#} °C: {Hours:0.#} h");
}
