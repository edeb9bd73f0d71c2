using System.Diagnostics;
using System.Globalization;
using Mastwright.Propagation;
using Mastwright.Propagation.Area;

namespace Mastwright.Benchmarks.Figures;

/// <summary>Maps of P.1812 around a station on made hills with woods: what a cell costs, and how far it is from its own straight path.</summary>
/// <remarks>Speed and accuracy are those of one and the same setting: the number of radials is the engine's own.</remarks>
internal static class ReachFigures
{
    private const int Repetitions = 5;

    /// <summary>Prints every figure of the command "reach".</summary>
    /// <returns>Whether every bound holds.</returns>
    internal static bool Print()
    {
        Console.Out.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{Machine.Processor}, {Environment.ProcessorCount} threads, vectors of {AreaSweep.VectorBits} bits, load {Machine.Load():0.0}"));
        SweepInput input = new() { FrequencyHz = 868e6, StationHeightMetres = 10, ReceiverHeightMetres = 2 };
        bool isOk = true;
        foreach (double kilometres in (double[])[10, 25, 50, 100])
        {
            double each = NanosecondsACell(Hills(kilometres * 1000, 30), input, out int cells);
            isOk &= each <= 240;
            Console.Out.WriteLine(string.Create(
                CultureInfo.InvariantCulture, $"{kilometres:0} km at 30 m, cover, p = 50 %: {cells:#,0} cells, {each:0} ns a cell a core (bound 240)"));
        }

        SweepRaster near = Hills(10_000, 92.6);
        double milliseconds = NanosecondsACell(near, input, out int few) * few * 1e-6;
        isOk &= milliseconds <= 12;
        Console.Out.WriteLine(string.Create(CultureInfo.InvariantCulture, $"10 km at 3 arc-seconds: {few:#,0} cells, {milliseconds:0.0} ms on one core (bound 12)"));
        isOk &= Accuracy("50 km at 30 m, cover, p = 10 %", Hills(50_000, 30), input with { TimePercent = 10 }, [0.05, 0.4, 1.5]);
        isOk &= Accuracy("50 km at 3 arc-seconds, no cover, p = 50 %", Hills(50_000, 92.6), input with { AddCover = false }, [0.05, 0.6, 1.5]);
        return isOk;
    }

    /// <summary>Processor time of a map on one thread for each of its cells: the median of some runs.</summary>
    private static double NanosecondsACell(SweepRaster raster, SweepInput input, out int cells)
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

    private static bool Accuracy(string name, SweepRaster raster, SweepInput input, double[] bounds)
    {
        const int wanted = 20_000;
        SweepResult map = AreaSweep.Run(raster, input);
        Random random = new(7);
        double[] errors = new double[wanted];
        long start = Stopwatch.GetTimestamp();
        for (int n = 0; n < wanted;)
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

        double own = Stopwatch.GetElapsedTime(start).TotalMicroseconds / wanted;
        Array.Sort(errors);
        double[] found = [errors[wanted / 2], errors[wanted * 95 / 100], errors[wanted * 99 / 100]];
        bool isOk = found[0] <= bounds[0] && found[1] <= bounds[1] && found[2] <= bounds[2];
        Console.Out.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name}: from the own path of {wanted:#,0} cells {found[0]:0.000} / {found[1]:0.00} / {found[2]:0.00} dB (bounds {bounds[0]:0.00} / {bounds[1]:0.0} / {bounds[2]:0.0}); such a path takes {own:0} µs"));
        return isOk;
    }

    /// <summary>Hills of many sizes, to 600 m, with woods in the hollows of a pattern.</summary>
    private static SweepRaster Hills(double radiusMetres, double cellMetres)
    {
        int reach = (int)Math.Ceiling(radiusMetres / cellMetres);
        int side = (2 * reach) + 1;
        float[] heights = new float[side * side];
        byte[] cover = new byte[heights.Length];
        Parallel.For(0, side, row =>
        {
            for (int column = 0; column < side; column++)
            {
                double x = (column - reach) * cellMetres / 1000;
                double y = (row - reach) * cellMetres / 1000;
                double height = 300;
                double size = 110;
                double wave = 0.35;
                for (int octave = 0; octave < 6; octave++)
                {
                    double turned = (x * Math.Cos(octave * 1.3)) + (y * Math.Sin(octave * 1.3));
                    double across = (y * Math.Cos(octave * 1.3)) - (x * Math.Sin(octave * 1.3));
                    height += size * Math.Sin((turned * wave) + (0.7 * Math.Sin(across * wave * 0.8))) * Math.Cos((across * wave * 0.9) + octave);
                    size *= 0.5;
                    wave *= 2.1;
                }

                int cell = (row * side) + column;
                heights[cell] = (float)height;
                cover[cell] = (byte)(Math.Sin(x * 4.1) + Math.Cos(y * 3.7) + Math.Sin((x + y) * 1.3) > 0.7 ? 1 : 0);
            }
        });
        float[] coverHeights = new float[256];
        coverHeights[1] = 15;
        return new(reach, cellMetres, 50.5, heights, cover, coverHeights);
    }
}
