using System.Collections.Immutable;
using Mastwright.Evidence;
using Mastwright.Records;
using Mastwright.Records.Log;

namespace Mastwright.Reports.Documents;

/// <summary>A site log as a JSON document of shape "log", version 1.</summary>
internal static class LogJson
{
    /// <summary>The document.</summary>
    /// <param name="network">The network whose log it is.</param>
    /// <param name="log">The entries.</param>
    /// <param name="changes">What changed from settings to settings, by entry.</param>
    internal static string Write(string network, LogEntries log, IReadOnlyDictionary<long, ImmutableArray<SettingsChange>> changes) => JsonDocumentWriter.Write("log", 1, writer =>
    {
        writer.WriteString("network", network);
        writer.WriteStartArray("entries");
        foreach (SiteLogEntry entry in log.All)
        {
            writer.WriteStartObject();
            writer.WriteNumber("entry", entry.Number);
            writer.WriteString("time", UtcTime.Text(entry.TimeMicroseconds));
            writer.WriteString("kind", entry.Kind.Word());
            writer.WriteString("site", entry.Site);
            writer.WriteString("fit-out", entry.FitOut);
            writer.WriteString("text", entry.Text);
            writer.WriteStartArray("attachments");
            foreach (LogAttachment attachment in entry.Attachments)
            {
                SettingsChange? change = changes.GetValueOrDefault(entry.Number, []).FirstOrDefault(one => ReferenceEquals(one.Attachment, attachment));
                writer.WriteStartObject();
                writer.WriteString("name", attachment.Name);
                writer.WriteString("sha256", attachment.Sha256);
                writer.Number("compared-with-entry", change?.BeforeNumber);
                if (change?.Lines is { } lines)
                {
                    writer.Strings("changed-lines", lines);
                }
                else
                {
                    writer.WriteNull("changed-lines");
                }

                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    });
}
