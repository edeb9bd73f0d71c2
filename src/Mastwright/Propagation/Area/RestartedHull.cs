namespace Mastwright.Propagation.Area;

/// <summary>The upper hull of the bare ground from the last restart to the newest point, and for one question to any point before it.</summary>
/// <remarks>
/// The restart is the station's horizon. For the roughness of P.1812 the highest ground above a line is wanted between the two horizons, and the
/// receiver's lies somewhere behind the newest point. So each point keeps its left neighbour on the hull that ends with it, and the
/// slope of the edge from it; along that chain slopes rise. Ground before the station's horizon lies below the ray to it, so it neither stands highest above
/// a lower line nor is seen highest from a place below that ray: the same hull serves the obstruction of (87) as well.
/// </remarks>
internal sealed class RestartedHull(int capacity)
{
    private readonly UpperHull hull = new(capacity);
    private readonly Node[] nodes = new Node[capacity];

    internal void Restart(int point, double x, double height)
    {
        hull.Clear();
        Push(point, x, height);
    }

    /// <summary>Adds the point after the newest.</summary>
    internal void Push(int point, double x, double height)
    {
        ref Node node = ref nodes[point];
        node.Left = hull.Push(point, x, height);
        node.Slope = hull.NewestSlope;
    }

    /// <summary>The point since the restart that stands highest above a line of a slope; of equals the last.</summary>
    internal int Highest(double slope) => hull.Highest(slope);

    /// <summary>The point since the restart that is seen highest from a place beyond the newest; of equals the last.</summary>
    internal int Tangent(double x, double z) => hull.Tangent(x, z);

    /// <summary>The point between the restart before a given one and that one that stands highest above a line of a slope; of equals the last.</summary>
    internal int Highest(int upTo, double slope)
    {
        int point = upTo;
        while (nodes[point].Slope < slope)
        {
            point = nodes[point].Left;
        }

        return point;
    }

    private struct Node
    {
        internal double Slope;
        internal int Left;
    }
}
