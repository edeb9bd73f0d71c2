using Mastwright.Jobs;

namespace Mastwright.Storage.Jobs;

/// <summary>A job on its way: what is done of it, and who waits.</summary>
/// <remarks>All but <see cref="Completion"/> is guarded by its own lock.</remarks>
internal sealed class JobRun
{
    private readonly Lock gate = new();
    private readonly TaskCompletionSource completion = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly CancellationTokenSource stop;
    private readonly IProgress<JobProgress>? progress;
    private readonly TimeProvider time;
    private readonly long start;
    private readonly double cost;
    private int left;
    private int done;
    private int found;
    private int damaged;
    private double doneCost;
    private double foundCost;
    private Exception? fault;

    internal JobRun(Job job, IProgress<JobProgress>? progress, TimeProvider time, CancellationToken cancellation)
    {
        Job = job;
        this.progress = progress;
        this.time = time;
        start = time.GetTimestamp();
        stop = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        Stop = stop.Token;
        left = job.Chunks.Length;
        cost = job.Chunks.Sum(chunk => chunk.Cost);
        InMemory = new byte[]?[job.IsKept ? 0 : job.Chunks.Length];
        if (left == 0)
        {
            End();
        }
    }

    internal Job Job { get; }

    /// <summary>Stops what is still to be done, when the caller wants it or a chunk has failed.</summary>
    internal CancellationToken Stop { get; }

    /// <summary>Ends when no chunk is left and none is being worked on.</summary>
    internal Task Completion => completion.Task;

    /// <summary>Results by chunk, of a job that is not kept on disk.</summary>
    internal byte[]?[] InMemory { get; }

    /// <summary>Works off one chunk: looks for it on disk, else makes it.</summary>
    internal void Work(int index, ResultStore? store)
    {
        try
        {
            Stop.ThrowIfCancellationRequested();
            Chunk chunk = Job.Chunks[index];
            if (store is null || !Job.IsKept)
            {
                InMemory[index] = chunk.Run(Stop);
                Count(chunk, ResultStore.Finding.Nothing);
                return;
            }

            ResultStore.Finding there = store.Find(chunk.Key);
            if (there != ResultStore.Finding.Whole)
            {
                store.Keep(chunk.Key, chunk.Run(Stop));
            }

            Count(chunk, there);
        }
        catch (Exception failure)
        {
            Fail(failure);
        }
        finally
        {
            Leave();
        }
    }

    private void Count(Chunk chunk, ResultStore.Finding there)
    {
        lock (gate)
        {
            done++;
            doneCost += chunk.Cost;
            found += there == ResultStore.Finding.Whole ? 1 : 0;
            foundCost += there == ResultStore.Finding.Whole ? chunk.Cost : 0;
            damaged += there == ResultStore.Finding.Damaged ? 1 : 0;
            TimeSpan elapsed = time.GetElapsedTime(start);
            double made = doneCost - foundCost;
            TimeSpan? remaining = made > 0 ? elapsed * ((cost - doneCost) / made) : null;
            progress?.Report(new(done, found, damaged, Job.Chunks.Length, doneCost / cost, elapsed, remaining));
        }
    }

    private void Fail(Exception failure)
    {
        lock (gate)
        {
            // What one failure stopped is not a failure of its own.
            fault = fault is null or OperationCanceledException ? failure : fault;
        }

        stop.Cancel();
    }

    private void Leave()
    {
        lock (gate)
        {
            if (--left > 0)
            {
                return;
            }
        }

        End();
    }

    private void End()
    {
        stop.Dispose();
        switch (fault)
        {
            case null:
                completion.SetResult();
                break;
            case OperationCanceledException cancelled:
                completion.SetCanceled(cancelled.CancellationToken);
                break;
            default:
                completion.SetException(fault);
                break;
        }
    }
}
