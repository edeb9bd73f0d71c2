using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Links;
using Mastwright.Network.Reach;
using Mastwright.Network.Shadow;
using Mastwright.Pictures.Network;
using Mastwright.Plans;
using Mastwright.Reports.Documents;
using Mastwright.Reports.Network;
using Mastwright.Reports.Reach;
using Mastwright.Storage.Network;
using Mastwright.Workbench.Components;
using Mastwright.Workbench.Desk;

namespace Mastwright.Workbench.Work.Network;

/// <summary>What a station does not reach directly, why, and what relays reach of it.</summary>
internal sealed class ShadowWork : IWork
{
    private const int MostRadiusKilometres = 50;

    public string Kind => "shadow";

    public string Unit => "maps";

    public bool GoesOn => false;

    public bool HangsOnPlan => true;

    public string Title(WorkQuestion question) => $"Shadow of {Stations.Name(question.View, question["site"])}";

    public WorkAnswer? Run(WorkItem item, Action<string> tell)
    {
        if (WorkStations.Session(item, tell) is not { } session)
        {
            return null;
        }

        ImmutableArray<LinkStation> stations = WorkStations.Of(session, item.Question);
        if (WorkStations.One(session, item.Question, stations, tell) is not { } station || WorkStations.Links(session, stations, item, tell, (double?)null) is not [{ } links])
        {
            return null;
        }

        int kilometres = Numbers.Whole(item.Question["radius"], 1, MostRadiusKilometres) ?? 10;
        ReachOptions options = new()
        {
            Stations = [station.Key],
            Area = new(1000 * kilometres, Math.Max(ReachOptions.UsualCellMetres, 9 * kilometres)),
            Receiver = item.Question["receiver"] ?? ReachReceiver.HandheldKey,
            Direction = ReachReport.DirectionOf(item.Question["direction"]),
            Files = [],
        };
        int hopLimit = Numbers.Whole(item.Question["hop-limit"], 1, 32) ?? 3;
        item.Report(0);
        return ShadowRun.Make(session, station, stations, links.Matrix, options, hopLimit, tell, item, item.Cancellation) is { } report ? Answer(session.Plan.Name, report) : null;
    }

    private static WorkAnswer Answer(string plan, ShadowReport report)
    {
        int hops = Math.Clamp(report.HopLimit - 1, 0, 3);
        double all = report.Areas.Total;
        return new()
        {
            Json = ShadowJson.Write(plan, report),
            Sentences =
            [
                string.Create(CultureInfo.InvariantCulture, $"{report.Setup.Station.Name} within {report.Shadow.Map.Field.Input.RadiusMetres / 1000:0.##} km, cells of {report.Shadow.Map.Field.Input.CellMetres:0.##} m, for {report.Setup.Receiver.Station.Name}."),
                report.Relays.IsEmpty ? "No station of the plan passes on for it within the hop limit." : $"Relays looked at: {string.Join(", ", report.Relays.Select(relay => relay.Station.Name))}.",
                .. report.Findings.Where(finding => finding.Code == "shadow-cause").Select(finding => $"{FindingSentences.Text(finding)} {FindingSentences.Advice(finding)}"),
            ],
            Pictures = [new("shadow", "The ground that is reached, and what is not by cause, with the ridges that throw the shadow", theme => ShadowPicture.Draw(report, theme))],
            Tables =
            [
                new(
                    "shadow",
                    "Area by cause, and what relays reach of it",
                    [new("cause"), new("km²", true), new("share", true), .. Enumerable.Range(2, hops).Select(hop => new WorkColumn(string.Create(CultureInfo.InvariantCulture, $"in {hop} hops, km²"), true))],
                    [.. report.Parts.Select(part => new WorkRow([ShadowExamination.Words(part.Cause), Area(part.AreaSquareMetres), LinkOdds.ShortPercent(all == 0 ? null : part.AreaSquareMetres / 1e6 / all), .. Enumerable.Range(0, hops).Select(hop => part.Cause == ShadowCause.Reached || hop >= part.ByHops.Count ? "" : Area(part.ByHops[hop]))]))]),
                new(
                    "ridge",
                    "Points of the ridges that throw the shadow, by bearing",
                    [new("bearing, °", true), new("distance, km", true), new("ground, m", true), new("latitude", true), new("longitude", true)],
                    [.. report.Ridge.Select(point => new WorkRow([Number(point.BearingDegrees, "0"), Numbers.Kilometres(point.DistanceMetres), Number(point.GroundMetres, "0"), Number(point.Place.LatitudeDegrees, "0.00000"), Number(point.Place.LongitudeDegrees, "0.00000")]))]) { IsLong = true },
            ],
            Files = [new("shadow.geojson", "application/geo+json", () => Encoding.UTF8.GetBytes(ShadowGeoJson.Write(report)))],
            Ledgers = [report.Areas],
            Findings = report.Findings,
            Assumptions = report.Assumptions,
        };
    }

    private static string Area(double squareMetres) => Number(squareMetres / 1e6, "0.0");

    private static string Number(double value, string form) => value.ToString(form, CultureInfo.InvariantCulture);
}
