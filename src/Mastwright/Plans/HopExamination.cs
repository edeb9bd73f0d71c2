using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network.Graph;
using Mastwright.Network.Hops;
using Mastwright.Network.Links;

namespace Mastwright.Plans;

/// <summary>Works out how the stations of a plan are reached from one of them.</summary>
public static class HopExamination
{
    /// <summary>Time percentages of the air that opens far links.</summary>
    private static readonly double[] Enhanced = [10, 1];

    /// <summary>The time percentages whose links it looks at: the plan's own as null, then those of the air that opens far links.</summary>
    /// <param name="usualPercent">The plan's own time percentage.</param>
    public static ImmutableArray<double?> TimePercents(double usualPercent) => [null, .. Enhanced.Where(percent => percent < usualPercent).Select(percent => (double?)percent)];

    /// <summary>That nobody said how many links a packet may go over, and what is taken.</summary>
    /// <param name="planPath">Where it would be said.</param>
    public static Assumption LimitAssumed(string planPath) => new("hop-limit", "hop limit 3: at most three links, so two relays between", "common practice", planPath);

    /// <summary>Works it out for a station by its key.</summary>
    /// <param name="links">The links at each of <see cref="TimePercents"/>.</param>
    /// <param name="fromKey">Key of the station that sends.</param>
    /// <param name="settings">How worlds are tried.</param>
    /// <param name="progress">Told the number of worlds done so far, from any thread; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static HopReport Of(ImmutableArray<MatrixReport> links, string fromKey, HopSettings settings, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ImmutableArray<MatrixStation> stations = links[0].Matrix.Stations;
        return Of(links[0], links.Skip(1), stations.IndexOf(stations.First(one => one.Key == fromKey)), settings, progress, cancellation);
    }

    /// <summary>Works it out.</summary>
    /// <param name="links">The links at the plan's time percentage.</param>
    /// <param name="enhanced">The links at smaller time percentages.</param>
    /// <param name="from">Index of the station that sends.</param>
    /// <param name="settings">How worlds are tried.</param>
    /// <param name="progress">Told the number of worlds done so far, from any thread; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static HopReport Of(
        MatrixReport links, IEnumerable<MatrixReport> enhanced, int from, HopSettings settings, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(links);
        ArgumentNullException.ThrowIfNull(enhanced);
        ArgumentNullException.ThrowIfNull(settings);
        LinkMatrix matrix = links.Matrix;
        ImmutableArray<FloodedStation> flooded = FloodTrial.Run(matrix, from, settings, progress, cancellation);
        StationGraph graph = BothWays(matrix);
        int[] fewest = graph.FewestHops(from);
        ImmutableArray<StationRoute?> routes = ProbableRoutes.From(matrix.Stations.Length, Ways(matrix), from, settings.HopLimit);
        HopReport report = new()
        {
            Links = links,
            From = from,
            Settings = settings,
            Stations = [.. flooded.Where(one => one.Station != from).Select(one => Station(matrix, one, fewest[one.Station], routes[one.Station]))],
            WeakPoints = WeakPoints.Of(graph, from),
            Conditions = [.. enhanced.Select(one => Condition(graph, one, from, settings.HopLimit))],
            Assumptions = links.Assumptions,
        };
        return report with { Findings = [.. links.Findings.Where(finding => finding.Code is not ("station-alone" or "link-one-way")), .. HopFindings.Of(report)] };
    }

    /// <summary>The links that are heard both ways at the best guess.</summary>
    public static StationGraph BothWays(LinkMatrix matrix)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        return StationGraph.OfLinks(
            matrix.Stations.Length, matrix.Pairs.ToArray().Where(pair => pair.LeastMarginDb >= 0).Select(pair => (pair.From, pair.To)));
    }

    private static (int From, int To, double Probability)[] Ways(LinkMatrix matrix) =>
    [
        .. matrix.Pairs.ToArray().SelectMany(pair => ((int From, int To, double Probability)[])
            [(pair.From, pair.To, Probability(pair.Out)), (pair.To, pair.From, Probability(pair.Back))]).Where(way => way.Probability > 0),
    ];

    private static double Probability(LinkOneWay way) => way.Odds is { } odds ? odds.Works * odds.DeliversIfItWorks : 0;

    private static StationHops Station(LinkMatrix matrix, FloodedStation flooded, int fewest, StationRoute? route)
    {
        double works = route is null ? 0 : 1;
        double delivers = works;
        for (int i = 1; i < (route?.Stations.Length ?? 0); i++)
        {
            Network.LinkOdds odds = matrix.Way(route!.Stations[i - 1], route.Stations[i]).Odds!.Value;
            works *= odds.Works;
            delivers *= odds.DeliversIfItWorks;
        }

        return new(flooded, fewest, route, works, delivers);
    }

    private static HopCondition Condition(StationGraph usual, MatrixReport enhanced, int from, int hopLimit)
    {
        StationGraph then = BothWays(enhanced.Matrix);
        int[] fewest = usual.FewestHops(from, hopLimit);
        int[] fewestThen = then.FewestHops(from, hopLimit);
        HashSet<int> heard = [.. usual.From(from)];
        return new(
            enhanced.Settings.TimePercent,
            [.. then.From(from).ToArray().Where(station => !heard.Contains(station))],
            [.. Enumerable.Range(0, usual.Count).Where(station => fewest[station] < 0 && fewestThen[station] >= 0)],
            then.ArcCount / 2,
            usual.ArcCount / 2);
    }
}
