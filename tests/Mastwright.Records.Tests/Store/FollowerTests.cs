using Mastwright.Evidence;
using Mastwright.Records.Store;

namespace Mastwright.Tests.Records.Store;

public sealed class FollowerTests
{
    private const int Batches = 30;
    private const int InABatch = 200;

    [Fact]
    public async Task A_follower_of_two_parallel_writers_sees_every_record_once_and_in_order()
    {
        using StoreFile file = new();
        SqliteRecordStore.Open(file.Path).Dispose();
        using CancellationTokenSource patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromMinutes(2));
        Task<List<StoredRecord>> follower = Task.Run(() => Follow(file.Path, 2 * Batches * InABatch, patience.Token), patience.Token);
        await Task.WhenAll(Task.Run(() => Write(file.Path, "east"), patience.Token), Task.Run(() => Write(file.Path, "west"), patience.Token));

        List<StoredRecord> seen = await follower;
        Assert.Equal(Enumerable.Range(1, 2 * Batches * InABatch).Select(number => (long)number), seen.Select(one => one.Ingest));
        foreach (string writer in new[] { "east", "west" })
        {
            // Each writer's records in the order in which it wrote them.
            Assert.Equal(
                Enumerable.Range(0, Batches * InABatch).Select(number => (long)number),
                seen.Where(one => one.Record.Receiver == writer).Select(one => one.Record.TimeMicroseconds));
        }
    }

    private static void Write(string path, string receiver)
    {
        using SqliteRecordStore store = SqliteRecordStore.Open(path);
        for (int batch = 0; batch < Batches; batch++)
        {
            store.Add("skerrin", SqliteRecordStoreTests.Keyed([.. Enumerable.Range(batch * InABatch, InABatch).Select(number =>
                new ReceptionRecord { TimeMicroseconds = number, TimeResolutionMicroseconds = 1, Receiver = receiver })]));
        }
    }

    private static List<StoredRecord> Follow(string path, int until, CancellationToken cancellation)
    {
        using SqliteRecordStore store = SqliteRecordStore.Open(path);
        List<StoredRecord> seen = [];
        while (seen.Count < until)
        {
            cancellation.ThrowIfCancellationRequested();
            seen.AddRange(store.ReadAfter("skerrin", seen.Count == 0 ? 0 : seen[^1].Ingest, 137));
        }

        return seen;
    }
}
