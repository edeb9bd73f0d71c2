using System.Collections.Immutable;
using Mastwright.Network.Links;
using Mastwright.Station;

namespace Mastwright.Plans;

/// <content>Some pairs of stations, among them relays that are not in the plan.</content>
public sealed partial class Assessment
{
    /// <summary>Works out some pairs of stations, both directions.</summary>
    /// <param name="stations">Stations of the plan and relays that are tried.</param>
    /// <param name="wanted">The pairs, by their places among the stations.</param>
    /// <param name="memory">Paths that were worked out before; what is new is added.</param>
    /// <param name="progress">Told the number of pairs done so far, from any thread; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>The pairs in the order asked for.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public ImmutableArray<LinkPair> Pairs(
        ImmutableArray<LinkStation> stations, IReadOnlyList<(int From, int To)> wanted, PathMemory memory, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(wanted);
        ArgumentNullException.ThrowIfNull(memory);
        StationChainResult[] chains = [.. stations.Select(station => StationChains.Of(station, plan, catalogue))];
        PathAir[] airs = [.. stations.Select(station => PathAir.Of(plan.Air, maps, station.Position.Point))];
        LinkPair[] pairs = new LinkPair[wanted.Count];
        int done = 0;
        Parallel.For(0, pairs.Length, new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount }, index =>
        {
            (int from, int to) = wanted[index];
            pairs[index] = Pair(stations, chains, from, to, settings, airs[from], memory);
            progress?.Report(Interlocked.Increment(ref done));
        });
        return ImmutableArray.Create(pairs);
    }

    /// <summary>What is assumed for a station that is like another one, and for every path.</summary>
    internal ImmutableArray<Findings.Assumption> AssumptionsOf(LinkStation station) => [.. assumed.Concat(StationChains.Of(station, plan, catalogue).Assumptions).Distinct()];

    /// <summary>Whether the antenna of a station is alike in all azimuths.</summary>
    public bool IsAlikeAllRound(LinkStation station)
    {
        ArgumentNullException.ThrowIfNull(station);
        return StationChains.Of(station, plan, catalogue).Pattern.IsAlikeAllRound;
    }
}
