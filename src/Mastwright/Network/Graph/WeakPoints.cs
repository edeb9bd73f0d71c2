using System.Collections.Immutable;

namespace Mastwright.Network.Graph;

/// <summary>A station whose loss cuts others off.</summary>
/// <param name="Station">The station.</param>
/// <param name="Lost">Those that the root reaches no longer; for the root itself, those outside the largest part that is left.</param>
public sealed record CutStation(int Station, ImmutableArray<int> Lost);

/// <summary>A link whose loss cuts others off.</summary>
/// <param name="Near">Its end on the root's side.</param>
/// <param name="Far">Its other end.</param>
/// <param name="Lost">Those that the root reaches no longer, the far end among them.</param>
public sealed record CutLink(int Near, int Far, ImmutableArray<int> Lost);

/// <summary>Articulation stations and bridges of the part of a graph that a root station belongs to.</summary>
/// <remarks>
/// One search in depth (Tarjan, "Depth-first search and linear graph algorithms", SIAM J. Computing 1, 1972): a station below which no arc
/// leads back above it cuts what is below off. The graph's arcs must go both ways.
/// </remarks>
public sealed record WeakPoints
{
    /// <summary>Stations whose loss cuts others off, the one with the greatest loss first.</summary>
    public required ImmutableArray<CutStation> Stations { get; init; }

    /// <summary>Links whose loss cuts others off, the one with the greatest loss first.</summary>
    public required ImmutableArray<CutLink> Links { get; init; }

    /// <summary>Finds them.</summary>
    /// <param name="graph">The graph; every arc has its opposite.</param>
    /// <param name="root">The station that losses are counted from.</param>
    public static WeakPoints Of(StationGraph graph, int root)
    {
        ArgumentNullException.ThrowIfNull(graph);
        int[] parent = new int[graph.Count];
        int[] entered = new int[graph.Count];
        int[] low = new int[graph.Count];
        int[] next = new int[graph.Count];
        Array.Fill(entered, -1);
        List<int> order = [];
        Enter(root, -1);
        Stack<int> stack = new([root]);
        while (stack.TryPeek(out int at))
        {
            if (next[at] < graph.From(at).Length)
            {
                int to = graph.From(at)[next[at]++];
                if (entered[to] < 0)
                {
                    Enter(to, at);
                    stack.Push(to);
                }
                else if (to != parent[at])
                {
                    low[at] = Math.Min(low[at], entered[to]);
                }
            }
            else
            {
                stack.Pop();
                if (parent[at] >= 0)
                {
                    low[parent[at]] = Math.Min(low[parent[at]], low[at]);
                }
            }
        }

        return Collect(order, parent, entered, low);

        void Enter(int station, int from)
        {
            parent[station] = from;
            entered[station] = low[station] = order.Count;
            order.Add(station);
        }
    }

    private static WeakPoints Collect(List<int> order, int[] parent, int[] entered, int[] low)
    {
        // Below a station lie as many of the order as come after it before the search leaves it.
        int[] size = new int[parent.Length];
        for (int i = order.Count - 1; i >= 0; i--)
        {
            size[order[i]]++;
            if (i > 0)
            {
                size[parent[order[i]]] += size[order[i]];
            }
        }

        ImmutableArray<int> Below(int station) => [.. order.Skip(entered[station]).Take(size[station]).Order()];
        Dictionary<int, List<int>> cut = [];
        List<CutLink> links = [];
        foreach (int station in order.Skip(1))
        {
            int above = parent[station];
            if (low[station] > entered[above])
            {
                links.Add(new(above, station, Below(station)));
            }

            if (low[station] >= entered[above])
            {
                (cut.TryGetValue(above, out List<int>? children) ? children : cut[above] = []).Add(station);
            }
        }

        int root = order[0];
        IEnumerable<CutStation> Stations()
        {
            foreach ((int station, List<int> children) in cut)
            {
                if (station != root)
                {
                    yield return new(station, [.. children.SelectMany(child => Below(child)).Order()]);
                }
                else if (children.Count > 1)
                {
                    int largest = children.MaxBy(child => size[child]);
                    yield return new(station, [.. children.Where(child => child != largest).SelectMany(child => Below(child)).Order()]);
                }
            }
        }

        return new()
        {
            Stations = [.. Stations().OrderByDescending(one => one.Lost.Length).ThenBy(one => one.Station)],
            Links = [.. links.OrderByDescending(one => one.Lost.Length).ThenBy(one => one.Near).ThenBy(one => one.Far)],
        };
    }
}
