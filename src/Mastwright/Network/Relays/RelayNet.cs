using System.Collections.Immutable;
using Mastwright.Network.Graph;

namespace Mastwright.Network.Relays;

/// <summary>Which stations and candidates are in a link that keeps the wanted margin both ways.</summary>
/// <remarks>Stations are numbered 0, 1, …; candidates on their own 0, 1, …. Immutable and safe from many threads.</remarks>
public sealed class RelayNet
{
    private readonly ImmutableArray<int>[] neighbours;

    /// <summary>A net of stations and candidates.</summary>
    /// <param name="stations">Number of stations.</param>
    /// <param name="candidates">Number of candidates.</param>
    /// <param name="home">The station whose network it is.</param>
    /// <param name="stationLinks">Links between stations.</param>
    /// <param name="relayLinks">Links of a candidate with a station.</param>
    /// <param name="chainLinks">Links between candidates; empty where a relay must not hang on another.</param>
    /// <param name="throughRelays">Whether a relay counts that is joined through other chosen relays, or stations that these join; else it needs a link of its own to the network as it is.</param>
    public RelayNet(
        int stations,
        int candidates,
        int home,
        IEnumerable<(int One, int Other)> stationLinks,
        IEnumerable<(int Candidate, int Station)> relayLinks,
        IEnumerable<(int One, int Other)> chainLinks,
        bool throughRelays)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(candidates);
        ArgumentOutOfRangeException.ThrowIfLessThan(home, 0);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(home, stations);
        Stations = stations;
        Candidates = candidates;
        Home = home;
        ThroughRelays = throughRelays;
        (int One, int Other)[] between = [.. stationLinks];
        int[] hops = StationGraph.OfLinks(stations, between).FewestHops(home);
        IsJoined = [.. hops.Select(one => one >= 0)];
        StationGraph all = StationGraph.OfLinks(
            stations + candidates,
            [.. between, .. relayLinks.Select(link => (link.Candidate + stations, link.Station)), .. chainLinks.Select(link => (link.One + stations, link.Other + stations))]);
        neighbours = [.. Enumerable.Range(0, all.Count).Select(one => ImmutableArray.Create(all.From(one)))];
        HasParent = [.. Enumerable.Range(0, candidates).Select(candidate => neighbours[stations + candidate].Any(one => one < stations && IsJoined[one]))];
    }

    /// <summary>Number of stations.</summary>
    public int Stations { get; }

    /// <summary>Number of candidates.</summary>
    public int Candidates { get; }

    /// <summary>The station whose network it is.</summary>
    public int Home { get; }

    /// <summary>Whether a relay may hang on another.</summary>
    public bool ThroughRelays { get; }

    /// <summary>Whether a station is in the network as it is.</summary>
    public ImmutableArray<bool> IsJoined { get; }

    /// <summary>Whether a candidate has a link of its own to the network as it is.</summary>
    public ImmutableArray<bool> HasParent { get; }

    /// <summary>What a candidate is linked with: stations below <see cref="Stations"/>, candidates from there on.</summary>
    public ImmutableArray<int> LinksOf(int candidate) => neighbours[Stations + candidate];

    /// <summary>What is joined to the home station with some relays: stations first, then candidates, of which only chosen ones are.</summary>
    /// <param name="chosen">The relays.</param>
    public bool[] Joined(ReadOnlySpan<int> chosen)
    {
        bool[] isThere = new bool[Stations + Candidates];
        foreach (int candidate in chosen)
        {
            isThere[Stations + candidate] = true;
        }

        bool[] joined = new bool[isThere.Length];
        if (!ThroughRelays)
        {
            // Each relay hangs on the network as it is, and the network with the stations that it joins ends there.
            IsJoined.AsSpan().CopyTo(joined);
            foreach (int candidate in chosen)
            {
                joined[Stations + candidate] = HasParent[candidate];
            }

            Spread(joined, isThere, [.. chosen.ToArray().Where(candidate => HasParent[candidate]).Select(candidate => Stations + candidate)], throughRelays: false);
            return joined;
        }

        joined[Home] = true;
        Spread(joined, isThere, [Home], throughRelays: true);
        return joined;
    }

    /// <summary>Fewest relays that have to be chosen so that a candidate counts, itself among them; −1 where nothing helps.</summary>
    /// <param name="chosen">Relays that are chosen already.</param>
    /// <param name="before">Candidate that each one hangs on; −1 for none.</param>
    public int[] Depths(ReadOnlySpan<int> chosen, out int[] before)
    {
        int[] depth = [.. Enumerable.Repeat(-1, Candidates)];
        before = [.. Enumerable.Repeat(-1, Candidates)];
        bool[] joined = Joined(chosen);
        Queue<int> queue = new();
        for (int candidate = 0; candidate < Candidates; candidate++)
        {
            if (joined[Stations + candidate] || (ThroughRelays ? LinksOf(candidate).Any(one => joined[one]) : HasParent[candidate]))
            {
                depth[candidate] = joined[Stations + candidate] ? 0 : 1;
                queue.Enqueue(candidate);
            }
        }

        while (ThroughRelays && queue.TryDequeue(out int at))
        {
            foreach (int next in WithStationsBetween(at))
            {
                if (depth[next] < 0)
                {
                    depth[next] = depth[at] + 1;
                    before[next] = at;
                    queue.Enqueue(next);
                }
            }
        }

        return depth;
    }

    /// <summary>Candidates that are linked with another one, or with stations that it would join.</summary>
    private IEnumerable<int> WithStationsBetween(int candidate)
    {
        bool[] seen = new bool[Stations];
        Queue<int> queue = new(LinksOf(candidate));
        while (queue.TryDequeue(out int at))
        {
            if (at >= Stations)
            {
                yield return at - Stations;
            }
            else if (!seen[at])
            {
                seen[at] = true;
                foreach (int next in neighbours[at])
                {
                    queue.Enqueue(next);
                }
            }
        }
    }

    private void Spread(bool[] joined, bool[] isThere, IEnumerable<int> from, bool throughRelays)
    {
        Queue<int> queue = new(from);
        while (queue.TryDequeue(out int at))
        {
            foreach (int next in neighbours[at])
            {
                if (!joined[next] && (next < Stations || (throughRelays && isThere[next])))
                {
                    joined[next] = true;
                    queue.Enqueue(next);
                }
            }
        }
    }
}
