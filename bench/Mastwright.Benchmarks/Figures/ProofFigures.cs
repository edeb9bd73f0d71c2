using System.Diagnostics;
using System.Text.Json.Nodes;

namespace Mastwright.Benchmarks.Figures;

/// <summary>The proof of a change over ten million records, as a whole process.</summary>
internal static class ProofFigures
{
    private const int TimedRuns = 5;
    private const double BoundMilliseconds = 3000;

    /// <summary>Prints the figure beside its bound and writes it.</summary>
    /// <returns>Whether the bound holds.</returns>
    internal static bool Run(string folder, string program, string? resultsFolder, string commit)
    {
        long start = Stopwatch.GetTimestamp();
        (string plan, string store) = LargeStore.In(folder);
        Console.Out.WriteLine($"Store of {LargeStore.Records:N0} records: {Stopwatch.GetElapsedTime(start).TotalSeconds:0} s to make or find, {new FileInfo(store).Length / 1e6:0} MB");
        string[] arguments = ["prove", plan, LargeStore.Site, "--store", store, "--before", LargeStore.Before, "--after", LargeStore.After];

        // Once for the columns beside the store, once more so that all files come from memory.
        double first = ProcessFigures.Run(program, arguments, isWatched: false).Milliseconds;
        ProcessFigures.Run(program, arguments, isWatched: false);
        double[] times = [.. Enumerable.Range(0, TimedRuns).Select(_ => ProcessFigures.Run(program, arguments, isWatched: false).Milliseconds)];
        double bytes = ProcessFigures.Run(program, arguments, isWatched: true).Bytes;
        Figure figure = new("prove over ten million records, whole process", "ms", Sample.Median(times), BoundMilliseconds, times.Min(), TimedRuns);
        Console.Out.WriteLine($"{figure.Name}: {figure.Value:0} ms (bound {figure.Bound:0}, least {figure.Least:0}); the first time {first:0} ms; {bytes / 1e6:0} MB of memory, load {Machine.Load():0.0}");
        if (resultsFolder is not null)
        {
            ResultFile.Write(Path.Combine(resultsFolder, $"proof-{Machine.Date()}.json"), new()
            {
                ["version"] = 1,
                ["date"] = Machine.Date(),
                ["machine"] = Machine.ToJson(commit),
                ["ok"] = figure.IsOk,
                ["records"] = LargeStore.Records,
                ["median_ms"] = Math.Round(figure.Value),
                ["bound_ms"] = figure.Bound,
                ["least_ms"] = Math.Round(figure.Least),
                ["first_time_ms"] = Math.Round(first),
                ["most_mb"] = Math.Round(bytes / 1e6),
                ["runs"] = new JsonArray([.. times.Select(time => (JsonNode)Math.Round(time))]),
            });
        }

        return figure.IsOk;
    }
}
