using Mastwright.Jobs;

namespace Mastwright.Storage.Jobs;

/// <summary>A finished job, whose results are read one by one: they need not fit into memory together.</summary>
/// <remarks>While it is not disposed, nothing of it is thrown out of the store. Safe from many threads.</remarks>
public sealed class JobResult : IDisposable
{
    private readonly ResultStore? store;
    private readonly byte[]?[] inMemory;
    private int isDisposed;

    internal JobResult(Job job, ResultStore? store, byte[]?[] inMemory)
    {
        Job = job;
        this.store = store;
        this.inMemory = inMemory;
    }

    /// <summary>The job.</summary>
    public Job Job { get; }

    /// <summary>The result of a chunk; one that was lost or damaged since is made again.</summary>
    /// <param name="index">Which chunk, from 0.</param>
    /// <param name="cancellation">Stops the making.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public byte[] Read(int index, CancellationToken cancellation = default)
    {
        Chunk chunk = Job.Chunks[index];
        if (store is null || !Job.IsKept)
        {
            return inMemory[index]!;
        }

        if (store.Read(chunk.Key) is { } kept)
        {
            return kept;
        }

        byte[] made = chunk.Run(cancellation);
        store.Keep(chunk.Key, made);
        return made;
    }

    /// <summary>A part of the result of a chunk, without reading the rest of it: the whole was checked when the job was run.</summary>
    /// <param name="index">Which chunk, from 0.</param>
    /// <param name="offset">First byte wanted.</param>
    /// <param name="into">Room for the bytes wanted.</param>
    public void ReadPart(int index, long offset, Span<byte> into)
    {
        if (store is not null && Job.IsKept && store.TryReadPart(Job.Chunks[index].Key, offset, into))
        {
            return;
        }

        Read(index).AsSpan(checked((int)offset), into.Length).CopyTo(into);
    }

    /// <summary>Lets go of the results: from now on they are thrown out when the store's bound asks for it.</summary>
    public void Dispose()
    {
        if (Interlocked.Exchange(ref isDisposed, 1) == 0 && store is not null && Job.IsKept)
        {
            store.End(Job, isDone: true);
            store.Tidy();
        }
    }
}
