namespace Mastwright.Evidence.Proof;

/// <summary>What was lost of a station's own packets within a period: by the packets' numbers where they count up, else by the interval at which it sends.</summary>
/// <param name="Heard">Packets heard of those that count.</param>
/// <param name="Lost">Packets lost, hour by hour; none in hours in which the receiver did not listen.</param>
internal sealed record SenderLosses(long Heard, double[] Lost)
{
    /// <summary>A clock that is a little fast, and packets at both ends of a period, do not make an interval wrong.</summary>
    private const double MostOften = 1.1;
    private const int MostMore = 3;

    internal double Total { get; } = Lost.Sum();

    /// <summary>Counts them; null where nothing tells them.</summary>
    /// <param name="period">What was heard; null where nothing was.</param>
    /// <param name="listened">Hours in which the receiver listened.</param>
    /// <param name="everySeconds">Time from one own packet to the next; null when not known.</param>
    /// <param name="isTooOften">Whether more was heard than that interval allows: then it does not hold.</param>
    internal static SenderLosses? Of(SenderPeriod? period, bool[] listened, double? everySeconds, out bool isTooOften)
    {
        isTooOften = false;
        return period is null ? null
            : period.CountsUp ? new(period.Counted, [.. period.Lost.Select((lost, hour) => listened[hour] ? lost : 0)])
            : everySeconds is { } seconds ? Missing(period, listened, 3600 / seconds, out isTooOften)
            : null;
    }

    /// <summary>Packets that should have come and did not, day by day. A day without any packet tells nothing: the station may have been off.</summary>
    private static SenderLosses? Missing(SenderPeriod period, bool[] listened, double anHour, out bool isTooOften)
    {
        double[] lost = new double[period.Own.Length];
        long all = 0;
        double expected = 0;
        for (int first = 0; first < lost.Length; first += 24)
        {
            int[] hours = [.. Enumerable.Range(first, Math.Min(24, lost.Length - first)).Where(hour => listened[hour])];
            int heard = hours.Sum(hour => period.Own[hour]);
            if (heard > 0)
            {
                all += heard;
                expected += anHour * hours.Length;
                lost[hours[0]] = Math.Max(0, (anHour * hours.Length) - heard);
            }
        }

        isTooOften = all > (MostOften * expected) + MostMore;
        return isTooOften ? null : new(all, lost);
    }
}
