using System.Collections.Immutable;
using Mastwright.Network.Links;
using Mastwright.Quantities;

namespace Mastwright.Network.Hops;

/// <summary>Floods packets from a station through many worlds.</summary>
/// <remarks>
/// A world fixes what is not known: one draw a pair of stations, the same both ways, for both directions share the path. In a world fading
/// is drawn for each packet and direction. Draws are keyed by (seed, pair, world) and (…, direction, packet), pairs by the keys of their
/// stations: neither order nor other stations change them. All stations relay each packet once, on an ideal channel without collisions.
/// </remarks>
public static class FloodTrial
{
    /// <summary>Standard deviations beyond which no world is expected to lift a link: 1 in 30 million.</summary>
    private const double Hopeless = 5.5;

    /// <summary>Tries the worlds.</summary>
    /// <param name="matrix">The links.</param>
    /// <param name="source">The station that sends.</param>
    /// <param name="settings">How worlds are tried.</param>
    /// <param name="progress">Told the number of worlds done so far, from any thread; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>One a station, the source among them, in the matrix' order.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ImmutableArray<FloodedStation> Run(LinkMatrix matrix, int source, HopSettings settings, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        ArgumentNullException.ThrowIfNull(settings);
        Arc[][] arcs = Arcs(matrix, settings.Seed);
        int count = matrix.Stations.Length;
        int[][] hops = new int[settings.Worlds][];
        int[][] received = new int[settings.Worlds][];
        int done = 0;
        ParallelOptions options = new() { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount };
        Parallel.For(0, settings.Worlds, options, () => new World(count), (world, _, state) =>
        {
            state.Enter(arcs, (ulong)world);
            hops[world] = [.. state.Flood(source, settings.HopLimit, packet: null)];
            int[] got = new int[count];
            for (int packet = 0; packet < settings.Packets; packet++)
            {
                int[] reached = state.Flood(source, settings.HopLimit, packet);
                for (int station = 0; station < count; station++)
                {
                    got[station] += reached[station] >= 0 ? 1 : 0;
                }
            }

            received[world] = got;
            progress?.Report(Interlocked.Increment(ref done));
            return state;
        }, _ => { });

        return [.. Enumerable.Range(0, count).Select(station => Sum(station, hops, received, settings))];
    }

    private static FloodedStation Sum(int station, int[][] hops, int[][] received, HopSettings settings)
    {
        int[] by = new int[settings.HopLimit + 1];
        long got = 0;
        for (int world = 0; world < hops.Length; world++)
        {
            if (hops[world][station] >= 0)
            {
                by[hops[world][station]]++;
                got += received[world][station];
            }
        }

        int reached = by.Sum();
        int median = 0;
        for (int below = by[0]; median < settings.HopLimit && 2 * below < reached;)
        {
            below += by[++median];
        }

        return new(
            station,
            (double)reached / hops.Length,
            reached == 0 ? 0 : (double)got / ((long)reached * settings.Packets),
            reached == 0 ? 0 : median,
            [.. by.Skip(1).Select(one => (double)one / hops.Length)]);
    }

    private static Arc[][] Arcs(LinkMatrix matrix, ulong seed)
    {
        List<Arc>[] arcs = [.. matrix.Stations.Select(_ => new List<Arc>())];
        foreach (LinkPair pair in matrix.Pairs)
        {
            string one = matrix.Stations[pair.From].Key;
            string other = matrix.Stations[pair.To].Key;
            bool inOrder = string.CompareOrdinal(one, other) < 0;
            ulong key = KeyedDraws.Within(KeyedDraws.SeedOf(inOrder ? $"{one}\n{other}" : $"{other}\n{one}"), seed);
            Add(pair.From, pair.To, pair.Out, key, inOrder ? 0UL : 1);
            Add(pair.To, pair.From, pair.Back, key, inOrder ? 1UL : 0);
        }

        return [.. arcs.Select(list => list.ToArray())];

        void Add(int from, int to, LinkOneWay way, ulong key, ulong direction)
        {
            if (way.Odds is not null && way.CentreDb + (Hopeless * (way.UnknownDb + way.FadingDb)) >= 0)
            {
                arcs[from].Add(new(to, way.CentreDb, way.UnknownDb, way.FadingDb, key, direction));
            }
        }
    }

    private readonly record struct Arc(int To, double CentreDb, double UnknownDb, double FadingDb, ulong PairKey, ulong Direction);

    /// <summary>The links of one world, and room to flood it.</summary>
    private sealed class World(int stations)
    {
        private readonly int[] hops = new int[stations];
        private readonly int[] queue = new int[stations];
        private (int To, double MarginDb, double FadingDb, ulong Key)[][] links = [];

        internal void Enter(Arc[][] arcs, ulong world)
        {
            if (links.Length == 0)
            {
                links = [.. arcs.Select(list => new (int, double, double, ulong)[list.Length])];
            }

            for (int from = 0; from < arcs.Length; from++)
            {
                for (int i = 0; i < arcs[from].Length; i++)
                {
                    Arc arc = arcs[from][i];
                    ulong key = KeyedDraws.Within(arc.PairKey, world);
                    links[from][i] = (arc.To, arc.CentreDb + (arc.UnknownDb * KeyedDraws.Normal(key, 0)), arc.FadingDb, KeyedDraws.Within(key, arc.Direction));
                }
            }
        }

        /// <summary>Fewest hops to each station, −1 where the packet does not get; null for the typical packet.</summary>
        internal int[] Flood(int source, int hopLimit, int? packet)
        {
            Array.Fill(hops, -1);
            hops[source] = 0;
            queue[0] = source;
            int last = 1;
            for (int first = 0; first < last; first++)
            {
                int at = queue[first];
                if (hops[at] == hopLimit)
                {
                    break;
                }

                foreach ((int to, double margin, double fading, ulong key) in links[at])
                {
                    if (hops[to] < 0 && Gets(margin, fading, key, packet))
                    {
                        hops[to] = hops[at] + 1;
                        queue[last++] = to;
                    }
                }
            }

            return hops;
        }

        private static bool Gets(double marginDb, double fadingDb, ulong key, int? packet) => (packet, marginDb + (Hopeless * fadingDb) < 0) switch
        {
            (null, _) => marginDb >= 0,
            (_, true) => false,
            ({ } index, _) => marginDb - (Hopeless * fadingDb) >= 0 || marginDb + (fadingDb * KeyedDraws.Normal(key, index)) >= 0,
        };
    }
}
