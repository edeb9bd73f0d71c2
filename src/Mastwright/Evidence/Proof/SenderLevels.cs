using Mastwright.Evidence.Statistics;
using Mastwright.Quantities;

namespace Mastwright.Evidence.Proof;

/// <summary>One station's levels in two periods, on the way to its proof.</summary>
internal sealed class SenderLevels
{
    private const double FarAboveDb = 10;

    private readonly int station;
    private readonly ProofFold before;
    private readonly ProofFold after;
    private readonly ProofSettings settings;
    private readonly SenderPeriod? one;
    private readonly SenderPeriod? two;
    private readonly double limitSnrDb = double.NaN;
    private readonly double lowBefore = double.NaN;
    private readonly double lowAfter = double.NaN;
    private readonly bool sendsMoreOften;
    private readonly SenderLosses? lostBefore;
    private readonly SenderLosses? lostAfter;

    // Each is asked for once for every other station.
    private readonly Lazy<double[]?> beforeOffDb;
    private readonly Lazy<double[]?> afterOffDb;

    internal SenderLevels(int station, ProofFold before, ProofFold after, bool[] listenedBefore, bool[] listenedAfter, ProofSettings settings)
    {
        this.station = station;
        this.before = before;
        this.after = after;
        this.settings = settings;
        one = before.Direct(station);
        two = after.Direct(station);
        beforeOffDb = new(() => Days(one, before.Period));
        afterOffDb = new(() => Days(two, after.Period));
        double? everySeconds = settings.SendsEverySeconds(station);
        lostBefore = SenderLosses.Of(one, listenedBefore, everySeconds, out bool isTooOftenBefore);
        lostAfter = SenderLosses.Of(two, listenedAfter, everySeconds, out bool isTooOftenAfter);
        sendsMoreOften = isTooOftenBefore || isTooOftenAfter;
        int spreadingFactor = Told(one, two) is > 0 and int told ? told : settings.UsualSpreadingFactor;
        limitSnrDb = spreadingFactor > 0 ? settings.LimitSnrDb(spreadingFactor) ?? double.NaN : double.NaN;
        lowBefore = one?.SnrQuantileDb(0.1) ?? double.NaN;
        lowAfter = two?.SnrQuantileDb(0.1) ?? double.NaN;
        if (double.IsNaN(limitSnrDb) && (one ?? two) is not null)
        {
            limitSnrDb = Math.Min(Lowest(one), Lowest(two));
            LimitAssumed = one is not null && two is not null;
        }
    }

    internal bool LimitAssumed { get; }

    internal ShiftKnowledge Knowledge { get; private set; }

    internal DayScores? Scores { get; private set; }

    /// <summary>A step that the others did not make; set from outside.</summary>
    internal OwnStep? OwnStep { get; set; }

    /// <summary>Whether anything of the station was heard, directly or through others.</summary>
    internal bool IsKnown => one is not null || two is not null || before.Hops(station).Length > 0 || after.Hops(station).Length > 0;

    /// <summary>Share of its packets that are lost although it stands far above the limit; NaN where that cannot be told.</summary>
    internal double LossFarAboveLimit => lostBefore is { } first && lostAfter is { } second && Math.Min(lowBefore, lowAfter) - limitSnrDb > FarAboveDb
        ? (first.Total + second.Total) / (first.Total + second.Total + first.Heard + second.Heard)
        : double.NaN;

    /// <summary>How far each day of the period before was off the mean, in dB; null without levels.</summary>
    internal double[]? BeforeOffDb => beforeOffDb.Value;

    /// <summary>The same of the period after.</summary>
    internal double[]? AfterOffDb => afterOffDb.Value;

    /// <summary>Finds the shift, and how much of it is known.</summary>
    internal void Compare(double otherLosses)
    {
        if (one is null || two is null || SameHours.Compare(Powers(one, before), Powers(two, after)) is not { } plain)
        {
            return;
        }

        bool clearBefore = lowBefore - limitSnrDb >= settings.ClearanceDb;
        bool clearAfter = lowAfter - limitSnrDb >= settings.ClearanceDb;
        Scores = plain;
        if (clearBefore && clearAfter)
        {
            Knowledge = ShiftKnowledge.Full;
        }
        else if (Censored(otherLosses) is { } counted)
        {
            Knowledge = ShiftKnowledge.LossesCounted;
            Scores = counted;
        }
        else
        {
            Knowledge = clearAfter ? ShiftKnowledge.AtLeast : clearBefore ? ShiftKnowledge.AtMost : ShiftKnowledge.Open;
        }
    }

    /// <summary>Takes the slope of an old fit-out that failed out of what counts as chance.</summary>
    internal void LeaveOutSlope(int days) => Scores = Scores?.WithoutSlope(days);

