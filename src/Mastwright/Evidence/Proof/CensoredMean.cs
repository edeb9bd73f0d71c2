using Mastwright.Quantities;

namespace Mastwright.Evidence.Proof;

/// <summary>What one day tells of levels of which the weak ones are never seen.</summary>
/// <param name="Count">Levels that were seen.</param>
/// <param name="Sum">Their sum in dBm.</param>
/// <param name="Squares">Sum of their squares.</param>
/// <param name="Lost">How many were lost.</param>
public readonly record struct CensoredDay(double Count, double Sum, double Squares, double Lost);

/// <summary>The mean of normal levels when those below a limit are lost but counted: the censored likelihood.</summary>
/// <param name="MeanDbm">The mean of all, seen and lost.</param>
/// <param name="SpreadDb">Their standard deviation.</param>
/// <param name="Scores">How far each day pulls the mean away; they sum to zero.</param>
/// <remarks>
/// Tobin, Econometrica 26 (1958): a seen level adds its density, a lost one the probability of lying below the limit. A share of losses that
/// has nothing to do with the level (collisions) is allowed for. A day's score is its part of the derivative of the likelihood, through the
/// inverse of the second derivatives.
/// </remarks>
public sealed record CensoredMean(double MeanDbm, double SpreadDb, double[] Scores)
{
    private const int Steps = 80;

    /// <summary>Fits days; null where fewer than ten levels were seen.</summary>
    /// <param name="days">The days.</param>
    /// <param name="limitDbm">The level below which a packet is lost.</param>
    /// <param name="otherLosses">Share of packets lost for other reasons, 0 or more and below 1.</param>
    public static CensoredMean? Fit(ReadOnlySpan<CensoredDay> days, double limitDbm, double otherLosses)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(otherLosses);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(otherLosses, 1);
        CensoredDay all = default;
        foreach (CensoredDay day in days)
        {
            all = new(all.Count + day.Count, all.Sum + day.Sum, all.Squares + day.Squares, all.Lost + day.Lost);
        }

        if (all.Count < 10)
        {
            return null;
        }

        double seen = all.Sum / all.Count;
        double spread = Math.Sqrt(Math.Max(0.01, (all.Squares / all.Count) - (seen * seen)));

        // Golden section over the spread; for each spread the best mean by bisection of its derivative.
        double low = Math.Log(spread * 0.5);
        double high = Math.Log(spread * 6);
        double ratio = (Math.Sqrt(5) - 1) / 2;
        for (int step = 0; step < Steps; step++)
        {
            double left = high - (ratio * (high - low));
            double right = low + (ratio * (high - low));
            if (Best(all, left, seen, limitDbm, otherLosses) > Best(all, right, seen, limitDbm, otherLosses))
            {
                high = right;
            }
            else
            {
                low = left;
            }
        }

        double logSpread = (low + high) / 2;
        double mean = MeanOf(all, logSpread, seen, limitDbm, otherLosses);
        return new(mean, Math.Exp(logSpread), ScoresOf(days, all, mean, logSpread, limitDbm, otherLosses));
    }

    private static double Best(CensoredDay all, double logSpread, double seen, double limit, double other) =>
        Likelihood(all, MeanOf(all, logSpread, seen, limit, other), logSpread, limit, other);

    private static double MeanOf(CensoredDay all, double logSpread, double seen, double limit, double other)
    {
        double low = Math.Min(seen, limit) - (8 * Math.Exp(logSpread));
        double high = seen + 1e-9;
        for (int step = 0; step < Steps; step++)
        {
            double middle = (low + high) / 2;
            if (Slope(all, middle, logSpread, limit, other).Mean > 0)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return (low + high) / 2;
    }

    private static double Likelihood(CensoredDay day, double mean, double logSpread, double limit, double other)
    {
        double spread = Math.Exp(logSpread);
        double squares = day.Squares - (2 * mean * day.Sum) + (day.Count * mean * mean);
        double below = other + ((1 - other) * NormalDistribution.Cumulative((limit - mean) / spread));
        return (-day.Count * logSpread) - (squares / (2 * spread * spread)) + (day.Lost * Math.Log(Math.Max(below, 1e-300)));
    }

    private static (double Mean, double Spread) Slope(CensoredDay day, double mean, double logSpread, double limit, double other)
    {
        double spread = Math.Exp(logSpread);
        double z = (limit - mean) / spread;
        double below = Math.Max(other + ((1 - other) * NormalDistribution.Cumulative(z)), 1e-300);
        double rate = (1 - other) * NormalDistribution.Density(z) / below;
        double squares = day.Squares - (2 * mean * day.Sum) + (day.Count * mean * mean);
        return (((day.Sum - (day.Count * mean)) / (spread * spread)) - (day.Lost * rate / spread), -day.Count + (squares / (spread * spread)) - (day.Lost * rate * z));
    }

    private static double[] ScoresOf(ReadOnlySpan<CensoredDay> days, CensoredDay all, double mean, double logSpread, double limit, double other)
    {
        const double step = 1e-4;
        (double Mean, double Spread) Difference(double byMean, double bySpread)
        {
            (double Mean, double Spread) up = Slope(all, mean + byMean, logSpread + bySpread, limit, other);
            (double Mean, double Spread) down = Slope(all, mean - byMean, logSpread - bySpread, limit, other);
            return ((up.Mean - down.Mean) / (2 * step), (up.Spread - down.Spread) / (2 * step));
        }

        (double mm, double ms) = Difference(step, 0);
        (double sm, double ss) = Difference(0, step);
        double determinant = (mm * ss) - (ms * sm);
        double[] scores = new double[days.Length];
        for (int i = 0; i < days.Length; i++)
        {
            (double byMean, double bySpread) = Slope(days[i], mean, logSpread, limit, other);
            scores[i] = determinant == 0 ? 0 : -((ss * byMean) - (sm * bySpread)) / determinant;
        }

        return scores;
    }
}
