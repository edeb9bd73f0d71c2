using System.Globalization;
using Mastwright.Jobs;
using Mastwright.Network.Reach;
using Mastwright.Storage.Ground;
using Mastwright.Storage.Jobs;

namespace Mastwright.Reports.Reach;

/// <summary>Works off long reach maps as jobs: says how long before it begins, keeps what is finished, and says how to go on when it is stopped.</summary>
internal sealed class LongWork : IDisposable
{
    /// <summary>
    /// Measured over 140 million places with cover on one core of a server of 2025, busy with other work as well: a third of it the sweep, the rest reading
    /// the ground piece by piece, keeping what is finished and writing the map. Half as fast elsewhere is no wonder.
    /// </summary>
    private const double SecondsAPlace = 800e-9;

    /// <summary>A piece holds some 4 million places of 20 bytes, and the ground that it is reading.</summary>
    private const double BytesAThread = 200e6;

    /// <summary>Bytes of a cell of a field of losses on the disk.</summary>
    internal const double BytesACell = 9;

    private const double WorthTellingSeconds = 5;

    private readonly Action<string> tell;
    private readonly IProgress<JobProgress>? progress;
    private readonly string? temporaryFolder;
    private readonly JobRunner runner;
    private readonly int threads;
    private readonly List<JobResult> kept = [];

    /// <summary>Prepares; nothing is written before the first job.</summary>
    /// <param name="cacheFolder">Where finished pieces are kept; null for a folder for this run alone.</param>
    /// <param name="options">How the folder keeps house.</param>
    /// <param name="tell">Told what somebody at a terminal should know, line by line.</param>
    /// <param name="progress">Told how far a job is, from any thread; null for nobody.</param>
    internal LongWork(string? cacheFolder, ResultStoreOptions options, Action<string> tell, IProgress<JobProgress>? progress = null)
    {
        this.tell = tell;
        this.progress = progress;
        temporaryFolder = cacheFolder is null ? Path.Combine(Path.GetTempPath(), $"mastwright-{Guid.NewGuid():N}") : null;
        Store = new(cacheFolder ?? temporaryFolder!, options);
        Hashes = new(Store);
        threads = (int)Math.Clamp(GC.GetGCMemoryInfo().TotalAvailableMemoryBytes / (2 * BytesAThread), 1, Environment.ProcessorCount);
        runner = new(Store, new() { Threads = threads });
    }

    /// <summary>Hashes of ground that was read before.</summary>
    internal PieceHashes Hashes { get; }

    /// <summary>Whether it was told what a stop means.</summary>
    internal bool HasToldOfStop { get; private set; }

    private ResultStore Store { get; }

    /// <summary>Works off a job on this thread's time.</summary>
    /// <param name="job">The job.</param>
    /// <param name="places">Places of sweeps in all its chunks.</param>
    /// <param name="bytes">Bytes that all its chunks take on the disk.</param>
    /// <param name="cancellation">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped; what that means was told.</exception>
    internal JobResult Run(Job job, double places, double bytes, CancellationToken cancellation)
    {
        TellBefore(job, places, bytes);
        using CancellationTokenRegistration stopping = cancellation.Register(() =>
        {
            HasToldOfStop = true;
            tell(temporaryFolder is null
                ? $"Stopped. What is finished is kept in {Store.Folder}; the same command goes on from there."
                : "Stopped. Without a cache folder nothing is kept.");
        });
        JobProgress last = default;
        JobResult result = runner.RunAsync(job, new Relay(progress, value => last = value), cancellation).GetAwaiter().GetResult();
        if (last.Damaged > 0)
        {
            tell(string.Create(CultureInfo.InvariantCulture, $"{last.Damaged} results in {Store.Folder} were damaged and have been worked out again."));
        }

        return result;
    }

    /// <summary>Holds results until the end of the work: they are still to be read.</summary>
    internal void Keep(JobResult result) => kept.Add(result);

    /// <summary>Lets go of results that are not to be held.</summary>
    internal void Release(JobResult result)
    {
        if (!kept.Contains(result))
        {
            result.Dispose();
        }
    }

    public void Dispose()
    {
        kept.ForEach(result => result.Dispose());
        runner.Dispose();
        if (temporaryFolder is not null && Directory.Exists(temporaryFolder))
        {
            Directory.Delete(temporaryFolder, recursive: true);
        }
    }

    private void TellBefore(Job job, double places, double bytes)
    {
        // Only what is not there yet takes time.
        double cost = job.Chunks.Sum(chunk => chunk.Cost);
        Chunk[] left = [.. job.Chunks.Where(chunk => !Store.Holds(chunk.Key))];
        double share = cost == 0 ? 0 : left.Sum(chunk => chunk.Cost) / cost;
        double seconds = places * share * SecondsAPlace / threads;
        bool isBegun = Store.IsBegun(job);
        if (seconds < WorthTellingSeconds && !isBegun)
        {
            return;
        }

        tell(string.Create(
            CultureInfo.InvariantCulture,
            $"{job.Name}: {places * share / 1e6:#,0} million places in {left.Length} of {job.Chunks.Length} pieces; roughly {Time(seconds)} on {threads} {(threads == 1 ? "thread" : "threads")}; up to {Math.Ceiling(bytes * share / 1e6):#,0} MB more in {Store.Folder}."));
        tell(isBegun
            ? "An earlier run was stopped; what it finished is not worked out again."
            : temporaryFolder is null ? "Ctrl-C stops; the same command then goes on from there." : "Ctrl-C stops; without a cache folder nothing is kept then.");
    }

    private static string Time(double seconds) => seconds < 90
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(1, Math.Ceiling(seconds)):0} s")
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(seconds / 60):0} min");

    private sealed class Relay(IProgress<JobProgress>? to, Action<JobProgress> keep) : IProgress<JobProgress>
    {
        public void Report(JobProgress value)
        {
            keep(value);
            to?.Report(value);
        }
    }
}
