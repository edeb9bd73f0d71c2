using System.Text;
using Mastwright.Evidence;
using Mastwright.Records.Import;
using Mastwright.Records.Store;

namespace Mastwright.Tests.Records;

/// <summary>An import into a store that is made for it, at a time of its own.</summary>
internal static class ImportRun
{
    /// <summary>What the clock of the computer shows while these imports run.</summary>
    private static readonly DateTimeOffset Now = new(2026, 8, 1, 0, 0, 0, TimeSpan.Zero);

    internal static (ReceptionRecord[] Records, ImportCount Count, string Rejected) Of(string mapping, string text)
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        ImportCount count = Into(store, file, mapping, Encoding.UTF8.GetBytes(text)).Count;
        return ([.. store.ReadAfter("skerrin", 0, 1000).Select(one => one.Record)], count, Rejected(file));
    }

    internal static RecordImport Into(RecordStore store, StoreFile file, string mapping, byte[] bytes) => Into(store, file, mapping, new MemoryStream(bytes));

    internal static RecordImport Into(RecordStore store, StoreFile file, string mapping, Stream data)
    {
        using RejectedRows rejected = new(file.Beside("rejected.csv"));
        RecordImport import = new(store, "skerrin", RecordMapping.Parse(mapping, "mapping.yaml"), rejected, new StillClock(Now));
        import.Run("rows.csv", data, null, TestContext.Current.CancellationToken);
        return import;
    }

    /// <summary>The side file; empty where there is none.</summary>
    internal static string Rejected(StoreFile file) => File.Exists(file.Beside("rejected.csv")) ? File.ReadAllText(file.Beside("rejected.csv")) : "";

    private sealed class StillClock(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;
    }
}
