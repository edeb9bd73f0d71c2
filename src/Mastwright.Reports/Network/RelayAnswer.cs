using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network.Graph;
using Mastwright.Network.Relays;
using Mastwright.Plans;

namespace Mastwright.Reports.Network;

/// <summary>What came of a search.</summary>
internal sealed record RelayOutcome(
    LinkStation Like,
    MatrixReport Matrix,
    int Found,
    int Linked,
    ImmutableArray<RelayCandidate> Candidates,
    ImmutableArray<LinkStation> Stations,
    Dictionary<(int Relay, int Station), double> Own,
    RelayNet Net,
    RelayObjective Objective,
    RelayChoice Choice,
    string PlanName);

/// <summary>Puts the outcome of a search into a report: budgets, what each relay opens and joins, the ranking.</summary>
internal sealed class RelayAnswer(
    Assessment assessment, RelayArea area, ReachReceiver receiver, RelayOptions options, RelayLinks links, ImmutableArray<LinkStation> stations, RelayCover? cover)
{
    private const int MostBudgets = 3;
    private const int MostRanked = 10;
    private const byte FirstMark = 3;

    /// <summary>The report.</summary>
    internal RelayReport Report(RelayOutcome outcome, CancellationToken cancellation)
    {
        byte[] cells = cover is null ? [] : cover.State.ToArray();
        ImmutableArray<int> order = outcome.Choice.Chosen;
        ImmutableArray<LinkStation> relays = [.. order.Select(one => outcome.Stations[one])];
        Dictionary<(int Relay, int Station), double> own = links.WithStations(relays, withAll: true, cancellation);
        Dictionary<(int One, int Other), double> chain = options.ThroughRelays ? links.BetweenRelays(relays, cancellation) : [];
        RelayNet net = links.Net(relays.Length, own.Keys, chain.Keys, options.ThroughRelays);
        ImmutableArray<ChosenRelay>.Builder chosen = ImmutableArray.CreateBuilder<ChosenRelay>();
        for (int i = 0; i < relays.Length; i++)
        {
            chosen.Add(Chosen(outcome, net, own, chain, relays, i, cells, cancellation));
        }

        ImmutableArray<int> alone = StillAlone(net, own, chain, relays.Length);
        RelayReport report = new()
        {
            Plan = outcome.PlanName,
            Home = area.Home,
            Like = outcome.Like,
            Settings = outcome.Matrix.Settings,
            Goal = options.Goal,
            Asked = options.Relays,
            ThroughRelays = options.ThroughRelays,
            Receiver = cover is null ? null : receiver,
            HalfSideMetres = options.HalfSideMetres,
            Network = Names(i => links.IsJoined[i]),
            Outside = Names(i => !links.IsJoined[i]),
            Found = outcome.Found,
            Linked = outcome.Linked,
            Weighed = outcome.Candidates.Length,
            Before = Before(outcome.Objective),
            Open = Open(outcome.Objective),
            Choice = InUnit(outcome),
            Chosen = chosen.ToImmutable(),
            Ranking = Ranking(outcome),
            StillAlone = options.Goal == RelayGoal.Robustness ? [.. alone.Select(one => stations[one].Name)] : [],
            Frame = cover is null ? null : area.Frame,
            Cells = ImmutableArray.Create(cells),
            Stations = [.. stations.Select((station, i) => (station, links.IsJoined[i]))],
            Assumptions = [.. Own(outcome).Concat(outcome.Matrix.Assumptions).Concat(cover?.Assumptions ?? []).Distinct()],
        };
        return report with { Findings = RelayFindings.Of(report) };
    }

    private ChosenRelay Chosen(
        RelayOutcome outcome,
        RelayNet net,
        Dictionary<(int Relay, int Station), double> own,
        Dictionary<(int One, int Other), double> chain,
        ImmutableArray<LinkStation> relays,
        int at,
        byte[] cells,
        CancellationToken cancellation)
    {
        int number = outcome.Choice.Chosen[at];
        bool[] before = net.Joined([.. Enumerable.Range(0, at)]);
        bool[] after = net.Joined([.. Enumerable.Range(0, at + 1)]);
        IEnumerable<(LinkStation To, double MarginDb, bool IsRelay)> parents = own
            .Where(link => link.Key.Relay == at && (links.IsJoined[link.Key.Station] || (options.ThroughRelays && before[link.Key.Station])))
            .Select(link => (stations[link.Key.Station], link.Value, !links.IsJoined[link.Key.Station]));
        IEnumerable<(LinkStation To, double MarginDb, bool IsRelay)> others = chain
            .Where(link => link.Key.Other == at && link.Key.One < at).Select(link => (relays[link.Key.One], link.Value, true));
        (LinkStation To, double MarginDb, bool IsRelay)[] all = [.. parents.Concat(others).OrderByDescending(one => one.MarginDb)];
        (int opened, double? works) = cover?.Mark(relays[at], (byte)(FirstMark + at), cells, cancellation) ?? (0, null);
        double ground = area.Ground.HeightAt(relays[at].Position.Point).Metres;
        return new()
        {
            Candidate = outcome.Candidates[number],
            Station = relays[at],
            Gain = Whole(outcome.Choice.Gains[at]),
            Alone = Whole(outcome.Objective.Value([number])),
            Parents = [.. all.Take(MostBudgets).Select(parent => assessment.Link(relays[at], parent.To))],
            ParentCount = all.Length,
            HangsOnRelay = all.All(one => one.IsRelay),
            Joins = [.. Enumerable.Range(0, stations.Length).Where(one => after[one] && !before[one]).Select(one => stations[one].Name)],
            OpenedSquareMetres = opened * area.Frame.StepX * area.Frame.StepY,
            OpenedWorks = works,
            GroundMetres = double.IsNaN(ground) ? null : ground,
        };
    }

    private ImmutableArray<RankedRelay> Ranking(RelayOutcome outcome) =>
    [
        .. Enumerable.Range(0, outcome.Candidates.Length)
            .Select(one => (Number: one, Alone: outcome.Objective.Value([one]), Margin: Margin(outcome, one)))
            .Where(one => one.Alone > 0)
            .OrderByDescending(one => one.Alone).ThenBy(one => one.Number)
            .Take(MostRanked)
            .Select(one => new RankedRelay(outcome.Candidates[one.Number], Whole(one.Alone), one.Margin)),
    ];

    private double? Margin(RelayOutcome outcome, int relay)
    {
        double[] margins = [.. Enumerable.Range(0, stations.Length).Where(station => links.IsJoined[station]).Select(station => outcome.Own.GetValueOrDefault((relay, station), double.NaN)).Where(double.IsFinite)];
        return margins.Length == 0 ? null : margins.Max();
    }

    /// <summary>Stations that are joined and that a single loss cuts off.</summary>
    private ImmutableArray<int> StillAlone(RelayNet net, Dictionary<(int Relay, int Station), double> own, Dictionary<(int One, int Other), double> chain, int relays)
    {
        StationGraph graph = StationGraph.OfLinks(
            stations.Length + relays,
            [.. links.BetweenStations, .. own.Keys.Select(link => (link.Relay + stations.Length, link.Station)), .. chain.Keys.Select(link => (link.One + stations.Length, link.Other + stations.Length))]);
        HashSet<int> lost = [.. WeakPoints.Of(graph, net.Home).Stations.Where(cut => cut.Station != net.Home).SelectMany(cut => cut.Lost)];
        return [.. Enumerable.Range(0, stations.Length).Where(lost.Contains)];
    }

    private ImmutableArray<string> Names(Func<int, bool> which) => [.. Enumerable.Range(0, stations.Length).Where(which).Select(one => stations[one].Name)];

    private double Before(RelayObjective objective) => options.Goal switch
    {
        RelayGoal.Stations => links.IsJoined.Count(one => one),
        RelayGoal.Robustness => ((RobustObjective)objective).Before,
        _ => cover!.Before,
    };

    private double Open(RelayObjective objective) => options.Goal switch
    {
        RelayGoal.Stations => links.IsJoined.Count(one => !one),
        RelayGoal.Robustness => stations.Length - 1 - ((RobustObjective)objective).Before,
        _ => cover!.Open,
    };

    /// <summary>The choice in the goal's unit: what robustness counts besides stations only orders choices that are alike.</summary>
    private RelayChoice InUnit(RelayOutcome outcome) => outcome.Choice with
    {
        Gains = [.. outcome.Choice.Gains.Select(Whole)],
        Value = Whole(outcome.Choice.Value),
        UpperBound = Whole(outcome.Choice.UpperBound),
        GreedyValue = Whole(outcome.Choice.GreedyValue),
    };

    private double Whole(double value) => options.Goal == RelayGoal.Robustness ? Math.Floor(value) : value;

    private IEnumerable<Assumption> Own(RelayOutcome outcome)
    {
        if (options.Like is null && (options.LooksOnGround || options.PlacesFile is not null))
        {
            yield return new("relay-like", $"radio, feed and antenna of a relay as at {outcome.Like.Subject}", "common practice", "--like");
        }

        if (options.MastMetres is null && (options.LooksOnGround || options.PlacesFile is not null))
        {
            yield return new("relay-mast", Text($"mast of {RelayOptions.UsualMastMetres:0.#} m where none is given"), "common practice", "--mast");
        }

        if (cover is not null && options.ReachAskedMetres is null)
        {
            yield return new("relay-reach", Text($"nobody is reached farther than {options.ReachMetres / 1000:0.#} km away"), "common practice", "--reach");
        }

        if (cover is not null && options.StepAskedMetres is null)
        {
            yield return new("relay-step", Text($"sweeps in steps of {options.StepMetres:0.#} m, half a cell, where the ground is finer"), "common practice", "--step");
        }

        yield return new("relay-best-guess", "links and cells count by their best guess", "common practice");
        if (outcome.Candidates.Length < outcome.Linked)
        {
            yield return new("relay-screen", Text($"the {outcome.Candidates.Length} of {outcome.Linked} candidates were taken that see most open ground between them"), "common practice", "--swept");
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
