using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Air;
using Mastwright.Network.Links;
using Mastwright.Pictures.Network;
using Mastwright.Plans;
using Mastwright.Reports.Documents;
using Mastwright.Workbench.Components;

namespace Mastwright.Workbench.Work.Network;

/// <summary>A day on the channel that all stations share.</summary>
internal sealed class AirWork : IWork
{
    public string Kind => "air";

    public string Unit => "simulations";

    public bool GoesOn => false;

    public bool HangsOnPlan => true;

    public string Title(WorkQuestion question) => "A day on the channel";

    public WorkAnswer? Run(WorkItem item, Action<string> tell)
    {
        if (WorkStations.Session(item, tell) is not { } session)
        {
            return null;
        }

        ImmutableArray<LinkStation> stations = WorkStations.Of(session, item.Question);
        if (WorkStations.Links(session, stations, item, tell, (double?)null) is not [{ } links])
        {
            return null;
        }

        (ImmutableArray<AirTraffic> traffic, ImmutableArray<Assumption> ofTraffic) = session.Assessment.AirTrafficOf(stations);
        (AirSettings settings, ImmutableArray<Assumption> ofSettings) = session.Assessment.AirSettingsOf(stations);
        int? hopLimit = Numbers.Whole(item.Question["hop-limit"], 1, 32);
        settings = settings with { HopLimit = hopLimit ?? settings.HopLimit, ListensFirst = item.Question["listen"] == "yes" || settings.ListensFirst };
        item.Report(0);
        return Answer(AirExamination.Of(
            links, traffic, settings,
            [.. ofTraffic, .. ofSettings.Where(one => one.Code != "hop-limit" || hopLimit is null)],
            item, item.Cancellation));
    }

    private static WorkAnswer Answer(AirReport report)
    {
        AirResult result = report.Result;
        return new()
        {
            Json = AirJson.Write(report),
            Sentences =
            [
                string.Create(CultureInfo.InvariantCulture, $"{result.DurationSeconds / 3600:0.##} h on the channel, {report.Links.Matrix.Stations.Length} stations, packets of {1000 * report.Settings.AirtimeSeconds:0} ms, seed {report.Settings.Seed}."),
                string.Create(CultureInfo.InvariantCulture, $"{result.Made} packets made, {result.Sent} sent with those passed on; {LinkOdds.ShortPercent(Math.Min(1, result.DeliveredShare))} of what is wanted arrives."),
                "Every link is at its best guess here; the hops tell how sure they are.",
            ],
            Pictures = [new("air", "How busy the channel is at each station, and what arrives as traffic grows", theme => AirPicture.Draw(report, theme))],
            Tables =
            [
                new(
                    "air-stations",
                    "Busy: share of the time in which it sends or hears something. Heard by: stations that get one of its packets, on average. Hears: share of all others' packets that it gets.",
                    [new("station"), new("own", true), new("sent", true), new("on air, %", true), new("busy", true), new("heard by", true), new("hears", true)],
                    Stations(report)),
                new(
                    "air-hops",
                    "Packets by hops",
                    [new("hops", true), new("arrive", true), new("after, s", true), new("at most, s", true)],
                    [.. result.Hops.Select((hop, index) => new WorkRow([Plain(index + 1), Plain(hop.Count), Number(hop.MeanSeconds, "0.00"), Number(hop.MostSeconds, "0.0")]))]),
                new(
                    "air-growth",
                    "With more traffic, or as much more from more stations in the same places",
                    [new("times the traffic"), new("arrives", true), new("busy at most", true)],
                    [
                        .. report.Growth.Select(growth => new WorkRow([Number(growth.Factor, "0"), LinkOdds.ShortPercent(Math.Min(1, growth.DeliveredShare)), LinkOdds.ShortPercent(growth.MostBusyShare)])),
                        .. report.Remedies.Select(remedy => new WorkRow([$"then with {remedy.Text}", LinkOdds.ShortPercent(remedy.DeliveredShare), ""])),
                    ]),
            ],
            Ledgers = report.Ledgers,
            Findings = report.Findings,
            Assumptions = report.Assumptions,
        };
    }

    private static ImmutableArray<WorkRow> Stations(AirReport report)
    {
        AirResult result = report.Result;
        int count = report.Links.Matrix.Stations.Length;
        return
        [
            .. Enumerable.Range(0, count).OrderByDescending(station => result.Stations[station].BusySeconds).Select(station =>
            {
                AirStation one = result.Stations[station];
                long heardBy = Enumerable.Range(0, count).Sum(other => (long)result.Delivered[(station * count) + other]);
                long hears = Enumerable.Range(0, count).Sum(other => (long)result.Delivered[(other * count) + station]);
                long others = result.Made - one.Made;
                return new WorkRow(
                [
                    report.Links.Matrix.Stations[station].Name, Plain(one.Made), Plain(one.Sent), Number(100 * one.AirSeconds / result.DurationSeconds, "0.000"), LinkOdds.ShortPercent(one.BusySeconds / result.DurationSeconds),
                    one.Made == 0 ? "" : Number((double)heardBy / one.Made, "0.0"), others == 0 ? "" : LinkOdds.ShortPercent((double)hears / others),
                ]);
            }),
        ];
    }

    private static string Plain(long value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Number(double value, string form) => value.ToString(form, CultureInfo.InvariantCulture);
}
