using Mastwright.Jobs;

namespace Mastwright.Storage.Jobs;

/// <summary>Works off jobs, several at once, chunk by chunk on a bounded number of threads: a drag first, then what somebody waits for, then searches.</summary>
/// <remarks>
/// <para>
/// A chunk is one thread's work from beginning to end; which thread, and in what company, does not change its bytes. When a thread is free
/// it takes the next chunk of the most urgent job, and among equals of the one that came first.
/// </para>
/// <para>
/// A finished chunk of a kept job is on disk before the job counts it: after a cancel or a kill the same job goes on with the others.
/// Results that are on disk already, from this or any other job, are not made again. Safe from many threads.
/// </para>
/// </remarks>
public sealed class JobRunner : IDisposable
{
    private readonly Lock gate = new();
    private readonly PriorityQueue<(JobRun Run, int Chunk), (JobPriority Priority, long Order, int Chunk)> waiting = new();
    private readonly SemaphoreSlim anyWork = new(0);
    private readonly SemaphoreSlim dragWork = new(0);
    private readonly CancellationTokenSource closing = new();
    private readonly ResultStore? store;
    private readonly TimeProvider time;
    private readonly Thread[] threads;
    private long order;
    private bool isStarted;

    /// <summary>Makes a runner; its threads start with its first job.</summary>
    /// <param name="store">Where finished chunks are kept; null to hold them in memory.</param>
    /// <param name="options">How to work; null for the defaults.</param>
    /// <param name="time">The clock that progress is told by; null for the machine's.</param>
    public JobRunner(ResultStore? store, JobRunnerOptions? options = null, TimeProvider? time = null)
    {
        this.store = store;
        this.time = time ?? TimeProvider.System;
        int count = (options ?? new()).Threads;
        threads =
        [
            .. Enumerable.Range(1, count).Select(number => NewThread($"jobs {number}", dragsAlone: false)),
            NewThread("jobs for drags", dragsAlone: true),
        ];
    }

    /// <summary>Works off a job.</summary>
    /// <param name="job">The job.</param>
    /// <param name="progress">Told after each chunk, from any thread, one call at a time; null for nobody.</param>
    /// <param name="cancellation">Stops the job; the task then ends once no chunk of it is worked on any more. What is finished is kept.</param>
    /// <returns>The results. To be disposed when they were read.</returns>
    /// <exception cref="OperationCanceledException">The job was cancelled, or the runner disposed.</exception>
    /// <exception cref="IOException">A finished chunk cannot be kept.</exception>
    /// <remarks>Whatever a chunk throws ends the job and is thrown here, after the others that were being worked on have stopped.</remarks>
    public async Task<JobResult> RunAsync(Job job, IProgress<JobProgress>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        cancellation.ThrowIfCancellationRequested();
        ResultStore? keeper = job.IsKept ? store : null;
        Job kept = keeper is null ? job with { IsKept = false } : job;
        using CancellationTokenSource either = CancellationTokenSource.CreateLinkedTokenSource(cancellation, closing.Token);
        JobRun run = new(kept, progress, time, either.Token);
        keeper?.Begin(kept);
        bool isDone = false;
        try
        {
            Queue(run);
            await run.Completion.ConfigureAwait(false);
            isDone = true;
            return new(kept, keeper, run.InMemory);
        }
        finally
        {
            if (!isDone)
            {
                keeper?.End(kept, isDone: false);
            }
        }
    }

    /// <summary>Stops all jobs and waits until no chunk is worked on.</summary>
    public void Dispose()
    {
        bool wasStarted;
        lock (gate)
        {
            if (closing.IsCancellationRequested)
            {
                return;
            }

            closing.Cancel();
            wasStarted = isStarted;
        }

        anyWork.Release(threads.Length);
        dragWork.Release();
        if (wasStarted)
        {
            foreach (Thread thread in threads)
            {
                thread.Join();
            }
        }

        anyWork.Dispose();
        dragWork.Dispose();
        closing.Dispose();
    }

    private void Queue(JobRun run)
    {
        int count = run.Job.Chunks.Length;
        if (count == 0)
        {
            return;
        }

        lock (gate)
        {
            ObjectDisposedException.ThrowIf(closing.IsCancellationRequested, this);
            long mine = order++;
            for (int chunk = 0; chunk < count; chunk++)
            {
                waiting.Enqueue((run, chunk), (run.Job.Priority, mine, chunk));
            }

            if (!isStarted)
            {
                isStarted = true;
                foreach (Thread thread in threads)
                {
                    thread.Start();
                }
            }

            anyWork.Release(count);
            if (run.Job.Priority == JobPriority.Drag)
            {
                dragWork.Release(count);
            }
        }
    }

    private Thread NewThread(string name, bool dragsAlone) => new(() => Work(dragsAlone)) { IsBackground = true, Name = name };

    private void Work(bool dragsAlone)
    {
        SemaphoreSlim work = dragsAlone ? dragWork : anyWork;
        while (true)
        {
            work.Wait();
            if (Take(dragsAlone) is { } next)
            {
                next.Run.Work(next.Chunk, store);
            }
            else if (closing.IsCancellationRequested)
            {
                return;
            }
        }
    }

    /// <summary>The next chunk; null when another thread was quicker, or it is not a drag's.</summary>
    private (JobRun Run, int Chunk)? Take(bool dragsAlone)
    {
        lock (gate)
        {
            return waiting.TryPeek(out _, out (JobPriority Priority, long, int) first) && (!dragsAlone || first.Priority == JobPriority.Drag)
                ? waiting.Dequeue()
                : null;
        }
    }
}
