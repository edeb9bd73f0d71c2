using Mastwright.Evidence.Statistics;
using Mastwright.Quantities;

namespace Mastwright.Evidence.Proof;

/// <summary>Holds two periods of one receiving station against each other.</summary>
public static class ProofExamination
{
    private const int DriftDays = 7;
    private const int WorthThreads = 32;
    private const double LeastFallDb = 1.5;

    /// <summary>What the two periods show.</summary>
    /// <param name="before">Receptions of the period before.</param>
    /// <param name="after">Receptions of the period after, with stations by the same list.</param>
    /// <param name="settings">What to work it out with.</param>
    public static ProofResult Run(ProofFold before, ProofFold after, ProofSettings settings)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        ArgumentNullException.ThrowIfNull(settings);
        bool[] listenedBefore = Listened(before);
        bool[] listenedAfter = Listened(after);
        int daysBefore = DaysOf(before.HeardByHour);
        int daysAfter = DaysOf(after.HeardByHour);
        List<SenderLevels> levels = [.. Each(Math.Max(before.Stations, after.Stations), station => new SenderLevels(station, before, after, listenedBefore, listenedAfter, settings))];
        double otherLosses = OtherLosses(levels);
        Each(levels.Count, station =>
        {
            levels[station].Compare(otherLosses);
            return true;
        });

        OwnSteps.Find(levels, before.Period, after.Period, settings);
        double firstMemory = MemoryOf(levels);
        ShiftEstimate?[] drifts = Each(levels.Count, station => levels[station].Drift(firstMemory, DriftDays));
        bool isFailing = IsFailing(levels, drifts);
        if (isFailing)
        {
            levels.ForEach(one => one.LeaveOutSlope(DriftDays));
        }

        double memory = MemoryOf(levels);
        List<StationProof> stations = [.. Each(levels.Count, station => levels[station].IsKnown ? levels[station].Proof(daysBefore, daysAfter, memory, drifts[station]) : null).OfType<StationProof>()];
        stations = CombinedShifts.SetAside(stations, settings.AloneDb);
        DayScores? noise = SameHours.Compare(
            new(before.NoiseDb, before.NoiseCount, before.Period.FirstHour), new(after.NoiseDb, after.NoiseCount, after.Period.FirstHour));
        return new(
            before,
            after,
            stations,
            CombinedShifts.Of(stations, memory, settings),
            noise is null ? null : ShiftEstimate.Of(noise, double.NaN, settings.Confidence, KeyedDraws.SeedOf("noise") ^ settings.Seed),
            Strange(levels, one => one.BeforeOffDb, settings.StrangeDb),
            Strange(levels, one => one.AfterOffDb, settings.StrangeDb),
            isFailing,
            levels.Exists(one => one.LimitAssumed));
    }

    /// <summary>Work that each station has to itself, on several threads where there are many: its draws are keyed by the station, so that nothing depends on the order.</summary>
    private static T[] Each<T>(int stations, Func<int, T> work)
    {
        T[] done = new T[stations];
        if (stations < WorthThreads)
        {
            for (int station = 0; station < stations; station++)
            {
                done[station] = work(station);
            }
        }
        else
        {
            Parallel.For(0, stations, station => done[station] = work(station));
        }

        return done;
    }

    /// <summary>Hours in which the station listened: all, but for those without any packet where the usual hour has several.</summary>
    private static bool[] Listened(ProofFold fold)
    {
        int[] sorted = [.. fold.HeardByHour.Order()];
        bool tells = sorted.Length > 0 && sorted[sorted.Length / 2] >= 5;
        return [.. fold.HeardByHour.Select(heard => heard > 0 || !tells)];
    }

    private static int DaysOf(int[] byHour) => Enumerable.Range(0, (byHour.Length + 23) / 24).Count(day => byHour.Skip(day * 24).Take(24).Any(heard => heard > 0));

    /// <summary>Share of packets lost for other reasons than their level: the median among stations that stand far above the limit.</summary>
    private static double OtherLosses(List<SenderLevels> levels)
    {
        double[] shares = [.. levels.Select(one => one.LossFarAboveLimit).Where(share => !double.IsNaN(share)).Order()];
        return shares.Length == 0 ? 0 : Math.Min(0.9, shares[shares.Length / 2]);
    }

    /// <summary>Autocorrelation from day to day, over all stations with days enough; NaN without any.</summary>
    private static double MemoryOf(List<SenderLevels> levels)
    {
        double[] all =
        [
            .. levels.Select(one => one.Scores).OfType<DayScores>()
                .Where(scores => scores.BeforeDays >= ShiftEstimate.LeastDays && scores.AfterDays >= ShiftEstimate.LeastDays)
                .Select(ShiftEstimate.Memory),
        ];
        return all.Length == 0 ? double.NaN : all.Average();
    }

    /// <summary>Whether stations fell together in the last week before, by more than what they are known to on average: they share the antenna, so their errors go together.</summary>
    private static bool IsFailing(List<SenderLevels> levels, ShiftEstimate?[] drifts)
    {
        ShiftEstimate[] told = [.. drifts.Where((drift, i) => drift?.Interval is not null && levels[i].Knowledge is ShiftKnowledge.Full or ShiftKnowledge.LossesCounted).OfType<ShiftEstimate>()];
        return told.Length >= 2
            && 3 * told.Count(drift => drift.Shift < 0) >= 2 * told.Length
            && told.Average(drift => drift.Shift) < -Math.Max(LeastFallDb, 1.5 * told.Average(drift => drift.StandardError));
    }

    /// <summary>Days on which at least half of the stations, and two at the least, were off their mean by more than a limit to the same side.</summary>
    private static StrangeDays Strange(List<SenderLevels> levels, Func<SenderLevels, double[]?> daysOff, double limitDb)
    {
        List<double[]> all = [.. levels.Where(one => one.Knowledge is ShiftKnowledge.Full).Select(daysOff).OfType<double[]>()];
        int days = all.Count < 2 ? 0 : all.Max(one => one.Length);
        int strong = 0;
        int weak = 0;
        for (int day = 0; day < days; day++)
        {
            double[] off = [.. all.Where(one => day < one.Length && !double.IsNaN(one[day])).Select(one => one[day])];
            strong += off.Length >= 2 && 2 * off.Count(value => value > limitDb) >= off.Length ? 1 : 0;
            weak += off.Length >= 2 && 2 * off.Count(value => value < -limitDb) >= off.Length ? 1 : 0;
        }

        return new(strong, weak, days);
    }
}
