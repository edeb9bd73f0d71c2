namespace Mastwright.Quantities;

/// <summary>A unit that a quantity may be written in, and its way to the unit that the program calculates in.</summary>
/// <param name="Symbol">As written, capitals and small letters as here.</param>
/// <param name="Dimension">What it measures.</param>
/// <param name="Factor">Canonical units in <paramref name="Divisor"/> of this one; for a unit of watts, milliwatts.</param>
/// <param name="Divisor">Divides, so that submultiples such as 35 cm come out as the nearest number to 0.35.</param>
/// <param name="Offset">Added after scaling; a difference in this unit leaves it out.</param>
/// <param name="IsWatts">Whether it is a power on a linear scale, to be turned into dBm.</param>
internal sealed record QuantityUnit(
    string Symbol, Dimension Dimension, double Factor = 1, double Divisor = 1, double Offset = 0, bool IsWatts = false)
{
    /// <summary>Every unit; the first of a dimension is the canonical one.</summary>
    internal static readonly QuantityUnit[] All =
    [
        new("m", Dimension.Length),
        new("km", Dimension.Length, 1000),
        new("cm", Dimension.Length, Divisor: 100),
        new("mm", Dimension.Length, Divisor: 1000),

        // The international foot of 1959.
        new("ft", Dimension.Length, 3048, 10_000),
        new("Hz", Dimension.Frequency),
        new("kHz", Dimension.Frequency, 1e3),
        new("MHz", Dimension.Frequency, 1e6),
        new("GHz", Dimension.Frequency, 1e9),
        new("dBi", Dimension.Gain),

        // A half-wave dipole radiates 1.64 times what an isotropic antenna does in its best direction: 2.15 dB.
        new("dBd", Dimension.Gain, Offset: 2.15),
        new("dB", Dimension.Ratio),
        new("dBm", Dimension.Power),
        new("W", Dimension.Power, 1000, IsWatts: true),
        new("mW", Dimension.Power, IsWatts: true),
        new("µW", Dimension.Power, Divisor: 1000, IsWatts: true),
        new("uW", Dimension.Power, Divisor: 1000, IsWatts: true),
        new("kW", Dimension.Power, 1e6, IsWatts: true),
        new("dBW", Dimension.Power, Offset: 30),
        new("°", Dimension.Angle),
        new("deg", Dimension.Angle),
        new("mrad", Dimension.Angle, 180 / Math.PI, 1000),
        new("°C", Dimension.Temperature),
        new("C", Dimension.Temperature),
        new("K", Dimension.Temperature, Offset: -273.15),
        new("s", Dimension.Time),
        new("ms", Dimension.Time, Divisor: 1000),
        new("µs", Dimension.Time, Divisor: 1e6),
        new("us", Dimension.Time, Divisor: 1e6),
        new("min", Dimension.Time, 60),
        new("h", Dimension.Time, 3600),
        new("d", Dimension.Time, 86_400),

        // The Julian year.
        new("years", Dimension.Time, 31_557_600),
        new("year", Dimension.Time, 31_557_600),
        new("B", Dimension.Data),
        new("byte", Dimension.Data),
        new("bytes", Dimension.Data),
        new("kB", Dimension.Data, 1000),
        new("%", Dimension.Percent),
        new("ppm", Dimension.PartsPerMillion),
        new("bit/s", Dimension.BitRate),
        new("kbit/s", Dimension.BitRate, 1e3),
        new("Mbit/s", Dimension.BitRate, 1e6),
        new("V", Dimension.Voltage),
        new("mV", Dimension.Voltage, Divisor: 1000),
        new("kV", Dimension.Voltage, 1000),
        new("A", Dimension.Current),
        new("mA", Dimension.Current, Divisor: 1000),
        new("µA", Dimension.Current, Divisor: 1e6),
        new("uA", Dimension.Current, Divisor: 1e6),
        new("W", Dimension.Wattage),
        new("mW", Dimension.Wattage, Divisor: 1000),
        new("µW", Dimension.Wattage, Divisor: 1e6),
        new("uW", Dimension.Wattage, Divisor: 1e6),
        new("kW", Dimension.Wattage, 1000),
        new("Ah", Dimension.Charge),
        new("mAh", Dimension.Charge, Divisor: 1000),
        new("Ω", Dimension.Resistance),
        new("ohm", Dimension.Resistance),
        new("mΩ", Dimension.Resistance, Divisor: 1000),
        new("mohm", Dimension.Resistance, Divisor: 1000),
        new("m/s", Dimension.Speed),
        new("km/h", Dimension.Speed, Divisor: 3.6),

        // The international mile of 1609.344 m and nautical mile of 1852 m.
        new("mph", Dimension.Speed, 1609.344, 3600),
        new("kn", Dimension.Speed, 1852, 3600),
        new("kg", Dimension.Mass),
        new("g", Dimension.Mass, Divisor: 1000),
        new("kg/m", Dimension.MassPerLength),
        new("g/m", Dimension.MassPerLength, Divisor: 1000),
        new("m²", Dimension.Area),
        new("cm²", Dimension.Area, Divisor: 1e4),
        new("mm²", Dimension.Area, Divisor: 1e6),
        new("m2", Dimension.Area),
        new("cm2", Dimension.Area, Divisor: 1e4),
        new("mm2", Dimension.Area, Divisor: 1e6),
        new("N", Dimension.Force),
        new("kN", Dimension.Force, 1000),
        new("Ω·m", Dimension.Resistivity),
        new("ohm·m", Dimension.Resistivity),
        new("Ωm", Dimension.Resistivity),
        new("K", Dimension.TemperatureDifference),
    ];

    /// <summary>
    /// The unit with exactly this symbol, of the dimension if that has one (watts serve two), or null. The Greek letter mu serves as
    /// the micro sign, the ohm sign as the Greek letter.
    /// </summary>
    internal static QuantityUnit? Find(string symbol, Dimension dimension)
    {
        string wanted = symbol.Replace('μ', 'µ').Replace('\u2126', 'Ω');
        return Array.Find(All, unit => unit.Symbol == wanted && unit.Dimension == dimension) ?? Array.Find(All, unit => unit.Symbol == wanted);
    }

    /// <summary>A unit of the same letters in other capitals, for a hint; null when there is none.</summary>
    internal static QuantityUnit? FindLike(string symbol, Dimension dimension) =>
        Array.Find(All, unit => unit.Dimension == dimension && string.Equals(unit.Symbol, symbol, StringComparison.OrdinalIgnoreCase));

    /// <summary>A number of this unit in canonical units; minus infinity or NaN for a power in watts that is not positive.</summary>
    internal double ToCanonical(double number) => IsWatts
        ? 10 * Math.Log10(number * Factor / Divisor)
        : (number * Factor / Divisor) + Offset;

    /// <summary>A difference in this unit as a difference in canonical units; not for watts.</summary>
    internal double DifferenceToCanonical(double number) => number * Factor / Divisor;

    /// <summary>A canonical number in this unit; not for watts.</summary>
    internal double FromCanonical(double canonical) => (canonical - Offset) * Divisor / Factor;
}
