namespace Mastwright.Network.Graph;

/// <summary>Which station hears which: an arc from one station to each that hears it.</summary>
public sealed class StationGraph
{
    private readonly int[] starts;
    private readonly int[] heads;

    /// <summary>A graph of stations 0, 1, …</summary>
    /// <param name="stations">Number of stations.</param>
    /// <param name="arcs">From and to; one that is given twice counts once, one from a station to itself not at all.</param>
    /// <exception cref="ArgumentOutOfRangeException">An arc ends at no station.</exception>
    public StationGraph(int stations, IEnumerable<(int From, int To)> arcs)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(stations);
        ArgumentNullException.ThrowIfNull(arcs);
        (int From, int To)[] sorted = [.. arcs.Where(arc => arc.From != arc.To).Distinct().Order()];
        starts = new int[stations + 1];
        heads = new int[sorted.Length];
        for (int i = 0; i < sorted.Length; i++)
        {
            if ((uint)sorted[i].From >= (uint)stations || (uint)sorted[i].To >= (uint)stations)
            {
                throw new ArgumentOutOfRangeException(nameof(arcs), sorted[i], $"There are {stations} stations.");
            }

            starts[sorted[i].From + 1]++;
            heads[i] = sorted[i].To;
        }

        for (int i = 0; i < stations; i++)
        {
            starts[i + 1] += starts[i];
        }
    }

    /// <summary>Number of stations.</summary>
    public int Count => starts.Length - 1;

    /// <summary>Number of arcs.</summary>
    public int ArcCount => heads.Length;

    /// <summary>Who hears a station, in ascending order.</summary>
    public ReadOnlySpan<int> From(int station) => heads.AsSpan(starts[station], starts[station + 1] - starts[station]);

    /// <summary>A graph in which each link counts both ways.</summary>
    public static StationGraph OfLinks(int stations, IEnumerable<(int One, int Other)> links)
    {
        ArgumentNullException.ThrowIfNull(links);
        return new(stations, links.SelectMany(link => ((int, int)[])[(link.One, link.Other), (link.Other, link.One)]));
    }

    /// <summary>Fewest hops from a station to each other one: 0 to itself, −1 where there is no way within the limit.</summary>
    /// <param name="source">The station.</param>
    /// <param name="hopLimit">Most links of a way; zero or more.</param>
    public int[] FewestHops(int source, int hopLimit = int.MaxValue)
    {
        int[] hops = new int[Count];
        Array.Fill(hops, -1);
        hops[source] = 0;
        Queue<int> queue = new([source]);
        while (queue.TryDequeue(out int at))
        {
            if (hops[at] >= hopLimit)
            {
                continue;
            }

            foreach (int next in From(at))
            {
                if (hops[next] < 0)
                {
                    hops[next] = hops[at] + 1;
                    queue.Enqueue(next);
                }
            }
        }

        return hops;
    }
}
