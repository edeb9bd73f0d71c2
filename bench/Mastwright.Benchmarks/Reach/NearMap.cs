using System.Diagnostics;
using System.Globalization;
using Mastwright.Benchmarks.Figures;
using Mastwright.Propagation.Area;

namespace Mastwright.Benchmarks.Reach;

/// <summary>The map that moves under the mouse: 10 km at 3 arc-seconds.</summary>
internal static class NearMap
{
    private const double RadiusMetres = 10_000;
    private const double CellMetres = 92.6;
    private const int Processes = 5;

    internal static void Measure(ReachReport report)
    {
        ReachReport.Part("10 km at 3 arc-seconds, all land, cover");
        foreach (double percent in (double[])[50, 10])
        {
            double each = SweepCost.NanosecondsACell(MadeHills.Raster(RadiusMetres, CellMetres), ReachBench.Input with { TimePercent = percent }, out int cells);
            string name = string.Create(CultureInfo.InvariantCulture, $"p = {percent:0} %, one core after warm-up, {cells:#,0} cells");
            if (percent == 50)
            {
                report.Most(name, each * cells * 1e-6, 12, "ms");
            }
            else
            {
                ReachReport.Plain(name, each * cells * 1e-6, "ms");
            }
        }

        (double Warm, double First)[] runs = [.. Enumerable.Range(0, Processes).Select(_ => Child())];
        report.Most(
            "first frame of a process after its warm-up call",
            Sample.Median(runs.Select(run => run.First)),
            100,
            "ms",
            string.Create(CultureInfo.InvariantCulture, $"wall, all threads, median of {Processes} processes; the warm-up (one map of 3 km) takes {Sample.Median(runs.Select(run => run.Warm)):0} ms"));
    }

    /// <summary>What the child process does: a small map as a server would draw at its start, then the first frame; prints both in ms.</summary>
    internal static void Print()
    {
        SweepRaster small = MadeHills.Raster(3_000, CellMetres);
        SweepRaster raster = MadeHills.Raster(RadiusMetres, CellMetres);
        long start = Stopwatch.GetTimestamp();
        AreaSweep.Run(small, ReachBench.Input);
        double warm = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        start = Stopwatch.GetTimestamp();
        AreaSweep.Run(raster, ReachBench.Input);
        double first = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{warm:R} {first:R}"));
    }

    private static (double Warm, double First) Child()
    {
        using Process process = Process.Start(new ProcessStartInfo(Environment.ProcessPath!, ["first-frame"]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        string[] words = process.StandardOutput.ReadToEnd().Split(' ');
        process.WaitForExit();
        return (double.Parse(words[0], CultureInfo.InvariantCulture), double.Parse(words[1], CultureInfo.InvariantCulture));
    }
}
