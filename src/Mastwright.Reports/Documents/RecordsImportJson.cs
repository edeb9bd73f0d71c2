using Mastwright.Records.Import;

namespace Mastwright.Reports.Documents;

/// <summary>What an import did as a JSON document of shape "records-import", version 1.</summary>
internal static class RecordsImportJson
{
    /// <summary>The document.</summary>
    /// <param name="network">The network that the records are of.</param>
    /// <param name="store">Where they are.</param>
    /// <param name="count">What was done.</param>
    /// <param name="rejected">What was no record.</param>
    /// <param name="inStore">Receptions of the network in the store now.</param>
    internal static string Write(string network, string store, ImportCount count, RejectedRows rejected, long inStore) => JsonDocumentWriter.Write("records-import", 1, writer =>
    {
        writer.WriteString("network", network);
        writer.WriteString("store", store);
        writer.WriteNumber("rows", count.Rows);
        writer.WriteNumber("added", count.Added);
        writer.WriteNumber("already-there", count.AlreadyThere);
        writer.WriteNumber("not-heard", count.NotHeard);
        writer.WriteNumber("rejected", rejected.Count);
        writer.WriteStartArray("reasons");
        foreach ((string reason, long rows) in rejected.Reasons)
        {
            writer.WriteStartObject();
            writer.WriteString("reason", reason);
            writer.WriteNumber("rejected-rows", rows);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteString("rejected-file", rejected.Count > 0 ? rejected.Path : null);
        writer.WriteNumber("records-in-network", inStore);
        writer.Number("longest-write-seconds", count.LongestWrite.TotalSeconds);
    });
}
