using System.Collections.Immutable;
using Mastwright.Evidence;
using Mastwright.Records.Store;

namespace Mastwright.Records.Log;

/// <summary>What an attachment of settings changed against the one before it.</summary>
/// <param name="Attachment">The attachment.</param>
/// <param name="BeforeNumber">The number of the entry that has the one before.</param>
/// <param name="Lines">The lines that went and came; null where they cannot be compared line by line.</param>
public sealed record SettingsChange(LogAttachment Attachment, long BeforeNumber, ImmutableArray<string>? Lines);

/// <summary>Finds what consecutive settings of one site have changed.</summary>
public static class SettingsHistory
{
    /// <summary>The changes of each entry of settings that follows another at its site, by the entry's number.</summary>
    /// <remarks>An attachment is held against the last earlier one of its name; where each entry has but one, against that, whatever its name.</remarks>
    /// <exception cref="RecordStoreException">The store cannot be read.</exception>
    public static IReadOnlyDictionary<long, ImmutableArray<SettingsChange>> Of(RecordStore store, LogEntries log)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(log);
        Dictionary<long, ImmutableArray<SettingsChange>> changes = [];
        foreach (IGrouping<string, SiteLogEntry> site in log.All.Where(entry => entry.Kind == SiteLogKind.Settings && entry.Attachments.Length > 0).GroupBy(entry => entry.Site, StringComparer.Ordinal))
        {
            List<SiteLogEntry> earlier = [];
            foreach (SiteLogEntry entry in site)
            {
                changes[entry.Number] = [.. entry.Attachments.Select(attachment => Change(store, earlier, entry, attachment)).OfType<SettingsChange>()];
                earlier.Insert(0, entry);
            }
        }

        return changes;
    }

    private static SettingsChange? Change(RecordStore store, List<SiteLogEntry> earlier, SiteLogEntry entry, LogAttachment attachment)
    {
        foreach (SiteLogEntry before in earlier)
        {
            LogAttachment? same = before.Attachments.FirstOrDefault(one => string.Equals(one.Name, attachment.Name, StringComparison.Ordinal))
                ?? (before.Attachments.Length == 1 && entry.Attachments.Length == 1 ? before.Attachments[0] : null);
            if (same is not null)
            {
                return new(attachment, before.Number, LineDifference.Between(store.ReadAttachment(same.Sha256) ?? [], store.ReadAttachment(attachment.Sha256) ?? []));
            }
        }

        return null;
    }
}
