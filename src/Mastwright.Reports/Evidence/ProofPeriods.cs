using System.Globalization;
using Mastwright.Evidence;
using Mastwright.Evidence.Proof;
using Mastwright.Records;
using Mastwright.Records.Store;

namespace Mastwright.Reports.Evidence;

/// <summary>The two periods of a proof, as given or by an entry of the site log.</summary>
internal static class ProofPeriods
{
    /// <summary>Both periods; told, with null, where they cannot be.</summary>
    internal static (ProofPeriod Before, ProofPeriod After)? Of(ProveRequest request, RecordStore store, string network, Action<string> tell)
    {
        if (request.Entry is { } entry)
        {
            return request.Before is null && request.After is null ? ByEntry(entry, request.Site, store, network, tell) : Wrong(tell, "--entry takes the place of --before and --after");
        }

        if (request.Before is null || request.After is null)
        {
            return Wrong(tell, "Give both periods, --before FROM..TO and --after FROM..TO, or --entry with the log entry of the change");
        }

        if (Period("--before", request.Before, tell) is not { } before || Period("--after", request.After, tell) is not { } after)
        {
            return null;
        }

        return before.ToMicroseconds <= after.FromMicroseconds ? (before, after) : Wrong(tell, "The period before must end before the one after begins");
    }

    private static (ProofPeriod Before, ProofPeriod After)? ByEntry(int number, string site, RecordStore store, string network, Action<string> tell)
    {
        LogEntries log = store.ReadLog(network);
        if (log.Find(number) is not { } entry || log.Before(number) is not { } before || log.After(number) is not { } after)
        {
            return Wrong(tell, string.Create(CultureInfo.InvariantCulture, $"--entry: the site log has no entry {number}; 'log show' lists them"));
        }

        if (entry.Site != site)
        {
            return Wrong(tell, string.Create(CultureInfo.InvariantCulture, $"--entry: entry {number} is about {entry.Site}, not {site}"));
        }

        // An open end is where the records begin or end.
        return store.Span(network, before.FromMicroseconds, before.ToMicroseconds) is { } early && store.Span(network, after.FromMicroseconds, after.ToMicroseconds) is { } late
            ? (new(Math.Max(before.FromMicroseconds, early.First), before.ToMicroseconds), new(after.FromMicroseconds, Math.Min(after.ToMicroseconds, late.Last + 1)))
            : Wrong(tell, string.Create(CultureInfo.InvariantCulture, $"There are no records {(store.Span(network, before.FromMicroseconds, before.ToMicroseconds) is null ? "before" : "after")} entry {number}"));
    }

    /// <summary>A period as text; told, with null, where it is none.</summary>
    internal static ProofPeriod? Period(string option, string text, Action<string> tell)
    {
        string[] ends = text.Split("..");
        if (ends.Length != 2 || Moment(ends[0]) is not { } from || Moment(ends[1]) is not { } to)
        {
            tell($"{option}: '{text}' is no period; write two days or times in UTC, such as 2026-06-01..2026-07-01 or 2026-06-01T06:00Z..2026-07-01T12:00Z");
            return null;
        }

        if (to <= from)
        {
            tell($"{option}: '{text}' ends before it begins");
            return null;
        }

        return new(from, to);
    }

    private static long? Moment(string text) =>
        DateTimeOffset.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset day) ? UtcTime.Of(day)
        : UtcTime.TryParse(text, out long moment) ? moment
        : null;

    private static (ProofPeriod, ProofPeriod)? Wrong(Action<string> tell, string problem)
    {
        tell(problem);
        return null;
    }
}
