namespace Mastwright.Propagation.Area;

/// <summary>The upper hull of the bare ground from the last restart to any later point, kept for all of them at once.</summary>
/// <remarks>
/// The restart is the station's horizon. For the roughness of P.1812 the highest ground above a line is wanted between the two horizons, and the
/// receiver's lies somewhere behind the newest point. Each point keeps its left neighbour on the hull that ends with it, and the slope
/// of the edge to it; along that chain slopes rise. Ground before the station's horizon lies below the ray to it, so it neither stands highest above
/// a lower line nor is seen highest from a place below that ray: the same chain serves the obstruction of (87) as well.
/// </remarks>
internal sealed class RestartedHull(int capacity)
{
    private readonly Node[] nodes = new Node[capacity];

    internal void Restart(int point, double x, double height) =>
        nodes[point] = new() { Edge = double.PositiveInfinity, X = x, Height = height, Left = -1 };

    /// <summary>Adds the point after the newest.</summary>
    internal void Push(int point, double x, double height)
    {
        Node[] all = nodes;
        int left = point - 1;
        ref Node node = ref all[left];
        double rise = height - node.Height;
        double run = x - node.X;
        while (rise >= node.Edge * run)
        {
            left = node.Left;
            node = ref all[left];
            rise = height - node.Height;
            run = x - node.X;
        }

        ref Node added = ref all[point];
        added.Edge = rise / run;
        added.X = x;
        added.Height = height;
        added.Left = left;
    }

    /// <summary>The point between the restart and a given one that stands highest above a line of a slope; of equals the last.</summary>
    internal int Highest(int upTo, double slope)
    {
        int point = upTo;
        while (nodes[point].Edge < slope)
        {
            point = nodes[point].Left;
        }

        return point;
    }

    /// <summary>The point between the restart and a given one that is seen highest from a place beyond them; of equals the last.</summary>
    internal int Tangent(int upTo, double x, double z)
    {
        int point = upTo;
        while (true)
        {
            ref Node node = ref nodes[point];
            if (!(z > node.Height + (node.Edge * (x - node.X))))
            {
                return point;
            }

            point = node.Left;
        }
    }

    private struct Node
    {
        internal double Edge;
        internal double X;
        internal double Height;
        internal int Left;
    }
}
