namespace Mastwright.Quantities;

/// <summary>How a dimension is spoken of, and the range outside which a value is taken for a slip.</summary>
/// <param name="Name">With its article, for sentences.</param>
/// <param name="Example">A text that is right.</param>
/// <param name="Units">The units to name in a sentence.</param>
/// <param name="Least">The least sane value, in canonical units.</param>
/// <param name="Most">The most.</param>
/// <param name="Range">The sane range in words.</param>
internal sealed record QuantityKind(string Name, string Example, string Units, double Least, double Most, string Range)
{
    /// <summary>The ranges are common practice, wide enough for anything a station meets.</summary>
    internal static QuantityKind Of(Dimension dimension) => dimension switch
    {
        Dimension.Length => new("a length", "15 m", "m, km, cm, mm or ft", -5e7, 5e7, "between -50000 km and 50000 km"),
        Dimension.Frequency => new("a frequency", "868 MHz", "Hz, kHz, MHz or GHz", double.Epsilon, 1e12, "over 0 Hz and up to 1000 GHz"),
        Dimension.Gain => new("an antenna gain", "6 dBi", "dBi or dBd", -100, 100, "between -100 dBi and 100 dBi"),
        Dimension.Ratio => new("a ratio", "3 dB", "dB", -500, 500, "between -500 dB and 500 dB"),
        Dimension.Power => new("a power", "14 dBm", "dBm, mW, W, kW or dBW", -250, 120, "between -250 dBm and 120 dBm"),
        Dimension.Angle => new("an angle", "30 deg", "°, deg or mrad", -360, 360, "between -360° and 360°"),
        Dimension.Temperature => new("a temperature", "25 °C", "°C, C or K", -273.15, 2000, "between -273.15 °C and 2000 °C"),
        Dimension.Time => new("a time", "10 s", "s, ms, µs, min, h, d or years", 0, 4e9, "between 0 s and 4000000000 s"),
        Dimension.Data => new("an amount of data", "32 B", "B, bytes or kB", 0, 1e15, "between 0 B and 1000000000000 kB"),
        Dimension.Percent => new("a share", "50 %", "%", 0, 1000, "between 0 % and 1000 %"),
        Dimension.PartsPerMillion => new("a relative error", "2.5 ppm", "ppm", -1e6, 1e6, "between -1000000 ppm and 1000000 ppm"),
        Dimension.BitRate => new("a data rate", "5 kbit/s", "bit/s, kbit/s or Mbit/s", double.Epsilon, 1e12, "over 0 bit/s and up to 1000000 Mbit/s"),
        Dimension.Voltage => new("a voltage", "48 V", "V, mV or kV", -1e6, 1e6, "between -1000 kV and 1000 kV"),
        Dimension.Current => new("a current", "2 A", "A, mA or µA", -1e6, 1e6, "between -1000000 A and 1000000 A"),
        Dimension.Wattage => new("a power", "2.5 W", "W, mW, µW or kW", -1e9, 1e9, "between -1000000 kW and 1000000 kW"),
        Dimension.Charge => new("a charge", "3.35 Ah", "Ah or mAh", 0, 1e6, "between 0 Ah and 1000000 Ah"),
        Dimension.Speed => new("a speed", "26 m/s", "m/s, km/h, mph or kn", 0, 1000, "between 0 m/s and 1000 m/s"),
        Dimension.Mass => new("a mass", "1.2 kg", "kg or g", 0, 1e6, "between 0 kg and 1000000 kg"),
        Dimension.MassPerLength => new("a mass per length", "45 g/m", "kg/m or g/m", 0, 1e4, "between 0 kg/m and 10000 kg/m"),
        Dimension.Area => new("an area", "0.05 m²", "m², cm² or mm² (or m2, cm2, mm2)", 0, 1e6, "between 0 m² and 1000000 m²"),
        Dimension.Force => new("a force", "2.5 kN", "N or kN", 0, 1e9, "between 0 N and 1000000 kN"),
        Dimension.Resistivity => new("a resistivity", "100 Ω·m", "Ω·m or ohm·m", 0, 1e8, "between 0 Ω·m and 100000000 Ω·m"),
        Dimension.TemperatureDifference => new("a difference of temperatures", "8 K", "K", -2000, 2000, "between -2000 K and 2000 K"),
        Dimension.Resistance => new("a resistance", "0.5 ohm", "ohm, Ω or mΩ", 0, 1e9, "between 0 ohm and 1000000000 ohm"),
        _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "There is no such dimension."),
    };
}
