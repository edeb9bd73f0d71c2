using System.Collections.Immutable;

namespace Mastwright.Evidence;

/// <summary>The site log of one network, in the order of the times of its entries; entries of one time in the order of writing.</summary>
public sealed class LogEntries
{
    /// <summary>A log of these entries, in any order.</summary>
    public LogEntries(IEnumerable<SiteLogEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        All = [.. entries.OrderBy(entry => entry.TimeMicroseconds).ThenBy(entry => entry.Number)];
    }

    /// <summary>All entries.</summary>
    public ImmutableArray<SiteLogEntry> All { get; }

    /// <summary>The entry of a number; null where there is none.</summary>
    public SiteLogEntry? Find(long number) => All.FirstOrDefault(entry => entry.Number == number);

    /// <summary>The entries of one site.</summary>
    public ImmutableArray<SiteLogEntry> Of(string site) => [.. All.Where(entry => string.Equals(entry.Site, site, StringComparison.Ordinal))];

    /// <summary>The period between two entries, whichever was written first; null where one of them is not there.</summary>
    public LogPeriod? Between(long one, long other) => Find(one) is { } first && Find(other) is { } second
        ? new(Math.Min(first.TimeMicroseconds, second.TimeMicroseconds), Math.Max(first.TimeMicroseconds, second.TimeMicroseconds))
        : null;

    /// <summary>
    /// What lay before an entry at its site: from the entry before it there that changed something (fit-out, firmware, settings or fault) up to
    /// it; null where there is no such number.
    /// </summary>
    public LogPeriod? Before(long number) => Find(number) is { } entry
        ? new(Changes(entry).LastOrDefault(other => Precedes(other, entry))?.TimeMicroseconds ?? long.MinValue, entry.TimeMicroseconds)
        : null;

    /// <summary>What followed an entry at its site: from it up to the next entry there that changed something.</summary>
    public LogPeriod? After(long number) => Find(number) is { } entry
        ? new(entry.TimeMicroseconds, Changes(entry).FirstOrDefault(other => Precedes(entry, other))?.TimeMicroseconds ?? long.MaxValue)
        : null;

    private IEnumerable<SiteLogEntry> Changes(SiteLogEntry entry) =>
        All.Where(other => string.Equals(other.Site, entry.Site, StringComparison.Ordinal) && other.Kind != SiteLogKind.Weather);

    private static bool Precedes(SiteLogEntry one, SiteLogEntry other) =>
        (one.TimeMicroseconds, one.Number).CompareTo((other.TimeMicroseconds, other.Number)) < 0;
}
