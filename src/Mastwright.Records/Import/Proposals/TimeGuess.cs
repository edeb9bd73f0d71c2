using System.Globalization;

namespace Mastwright.Records.Import.Proposals;

/// <summary>How the times of a place are written, from what stands there.</summary>
internal static class TimeGuess
{
    /// <summary>The keys of the mapping for them; null where they are no times.</summary>
    internal static string? Of(SeenField field)
    {
        if (field.Samples.Count == 0)
        {
            return null;
        }

        if (field.Samples.All(sample => ClockText.TryIso(sample, zoneMayLack: true, out _, out _)))
        {
            bool zone = field.Samples.All(sample => ClockText.TryIso(sample, zoneMayLack: false, out _, out _));
            int digits = field.Samples.Max(sample => sample.IndexOf('.', StringComparison.Ordinal) is >= 0 and int at ? sample[(at + 1)..].TakeWhile(char.IsAsciiDigit).Count() : 0);
            return $"written: iso-8601{(zone ? "" : ", zone: utc")}, resolution: {Step(digits)}";
        }

        double[] counts = [.. field.Samples.Select(sample => double.TryParse(sample, NumberStyles.Float, CultureInfo.InvariantCulture, out double count) ? count : double.NaN)];
        bool whole = counts.All(count => count == Math.Floor(count));
        // From the year 2001 on and up to 2100.
        return Between(counts, 1e9, 4.2e9) ? $"written: unix-seconds, resolution: {(whole ? "1 s" : "1 ms")}"
            : Between(counts, 1e12, 4.2e12) ? "written: unix-milliseconds, resolution: 1 ms"
            : Between(counts, 1e15, 4.2e15) ? "written: unix-microseconds, resolution: 1 us"
            : null;
    }

    private static bool Between(double[] counts, double least, double most) => counts.All(count => count >= least && count < most);

    private static string Step(int digits) => digits switch { 0 => "1 s", <= 3 => "1 ms", _ => "1 us" };
}
