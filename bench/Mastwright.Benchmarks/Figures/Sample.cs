using System.Diagnostics;

namespace Mastwright.Benchmarks.Figures;

/// <summary>Repeated measurements of one thing.</summary>
internal static class Sample
{
    /// <summary>A batch is this short so that most batches end before another program takes the processor.</summary>
    private const double BatchMilliseconds = 2;

    private const double WarmUpMilliseconds = 500;

    /// <summary>Times a piece of work that takes far less than a second: warms it up, then times batches of it.</summary>
    internal static Figure Time(string name, string unit, double bound, int batches, Action work)
    {
        // Long enough for the runtime to have compiled the work at its best.
        long runs = 0;
        long start = Stopwatch.GetTimestamp();
        while (Stopwatch.GetElapsedTime(start).TotalMilliseconds < WarmUpMilliseconds)
        {
            work();
            runs++;
            if (runs % 32 == 0)
            {
                Thread.Yield();
            }
        }

        int inBatch = (int)Math.Max(1, BatchMilliseconds / (Stopwatch.GetElapsedTime(start).TotalMilliseconds / runs));
        double[] nanoseconds = new double[batches];
        for (int batch = 0; batch < batches; batch++)
        {
            start = Stopwatch.GetTimestamp();
            for (int i = 0; i < inBatch; i++)
            {
                work();
            }

            nanoseconds[batch] = Stopwatch.GetElapsedTime(start).TotalNanoseconds / inBatch;
        }

        Figure figure = new(name, unit, 0, bound, 0, batches);
        double scale = 1 / figure.NanosecondsAUnit!.Value;
        return figure with { Value = Median(nanoseconds) * scale, Least = nanoseconds.Min() * scale };
    }

    /// <summary>The middle of the values; the mean of the two middle ones of an even number.</summary>
    internal static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
