using System.Collections.Immutable;

namespace Mastwright.Network.Graph;

/// <summary>A way through stations.</summary>
/// <param name="Stations">The stations from the first to the last.</param>
/// <param name="Probability">Product of the probabilities of its links.</param>
public sealed record StationRoute(ImmutableArray<int> Stations, double Probability)
{
    /// <summary>Number of links.</summary>
    public int Hops => Stations.Length - 1;
}

/// <summary>The way of the greatest product of probabilities from one station to each other one, within a limit of hops.</summary>
public static class ProbableRoutes
{
    /// <summary>Finds the ways.</summary>
    /// <param name="stations">Number of stations.</param>
    /// <param name="ways">From, to and the probability of each link, 0 to 1; those of 0 do not count.</param>
    /// <param name="source">The station to start from.</param>
    /// <param name="hopLimit">Most links of a way.</param>
    /// <returns>A way a station: of one station for the source, null where there is none. Of ways of one probability the one with fewer hops.</returns>
    /// <remarks>Bellman's recursion over the number of hops: best to v in h hops = best over u of (best to u in h − 1 hops) · p(u, v).</remarks>
    public static ImmutableArray<StationRoute?> From(int stations, IReadOnlyList<(int From, int To, double Probability)> ways, int source, int hopLimit)
    {
        ArgumentNullException.ThrowIfNull(ways);
        int most = Math.Min(hopLimit, stations - 1);
        double[] best = new double[stations];
        best[source] = 1;
        double[][] bestByHops = [best];
        int[][] before = [[.. Enumerable.Repeat(-1, stations)]];
        for (int hop = 1; hop <= most; hop++)
        {
            double[] now = new double[stations];
            int[] from = [.. Enumerable.Repeat(-1, stations)];
            foreach ((int start, int end, double probability) in ways)
            {
                double product = bestByHops[^1][start] * probability;
                if (product > now[end])
                {
                    now[end] = product;
                    from[end] = start;
                }
            }

            bestByHops = [.. bestByHops, now];
            before = [.. before, from];
        }

        return [.. Enumerable.Range(0, stations).Select(station => Route(bestByHops, before, station))];
    }

    private static StationRoute? Route(double[][] bestByHops, int[][] before, int station)
    {
        int hops = 0;
        for (int h = 1; h < bestByHops.Length; h++)
        {
            hops = bestByHops[h][station] > bestByHops[hops][station] ? h : hops;
        }

        if (bestByHops[hops][station] == 0)
        {
            return null;
        }

        int[] way = new int[hops + 1];
        int at = station;
        for (int h = hops; h >= 0; h--)
        {
            way[h] = at;
            at = h > 0 ? before[h][at] : at;
        }

        return new([.. way], bestByHops[hops][station]);
    }
}
