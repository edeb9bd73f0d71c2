using System.Diagnostics;

namespace Mastwright.Benchmarks.Figures;

/// <summary>The published program as a whole: from its start to its end, and the most memory it held.</summary>
internal static class ProcessFigures
{
    private const int TimedRuns = 15;
    private const int WatchedRuns = 3;

    internal static IEnumerable<Figure> Measure(string program, string demoFolder)
    {
        string plan = Path.Combine(demoFolder, "plan.yaml");
        (string Name, string[] Arguments, double BoundMilliseconds, double BoundMegabytes)[] cases =
        [
            ("--version", ["--version"], 150, 60),
            ("check of the demo", ["check", plan], 400, 200),
        ];
        foreach ((string name, string[] arguments, double milliseconds, double megabytes) in cases)
        {
            // Twice for nothing: files come from the disk, then from memory.
            Run(program, arguments, isWatched: false);
            Run(program, arguments, isWatched: false);
            double[] times = [.. Enumerable.Range(0, TimedRuns).Select(_ => Run(program, arguments, isWatched: false).Milliseconds)];
            yield return new($"{name}, whole process", "ms", Sample.Median(times), milliseconds, times.Min(), TimedRuns);
            double[] sizes = [.. Enumerable.Range(0, WatchedRuns).Select(_ => Run(program, arguments, isWatched: true).Bytes / 1e6)];
            yield return new($"{name}, most memory", "MB", Sample.Median(sizes), megabytes, sizes.Min(), WatchedRuns);
        }
    }

    /// <summary>Runs the program once. Watching it for its memory takes time of its own, so the timed runs are not watched.</summary>
    internal static (double Milliseconds, long Bytes) Run(string program, string[] arguments, bool isWatched)
    {
        ProcessStartInfo start = new(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        long began = Stopwatch.GetTimestamp();
        using Process process = Process.Start(start) ?? throw new InvalidOperationException($"{program} does not start.");
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        long bytes = 0;
        while (isWatched && !process.WaitForExit(1))
        {
            process.Refresh();
            bytes = Math.Max(bytes, Peak(process));
        }

        process.WaitForExit();
        double milliseconds = Stopwatch.GetElapsedTime(began).TotalMilliseconds;
        Task.WaitAll(output, errors);

        // 0: all is well; 1: a link of the demo fails, as it is meant to.
        return process.ExitCode is 0 or 1
            ? (milliseconds, bytes)
            : throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}: {errors.Result}");
    }

    private static long Peak(Process process)
    {
        try
        {
            return process.PeakWorkingSet64;
        }
        catch (InvalidOperationException)
        {
            // It ended between the two calls.
            return 0;
        }
    }
}
