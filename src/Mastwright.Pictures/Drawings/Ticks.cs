using System.Globalization;

namespace Mastwright.Pictures.Drawings;

/// <summary>Round numbers along an axis.</summary>
/// <param name="Step">Distance between two of them: 1, 2 or 5 times a power of ten.</param>
/// <param name="Values">The numbers, rising, all inside the range.</param>
internal sealed record Ticks(double Step, IReadOnlyList<double> Values)
{
    /// <summary>Ticks in a range, at most as many as wanted (and one more).</summary>
    public static Ticks Between(double low, double high, int most)
    {
        double rough = (high - low) / Math.Max(1, most);
        double power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        double step = power * (rough / power) switch { <= 1 => 1, <= 2 => 2, <= 5 => 5, _ => 10 };
        List<double> values = [];
        for (double i = Math.Ceiling((low / step) - 1e-9); i * step <= high + (step * 1e-9); i++)
        {
            values.Add(i * step);
        }

        return new(step, values);
    }

    /// <summary>A tick's text, with as many decimals as the step needs.</summary>
    public string Text(double value)
    {
        int decimals = Math.Clamp((int)-Math.Floor(Math.Log10(Step) + 1e-9), 0, 9);
        string text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.Trim('-', '0', '.').Length == 0 ? "0" : text.Replace('-', '−');
    }
}
