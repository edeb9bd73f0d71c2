using Mastwright.Quantities;

namespace Mastwright.Station.HoldUp;

/// <summary>Cells in series and side by side: what they hold and give by temperature, rate, cut-off and age.</summary>
/// <remarks>
/// <para>Temperature: the cell's own table. Rate: Peukert's law, t = H·(C/(I·H))^k, never more than the rated capacity.</para>
/// <para>Age: the loss grows with the square root of time and doubles its rate for each 10 K (Arrhenius' rule, common practice):
/// a fifth is gone after the cell's life at 25 °C. Resistance grows with the loss.</para>
/// <para>Cut-off: the state of charge below which the greatest power would pull the terminals under the cut-off voltage, through the
/// internal resistance at that temperature and age.</para>
/// <para>Error: cells of one type differ by more than the formula does; the ranges of its table say by how much.</para>
/// </remarks>
public sealed record BatteryPack
{
    /// <summary>The type of its cells.</summary>
    public required CellRow Cell { get; init; }

    /// <summary>Cells in series, 1 or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1.</exception>
    public required int Series { get; init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(value), "A battery has one cell or more."); }

    /// <summary>Cells side by side, 1 or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1.</exception>
    public required int Parallel { get; init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(value), "A battery has one cell or more."); }

    /// <summary>Capacity of one new cell at 25 °C in ampere-hours, greater than zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The capacity is not greater than zero.</exception>
    public required double CellAmpereHours { get; init => field = value > 0 && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(nameof(value), "A capacity is greater than zero."); }

    /// <summary>Capacity when new, in ampere-hours.</summary>
    public double AmpereHours => CellAmpereHours * Parallel;

    /// <summary>Nominal voltage.</summary>
    public double NominalVolts => Cell.NominalVolts * Series;

    /// <summary>Voltage when full.</summary>
    public double FullVolts => Cell.FullVolts * Series;

    /// <summary>Nominal energy when new, in watt-hours.</summary>
    public double WattHours => AmpereHours * NominalVolts;

    /// <summary>Share of the capacity that is left with age.</summary>
    /// <param name="years">Age in years, zero or more.</param>
    /// <param name="meanCelsius">Mean temperature of those years.</param>
    /// <param name="lifeYears">Years at 25 °C after which four fifths are left, greater than zero.</param>
    public static double AgeFactor(double years, double meanCelsius, double lifeYears)
    {
        double equivalent = Math.Max(0, years) * Math.Pow(2, (meanCelsius - 25) / 10);
        return Math.Max(0, 1 - (0.2 * Math.Sqrt(equivalent / lifeYears)));
    }

    /// <summary>Share of the capacity that a current leaves usable: Peukert's law, never above 1.</summary>
    /// <param name="amperes">Current of the whole battery in amperes, zero or more.</param>
    public double RateFactor(double amperes)
    {
        double rated = AmpereHours / Cell.RatedHours;
        return amperes <= rated ? 1 : Math.Pow(rated / amperes, Cell.PeukertExponent - 1);
    }

    /// <summary>Internal resistance in ohms.</summary>
    /// <param name="celsius">Temperature in °C.</param>
    /// <param name="ageFactor">Share of the capacity that is left, above 0 to 1.</param>
    public double Ohms(double celsius, double ageFactor)
    {
        double grown = 1 + ((Cell.AgedResistanceFactor - 1) * (1 - ageFactor) / 0.2);
        return Cell.OhmAmpereHours / CellAmpereHours * Series / Parallel * Cell.ResistanceByCelsius.At(celsius) * grown;
    }

    /// <summary>Voltage at rest by state of charge, 0 to 1.</summary>
    public double RestVolts(double charge) => Cell.RestVolts.At(charge) * Series;

    /// <summary>Voltage at the terminals while a power is drawn; null when the battery cannot give that much.</summary>
    /// <param name="charge">State of charge, 0 to 1.</param>
    /// <param name="watts">Power in watts, zero or more.</param>
    /// <param name="ohms">Internal resistance in ohms.</param>
    public double? TerminalVolts(double charge, double watts, double ohms) => Supply.ConstantPowerFeed.Solve(RestVolts(charge), ohms, watts)?.Volts;

    /// <summary>The state of charge below which a power pulls the terminals under a voltage; null when it does so even when full.</summary>
    /// <param name="watts">Power in watts, zero or more.</param>
    /// <param name="cutOffVolts">The voltage.</param>
    /// <param name="ohms">Internal resistance in ohms.</param>
    public double? LeastCharge(double watts, double cutOffVolts, double ohms)
    {
        bool Holds(double charge) => TerminalVolts(charge, watts, ohms) >= cutOffVolts;
        if (!Holds(1))
        {
            return null;
        }

        if (Holds(0))
        {
            return 0;
        }

        double fails = 0;
        double holds = 1;
        while (holds - fails > 1e-9)
        {
            double middle = (fails + holds) / 2;
            if (Holds(middle))
            {
                holds = middle;
            }
            else
            {
                fails = middle;
            }
        }

        return holds;
    }

    /// <summary>The most charge current in amperes at a temperature: 0 where it must not be charged.</summary>
    public double MostChargeAmperes(double celsius) =>
        celsius < Cell.ChargeLeastCelsius || celsius > Cell.MostCelsius ? 0 : Math.Max(0, Cell.ChargeRateByCelsius.At(celsius)) * AmpereHours;
}
