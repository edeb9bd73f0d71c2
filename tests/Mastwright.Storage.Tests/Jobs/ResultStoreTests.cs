using CsCheck;
using Mastwright.Jobs;
using Mastwright.Storage.Jobs;
using Mastwright.Storage.Tests.Ground;

namespace Mastwright.Storage.Tests.Jobs;

public sealed class ResultStoreTests
{
    private static readonly Gen<byte[]> Content = Gen.Byte.Array[0, 300];

    private static string Key(int number) => new Sums().Job(number, 1).Chunks[0].Key;

    private static string FileOf(string folder, string key) => Path.Combine(folder, "results", key[..2], key + ".result");

    [Fact]
    public void What_is_kept_is_read_back()
    {
        using ScratchFolder folder = new();
        Content.Sample(
            content =>
            {
                new ResultStore(folder.Root).Keep(Key(1), content);
                return new ResultStore(folder.Root).Read(Key(1)) is { } read && read.AsSpan().SequenceEqual(content);
            },
            threads: 1);
        Assert.Null(new ResultStore(folder.Root).Read(Key(2)));
    }

    [Fact]
    public void A_file_that_was_changed_anywhere_or_cut_anywhere_counts_as_nothing_and_is_removed()
    {
        using ScratchFolder folder = new();
        ResultStore store = new(folder.Root);
        string file = FileOf(folder.Root, Key(1));
        Gen.Select(Content, Gen.Int[0, 10_000], Gen.Byte[1, 255], Gen.Int[0, 2]).Sample(
            (content, place, change, how) =>
            {
                store.Keep(Key(1), content);
                byte[] bytes = File.ReadAllBytes(file);
                switch (how)
                {
                    case 0:
                        bytes[place % bytes.Length] ^= change;
                        break;
                    case 1:
                        bytes = bytes[..(place % bytes.Length)];
                        break;
                    default:
                        bytes = [.. bytes, change];
                        break;
                }

                File.WriteAllBytes(file, bytes);
                return store.Read(Key(1)) is null && !File.Exists(file);
            },
            threads: 1);
    }

    [Fact]
    public void A_file_under_the_name_of_another_counts_as_damaged()
    {
        using ScratchFolder folder = new();
        ResultStore store = new(folder.Root);
        store.Keep(Key(1), [1, 2, 3]);
        Directory.CreateDirectory(Path.GetDirectoryName(FileOf(folder.Root, Key(2)))!);
        File.Copy(FileOf(folder.Root, Key(1)), FileOf(folder.Root, Key(2)));
        Assert.Null(store.Read(Key(2)));
        Assert.Equal([1, 2, 3], store.Read(Key(1)));
    }

    [Fact]
    public async Task Damaged_results_are_made_again_and_told()
    {
        using ScratchFolder folder = new();
        Sums sums = new();
        Job job = sums.Job(0, 6);
        using JobRunner runner = new(new ResultStore(folder.Root), new() { Threads = 2 });
        (await runner.RunAsync(job, null, TestContext.Current.CancellationToken)).Dispose();
        await File.AppendAllTextAsync(FileOf(folder.Root, job.Chunks[2].Key), "x", TestContext.Current.CancellationToken);
        Last last = new();
        using JobResult again = await runner.RunAsync(job, last, TestContext.Current.CancellationToken);
        Assert.Equal((5, 1), (last.Value.Found, last.Value.Damaged));
        Assert.Equal(7, sums.Made);
        Assert.Equal(Sums.Expected(0, 6), Sums.Of(again));
    }

    [Fact]
    public async Task A_result_that_is_damaged_while_the_job_is_read_is_made_again()
    {
        using ScratchFolder folder = new();
        Sums sums = new();
        Job job = sums.Job(0, 3);
        using JobRunner runner = new(new ResultStore(folder.Root), new() { Threads = 2 });
        using JobResult result = await runner.RunAsync(job, null, TestContext.Current.CancellationToken);
        File.Delete(FileOf(folder.Root, job.Chunks[1].Key));
        Assert.Equal(Sums.Expected(0, 3), Sums.Of(result));
        Assert.Equal(4, sums.Made);
    }

    [Fact]
    public void Beyond_the_bound_the_one_not_used_for_longest_goes_first()
    {
        using ScratchFolder folder = new();
        SetClock clock = new();
        ResultStore store = new(folder.Root, new() { MostBytes = 3 * (100 + 52) }, clock);
        foreach (int number in (int[])[1, 2, 3, 4])
        {
            store.Keep(Key(number), new byte[100]);
            clock.Pass(TimeSpan.FromHours(1));
        }

        Assert.NotNull(store.Read(Key(1)));
        clock.Pass(TimeSpan.FromHours(1));
        store.Tidy();
        Assert.Null(store.Read(Key(2)));
        Assert.All((int[])[1, 3, 4], number => Assert.NotNull(store.Read(Key(number))));
        Assert.Equal(3 * 152, store.Bytes());
    }

    [Fact]
    public void What_was_used_just_now_stays_even_beyond_the_bound()
    {
        using ScratchFolder folder = new();
        SetClock clock = new();
        ResultStore store = new(folder.Root, new() { MostBytes = 0 }, clock);
        store.Keep(Key(1), [1]);
        clock.Pass(TimeSpan.FromMinutes(9));
        store.Tidy();
        Assert.NotNull(store.Read(Key(1)));
        clock.Pass(TimeSpan.FromMinutes(11));
        store.Tidy();
        Assert.Null(store.Read(Key(1)));
    }

    [Fact]
    public async Task Chunks_of_a_job_that_is_not_done_are_held_until_it_is_or_nobody_comes_back()
    {
        using ScratchFolder folder = new();
        SetClock clock = new();
        ResultStore store = new(folder.Root, new() { MostBytes = 0 }, clock);
        using (CancellationTokenSource cancel = new())
        {
            using JobRunner runner = new(store, new() { Threads = 1 }, clock);
            Sums stopped = new() { OnStart = number => { if (number == 3) { cancel.Cancel(); } } };
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => runner.RunAsync(stopped.Job(0, 5, name: "half a job"), null, cancel.Token));
        }

        Assert.Equal(["half a job"], store.Unfinished());
        Assert.True(store.IsBegun(new Sums().Job(0, 5)));
        clock.Pass(TimeSpan.FromDays(29));
        new ResultStore(folder.Root, new() { MostBytes = 0 }, clock).Tidy();
        Assert.All((int[])[0, 1, 2], number => Assert.True(File.Exists(FileOf(folder.Root, Key(number)))));
        clock.Pass(TimeSpan.FromDays(2));
        store.Tidy();
        store.Tidy();
        Assert.Empty(store.Unfinished());
        Assert.Equal(0, store.Bytes());
    }

    [Fact]
    public void The_folder_is_where_the_platform_keeps_such_things()
    {
        Assert.Equal(Path.Combine("/var/cache/me", "mastwright"), CacheFolder.Of("/var/cache/me", "/home/keeper"));
        string own = CacheFolder.Of("not/a/full/path", "/home/keeper");
        Assert.DoesNotContain("not/a/full", own, StringComparison.Ordinal);
        if (OperatingSystem.IsLinux())
        {
            Assert.Equal("/home/keeper/.cache/mastwright", own);
        }
    }

    private sealed class Last : IProgress<JobProgress>
    {
        public JobProgress Value { get; private set; }

        public void Report(JobProgress value) => Value = value;
    }
}
