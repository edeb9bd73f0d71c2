using Mastwright.Evidence.Statistics;

namespace Mastwright.Evidence.Proof;

/// <summary>Finds steps within a period that one station made and the others did not.</summary>
internal static class OwnSteps
{
    private const int ShortestDays = 3;

    /// <summary>Variance that a step must explain over what is left a day: far beyond what the best of all places reaches in weather that lasts.</summary>
    private const double LeastF = 40;

    internal static void Find(List<SenderLevels> levels, ProofPeriod before, ProofPeriod after, ProofSettings settings)
    {
        List<SenderLevels> all = [.. levels.Where(one => one.Knowledge is ShiftKnowledge.Full or ShiftKnowledge.LossesCounted)];
        foreach (SenderLevels one in all)
        {
            one.OwnStep = In(one, all, station => station.BeforeOffDb, before, settings.AloneDb) ?? In(one, all, station => station.AfterOffDb, after, settings.AloneDb);
        }
    }

    private static OwnStep? In(SenderLevels one, List<SenderLevels> all, Func<SenderLevels, double[]?> daysOff, ProofPeriod period, double leastDb)
    {
        double[][] others = [.. all.Where(other => other != one).Select(daysOff).OfType<double[]>()];
        if (others.Length < 2 || daysOff(one) is not { } own)
        {
            return null;
        }

        // The median of the others: one of them may have its own step.
        double[] apart = [.. own.Select((off, day) => off - Median.Of(others.Where(other => day < other.Length && !double.IsNaN(other[day])).Select(other => other[day])))];
        return ChangePoint.Find(apart, ShortestDays) is { } step && Math.Abs(step.Step) >= leastDb && step.F >= LeastF
            ? new((period.FirstHour + (24L * (step.After + 1))) * ProofPeriod.Hour, step.Step)
            : null;
    }
}
