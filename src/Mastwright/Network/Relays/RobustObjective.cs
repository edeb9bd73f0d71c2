using Mastwright.Network.Graph;

namespace Mastwright.Network.Relays;

/// <summary>Number of stations that no loss of a single other station or relay cuts off from the home station.</summary>
/// <remarks>
/// Not submodular: a second way may need two relays. Among choices of the same number the one that joins more stations is worth a little more, and then the
/// one with more links.
/// </remarks>
public sealed class RobustObjective : RelayObjective
{
    /// <summary>What a joined station is worth beside one that is held twice; a link is worth as much less again.</summary>
    private const double Little = 1e-4;

    private readonly int before;
    private readonly (int One, int Other)[] stationLinks;

    /// <summary>An objective over a net.</summary>
    /// <param name="net">The net.</param>
    /// <param name="stationLinks">The links between its stations.</param>
    public RobustObjective(RelayNet net, IEnumerable<(int One, int Other)> stationLinks)
        : base(net)
    {
        this.stationLinks = [.. stationLinks];
        before = Held([], out _);
    }

    /// <summary>Number of stations that are held twice without any relay.</summary>
    public int Before => before;

    /// <inheritdoc/>
    public override bool IsSubmodular => false;

    internal override double Work => 200.0 * (Net.Stations + stationLinks.Length);

    /// <summary>Stations that are held twice more than without relays.</summary>
    public int More(ReadOnlySpan<int> chosen) => Held(chosen, out _) - before;

    /// <inheritdoc/>
    public override double Value(ReadOnlySpan<int> chosen)
    {
        int held = Held(chosen, out int joined);
        bool[] counts = Net.Joined(chosen);
        int links = 0;
        foreach (int candidate in chosen)
        {
            links += counts[Net.Stations + candidate] ? Net.LinksOf(candidate).Count(one => one < Net.Stations) : 0;
        }

        return held - before + (Little * joined) + (Little * Little * links);
    }

    private int Held(ReadOnlySpan<int> chosen, out int joined)
    {
        bool[] isJoined = Net.Joined(chosen);
        Dictionary<int, int> at = [];
        foreach (int candidate in chosen)
        {
            if (isJoined[Net.Stations + candidate])
            {
                at.TryAdd(Net.Stations + candidate, Net.Stations + at.Count);
            }
        }

        List<(int, int)> links = [.. stationLinks];
        foreach ((int candidate, int node) in at)
        {
            foreach (int other in Net.LinksOf(candidate - Net.Stations))
            {
                if (other < Net.Stations)
                {
                    links.Add((node, other));
                }
                else if (at.TryGetValue(other, out int relay))
                {
                    links.Add((node, relay));
                }
            }
        }

        StationGraph graph = StationGraph.OfLinks(Net.Stations + at.Count, links);
        int[] hops = graph.FewestHops(Net.Home);
        bool[] isHeld = [.. hops.Select(one => one > 0)];
        joined = isHeld.AsSpan(0, Net.Stations).Count(true);
        foreach (CutStation cut in WeakPoints.Of(graph, Net.Home).Stations)
        {
            foreach (int lost in cut.Station == Net.Home ? [] : cut.Lost)
            {
                isHeld[lost] = false;
            }
        }

        return isHeld.AsSpan(0, Net.Stations).Count(true);
    }
}
