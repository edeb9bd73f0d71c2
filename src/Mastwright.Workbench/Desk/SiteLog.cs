using Mastwright.Evidence;
using Mastwright.Plans;
using Mastwright.Records;
using Mastwright.Records.Log;
using Mastwright.Records.Store;
using Mastwright.Reports.Evidence;
using Mastwright.Workbench.Work;

namespace Mastwright.Workbench.Desk;

/// <summary>Adds to the site log.</summary>
internal sealed class SiteLog(RecordsDesk records, FileShelf files, TimeProvider time)
{
    /// <summary>Adds an entry; null, with what is wrong, when it cannot be.</summary>
    /// <param name="plan">The plan whose site it is about.</param>
    /// <param name="station">The site, or a fit-out of it.</param>
    /// <param name="kind">Word of the kind.</param>
    /// <param name="text">What was done or seen.</param>
    /// <param name="at">When, with its zone; null for now.</param>
    /// <param name="sent">Ids of files that were sent, to be attached.</param>
    /// <param name="problem">What is wrong; empty when nothing is.</param>
    internal SiteLogEntry? Add(Plan plan, string station, string kind, string text, string? at, IReadOnlyCollection<string> sent, out string problem)
    {
        if (LogEntryText.Read(plan, station, kind, text, at, UtcTime.Of(time.GetUtcNow()), out problem) is not { } entry)
        {
            problem = problem.TrimStart('-');
            return null;
        }

        List<AttachedFile> attached = [];
        foreach (string id in sent)
        {
            if (files.Find(id) is not { } file)
            {
                problem = "A file to attach is not here any more; send it again.";
                return null;
            }

            if (AttachedFile.Read(file.Path, out problem) is not { } read)
            {
                problem = $"{file.Name} is longer than an attachment may be (16 MiB).";
                return null;
            }

            attached.Add(read with { Attachment = read.Attachment with { Name = file.Name } });
        }

        try
        {
            using RecordStore store = records.Open();
            SiteLogEntry written = store.AddLogEntry(records.UsualNetwork(store), entry with { Attachments = [.. attached.Select(file => file.Attachment)] }, [.. attached.Select(file => (ReadOnlyMemory<byte>)file.Content)]);
            foreach (string id in sent)
            {
                files.Drop(id);
            }

            return written;
        }
        catch (RecordStoreException fault)
        {
            problem = fault.Message;
            return null;
        }
    }
}
