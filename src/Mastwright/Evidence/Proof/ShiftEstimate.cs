using Mastwright.Evidence.Statistics;

namespace Mastwright.Evidence.Proof;

/// <summary>A shift with the interval that it lies in.</summary>
/// <param name="Shift">After less before.</param>
/// <param name="Interval">The interval at the confidence asked for; null where the periods are too short for one.</param>
/// <param name="StandardError">Standard error of the shift; NaN without an interval.</param>
/// <param name="BlockDays">Days that were drawn together.</param>
public sealed record ShiftEstimate(double Shift, ConfidenceInterval? Interval, double StandardError, int BlockDays)
{
    /// <summary>Draws of the bootstrap.</summary>
    public const int Draws = 2_000;

    /// <summary>Days with values that each period must have before an interval is given.</summary>
    public const int LeastDays = 5;

    /// <summary>The shift that day scores give, with its interval by a block bootstrap over days.</summary>
    /// <param name="scores">Shift and day scores.</param>
    /// <param name="memory">Autocorrelation from day to day that stations have on average, below 1; NaN: from these scores alone.</param>
    /// <param name="confidence">Confidence, above 0 and below 1.</param>
    /// <param name="seed">What the draws belong to.</param>
    /// <remarks>
    /// Days are drawn in blocks as long as their memory asks for (<see cref="BlockLength"/>). A mean over k blocks varies by k/(k − 1) more than
    /// its bootstrap shows, a block sees only part of a longer memory, and few blocks know their own spread badly: the deviations are widened by
    /// all three, the last by Student's distribution with the degrees of freedom of Welch (Biometrika 34, 1947).
    /// </remarks>
    public static ShiftEstimate Of(DayScores scores, double memory, double confidence, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(scores);
        if (scores.BeforeDays < LeastDays || scores.AfterDays < LeastDays)
        {
            return new(scores.Shift, null, double.NaN, 0);
        }

        double own = Memory(scores);
        double r = Math.Max(0, double.IsNaN(memory) ? own : (own + memory) / 2);
        int blockBefore = BlockLength.Of(scores.BeforeDays, r);
        int blockAfter = BlockLength.Of(scores.AfterDays, r);
        double[] before = new double[Draws];
        double[] after = new double[Draws];
        BlockBootstrap.Sums(scores.BeforeScores, blockBefore, seed, before);
        BlockBootstrap.Sums(scores.AfterScores, blockAfter, seed + 1, after);
        double blocksBefore = (double)scores.BeforeDays / blockBefore;
        double blocksAfter = (double)scores.AfterDays / blockAfter;
        double widenBefore = Math.Sqrt(blocksBefore / (blocksBefore - 1) * BlockLength.Unseen(blockBefore, r));
        double widenAfter = Math.Sqrt(blocksAfter / (blocksAfter - 1) * BlockLength.Unseen(blockAfter, r));
        double varianceBefore = Variance(before) * widenBefore * widenBefore;
        double varianceAfter = Variance(after) * widenAfter * widenAfter;
        double both = varianceBefore + varianceAfter;
        if (both == 0)
        {
            return new(scores.Shift, new(scores.Shift, scores.Shift), 0, Math.Max(blockBefore, blockAfter));
        }

        double degrees = both * both / ((varianceBefore * varianceBefore / (blocksBefore - 1)) + (varianceAfter * varianceAfter / (blocksAfter - 1)));
        double tail = (1 + confidence) / 2;
        double widen = Quantiles.Student(tail, degrees) / Quantiles.Normal(tail);
        double[] off = new double[Draws];
        for (int i = 0; i < Draws; i++)
        {
            off[i] = widen * ((after[i] * widenAfter) - (before[i] * widenBefore));
        }

        Array.Sort(off);
        return new(
            scores.Shift,
            new(scores.Shift + At(off, 1 - tail), scores.Shift + At(off, tail)),
            Math.Sqrt(both),
            Math.Max(blockBefore, blockAfter));
    }

    /// <summary>Autocorrelation from day to day inside the two periods, never across the change.</summary>
    public static double Memory(DayScores scores)
    {
        ArgumentNullException.ThrowIfNull(scores);
        double before = Autocorrelation.Corrected(scores.BeforeScores);
        double after = Autocorrelation.Corrected(scores.AfterScores);
        return ((before * scores.BeforeDays) + (after * scores.AfterDays)) / Math.Max(1, scores.BeforeDays + scores.AfterDays);
    }

    private static double At(double[] sorted, double share)
    {
        double place = share * (sorted.Length - 1);
        int low = (int)place;
        return low + 1 < sorted.Length ? sorted[low] + ((place - low) * (sorted[low + 1] - sorted[low])) : sorted[low];
    }

    private static double Variance(double[] values)
    {
        double mean = 0;
        foreach (double value in values)
        {
            mean += value / values.Length;
        }

        double sum = 0;
        foreach (double value in values)
        {
            sum += (value - mean) * (value - mean);
        }

        return sum / values.Length;
    }
}
