namespace Mastwright.Propagation.Area;

/// <summary>The upper convex hull of points that come in order of distance, and the tangents to it from beyond its last point.</summary>
/// <remarks>
/// A monotone chain on a stack. Each vertex keeps the line through its left neighbour and itself, so that adding a point and finding a
/// tangent ask the same question: does a place stand above that line? The answers change once along the stack.
/// </remarks>
internal sealed class UpperHull(int capacity)
{
    /// <summary>So many vertices are tried one by one before halving: over hills the hull has about ten, over the sea every point.</summary>
    private const int Walk = 8;

    private readonly int[] points = new int[capacity];
    private readonly double[] xs = new double[capacity];
    private readonly double[] zs = new double[capacity];
    private readonly double[] slopes = new double[capacity];
    private readonly double[] starts = new double[capacity];
    private int top = -1;

    internal void Clear() => top = -1;

    internal void Push(int point, double x, double z)
    {
        int t = top;
        if (t < 0)
        {
            slopes[0] = 0;
            starts[0] = double.PositiveInfinity;
        }
        else
        {
            while (z >= starts[t] + (slopes[t] * x))
            {
                t--;
            }

            double slope = (z - zs[t]) / (x - xs[t]);
            slopes[t + 1] = slope;
            starts[t + 1] = z - (slope * x);
        }

        top = t + 1;
        points[top] = point;
        xs[top] = x;
        zs[top] = z;
    }

    /// <summary>The vertex seen highest from a place beyond the last point; of equals the last.</summary>
    internal int Tangent(double x, double z)
    {
        int t = top;
        for (int i = 0; i < Walk; i++)
        {
            if (!(z > starts[t] + (slopes[t] * x)))
            {
                return points[t];
            }

            t--;
        }

        // The answer is at or below t; the bottom always answers no.
        int low = 0;
        while (low < t)
        {
            int middle = (low + t + 1) / 2;
            if (z > starts[middle] + (slopes[middle] * x))
            {
                t = middle - 1;
            }
            else
            {
                low = middle;
            }
        }

        return points[t];
    }

    /// <summary>The vertex that stands highest above a line of a slope; of equals the last.</summary>
    internal int Highest(double slope)
    {
        int low = 0;
        int t = top;
        for (int i = 0; i < Walk; i++)
        {
            if (t == 0 || slopes[t] >= slope)
            {
                return points[t];
            }

            t--;
        }

        while (low < t)
        {
            int middle = (low + t + 1) / 2;
            if (slopes[middle] < slope)
            {
                t = middle - 1;
            }
            else
            {
                low = middle;
            }
        }

        return points[t];
    }
}
