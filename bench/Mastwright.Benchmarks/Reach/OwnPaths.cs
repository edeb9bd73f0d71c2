using System.Diagnostics;
using System.Globalization;
using Mastwright.Propagation;
using Mastwright.Propagation.Area;

namespace Mastwright.Benchmarks.Reach;

/// <summary>A map against every cell's own straight path by the one-path method, on a sample: how far apart, and how much faster.</summary>
internal static class OwnPaths
{
    private const int Wanted = 20_000;

    internal static void Measure(ReachReport report)
    {
        ReachReport.Part(string.Create(CultureInfo.InvariantCulture, $"Map against the own path of {Wanted:#,0} cells, 50 km"));
        Compare(report, "30 m, cover, p = 10 %", MadeHills.Raster(50_000, 30), ReachBench.Input with { TimePercent = 10 }, [0.05, 0.4, 1.5]);
        Compare(report, "3 arc-seconds, no cover, p = 50 %", MadeHills.Raster(50_000, 92.6), ReachBench.Input with { AddCover = false }, [0.05, 0.6, 1.5]);
        Compare(report, "3 arc-seconds, cover, p = 50 %", MadeHills.Raster(50_000, 92.6), ReachBench.Input, null);
        Compare(report, "30 m, cover, p = 50 %", MadeHills.Raster(50_000, 30), ReachBench.Input, null);
    }

    private static void Compare(ReachReport report, string name, SweepRaster raster, SweepInput input, double[]? bounds)
    {
        SweepResult map = AreaSweep.Run(raster, input);
        using Process process = Process.GetCurrentProcess();
        process.Refresh();
        TimeSpan before = process.TotalProcessorTime;
        AreaSweep.Run(raster, input, map, threads: 1);
        process.Refresh();
        double cell = (process.TotalProcessorTime - before).TotalMicroseconds / map.CellsWithLoss;

        Random random = new(7);
        double[] errors = new double[Wanted];
        before = process.TotalProcessorTime;
        for (int n = 0; n < Wanted;)
        {
            int east = random.Next(-raster.Reach, raster.Reach + 1);
            int north = random.Next(-raster.Reach, raster.Reach + 1);
            float loss = map.LossDb[((raster.Reach - north) * raster.Side) + raster.Reach + east];
            if (loss < SweepResult.NoLossDb && (east != 0 || north != 0))
            {
                SweepProfile path = SweepProfile.Straight(raster, input, east, north)!;
                errors[n++] = Math.Abs(loss - PathLoss.Predict(path.Profile, path.Input).LossDb);
            }
        }

        process.Refresh();
        double own = (process.TotalProcessorTime - before).TotalMicroseconds / Wanted;
        Array.Sort(errors);
        (string Name, double Value)[] found = [("median", errors[Wanted / 2]), ("95th percentile", errors[Wanted * 95 / 100]), ("99th percentile", errors[Wanted * 99 / 100])];
        for (int i = 0; i < found.Length; i++)
        {
            if (bounds is null)
            {
                ReachReport.Plain($"{name}: {found[i].Name}", found[i].Value, "dB");
            }
            else
            {
                report.Most($"{name}: {found[i].Name}", found[i].Value, bounds[i], "dB");
            }
        }

        ReachReport.Plain(
            $"{name}: speed-up",
            own / cell,
            "times",
            string.Create(CultureInfo.InvariantCulture, $"an own path takes {own:0.0} µs of one core, a cell of the sweep {cell:0.000}"));
    }
}
