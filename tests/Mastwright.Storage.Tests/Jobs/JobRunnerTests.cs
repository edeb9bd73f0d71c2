using System.Collections.Concurrent;
using CsCheck;
using Mastwright.Jobs;
using Mastwright.Storage.Jobs;
using Mastwright.Storage.Tests.Ground;

namespace Mastwright.Storage.Tests.Jobs;

public sealed class JobRunnerTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private static CancellationToken Token => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_bytes_are_the_same_whatever_the_threads_and_however_often_it_was_stopped()
    {
        await Gen.Select(Gen.Int[1, 40], Gen.Int[1, 5], Gen.Int[0, 40].Array[0, 4]).SampleAsync(
            async (count, threads, stops) =>
            {
                using ScratchFolder folder = new();
                int made = 0;
                foreach (int stop in stops)
                {
                    using CancellationTokenSource cancel = new();
                    Sums stopped = new() { OnStart = number => { if (number == stop) { cancel.Cancel(); } } };
                    using JobRunner one = new(new ResultStore(folder.Root), new() { Threads = threads });
                    try
                    {
                        using JobResult whole = await one.RunAsync(stopped.Job(0, count), null, cancel.Token);
                    }
                    catch (OperationCanceledException)
                    {
                        // As wanted.
                    }

                    made += stopped.Made;
                }

                Sums last = new();
                using JobRunner runner = new(new ResultStore(folder.Root), new() { Threads = threads });
                using JobResult result = await runner.RunAsync(last.Job(0, count));
                Assert.Equal(Sums.Expected(0, count), Sums.Of(result));

                // No chunk was lost and none made twice, in all runs together.
                Assert.Equal(count, made + last.Made);
            },
            iter: 25);
    }

    [Fact]
    public async Task Drags_go_before_what_somebody_waits_for_and_that_before_searches()
    {
        using ManualResetEventSlim go = new();
        using SemaphoreSlim held = new(0);
        ConcurrentQueue<int> started = [];
        using JobRunner runner = new(null, new() { Threads = 1 });
        void Hold()
        {
            held.Release();
            Assert.True(go.Wait(Patience));
        }

        // One chunk holds the ordinary thread, a drag's the other; what comes meanwhile has to wait, and is then taken by rank. The drag comes
        // once the ordinary thread is held: that thread would rather have taken the drag.
        Task<JobResult> first = runner.RunAsync(new Sums { OnStart = _ => Hold() }.Job(0, 1, JobPriority.Search), null, Token);
        Assert.True(await held.WaitAsync(Patience, Token));
        Task<JobResult> second = runner.RunAsync(new Sums { OnStart = _ => Hold() }.Job(1, 1, JobPriority.Drag), null, Token);
        Assert.True(await held.WaitAsync(Patience, Token));
        Sums noted = new() { OnStart = started.Enqueue };
        Task<JobResult> search = runner.RunAsync(noted.Job(300, 3, JobPriority.Search), null, Token);
        Task<JobResult> settle = runner.RunAsync(noted.Job(200, 3, JobPriority.Settle), null, Token);
        Task<JobResult> later = runner.RunAsync(noted.Job(210, 2, JobPriority.Settle), null, Token);
        Task<JobResult> drag = runner.RunAsync(noted.Job(100, 3, JobPriority.Drag), null, Token);
        go.Set();
        await Task.WhenAll(first, second, search, settle, later, drag);
        int[] order = [.. started];
        Assert.Equal([100, 101, 102], order.Where(number => number < 200).Order());
        Assert.Equal([200, 201, 202, 210, 211, 300, 301, 302], order.Where(number => number >= 200));
        Assert.All(order.Take(2), number => Assert.True(number < 200));
    }

    [Fact]
    public async Task A_drag_does_not_wait_for_a_chunk_of_a_search_to_end()
    {
        using ManualResetEventSlim go = new();
        using JobRunner runner = new(null, new() { Threads = 1 });
        Task<JobResult> search = runner.RunAsync(new Sums { OnStart = _ => Assert.True(go.Wait(Patience)) }.Job(0, 1, JobPriority.Search), null, Token);
        using JobResult drag = await runner.RunAsync(new Sums().Job(5, 2, JobPriority.Drag), null, Token).WaitAsync(Patience, Token);
        Assert.False(search.IsCompleted);
        Assert.Equal(Sums.Expected(5, 2), Sums.Of(drag));
        go.Set();
        (await search).Dispose();
    }

    [Fact]
    public async Task No_more_chunks_are_worked_on_at_once_than_there_are_threads()
    {
        int now = 0;
        int most = 0;
        Lock gate = new();
        Sums sums = new()
        {
            OnStart = _ =>
            {
                lock (gate)
                {
                    most = Math.Max(most, ++now);
                }

                Thread.Yield();
                lock (gate)
                {
                    now--;
                }
            },
        };
        using JobRunner runner = new(null, new() { Threads = 3 });
        JobResult[] results = await Task.WhenAll(Enumerable.Range(0, 8).Select(job => runner.RunAsync(sums.Job(job * 100, 50), null, Token)));
        Assert.InRange(most, 1, 3);
        for (int job = 0; job < results.Length; job++)
        {
            Assert.Equal(Sums.Expected(job * 100, 50), Sums.Of(results[job]));
        }
    }

    [Fact]
    public async Task A_second_run_makes_nothing_and_says_so()
    {
        using ScratchFolder folder = new();
        SetClock clock = new();
        Sums sums = new();
        using JobRunner runner = new(new ResultStore(folder.Root, time: clock), new() { Threads = 2 }, clock);
        (await runner.RunAsync(sums.Job(0, 10), null, Token)).Dispose();
        Assert.Equal(10, sums.Made);
        Told told = new();
        using JobResult again = await runner.RunAsync(sums.Job(0, 12), told, Token);
        Assert.Equal(12, sums.Made);
        Assert.Equal((12, 10, 0, 12, 1.0), (told.Last.Done, told.Last.Found, told.Last.Damaged, told.Last.Total, told.Last.Share));
        Assert.Equal(Sums.Expected(0, 12), Sums.Of(again));
    }

    [Fact]
    public async Task What_remains_is_reckoned_from_what_was_made_and_not_from_what_was_found()
    {
        using ScratchFolder folder = new();
        SetClock clock = new();
        using JobRunner runner = new(new ResultStore(folder.Root, time: clock), new() { Threads = 1 }, clock);
        (await runner.RunAsync(new Sums().Job(0, 4), null, Token)).Dispose();
        Told told = new();
        Sums slow = new() { OnStart = _ => clock.Pass(TimeSpan.FromSeconds(10)) };
        (await runner.RunAsync(slow.Job(0, 8), told, Token)).Dispose();
        Assert.Null(told.All[3].Remaining);
        Assert.Equal(TimeSpan.FromSeconds(30), told.All[4].Remaining);
        Assert.Equal(TimeSpan.FromSeconds(40), told.Last.Elapsed);
        Assert.Equal(TimeSpan.Zero, told.Last.Remaining);
    }

    [Fact]
    public async Task A_new_version_of_a_method_takes_nothing_from_the_old_one()
    {
        using ScratchFolder folder = new();
        using JobRunner runner = new(new ResultStore(folder.Root), new() { Threads = 2 });
        (await runner.RunAsync(new Sums().Job(0, 5), null, Token)).Dispose();
        Sums newer = new() { Version = 2 };
        (await runner.RunAsync(newer.Job(0, 5), null, Token)).Dispose();
        Assert.Equal(5, newer.Made);
    }

    [Fact]
    public async Task A_chunk_that_fails_ends_its_job_alone_and_loses_nothing_that_was_finished()
    {
        using ScratchFolder folder = new();
        using JobRunner runner = new(new ResultStore(folder.Root), new() { Threads = 1 });
        Sums failing = new() { OnStart = number => { if (number == 3) { throw new InvalidDataException("as the test wants"); } } };
        Task<JobResult> other = runner.RunAsync(new Sums().Job(50, 5, JobPriority.Search), null, Token);
        InvalidDataException fault = await Assert.ThrowsAsync<InvalidDataException>(() => runner.RunAsync(failing.Job(0, 6), null, Token));
        Assert.Equal("as the test wants", fault.Message);
        using JobResult whole = await other;
        Assert.Equal(Sums.Expected(50, 5), Sums.Of(whole));
        Sums again = new();
        (await runner.RunAsync(again.Job(0, 6), null, Token)).Dispose();
        Assert.Equal(3, again.Made);
    }

    [Fact]
    public async Task A_runner_that_is_closed_stops_its_jobs()
    {
        JobRunner runner = new(null, new() { Threads = 2 });
        using ManualResetEventSlim begun = new();
        Sums endless = new() { OnStart = _ => begun.Set() };
        Task<JobResult> job = runner.RunAsync(endless.Job(0, 200_000), null, Token);
        Assert.True(begun.Wait(Patience, Token));
        runner.Dispose();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => job);
        Assert.True(endless.Made < 200_000);
        await Assert.ThrowsAnyAsync<Exception>(() => runner.RunAsync(endless.Job(0, 1), null, Token));
    }

    [Fact]
    public async Task A_job_without_chunks_is_done_at_once()
    {
        using JobRunner runner = new(null);
        using JobResult result = await runner.RunAsync(new Sums().Job(0, 0), null, Token);
        Assert.Empty(Sums.Of(result));
    }

    private sealed class Told : IProgress<JobProgress>
    {
        public List<JobProgress> All { get; } = [];

        public JobProgress Last => All[^1];

        public void Report(JobProgress value) => All.Add(value);
    }
}
