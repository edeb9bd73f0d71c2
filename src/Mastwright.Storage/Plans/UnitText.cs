using System.Globalization;
using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Words for a dimension and its limits, for messages and the schema.</summary>
internal static class UnitText
{
    /// <summary>What a dimension is called in a sentence.</summary>
    internal static string Of(Dimension dimension) => dimension switch
    {
        Dimension.Length => "a length",
        Dimension.Frequency => "a frequency",
        Dimension.Gain => "a gain in dBi or dBd",
        Dimension.Ratio => "a ratio in dB",
        Dimension.Power => "a power in dBm or W",
        Dimension.Angle => "an angle",
        Dimension.Temperature => "a temperature",
        Dimension.Time => "a time",
        Dimension.Data => "an amount of data in B",
        Dimension.Percent => "a share in %",
        Dimension.PartsPerMillion => "parts per million (ppm)",
        Dimension.BitRate => "a data rate in bit/s",
        Dimension.Voltage => "a voltage",
        Dimension.Current => "a current",
        Dimension.Wattage => "a power in W",
        Dimension.Charge => "a charge in Ah",
        Dimension.Resistance => "a resistance in ohm",
        Dimension.Speed => "a speed",
        Dimension.Mass => "a mass",
        Dimension.MassPerLength => "a mass per length",
        Dimension.Area => "an area",
        Dimension.Force => "a force",
        Dimension.Resistivity => "a resistivity",
        Dimension.TemperatureDifference => "a difference of temperatures in K",
        _ => "a quantity",
    };

    /// <summary>A number of the dimension's own unit, with a unit that reads well.</summary>
    internal static string Write(Dimension dimension, double value)
    {
        (double factor, string unit) = dimension switch
        {
            Dimension.Length => Math.Abs(value) >= 1000 ? (1000, "km") : value != 0 && Math.Abs(value) < 0.01 ? (0.001, "mm") : (1.0, "m"),
            Dimension.Frequency => Prefixed(value, "Hz"),
            Dimension.Gain => (1, "dBi"),
            Dimension.Ratio => (1, "dB"),
            Dimension.Power => (1, "dBm"),
            Dimension.Angle => (1, "°"),
            Dimension.Temperature => (1, "°C"),
            Dimension.Time => value >= 31_557_600 ? (31_557_600, "years") : value >= 3600 && value % 3600 == 0 ? (3600, "h") : (1, "s"),
            Dimension.Data => (1, "B"),
            Dimension.Percent => (1, "%"),
            Dimension.PartsPerMillion => (1, "ppm"),
            Dimension.BitRate => Prefixed(value, "bit/s"),
            Dimension.Voltage => (1, "V"),
            Dimension.Current => (1, "A"),
            Dimension.Wattage => (1, "W"),
            Dimension.Charge => (1, "Ah"),
            Dimension.Resistance => (1, "ohm"),
            Dimension.Speed => (1, "m/s"),
            Dimension.Mass => (1, "kg"),
            Dimension.MassPerLength => (0.001, "g/m"),
            Dimension.Area => value != 0 && Math.Abs(value) < 0.01 ? (1e-6, "mm²") : (1, "m²"),
            Dimension.Force => Math.Abs(value) >= 1000 ? (1000, "kN") : (1, "N"),
            Dimension.Resistivity => (1, "Ω·m"),
            Dimension.TemperatureDifference => (1, "K"),
            _ => (1, ""),
        };
        string number = Math.Round(value / factor, 6).ToString("0.######", CultureInfo.InvariantCulture);
        return dimension == Dimension.Angle ? number + unit : $"{number} {unit}";
    }

    private static (double Factor, string Unit) Prefixed(double value, string unit) => Math.Abs(value) switch
    {
        >= 1e9 => (1e9, "G" + unit),
        >= 1e6 => (1e6, "M" + unit),
        >= 1e3 => (1e3, "k" + unit),
        _ => (1, unit),
    };
}
