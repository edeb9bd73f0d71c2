using System.Globalization;

namespace Mastwright.Quantities;

/// <summary>An absolute power, in decibels relative to one milliwatt (dBm).</summary>
/// <param name="Dbm">The level in dBm; minus infinity is no power at all.</param>
/// <remarks>
/// Two levels cannot be added: that would multiply milliwatts by milliwatts. Their difference is a ratio.
/// The default value is 0 dBm, which is one milliwatt and not "no power".
/// </remarks>
public readonly record struct PowerLevel(double Dbm)
{
    /// <summary>No power: minus infinity dBm.</summary>
    public static PowerLevel None => new(double.NegativeInfinity);

    /// <summary>The power in milliwatts, zero or more.</summary>
    public double Milliwatts => Math.Pow(10, Dbm / 10);

    /// <summary>The level of a power in milliwatts (zero or more).</summary>
    public static PowerLevel FromMilliwatts(double milliwatts) => new(10 * Math.Log10(milliwatts));

    /// <summary>The two powers present at once: added as milliwatts.</summary>
    public PowerLevel Together(PowerLevel other) => FromMilliwatts(Milliwatts + other.Milliwatts);

    /// <summary>The level raised by a ratio.</summary>
    public static PowerLevel operator +(PowerLevel level, Decibels change) => new(level.Dbm + change.Value);

    /// <summary>The level lowered by a ratio.</summary>
    public static PowerLevel operator -(PowerLevel level, Decibels change) => new(level.Dbm - change.Value);

    /// <summary>The ratio between two levels.</summary>
    public static Decibels operator -(PowerLevel left, PowerLevel right) => new(left.Dbm - right.Dbm);

    /// <summary>The text form in the invariant culture, as "-120.5 dBm".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Dbm:0.##} dBm");
}
