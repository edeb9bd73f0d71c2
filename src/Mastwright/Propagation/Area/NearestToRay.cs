using System.Numerics;

namespace Mastwright.Propagation.Area;

/// <summary>Finds the point that leaves the least of its Fresnel zone free, among all before a receiver, looking at few of them.</summary>
/// <remarks>
/// Clearance in radii has a weight that differs along the path, so the point need not be on any hull. Branch and bound over blocks: no
/// point of a block is nearer than the lowest line over it, less the block's highest point, in the widest Fresnel zone over it. The
/// answer for the cell before is tried first. Points and blocks are tried a vector at a time; only comparisons are made, so the width of the
/// vector changes no bit of the answer.
/// </remarks>
internal sealed class NearestToRay(int capacity)
{
    private const int Shift = 5;
    private const int BlockPoints = 1 << Shift;

    private readonly double[] highest = new double[(capacity >> Shift) + 1 + Vector<double>.Count];
    private int built;
    private int lastAnswer;

    internal void Clear()
    {
        lastAnswer = 1;
        built = 0;
    }

    /// <summary>The nearest of points 1 to <paramref name="last"/>; of equals the last.</summary>
    /// <param name="z">Heights with the bulge taken off.</param>
    /// <param name="step">Distance of two points.</param>
    /// <param name="last">Last point, 1 or more.</param>
    /// <param name="length">Distance of the receiver.</param>
    /// <param name="start">Height of the station's antenna.</param>
    /// <param name="slope">Slope of the line from there to the receiver, bulge taken off.</param>
    internal int Find(double[] z, double step, int last, double length, double start, double slope)
    {
        int lastBlock = last >> Shift;
        for (; built < lastBlock; built++)
        {
            highest[built] = Highest(z.AsSpan(built << Shift, BlockPoints), built == 0 ? 1 : 0);
        }

        Line line = new(z, step, length, start, slope);
        int best = Math.Min(lastAnswer, last);
        double bestKey = line.Key(best);
        int first = best >> Shift;
        line.Scan(first << Shift, last, ref best, ref bestKey);
        if (first != lastBlock)
        {
            line.Scan(lastBlock << Shift, last, ref best, ref bestKey);
        }

        Vector<double> blockLength = new(BlockPoints * step);
        Vector<double> half = new(length / 2);
        Vector<double> whole = new(length);
        for (int group = 0; group < lastBlock; group += Vector<double>.Count)
        {
            Vector<double> from = (Vector<double>.Indices + new Vector<double>(group)) * blockLength;
            Vector<double> to = from + blockLength;
            Vector<double> lowest = new Vector<double>(start) + ((slope < 0 ? to : from) * slope) - new Vector<double>(highest, group);
            Vector<double> widest = Vector.Max(Vector.Min(half, to), from);
            widest *= whole - widest;

            // A hair of slack: the bound and the point itself are rounded in different ways.
            Vector<double> bound = Vector.Max(lowest, Vector<double>.Zero);
            Vector<long> worth = Vector.GreaterThanOrEqual(-bound * bound, widest * (bestKey - (1e-9 * Math.Abs(bestKey))));
            if (Vector.EqualsAll(worth, Vector<long>.Zero))
            {
                continue;
            }

            for (int lane = 0; lane < Vector<double>.Count && group + lane < lastBlock; lane++)
            {
                if (worth[lane] != 0 && group + lane != first)
                {
                    line.Scan((group + lane) << Shift, last, ref best, ref bestKey);
                }
            }
        }

        lastAnswer = best;
        return best;
    }

    private static double Highest(ReadOnlySpan<double> z, int from)
    {
        double most = z[from];
        for (int i = from + 1; i < z.Length; i++)
        {
            most = Math.Max(most, z[i]);
        }

        return most;
    }

    /// <summary>One ray over the points. A larger key is nearer: the signed square of the height above the ray, over x(d − x).</summary>
    private readonly ref struct Line(ReadOnlySpan<double> z, double step, double length, double start, double slope)
    {
        private readonly ReadOnlySpan<double> z = z;

        internal double Key(int point)
        {
            double x = point * step;
            double above = z[point] - start - (slope * x);
            return above * Math.Abs(above) / (x * (length - x));
        }

        internal void Scan(int from, int last, ref int best, ref double bestKey)
        {
            int i = Math.Max(from, 1);
            int end = Math.Min(last, from + BlockPoints - 1);
            for (; i <= end + 1 - Vector<double>.Count; i += Vector<double>.Count)
            {
                Vector<double> x = (Vector<double>.Indices + new Vector<double>(i)) * step;
                Vector<double> above = new Vector<double>(z[i..]) - new Vector<double>(start) - (x * slope);

                // No division: the product is above zero. The hair of slack is settled by the exact key below.
                Vector<double> product = x * (new Vector<double>(length) - x) * bestKey;
                Vector<double> square = above * Vector.Abs(above);
                if (Vector.GreaterThanOrEqualAny(square, product - (Vector.Abs(product) * 1e-12)))
                {
                    Try(i, i + Vector<double>.Count - 1, ref best, ref bestKey);
                }
            }

            Try(i, end, ref best, ref bestKey);
        }

        private void Try(int from, int to, ref int best, ref double bestKey)
        {
            for (int i = from; i <= to; i++)
            {
                double key = Key(i);
                if (key > bestKey || (key == bestKey && i > best))
                {
                    best = i;
                    bestKey = key;
                }
            }
        }
    }
}
