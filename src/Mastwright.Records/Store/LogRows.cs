using System.Data.Common;
using Mastwright.Evidence;

namespace Mastwright.Records.Store;

/// <summary>Makes entries of the site log of rows, and rows of them.</summary>
internal static class LogRows
{
    internal static SiteLogEntry Insert(DbConnection connection, DbTransaction transaction, long network, SiteLogEntry entry, IReadOnlyList<ReadOnlyMemory<byte>> contents)
    {
        long number = 1 + connection.Number(transaction, "SELECT max(entry) FROM log_entry WHERE network = @network", ("@network", network));
        connection.Execute(
            transaction,
            "INSERT INTO log_entry (network, entry, time_microseconds, site, kind, fit_out, words) VALUES (@network, @entry, @time, @site, @kind, @fitout, @words)",
            ("@network", network),
            ("@entry", number),
            ("@time", entry.TimeMicroseconds),
            ("@site", entry.Site),
            ("@kind", entry.Kind.Word()),
            ("@fitout", entry.FitOut),
            ("@words", entry.Text));
        foreach ((int place, LogAttachment attachment) in entry.Attachments.Index())
        {
            connection.Execute(
                transaction,
                "INSERT INTO attachment (sha256, content) VALUES (@sha256, @content) ON CONFLICT (sha256) DO NOTHING",
                ("@sha256", attachment.Sha256),
                ("@content", contents[place].ToArray()));
            connection.Execute(
                transaction,
                "INSERT INTO log_attachment (network, entry, place, name, sha256) VALUES (@network, @entry, @place, @name, @sha256)",
                ("@network", network),
                ("@entry", number),
                ("@place", (long)place),
                ("@name", attachment.Name),
                ("@sha256", attachment.Sha256));
        }

        return entry with { Number = number };
    }

    internal static LogEntries Read(DbConnection connection, string network)
    {
        const string OfNetwork = "network = (SELECT network FROM network WHERE name = @network)";
        ILookup<long, LogAttachment> attachments = connection
            .Rows(row => (Entry: row.GetInt64(0), Attachment: new LogAttachment(row.GetString(1), row.GetString(2))), "SELECT entry, name, sha256 FROM log_attachment WHERE " + OfNetwork + " ORDER BY entry, place", ("@network", network))
            .ToLookup(one => one.Entry, one => one.Attachment);
        return new(connection.Rows(
            row => new SiteLogEntry
            {
                Number = row.GetInt64(0),
                TimeMicroseconds = row.GetInt64(1),
                Site = row.GetString(2),
                Kind = (SiteLogKind)SiteLogKinds.Words.IndexOf(row.GetString(3)),
                FitOut = row.TextOrNull(4),
                Text = row.GetString(5),
                Attachments = [.. attachments[row.GetInt64(0)]],
            },
            "SELECT entry, time_microseconds, site, kind, fit_out, words FROM log_entry WHERE " + OfNetwork,
            ("@network", network)));
    }
}
