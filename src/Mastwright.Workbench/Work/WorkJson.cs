using System.Globalization;
using Mastwright.Reports.Documents;

namespace Mastwright.Workbench.Work;

/// <summary>Work that was asked for as a JSON document of shape "work", version 1.</summary>
internal static class WorkJson
{
    internal static string Write(IEnumerable<WorkItem> items) => JsonDocumentWriter.Write("work", 1, writer =>
    {
        writer.WriteStartArray("items");
        foreach (WorkItem item in items)
        {
            writer.WriteStartObject();
            writer.WriteString("id", item.Id);
            writer.WriteString("kind", item.Work.Kind);
            writer.WriteString("title", item.Work.Title(item.Question));
            writer.WriteString("asked", item.Asked.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture));
            writer.WriteString("state", Word(item.State));
            writer.WriteString("unit", item.Work.Unit);
            writer.WriteNumber("done", item.Done);
            writer.Number("total", item.Total);
            writer.Strings("problems", item.Problems);
            writer.WriteStartArray("files");
            foreach (string file in item.State == WorkState.Done ? WorkFiles.Names(item) : [])
            {
                writer.WriteStringValue(file);
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    });

    internal static string Word(WorkState state) => state switch
    {
        WorkState.Waiting => "waiting",
        WorkState.Running => "running",
        WorkState.Done => "done",
        WorkState.Cancelled => "cancelled",
        _ => "failed",
    };
}
