namespace Mastwright.Evidence.Statistics;

/// <summary>A range that a number lies in with a stated confidence.</summary>
/// <param name="Low">Its lower end.</param>
/// <param name="High">Its upper end.</param>
public readonly record struct ConfidenceInterval(double Low, double High)
{
    /// <summary>Whether a number lies in it.</summary>
    public bool Holds(double value) => value >= Low && value <= High;
}

/// <summary>Intervals of a share that was counted.</summary>
public static class Wilson
{
    /// <summary>The score interval of a share (Wilson, J. Am. Stat. Assoc. 22, 1927; Newcombe, Stat. Med. 17, 1998, method 3).</summary>
    /// <param name="hits">How many of the trials, from 0 to <paramref name="trials"/>; need not be whole.</param>
    /// <param name="trials">How many trials, above 0.</param>
    /// <param name="confidence">Confidence, above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no trial, or more hits than trials.</exception>
    public static ConfidenceInterval Interval(double hits, double trials, double confidence = 0.95)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(trials);
        ArgumentOutOfRangeException.ThrowIfNegative(hits);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(hits, trials);
        double z = Quantiles.Normal((1 + confidence) / 2);
        double share = hits / trials;
        double weight = 1 + (z * z / trials);
        double centre = (share + (z * z / (2 * trials))) / weight;
        double half = z * Math.Sqrt((share * (1 - share) / trials) + (z * z / (4 * trials * trials))) / weight;
        return new(hits == 0 ? 0 : centre - half, hits == trials ? 1 : centre + half);
    }
}
