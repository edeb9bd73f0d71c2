namespace Mastwright.Station.Supply;

/// <summary>A load that draws the same power at any voltage, at the far end of a resistance: what a converter behind a cable is.</summary>
/// <remarks>
/// P = V·(E − V)/R has two roots, or none: V = [E ± √(E² − 4·R·P)]/2. The feed works on the upper one; beyond P = E²/(4R) there is none, and
/// the voltage falls until the load lets go. Exact. The limits of IEEE 802.3 follow from it: 44 V through 20 Ω to 12.95 W is 37 V and 350 mA.
/// </remarks>
public static class ConstantPowerFeed
{
    /// <summary>Finds the working point.</summary>
    /// <param name="sourceVolts">Voltage at the near end, greater than zero.</param>
    /// <param name="ohms">Resistance of both conductors together, zero or more.</param>
    /// <param name="watts">What the load takes, zero or more.</param>
    /// <returns>Voltage and current at the load; null when the resistance cannot carry that much.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static FeedPoint? Solve(double sourceVolts, double ohms, double watts)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(ohms);
        ArgumentOutOfRangeException.ThrowIfNegative(watts);
        if (!(sourceVolts > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(sourceVolts), "A source's voltage is greater than zero.");
        }

        double root = (sourceVolts * sourceVolts) - (4 * ohms * watts);
        if (!(root >= 0))
        {
            return null;
        }

        double volts = (sourceVolts + Math.Sqrt(root)) / 2;
        return new(volts, watts / volts);
    }

    /// <summary>The most power in watts that comes out of a resistance: half of the voltage is then lost in it. Infinite without resistance.</summary>
    public static double MostWatts(double sourceVolts, double ohms) => sourceVolts * sourceVolts / (4 * ohms);
}

/// <summary>Voltage and current at the far end of a feed.</summary>
/// <param name="Volts">Voltage in volts.</param>
/// <param name="Amperes">Current in amperes.</param>
public sealed record FeedPoint(double Volts, double Amperes);
