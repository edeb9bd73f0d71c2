using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Pictures.Network;
using Mastwright.Plans;
using Mastwright.Reports.Documents;
using Mastwright.Reports.Network;
using Mastwright.Reports.Reach;
using Mastwright.Storage.Jobs;
using Mastwright.Storage.Network;
using Mastwright.Workbench.Components;
using Mastwright.Workbench.Desk;

namespace Mastwright.Workbench.Work.Network;

/// <summary>Where one to five more relays would help most. Links and sweeps are kept as they are worked out, so that it goes on where it was.</summary>
internal sealed class RelayWork : IWork
{
    public string Kind => "relay";

    public string Unit => "steps";

    public bool GoesOn => true;

    public bool HangsOnPlan => true;

    public string Title(WorkQuestion question) => $"Relays for {Stations.Name(question.View, question["site"])}";

    public WorkAnswer? Run(WorkItem item, Action<string> tell)
    {
        if (WorkStations.Session(item, tell) is not { } session)
        {
            return null;
        }

        WorkQuestion question = item.Question;
        ImmutableArray<LinkStation> stations = WorkStations.Of(session, question);
        if (WorkStations.One(session, question, stations, tell) is not { } home)
        {
            return null;
        }

        RelayOptions options = new()
        {
            Home = home.Subject,
            Goal = RelayFindings.GoalOf(question["goal"]),
            Relays = Numbers.Whole(question["relays"], 1, RelayOptions.MostRelays) ?? 1,
            HalfSideMetres = 1000 * (Numbers.Whole(question["radius"], 1, 100) ?? 10),
            MastMetres = Numbers.Whole(question["mast"], 1, 60),
            LandOnly = question["land"] == "yes",
            ThroughRelays = question["through"] == "yes",
        };
        WorkSteps steps = new(item);
        using LongWork work = new(CacheFolder.Usual, new(), _ => { }, steps);
        return RelayRun.Make(session, stations, options, work, CacheFolder.Usual, tell, steps, item.Cancellation) is { } report ? Answer(report, stations) : null;
    }

    private static WorkAnswer Answer(RelayReport report, ImmutableArray<LinkStation> stations)
    {
        // A place on the map is tried with the fit-out that was searched with.
        string like = stations.FirstOrDefault(one => one.Key == report.Like.Key)?.Subject ?? report.Like.Subject;
        return new()
        {
            Json = RelayJson.Write(report),
            Sentences =
            [
                string.Create(CultureInfo.InvariantCulture, $"{(report.Asked == 1 ? "One relay" : $"Up to {report.Asked} relays")} for {report.Home.Name}, {RelayFindings.GoalWords(report.Goal)}, within {report.HalfSideMetres / 1000:0.##} km to each side. In the network: {Names(report.Network)}. Outside: {Names(report.Outside)}."),
                string.Create(CultureInfo.InvariantCulture, $"{report.Found} candidates; {report.Linked} can count, {report.Weighed} of them were weighed. Now {RelayFindings.Value(report, report.Before)}; open {RelayFindings.Value(report, report.Open)}."),
                .. report.Findings.Where(one => one.Code is "relay-choice" or "relay-bound").Select(FindingSentences.Text),
                .. report.Chosen.IsEmpty ? [] : new[] { "Go and look before anything is bought: maps know neither whose a place is nor what stands there." },
            ],
            Pictures = [new("relay", "What is reached, what is open and what the relays open", theme => RelayPicture.Draw(report, theme))],
            Tables =
            [
                new(
                    "relay-chosen",
                    $"The choice. Adds: {report.Unit}, besides those above. Each place leads to the ground, where it is tried.",
                    [new("relay"), new("latitude", true), new("longitude", true), new("ground, m", true), new("mast, m", true), new("adds", true), new("links to")],
                    [.. report.Chosen.Select(relay => new WorkRow(
                    [
                        relay.Candidate.Name, Degrees(relay.Candidate.Place.LatitudeDegrees), Degrees(relay.Candidate.Place.LongitudeDegrees), Number(relay.GroundMetres, "0"), Number(relay.Candidate.MastMetres, "0.#"), Amount(report, relay.Gain),
                        string.Join("; ", relay.Parents.Select(parent => $"{parent.To.Name} {Margin(parent.Out)} there, {Margin(parent.Back)} back")),
                    ]) { Address = Tried(like, relay.Candidate.Place, relay.Candidate.MastMetres) })]),
                new(
                    "relay-ranking",
                    $"Each as the only relay, the best first ({report.Unit}; margin to the network)",
                    [new("place"), new("latitude", true), new("longitude", true), new("alone", true), new("margin, dB", true)],
                    [.. report.Ranking.Select(one => new WorkRow([one.Candidate.Name, Degrees(one.Candidate.Place.LatitudeDegrees), Degrees(one.Candidate.Place.LongitudeDegrees), Amount(report, one.Alone), Number(one.MarginDb, "+0.0;−0.0;0.0")])
                    {
                        Address = Tried(like, one.Candidate.Place, one.Candidate.MastMetres),
                    })]),
            ],
            Files = [new("relay.geojson", "application/geo+json", () => Encoding.UTF8.GetBytes(RelayGeoJson.Write(report)))],
            Ledgers = report.Chosen.IsEmpty ? [] : [RelayFindings.Gains(report)],
            Findings = report.Findings,
            Assumptions = report.Assumptions,
        };
    }

    private static string? Tried(string like, Geodesy.GeoPoint place, double mastMetres) => like.Contains('/', StringComparison.Ordinal)
        ? string.Create(CultureInfo.InvariantCulture, $"/?trial=like:{like}@{place.LatitudeDegrees:0.00000},{place.LongitudeDegrees:0.00000},{mastMetres:0.##}&site={Trial.UsualKey}&reach=margin")
        : null;

    private static string Amount(RelayReport report, double value) => Number(value, report.Goal is RelayGoal.Shadow or RelayGoal.Weights ? "0.0" : "0");

    private static string Margin(LinkDirection direction) => direction.MarginDb is { } margin ? margin.Median.ToString("+0.0 dB;−0.0 dB;0.0 dB", CultureInfo.InvariantCulture) : "?";

    private static string Names(ImmutableArray<string> names) => names.IsEmpty ? "none" : string.Join(", ", names);

    private static string Degrees(double value) => Number(value, "0.00000;−0.00000");

    private static string Number(double? value, string form) => value?.ToString(form, CultureInfo.InvariantCulture) ?? "?";
}
