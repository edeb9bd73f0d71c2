namespace Mastwright.Evidence.Statistics;

/// <summary>How far a value of a series tells the next.</summary>
public static class Autocorrelation
{
    private const double Most = 0.9;

    /// <summary>Autocorrelation at a lag of one step: Σ(xᵢ−m)(xᵢ₊₁−m)/Σ(xᵢ−m)².</summary>
    /// <returns>Zero where the series has fewer than three values or does not vary.</returns>
    public static double AtOne(ReadOnlySpan<double> values)
    {
        if (values.Length < 3)
        {
            return 0;
        }

        double mean = 0;
        foreach (double value in values)
        {
            mean += value / values.Length;
        }

        double products = 0;
        double squares = 0;
        for (int i = 0; i < values.Length; i++)
        {
            double off = values[i] - mean;
            squares += off * off;
            products += i + 1 < values.Length ? off * (values[i + 1] - mean) : 0;
        }

        return squares > 0 ? products / squares : 0;
    }

    /// <summary>The same with what a short series hides taken back (Kendall, Biometrika 41, 1954: bias −(1 + 4ρ)/n), within ±0.9.</summary>
    public static double Corrected(ReadOnlySpan<double> values)
    {
        double r = AtOne(values);
        return values.Length < 3 ? 0 : Math.Clamp(r + ((1 + (4 * r)) / values.Length), -Most, Most);
    }
}
