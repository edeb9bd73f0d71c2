namespace Mastwright.Evidence.Statistics;

/// <summary>How long the blocks of a bootstrap must be to keep a series' memory.</summary>
public static class BlockLength
{
    /// <summary>Whole steps of a block for the mean of a series with the memory of an autoregression of order one.</summary>
    /// <param name="count">Values in the series, one or more.</param>
    /// <param name="r">Autocorrelation at a lag of one step, 0 or more and below 1.</param>
    /// <returns>At least 1, at most a quarter of the series.</returns>
    /// <remarks>
    /// Politis and White, Econometric Reviews 23 (2004), with the correction of Patton, Politis and White, Econometric Reviews 28 (2009), for the
    /// circular bootstrap: b = (2G²/D)^(1/3) n^(1/3) with D = (4/3) g(0)²; for an autoregression G/g(0) = 2r/(1 − r²).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">There is no value, or the autocorrelation is negative or not below 1.</exception>
    public static int Of(int count, double r)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(count);
        ArgumentOutOfRangeException.ThrowIfNegative(r);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(r, 1);
        double ratio = 2 * r / (1 - (r * r));
        double length = Math.Cbrt(1.5 * ratio * ratio * count);
        return Math.Clamp((int)Math.Ceiling(length), 1, Math.Max(1, count / 4));
    }

    /// <summary>What the variance of a mean over a long time is, over what blocks of a length show of it: 1 without memory.</summary>
    /// <param name="block">Steps in a block, one or more.</param>
    /// <param name="r">Autocorrelation at a lag of one step, 0 or more and below 1.</param>
    /// <remarks>A block of b steps weighs a lag of k with 1 − k/b; an autoregression of order one has (1 + r)/(1 − r) in all.</remarks>
    public static double Unseen(int block, double r)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(block);
        double seen = 1;
        double power = 1;
        for (int lag = 1; lag < block; lag++)
        {
            power *= r;
            seen += 2 * (1 - ((double)lag / block)) * power;
        }

        return (1 + r) / (1 - r) / seen;
    }
}
