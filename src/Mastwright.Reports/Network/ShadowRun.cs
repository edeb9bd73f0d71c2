using System.Collections.Immutable;
using Mastwright.Ground;
using Mastwright.Network.Links;
using Mastwright.Network.Reach;
using Mastwright.Network.Shadow;
using Mastwright.Plans;
using Mastwright.Reports.Reach;
using Mastwright.Reports.Sessions;

namespace Mastwright.Reports.Network;

/// <summary>Works out the shadow of a station: its map, that over bare ground, and those of the relays that it reaches.</summary>
internal static class ShadowRun
{
    /// <summary>The report; null, with what is wrong told, when there is none.</summary>
    /// <param name="session">The plan.</param>
    /// <param name="station">The station.</param>
    /// <param name="stations">All stations of the plan.</param>
    /// <param name="links">The links between them; null to look at no relays.</param>
    /// <param name="options">Radius, cell and receiver.</param>
    /// <param name="hopLimit">Most hops that count.</param>
    /// <param name="tell">Told each line of what is wrong.</param>
    /// <param name="progress">Told the number of maps done; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static ShadowReport? Make(
        PlanSession session, LinkStation station, ImmutableArray<LinkStation> stations, LinkMatrix? links, ReachOptions options, int hopLimit, Action<string> tell, IProgress<int>? progress, CancellationToken cancellation)
    {
        string problem = ReachGrid.Problem(station.Position.Point, options.Area.RadiusMetres, options.Area.CellMetres, ReachGrid.MostCells);
        if (problem.Length > 0)
        {
            tell($"shadow: {problem}");
            return null;
        }

        List<string> problems = [];
        ShadowReport? report = session.Guarded(problems.Add, () => Report(session, station, stations, links, options, hopLimit, problems, progress, cancellation));
        problems.ForEach(tell);
        return report;
    }

    private static ShadowReport? Report(
        PlanSession session, LinkStation station, ImmutableArray<LinkStation> stations, LinkMatrix? links, ReachOptions options, int hopLimit, List<string> problems, IProgress<int>? progress, CancellationToken cancellation)
    {
        if (ReachRun.Receiver(session, options, problems) is not { } receiver
            || ReachRun.Prepare(session, station, receiver, options, null, null, null, false, problems) is not { } task)
        {
            return null;
        }

        GroundMosaic ground = task.Ground.Cut(task.Area);
        if (ground.Heights.Any(window => window.Kind == HeightKind.Surface))
        {
            problems.Add("shadow: some of the ground is a surface model, in which trees and roofs are part of the ground; what they cost cannot be told apart. Give bare-earth heights and a cover file");
            return null;
        }

        int done = 0;
        ReachField Field(ReachTask of, GroundMosaic over)
        {
            ReachField field = of.IsByOwnPaths ? DirectArea.Evaluate(of.Input, over, cancellation: cancellation) : SweptArea.Evaluate(of.Input, over, cancellation: cancellation);
            progress?.Report(++done);
            return field;
        }

        if (ReachRun.Report(session, task, Field(task, ground), problems) is not { } own)
        {
            return null;
        }

        ShadowMap shadow = ShadowMap.Of(own.Map, Field(task, ground.Bare()), ground, options.Direction);
        List<(LinkStation, int)> relays = [];
        GridFrame frame = own.Map.Field.Frame;
        foreach ((LinkStation relay, int hops) in Relays(station, stations, links, hopLimit))
        {
            List<string> ofRelay = [];
            if (ReachRun.Prepare(session, relay, receiver, options, (frame.UtmZone, frame.IsNorth), null, null, false, ofRelay) is not { } relayTask
                || ReachRun.Report(session, relayTask, Field(relayTask, relayTask.Ground.Cut(relayTask.Area)), ofRelay) is not { } map)
            {
                problems.AddRange(ofRelay);
                continue;
            }

            shadow = shadow.With(map.Map, hops, options.Direction);
            relays.Add((relay, hops));
        }

        return ShadowExamination.Of(task.Setup, shadow, ground, [.. relays], hopLimit);
    }

    /// <summary>The stations that reach it and that it reaches over links heard both ways, near enough that one more hop counts; the nearest first.</summary>
    private static IEnumerable<(LinkStation Relay, int Hops)> Relays(LinkStation station, ImmutableArray<LinkStation> stations, LinkMatrix? links, int hopLimit)
    {
        if (links is null)
        {
            return [];
        }

        int from = links.Stations.IndexOf(links.Stations.First(one => one.Key == station.Key));
        int[] hops = HopExamination.BothWays(links).FewestHops(from, hopLimit - 1);
        return Enumerable.Range(0, stations.Length).Where(one => hops[one] > 0).OrderBy(one => hops[one]).Select(one => (stations[one], hops[one]));
    }
}
