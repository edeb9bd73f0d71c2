using System.Globalization;

namespace Mastwright.Quantities;

/// <summary>Quantities as a person writes them, "15 m", "5 ± 1 m", "0…6 dBi", from text to numbers and back; the same in every culture.</summary>
public static class Quantity
{
    /// <summary>Longer text is refused unread.</summary>
    public const int LongestText = 100;

    /// <summary>Reads a quantity of a wanted dimension.</summary>
    /// <param name="text">
    /// A number and its unit ("15 m", "15m"), with how far off it may be ("5 ± 1 m", "5 m +/- 20 cm", "14 dBm ± 1 dB"), a range
    /// ("0…6 dBi", "0...6 dBi", "0 to 6 dBi"), or the likeliest value with a range ("2 (0…6) dBi").
    /// </param>
    /// <param name="dimension">What it must measure.</param>
    /// <param name="value">
    /// The value in the canonical unit of the dimension. A power in watts is converted to dBm at its low, middle and high end.
    /// </param>
    /// <param name="problem">What was found and what would be right; empty when the answer is true.</param>
    public static bool TryParse(string text, Dimension dimension, out Estimate value, out string problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        return new QuantityReader(text, dimension).TryRead(out value, out problem);
    }

    /// <summary>Writes a value with a unit that suits its size; the text reads back as the same value if the value is a sane one.</summary>
    /// <param name="value">The value in the canonical unit of the dimension.</param>
    /// <param name="dimension">What it measures.</param>
    public static string Format(double value, Dimension dimension) => Format(Estimate.Exactly(value), dimension);

    /// <summary>Writes a value with its range: "15 m", "5 ± 1 m", "0…6 dBi", "2 (0…6) dBi"; it reads back as the same value.</summary>
    /// <param name="value">The value in the canonical unit of the dimension.</param>
    /// <param name="dimension">What it measures.</param>
    public static string Format(Estimate value, Dimension dimension)
    {
        QuantityUnit canonical = Array.Find(QuantityUnit.All, unit => unit.Dimension == dimension)
            ?? throw new ArgumentOutOfRangeException(nameof(dimension), dimension, "There is no such dimension.");
        QuantityUnit suited = SuitedTo(Math.Max(Math.Abs(value.Low), Math.Abs(value.High)), dimension, canonical);

        // Scaling can cost the last bit, and so can a sum: the first form that reads back as the same value is taken.
        foreach (QuantityUnit unit in (ReadOnlySpan<QuantityUnit>)[suited, canonical])
        {
            foreach (string numbers in Numbers(unit.FromCanonical(value.Low), unit.FromCanonical(value.Median), unit.FromCanonical(value.High)))
            {
                string text = unit.Symbol == "°" ? numbers + "°" : numbers + " " + unit.Symbol;
                if (TryParse(text, dimension, out Estimate back, out _) && back == value)
                {
                    return text;
                }
            }
        }

        return Numbers(value.Low, value.Median, value.High)[^1] + " " + canonical.Symbol;
    }

    private static string[] Numbers(double low, double median, double high)
    {
        if (low == high)
        {
            return [Plain(median)];
        }

        // A rounded half range comes first: 5.3 - 5 is 0.29999999999999982 and means 0.3.
        double half = high - median;
        return
        [
            $"{Plain(median)} ± {half.ToString("G9", CultureInfo.InvariantCulture)}",
            $"{Plain(median)} ± {half.ToString("G15", CultureInfo.InvariantCulture)}",
            $"{Plain(median)} ± {Plain(half)}",
            $"{Plain(low)}…{Plain(high)}",
            $"{Plain(median)} ({Plain(low)}…{Plain(high)})",
        ];
    }

    private static string Plain(double number) => number.ToString("R", CultureInfo.InvariantCulture);

    private static QuantityUnit SuitedTo(double size, Dimension dimension, QuantityUnit canonical)
    {
        string symbol = (dimension, size) switch
        {
            (Dimension.Length, >= 10_000) => "km",
            (Dimension.Length, > 0 and < 0.01) => "mm",
            (Dimension.Frequency, >= 1e9) => "GHz",
            (Dimension.Frequency, >= 1e6) => "MHz",
            (Dimension.Frequency, >= 1e3) => "kHz",
            (Dimension.Time, > 0 and < 1e-3) => "µs",
            (Dimension.Time, > 0 and < 1) => "ms",
            (Dimension.Time, >= 86_400) when size % 86_400 == 0 => "d",
            (Dimension.Time, >= 3600) when size % 3600 == 0 => "h",
            (Dimension.Time, >= 60) when size % 60 == 0 => "min",
            (Dimension.Data, >= 10_000) => "kB",
            (Dimension.BitRate, >= 1e6) => "Mbit/s",
            (Dimension.BitRate, >= 1e3) => "kbit/s",
            _ => canonical.Symbol,
        };
        return QuantityUnit.Find(symbol, dimension)!;
    }
}
