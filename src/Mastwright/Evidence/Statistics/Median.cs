namespace Mastwright.Evidence.Statistics;

/// <summary>The value in the middle.</summary>
internal static class Median
{
    /// <summary>The median; the mean of the middle two of an even number, NaN of none.</summary>
    internal static double Of(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return sorted.Length == 0
            ? double.NaN
            : sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[(sorted.Length / 2) - 1] + sorted[sorted.Length / 2]) / 2;
    }
}
