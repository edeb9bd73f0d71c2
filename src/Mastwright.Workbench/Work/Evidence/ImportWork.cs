using System.Globalization;
using Mastwright.Records.Import;
using Mastwright.Records.Store;
using Mastwright.Reports.Documents;
using Mastwright.Workbench.Desk;

namespace Mastwright.Workbench.Work.Evidence;

/// <summary>Brings a file that was sent into the store by a mapping. After the server's end it goes on: what is there is not added twice.</summary>
internal sealed class ImportWork(RecordsDesk records, FileShelf files) : IWork
{
    public string Kind => "import";

    public string Unit => "rows";

    public bool GoesOn => true;

    public bool HangsOnPlan => false;

    public string Title(WorkQuestion question) => $"Import of {question["name"] ?? "a file"}";

    public WorkAnswer? Run(WorkItem item, Action<string> tell)
    {
        string id = item.Question["file"] ?? "";
        if (files.Find(id) is not { } file || !File.Exists(files.Beside(id, ".mapping")))
        {
            tell("The file is not here any more; send it again.");
            return null;
        }

        RecordMapping mapping = RecordMapping.Parse(File.ReadAllText(files.Beside(id, ".mapping")), "the mapping");
        using RecordStore store = records.Open();
        string network = item.Question["network"] ?? mapping.Network ?? records.UsualNetwork(store);
        string rejectedPath = files.Beside(id, ".rejected.csv");
        using RejectedRows rejected = new(rejectedPath);
        RecordImport import = new(store, network, mapping, rejected);
        using (FileStream stream = File.OpenRead(file.Path))
        {
            import.Run(file.Name, stream, item, item.Cancellation);
        }

        ImportCount count = import.Count;
        string document = RecordsImportJson.Write(network, records.ShownPlace, count, rejected, store.Count(network));
        rejected.Dispose();
        files.Drop(id);
        return new()
        {
            Json = document,
            Sentences =
            [
                string.Create(CultureInfo.InvariantCulture, $"{count.Rows} rows of {file.Name} read: {count.Added} records added to network '{network}', {count.AlreadyThere} were there already, {rejected.Count} rows rejected."),
                .. import.NeverThere.Select(field => $"In no row: {field}. The mapping may be wrong there."),
            ],
            Tables = rejected.Count == 0 ? [] :
            [
                new("rejected-reasons", "Rows that are no records, by reason", [new("reason"), new("rows", true)], [.. rejected.Reasons.Select(one => new WorkRow([one.Key, one.Value.ToString(CultureInfo.InvariantCulture)]))]),
            ],
            Files = rejected.Count == 0 ? [] : [new("rejected.csv", "text/csv; charset=utf-8", () => File.ReadAllBytes(rejectedPath))],
        };
    }
}
