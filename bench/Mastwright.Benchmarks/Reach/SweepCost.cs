using System.Diagnostics;
using System.Globalization;
using Mastwright.Benchmarks.Figures;
using Mastwright.Propagation.Area;

namespace Mastwright.Benchmarks.Reach;

/// <summary>Processor time of a map on one thread, by its radius: it grows with the cells.</summary>
internal static class SweepCost
{
    private const int Repetitions = 5;

    internal static void Measure(ReachReport report)
    {
        ReachReport.Part("Sweep, one thread, processor time, 30 m, all land, cover, p = 50 %: median of 5");
        double first = 0;
        foreach (double kilometres in (double[])[10, 25, 50, 100])
        {
            double each = NanosecondsACell(MadeHills.Raster(kilometres * 1000, 30), ReachBench.Input, out int cells);
            first = first == 0 ? each : first;
            report.Most(
                string.Create(CultureInfo.InvariantCulture, $"{kilometres:0} km, {cells:#,0} cells"),
                each,
                240,
                "ns a cell",
                string.Create(CultureInfo.InvariantCulture, $"aim 150, dream 100; {each / first:0.00} times that of 10 km"));
        }

        double late = NanosecondsACell(MadeHills.Raster(50_000, 30), ReachBench.Input with { TimePercent = 10 }, out _);
        ReachReport.Plain("50 km, p = 10 %", late, "ns a cell", "a second radius of the Earth");
    }

    /// <summary>Processor time of a map on one thread for each of its cells.</summary>
    internal static double NanosecondsACell(SweepRaster raster, SweepInput input, out int cells)
    {
        SweepResult map = new(raster.Side);
        using Process process = Process.GetCurrentProcess();
        double[] times = new double[Repetitions];
        long start = Stopwatch.GetTimestamp();
        do
        {
            AreaSweep.Run(raster, input, map, threads: 1);
        }
        while (Stopwatch.GetElapsedTime(start).TotalSeconds < 2);

        int inBatch = Math.Max(1, 400_000 / map.CellsWithLoss);
        for (int i = 0; i < times.Length; i++)
        {
            process.Refresh();
            TimeSpan before = process.TotalProcessorTime;
            for (int k = 0; k < inBatch; k++)
            {
                AreaSweep.Run(raster, input, map, threads: 1);
            }

            process.Refresh();
            times[i] = (process.TotalProcessorTime - before).TotalNanoseconds / inBatch / map.CellsWithLoss;
        }

        cells = map.CellsWithLoss;
        return Sample.Median(times);
    }
}
