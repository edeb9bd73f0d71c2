using Mastwright.Evidence;
using Mastwright.Records.Store;

namespace Mastwright.Records.Import;

/// <summary>A batch of records on its way to the store: of one of the two kinds.</summary>
internal sealed class RecordBatch
{
    internal List<KeyedRecord> Receptions { get; } = [];

    internal List<TelemetryRecord> Telemetry { get; } = [];

    internal int Count => Receptions.Count + Telemetry.Count;
}

/// <summary>Hands batches to the store on a second thread, one at a time and in order, while the next one is decoded.</summary>
/// <remarks>The store is used by this thread alone from the first batch until <see cref="Finish"/> has returned.</remarks>
internal sealed class BatchWriter(RecordStore store, string network)
{
    private const int FirstBatch = 512;
    private static readonly TimeSpan Soon = TimeSpan.FromMilliseconds(20);
    private static readonly TimeSpan Late = TimeSpan.FromMilliseconds(60);

    private Task<AddedBatch>? running;
    private int inIt;

    /// <summary>How many records the next batch should have: so many that a transaction stays short.</summary>
    internal int BatchSize { get; private set; } = FirstBatch;

    internal long Added { get; private set; }

    internal long AlreadyThere { get; private set; }

    internal TimeSpan LongestWrite { get; private set; }

    /// <summary>Waits for the batch before, and begins to write this one.</summary>
    /// <exception cref="RecordStoreException">The batch before could not be written; this one is not begun.</exception>
    internal void Begin(RecordBatch batch)
    {
        Finish();
        inIt = batch.Count;
        running = Task.Run(() => batch.Telemetry.Count > 0 ? store.AddTelemetry(network, batch.Telemetry) : store.Add(network, batch.Receptions));
    }

    /// <summary>Waits until what was begun is in the store.</summary>
    /// <exception cref="RecordStoreException">It could not be written.</exception>
    internal void Finish()
    {
        if (running is not { } begun)
        {
            return;
        }

        running = null;
        AddedBatch added = begun.GetAwaiter().GetResult();
        Added += added.Added;
        AlreadyThere += added.AlreadyThere;
        LongestWrite = added.WriteTime > LongestWrite ? added.WriteTime : LongestWrite;
        bool small = added.WriteTime < Soon && inIt >= BatchSize / 2;
        BatchSize = added.WriteTime > Late ? Math.Max(BatchSize / 2, 64) : small ? Math.Min(BatchSize * 2, RecordStore.MostInOneBatch) : BatchSize;
    }
}
