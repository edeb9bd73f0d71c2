namespace Mastwright.Propagation.Area;

/// <summary>Finds the point that leaves the least of its Fresnel zone free, among all before a receiver, looking at few of them.</summary>
/// <remarks>
/// Clearance in radii has a weight that differs along the path, so the point need not be on any hull. Branch and bound over blocks: no
/// point of a block is nearer than the lowest line over it, less the block's highest point, in the widest Fresnel zone over it. The
/// answer for the cell before is tried first.
/// </remarks>
internal sealed class NearestToRay(int capacity)
{
    private const int Shift = 5;
    private readonly double[] highest = new double[(capacity >> Shift) + 2];
    private int lastAnswer;

    internal void Clear() => lastAnswer = 1;

    /// <summary>Notes a point's height in the frame in which the bulge is taken off.</summary>
    internal void Push(int point, double z)
    {
        int block = point >> Shift;
        highest[block] = (point & ((1 << Shift) - 1)) == 0 || point == 1 ? z : Math.Max(highest[block], z);
    }

    /// <summary>The nearest of points 1 to <paramref name="last"/>; of equals the last. Larger key: nearer.</summary>
    /// <param name="z">Heights with the bulge taken off.</param>
    /// <param name="step">Distance of two points.</param>
    /// <param name="last">Last point, 1 or more.</param>
    /// <param name="length">Distance of the receiver.</param>
    /// <param name="start">Height of the station's antenna.</param>
    /// <param name="slope">Slope of the line from there to the receiver, bulge taken off.</param>
    internal int Find(double[] z, double step, int last, double length, double start, double slope)
    {
        int best = Math.Min(lastAnswer, last);
        double bestKey = Key(z, step, best, length, start, slope);
        int lastBlock = last >> Shift;
        int first = best >> Shift;
        Scan(z, step, first, last, length, start, slope, ref best, ref bestKey);
        if (first != lastBlock)
        {
            Scan(z, step, lastBlock, last, length, start, slope, ref best, ref bestKey);
        }

        double half = length / 2;
        double blockLength = (1 << Shift) * step;
        for (int block = 0; block < lastBlock; block++)
        {
            double from = block * blockLength;
            double to = from + blockLength;
            double lowest = start + (slope * (slope < 0 ? to : from)) - highest[block];
            double widest = to < half ? to * (length - to) : from > half ? from * (length - from) : half * half;

            // A hair of slack: the bound and the point itself are rounded in different ways.
            if (block != first && !(lowest > 0 && -lowest * lowest < bestKey * widest * (1 + 1e-9)))
            {
                Scan(z, step, block, last, length, start, slope, ref best, ref bestKey);
            }
        }

        lastAnswer = best;
        return best;
    }

    private static double Key(double[] z, double step, int point, double length, double start, double slope)
    {
        double x = point * step;
        double above = z[point] - start - (slope * x);
        return above * Math.Abs(above) / (x * (length - x));
    }

    private static void Scan(double[] z, double step, int block, int last, double length, double start, double slope, ref int best, ref double bestKey)
    {
        int end = Math.Min(last, ((block + 1) << Shift) - 1);
        for (int i = Math.Max(1, block << Shift); i <= end; i++)
        {
            double key = Key(z, step, i, length, start, slope);
            if (key > bestKey || (key == bestKey && i > best))
            {
                best = i;
                bestKey = key;
            }
        }
    }
}
