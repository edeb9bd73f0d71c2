using System.Diagnostics;

namespace Mastwright.Benchmarks.Figures;

/// <summary>A fixed loop whose speed stands for the machine's: each step waits for the one before, so no compiler and no vector shortens it.</summary>
/// <remarks>
/// One step is x ← x·0.999999 + 1/(1 + x) in doubles: a division, a multiplication and two additions, about what a point of a profile
/// costs in latency. It reads no memory. Timed before, between and after the figures; the median counts.
/// </remarks>
internal sealed class Calibration
{
    /// <summary>
    /// Nanoseconds of a step on the machine that the bounds were set on (2026-11-25: x64, 2 threads, otherwise idle). A bound in steps is
    /// the bound in time divided by this.
    /// </summary>
    internal const double ReferenceNanoseconds = 5.4;

    private const int Steps = 100_000;
    private const int Loops = 9;
    private readonly List<double> nanoseconds = [];

    /// <summary>Nanoseconds of one step: the median of all loops so far.</summary>
    internal double Nanoseconds => Sample.Median(nanoseconds);

    /// <summary>Value at which the loop ends, so that nobody leaves it out.</summary>
    internal double Last { get; private set; } = 1;

    internal void Time()
    {
        for (int loop = 0; loop < Loops; loop++)
        {
            long start = Stopwatch.GetTimestamp();
            Last = Loop(Last);
            nanoseconds.Add(Stopwatch.GetElapsedTime(start).TotalNanoseconds / Steps);
        }
    }

    private static double Loop(double x)
    {
        for (int i = 0; i < Steps; i++)
        {
            x = (x * 0.999999) + (1 / (1 + x));
        }

        return x;
    }
}
