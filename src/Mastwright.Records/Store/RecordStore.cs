using Mastwright.Evidence;

namespace Mastwright.Records.Store;

/// <summary>Keeps the reception records of any number of networks: what every engine of the store promises.</summary>
/// <remarks>
/// <list type="bullet">
/// <item>A batch is there whole or not at all. When <see cref="Add"/> has returned, it outlives the end of the program by whatever means.</item>
/// <item>A record that is there already is not added again, whoever adds it and in whatever order.</item>
/// <item>Each added record has an ingest number, from 1 in each network. Numbers rise in the order in which batches become visible,
/// without gaps: who has read up to a number never finds a record below it later.</item>
/// <item>Several stores in several programs may be open on one place. One store is used by one thread at a time.</item>
/// <item>No transaction, and no reading, stays open between calls.</item>
/// </list>
/// </remarks>
public abstract class RecordStore : IDisposable
{
    /// <summary>The most records of one batch.</summary>
    public const int MostInOneBatch = 16_384;

    /// <summary>Adds a batch: all of it or, when this throws, nothing.</summary>
    /// <param name="network">The network's name, not empty.</param>
    /// <param name="batch">The records with their keys, at most <see cref="MostInOneBatch"/>.</param>
    /// <exception cref="ArgumentException">The name is empty or the batch too long.</exception>
    /// <exception cref="RecordStoreException">The store cannot be written now; its message is for the person.</exception>
    public abstract AddedBatch Add(string network, IReadOnlyList<KeyedRecord> batch);

    /// <summary>The records with ingest numbers above the one given, in rising order.</summary>
    /// <param name="network">The network's name; one that is not there has no records.</param>
    /// <param name="ingest">The last number already read; 0 for the beginning.</param>
    /// <param name="most">How many at most, one or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The most is not above zero.</exception>
    /// <exception cref="RecordStoreException">The store cannot be read; its message is for the person.</exception>
    public abstract IReadOnlyList<StoredRecord> ReadAfter(string network, long ingest, int most);

    /// <summary>How many records of a network the store holds.</summary>
    /// <exception cref="RecordStoreException">The store cannot be read; its message is for the person.</exception>
    public abstract long Count(string network);

    /// <summary>Closes the store.</summary>
    public void Dispose()
    {
        Dispose(disposing: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Closes what the engine holds.</summary>
    protected abstract void Dispose(bool disposing);
}