    internal StationProof Proof(int daysBefore, int daysAfter, double memory, ShiftEstimate? drift)
    {
        DayScores? snr = one is null || two is null || Knowledge is ShiftKnowledge.None ? null : SameHours.Compare(
            new(one.SnrDb, one.Levels, before.Period.FirstHour), new(two.SnrDb, two.Levels, after.Period.FirstHour));
        bool onlyOne = (one is null) != (two is null);
        return new(
            station,
            Summary(one, before.Hops(station), daysBefore, lostBefore),
            Summary(two, after.Hops(station), daysAfter, lostAfter),
            !onlyOne ? null : one is null ? Chance.OneSided(Math.Min(two!.DaysHeard, daysAfter), daysAfter, daysBefore) : Chance.OneSided(Math.Min(one.DaysHeard, daysBefore), daysBefore, daysAfter),
            Knowledge,
            Scores is null ? null : Estimate(Scores, memory, 1),
            snr is null ? null : Estimate(snr, memory, 2),
            drift,
            MovedAlone: false,
            OwnStep)
        {
            Scores = Scores,
            SendsMoreOften = sendsMoreOften,
        };
    }

    private ShiftEstimate Estimate(DayScores scores, double memory, ulong what) =>
        ShiftEstimate.Of(scores, memory, settings.Confidence, settings.Seed ^ ((ulong)(station + 1) << 8) ^ (what << 56));

    /// <summary>The last week before against what came before it: an old fit-out that was failing already.</summary>
    internal ShiftEstimate? Drift(double memory, int days)
    {
        int hours = days * 24;
        if (one is null || one.Heard.Length < 2 * hours)
        {
            return null;
        }

        int split = one.Heard.Length - hours;
        return SameHours.Compare(
            new(one.PowerDb.AsMemory(0, split), one.Levels.AsMemory(0, split), before.Period.FirstHour),
            new(one.PowerDb.AsMemory(split), one.Levels.AsMemory(split), before.Period.FirstHour + split)) is { } scores
            ? Estimate(scores, memory, 3)
            : null;
    }

    private DayScores? Censored(double otherLosses)
    {
        // One limit in dBm for both periods would mix up a quieter receiver with a stronger signal.
        double limitBefore = Noise(before) + limitSnrDb;
        double limitAfter = Noise(after) + limitSnrDb;
        return lostBefore is null || lostAfter is null || double.IsNaN(limitBefore) || double.IsNaN(limitAfter)
            || CensoredMean.Fit(CensoredDays(one!, lostBefore), limitBefore, otherLosses) is not { } first
            || CensoredMean.Fit(CensoredDays(two!, lostAfter), limitAfter, otherLosses) is not { } second
            ? null
            : new(second.MeanDbm - first.MeanDbm, first.Scores, second.Scores, one!.DaysHeard, two!.DaysHeard);
    }

    private static double Noise(ProofFold fold) => fold.NoiseCount.Sum() is > 0 and int count ? fold.NoiseDb.Sum() / count : double.NaN;

    private static CensoredDay[] CensoredDays(SenderPeriod period, SenderLosses losses)
    {
        CensoredDay[] days = new CensoredDay[(period.Heard.Length + 23) / 24];
        for (int hour = 0; hour < period.Heard.Length; hour++)
        {
            CensoredDay day = days[hour / 24];
            days[hour / 24] = new(day.Count + period.Levels[hour], day.Sum + period.PowerDb[hour], day.Squares + period.PowerSquares[hour], day.Lost + losses.Lost[hour]);
        }

        return days;
    }

    private static HourlySeries Powers(SenderPeriod period, ProofFold fold) => new(period.PowerDb, period.Levels, fold.Period.FirstHour);

    private static double[]? Days(SenderPeriod? period, ProofPeriod span)
    {
        if (period is null || SameHours.Compare(new(period.PowerDb, period.Levels, span.FirstHour), new(period.PowerDb, period.Levels, span.FirstHour)) is not { } scores)
        {
            return null;
        }

        // A day's part in the mean, times the number of days, is how far the day itself is off.
        return [.. scores.BeforeScores.Select((score, day) => period.Levels.AsSpan(day * 24, Math.Min(24, period.Levels.Length - (day * 24))).ContainsAnyExcept(0) ? score * scores.BeforeDays : double.NaN)];
    }

    private static HeardSummary Summary(SenderPeriod? period, ReadOnlySpan<long> hops, int days, SenderLosses? losses)
    {
        int heard = Math.Min(period?.DaysHeard ?? 0, days);
        return new(
            period?.Total ?? 0,
            heard,
            days,
            days == 0 ? null : Wilson.Interval(heard, days),
            losses?.Heard ?? 0,
            losses?.Total ?? 0,
            losses is null ? null : Wilson.Interval(losses.Heard, losses.Heard + losses.Total),
            period?.SnrQuantileDb(0.1) ?? double.NaN,
            Most(hops));
    }

    private static int? Most(ReadOnlySpan<long> hops)
    {
        int most = 0;
        for (int i = 1; i < hops.Length; i++)
        {
            most = hops[i] > hops[most] ? i : most;
        }

        return hops.IsEmpty ? null : most;
    }

    private static int Told(SenderPeriod? one, SenderPeriod? two) => Math.Max(one?.SpreadingFactor ?? 0, two?.SpreadingFactor ?? 0);

    private static double Lowest(SenderPeriod? period) => period?.SnrQuantileDb(0.005) is double low && !double.IsNaN(low) ? low : double.PositiveInfinity;
}
