using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Paths;

/// <summary>A curve without the points that nobody would miss.</summary>
internal static class PlainCurve
{
    /// <summary>How far the plainer curve may lie off, in pixels: less than an eye or a screen resolves.</summary>
    public const double TolerancePixels = 0.08;

    /// <summary>The first, the last, and as many points between as keep every dropped one within the tolerance (Douglas and Peucker's way).</summary>
    public static ImmutableArray<Spot> Of(IReadOnlyList<Spot> curve)
    {
        if (curve.Count < 3)
        {
            return [.. curve];
        }

        bool[] kept = new bool[curve.Count];
        kept[0] = kept[^1] = true;
        Stack<(int First, int Last)> open = new([(0, curve.Count - 1)]);
        while (open.TryPop(out (int First, int Last) span))
        {
            int farthest = -1;
            double most = TolerancePixels;
            for (int i = span.First + 1; i < span.Last; i++)
            {
                double off = Off(curve[i], curve[span.First], curve[span.Last]);
                if (off > most)
                {
                    most = off;
                    farthest = i;
                }
            }

            if (farthest > 0)
            {
                kept[farthest] = true;
                open.Push((span.First, farthest));
                open.Push((farthest, span.Last));
            }
        }

        return [.. curve.Where((_, i) => kept[i])];
    }

    private static double Off(Spot point, Spot from, Spot to)
    {
        double dx = to.X - from.X;
        double dy = to.Y - from.Y;
        double length = Math.Sqrt((dx * dx) + (dy * dy));
        return length == 0
            ? Math.Sqrt(Math.Pow(point.X - from.X, 2) + Math.Pow(point.Y - from.Y, 2))
            : Math.Abs((dx * (point.Y - from.Y)) - (dy * (point.X - from.X))) / length;
    }
}
