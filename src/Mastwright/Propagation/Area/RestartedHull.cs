namespace Mastwright.Propagation.Area;

/// <summary>The upper hull of the ground from the last restart to any later point, kept for all of them at once.</summary>
/// <remarks>
/// For the roughness of P.1812, the highest ground above a line between the two horizons: the station's horizon is the last restart, the
/// receiver's horizon lies somewhere behind the newest point. Each point keeps its left neighbour on the hull that ends with it, and the
/// slope of the edge to it; along that chain slopes rise.
/// </remarks>
internal sealed class RestartedHull(int capacity)
{
    private readonly int[] parents = new int[capacity];
    private readonly double[] edges = new double[capacity];

    internal void Restart(int point)
    {
        parents[point] = -1;
        edges[point] = double.PositiveInfinity;
    }

    /// <summary>Adds the point after the newest.</summary>
    internal void Push(int point, double[] x, double[] heights)
    {
        int left = point - 1;
        while (heights[point] - heights[left] >= edges[left] * (x[point] - x[left]))
        {
            left = parents[left];
        }

        parents[point] = left;
        edges[point] = (heights[point] - heights[left]) / (x[point] - x[left]);
    }

    /// <summary>The point between the restart and a given one that stands highest above a line of a slope.</summary>
    internal int Highest(int upTo, double slope)
    {
        int point = upTo;
        while (edges[point] < slope)
        {
            point = parents[point];
        }

        return point;
    }
}
