using Mastwright.Evidence.Statistics;

namespace Mastwright.Evidence.Proof;

/// <summary>Whether a station that was heard in one period alone may have been missed in the other by chance.</summary>
public static class Chance
{
    /// <summary>Probability that all days on which it was heard fall into one of two periods, if it was heard as often in both.</summary>
    /// <param name="daysHeard">Days on which it was heard, all in that one period, from 0 to <paramref name="days"/>.</param>
    /// <param name="days">Days of that period.</param>
    /// <param name="otherDays">Days of the other period.</param>
    /// <remarks>
    /// Fisher's exact test with a margin of zero: C(days, k)/C(days + other, k). Days are counted and not packets, as packets of one evening come
    /// together.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">There are more days heard than days, or a number is negative.</exception>
    public static double OneSided(int daysHeard, int days, int otherDays)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(daysHeard);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(daysHeard, days);
        ArgumentOutOfRangeException.ThrowIfNegative(otherDays);
        double log = LogChoose(days, daysHeard) - LogChoose(days + otherDays, daysHeard);
        return Math.Exp(log);
    }

    private static double LogChoose(int all, int some) =>
        StudentDistribution.LogGamma(all + 1.0) - StudentDistribution.LogGamma(some + 1.0) - StudentDistribution.LogGamma(all - some + 1.0);
}
