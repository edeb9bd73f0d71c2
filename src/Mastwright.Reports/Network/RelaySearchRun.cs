using System.Collections.Immutable;
using Mastwright.Network.Relays;
using Mastwright.Plans;
using Mastwright.Reports.Reach;
using Mastwright.Reports.Sessions;

namespace Mastwright.Reports.Network;

/// <summary>The search itself, once ground, stations and candidates are known.</summary>
internal sealed class RelaySearchRun(
    PlanSession session,
    Assessment assessment,
    RelayArea area,
    ReachReceiver receiver,
    RelayOptions options,
    RelayLinks links,
    ImmutableArray<LinkStation> stations,
    LongWork work,
    Action<string> tell,
    IProgress<RelayProgress>? progress)
{
    private bool IsOfArea => options.Goal is RelayGoal.Shadow or RelayGoal.Weights;

    /// <summary>Searches; null, with the problem told, when it cannot.</summary>
    internal RelayReport? Run(RelayPlaces places, LinkStation like, MatrixReport matrix, CancellationToken cancellation)
    {
        RelayCover? cover = null;
        if (IsOfArea && (cover = RelayCover.Of(session, assessment, area, stations.Where((_, i) => links.IsJoined[i]), receiver, options, work, tell, cancellation)) is null)
        {
            return null;
        }

        Dictionary<(int Relay, int Station), double> own = links.WithStations(places.Stations, withAll: !IsOfArea || options.ThroughRelays, cancellation);
        Dictionary<int, double> joined = own.Where(link => links.IsJoined[link.Key.Station]).GroupBy(link => link.Key.Relay).ToDictionary(one => one.Key, one => one.Max(link => link.Value));
        int[] able = [.. Enumerable.Range(0, places.Candidates.Length).Where(one => options.ThroughRelays || joined.ContainsKey(one))];

        progress?.Report(new("looking from candidates", able.Length));
        int[] kept = [.. Screen(cover, places, able, own, cancellation).Select(one => able[one])];
        if (cover is null)
        {
            // Many candidates join the same stations: of equals the first one is taken, so the one that hangs by the most margin comes first.
            kept = [.. kept.OrderByDescending(one => joined.GetValueOrDefault(one, double.NegativeInfinity)).ThenBy(one => one)];
        }

        ImmutableArray<LinkStation> relays = [.. kept.Select(one => places.Stations[one])];
        Dictionary<int, int> placeOf = kept.Select((one, at) => (one, at)).ToDictionary(one => one.one, one => one.at);
        Dictionary<(int Relay, int Station), double> ownKept = own.Where(one => placeOf.ContainsKey(one.Key.Relay)).ToDictionary(one => (placeOf[one.Key.Relay], one.Key.Station), one => one.Value);
        Dictionary<(int One, int Other), double> chain = options.ThroughRelays ? links.BetweenRelays(relays, cancellation) : [];
        RelayNet net = links.Net(relays.Length, ownKept.Keys, chain.Keys, options.ThroughRelays);
        RelayObjective objective = Objective(cover, net, relays, cancellation);
        progress?.Report(new("choosing", 0));
        RelayChoice choice = RelaySearch.Find(objective, options.Relays, cancellation);
        int linked = options.ThroughRelays ? net.Depths([], out _).Count(depth => depth > 0) : able.Length;
        RelayAnswer answer = new(assessment, area, receiver, options, links, stations, cover);
        return answer.Report(new(like, matrix, places.Candidates.Length, linked, [.. kept.Select(one => places.Candidates[one])], relays, ownKept, net, objective, choice, session.Plan.Name), cancellation);
    }

    private ImmutableArray<int> Screen(RelayCover? cover, RelayPlaces places, int[] able, Dictionary<(int Relay, int Station), double> own, CancellationToken cancellation)
    {
        if (cover is not null)
        {
            return cover.Screen([.. able.Select(one => places.Candidates[one])], cancellation);
        }

        // Links alone are quick: all count, unless every pair of candidates has to be looked at too.
        if (!options.ThroughRelays || able.Length <= options.Swept)
        {
            return [.. Enumerable.Range(0, able.Length)];
        }

        int[] count = new int[places.Candidates.Length];
        foreach ((int relay, int _) in own.Keys)
        {
            count[relay]++;
        }

        return [.. Enumerable.Range(0, able.Length).OrderByDescending(one => count[able[one]]).ThenBy(one => one).Take(options.Swept).Order()];
    }

    private RelayObjective Objective(RelayCover? cover, RelayNet net, ImmutableArray<LinkStation> relays, CancellationToken cancellation) => options.Goal switch
    {
        RelayGoal.Stations => new JoinObjective(net),
        RelayGoal.Robustness => new RobustObjective(net, links.BetweenStations),
        _ => new CoverageObjective(net, cover!.Opened(relays, $"What {relays.Length} candidates would open", cancellation), cover.Weights, cover.Each),
    };
}
