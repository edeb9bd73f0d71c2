using Mastwright.Evidence;
using Mastwright.Plans;
using Mastwright.Records;

namespace Mastwright.Reports.Evidence;

/// <summary>Reads an entry of the site log as a keeper gives it.</summary>
internal static class LogEntryText
{
    /// <summary>The entry, without attachments; null, with what is wrong, when there is none.</summary>
    /// <param name="plan">The plan whose site it is about.</param>
    /// <param name="station">The site, or one of its fit-outs as "ferry-house/net-loft".</param>
    /// <param name="kind">Word of the kind: one of <see cref="SiteLogKinds.Words"/>.</param>
    /// <param name="text">What was done or seen.</param>
    /// <param name="at">When, with its zone; null for now.</param>
    /// <param name="nowMicroseconds">Now, in microseconds of UTC.</param>
    /// <param name="problem">What is wrong; empty when nothing is.</param>
    internal static SiteLogEntry? Read(Plan plan, string station, string kind, string text, string? at, long nowMicroseconds, out string problem)
    {
        string[] parts = station.Split('/', 2);
        Site? site = plan.Sites.FirstOrDefault(one => string.Equals(one.Key, parts[0], StringComparison.Ordinal));
        string? fitOut = parts.Length > 1 ? parts[1] : null;
        int place = SiteLogKinds.Words.IndexOf(kind);
        long time = nowMicroseconds;
        problem =
            site is null ? $"'{parts[0]}' is no site of the plan; there are {string.Join(", ", plan.Sites.Select(one => one.Key))}"
            : fitOut is not null && site.FitOuts.All(one => !string.Equals(one.Key, fitOut, StringComparison.Ordinal)) ? $"'{station}' names no fit-out; there are {FitOuts(site)}"
            : place < 0 ? $"'{kind}' is no kind of entry; there are {string.Join(", ", SiteLogKinds.Words)}"
            : (SiteLogKind)place == SiteLogKind.FitOut && fitOut is null ? $"an entry of kind fit-out names the one that is in use from then on: {FitOuts(site)}"
            : text.Trim().Length == 0 ? "TEXT is empty; say what was done or seen"
            : at is not null && !UtcTime.TryParse(at, out time) ? $"--at: '{at}' is no time with its zone, such as 2026-07-01T12:00Z"
            : time > nowMicroseconds ? $"--at: {at} is in the future"
            : "";
        return problem.Length > 0 ? null : new() { TimeMicroseconds = time, Site = site!.Key, Kind = (SiteLogKind)place, FitOut = fitOut, Text = text.Trim() };
    }

    private static string FitOuts(Site site) => string.Join(", ", site.FitOuts.Select(one => $"{site.Key}/{one.Key}"));
}
