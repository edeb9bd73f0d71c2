using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Hops;
using Mastwright.Network.Links;
using Mastwright.Pictures.Network;
using Mastwright.Plans;
using Mastwright.Reports.Documents;
using Mastwright.Workbench.Components;
using Mastwright.Workbench.Desk;

namespace Mastwright.Workbench.Work.Network;

/// <summary>How the other stations are reached from one, and what others hang on.</summary>
internal sealed class HopsWork : IWork
{
    public string Kind => "hops";

    public string Unit => "worlds";

    public bool GoesOn => false;

    public bool HangsOnPlan => true;

    public string Title(WorkQuestion question) => $"Hops from {Stations.Name(question.View, question["site"])}";

    public WorkAnswer? Run(WorkItem item, Action<string> tell)
    {
        if (WorkStations.Session(item, tell) is not { } session)
        {
            return null;
        }

        ImmutableArray<LinkStation> stations = WorkStations.Of(session, item.Question);
        if (WorkStations.One(session, item.Question, stations, tell) is not { } sender)
        {
            return null;
        }

        if (WorkStations.Links(session, stations, item, tell, HopExamination.TimePercents(session.Assessment.Settings.TimePercent)) is not { } links)
        {
            return null;
        }

        int? hopLimit = Numbers.Whole(item.Question["hop-limit"], 1, 32);
        HopSettings settings = new() { HopLimit = hopLimit ?? 3, Worlds = 1000, Packets = 20, Seed = 1 };
        item.Total = settings.Worlds;
        HopReport report = HopExamination.Of(links, sender.Key, settings, item, item.Cancellation);
        return Answer(hopLimit is null ? report with { Assumptions = [HopExamination.LimitAssumed(""), .. report.Assumptions] } : report);
    }

    private static WorkAnswer Answer(HopReport report)
    {
        LinkMatrix matrix = report.Links.Matrix;
        Finding[] weak = [.. report.Findings.Where(finding => finding.Code is "relay-alone" or "relay-link-alone").OrderBy(finding => finding.Margin)];
        return new()
        {
            Json = HopsJson.Write(report),
            Sentences =
            [
                string.Create(CultureInfo.InvariantCulture, $"From {matrix.Stations[report.From].Name} over at most {report.Settings.HopLimit} hops; {report.Settings.Worlds} worlds of {report.Settings.Packets} packets, seed {report.Settings.Seed}."),
                .. report.Findings.Where(finding => finding.Code == "hops-enhanced").Select(FindingSentences.Text),
            ],
            Pictures = [new("hops", "Over how many hops each station is reached, by the most probable routes", theme => HopsPicture.Draw(report, theme))],
            Tables =
            [
                new(
                    "hops",
                    "Hops: fewest over links heard both ways at the best guess. Reached: share of the worlds in which the typical packet gets there by flooding. Gets: share of packets that arrive if so. Works: confidence that every link of the most probable route works.",
                    [new("to"), new("hops", true), new("reached", true), new("gets", true), new("route works", true), new("route gets", true), new("over")],
                    [.. report.Stations.OrderByDescending(one => one.Flooded.Confidence).ThenBy(one => one.FewestHops).Select(one => Row(matrix, one))]),
                .. weak.Length == 0 ? [] : new[]
                {
                    new WorkTable("weak-points", "What others hang on, the greatest loss first", [new("station or link"), new("what its loss does")], [.. weak.Select(finding => new WorkRow([finding.Subject, FindingSentences.Text(finding)]) { Verdict = finding.Verdict })]),
                },
            ],
            Findings = report.Findings,
            Assumptions = report.Assumptions,
        };
    }

    private static WorkRow Row(LinkMatrix matrix, StationHops station)
    {
        string[] route = station.Route is { } way
            ? [LinkOdds.ShortPercent(station.RouteWorks), LinkOdds.ShortPercent(station.RouteDelivers), way.Stations.Length == 2 ? "directly" : string.Join(", ", way.Stations.Skip(1).SkipLast(1).Select(one => matrix.Stations[one].Name))]
            : ["–", "–", "no route"];
        return new(
        [
            matrix.Stations[station.Flooded.Station].Name,
            station.FewestHops < 0 ? "–" : station.FewestHops.ToString(CultureInfo.InvariantCulture),
            LinkOdds.ShortPercent(station.Flooded.Confidence),
            station.Flooded.Confidence == 0 ? "–" : LinkOdds.ShortPercent(station.Flooded.DeliversIfReached),
            .. route,
        ]);
    }
}
