using System.Collections.Immutable;
using Mastwright.Jobs;
using Mastwright.Network.Relays;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Network;
using Mastwright.Plans;
using Mastwright.Reports.Documents;
using Mastwright.Reports.Network;
using Mastwright.Reports.Reach;
using Mastwright.Reports.Sessions;
using Mastwright.Storage.Network;
using Mastwright.Tests.EndToEnd.Shapes;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>A relay search over flat land with a wall of 300 m across it, 3.8 km east of the station: whatever stands on the wall sees both sides.</summary>
public sealed class RelayRunTests
{
    private const double WallDegrees = -18.65;

    private static readonly RelayOptions Asked = new()
    {
        Home = "west",
        Relays = 2,
        HalfSideMetres = 8_000,
        CellMetres = 500,
        ReachAskedMetres = 9_000,
        Candidates = 24,
        Swept = 8,
    };

    [Fact]
    public void A_relay_on_the_wall_opens_the_far_side_and_a_stopped_search_goes_on()
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder, wallMetres: 300);
        using PlanSession session = PlanSession.Open(folder.File("plan.yaml"), false, _ => { })!;
        RelayReport whole = Search(session, null, null, CancellationToken.None)!;
        ChosenRelay first = whole.Chosen[0];
        Assert.InRange(first.Candidate.Place.LongitudeDegrees, WallDegrees - 0.003, WallDegrees + 0.003);
        Assert.Equal(300, first.GroundMetres!.Value, 1e-6);
        Assert.Contains("east", first.Joins);
        Assert.True(whole.Choice.Value > 0.8 * whole.Open, $"{whole.Choice.Value} of {whole.Open}");
        Assert.Equal(whole.Choice.Value, whole.Chosen.Sum(relay => relay.OpenedSquareMetres) / 1e6, 1e-6);
        Assert.Equal(whole.Choice.Value, whole.Cells.Count(cell => cell >= 3) * 0.25, 1e-6);
        Assert.All(whole.Chosen, relay => Assert.All(relay.Parents, parent => Assert.True(parent.Weaker.MarginDb!.Value.Median >= whole.Settings.Wanted.MarginDb)));
        JsonShapesTests.HasShape(RelayJson.Write(whole), "relay-1");

        // Stopped after the first pieces, then asked again.
        string cache = folder.File("cache");
        using CancellationTokenSource stop = new();
        Assert.ThrowsAny<OperationCanceledException>(() => Search(session, cache, new Telling(value =>
        {
            if (value is { Total: > 2, Done: >= 2 })
            {
                stop.Cancel();
            }
        }), stop.Token));
        int found = 0;
        RelayReport again = Search(session, cache, new Telling(value => found = Math.Max(found, value.Found)), CancellationToken.None)!;
        Assert.True(found >= 2, $"{found}");
        Assert.Equal(RelayJson.Write(whole), RelayJson.Write(again));

        Drawing drawing = RelayPicture.Draw(whole, Theme.Dark);
        Assert.Equal(whole.Chosen.Length, drawing.Group("relays")!.Members.OfType<AreaShape>().Count());
        Assert.Empty(drawing.MissingGlyphs());
        Assert.Contains("\"what\":\"relay\"", RelayGeoJson.Write(whole), StringComparison.Ordinal);
    }

    [Fact]
    public void Stations_and_robustness_need_no_area()
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder, wallMetres: 300);
        using PlanSession session = PlanSession.Open(folder.File("plan.yaml"), false, _ => { })!;
        RelayReport joined = Search(session, Asked with { Goal = RelayGoal.Stations, Relays = 1 })!;
        Assert.Equal(["east"], joined.Outside);
        Assert.Equal((1.0, RelayBound.Exact), (joined.Choice.Value, joined.Choice.Bound));
        Assert.Null(joined.Frame);
        Assert.NotNull(RelayPicture.Draw(joined, Theme.Light));

        // One relay joins the far station, and the second holds it when the first is lost.
        RelayReport held = Search(session, Asked with { Goal = RelayGoal.Robustness })!;
        Assert.Equal((2, 1.0), (held.Chosen.Length, held.Choice.Value));
        Assert.Empty(held.StillAlone);
    }

    [Fact]
    public void Own_places_keep_to_excluded_areas_and_what_helps_nobody_is_told()
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder, wallMetres: 300);
        using PlanSession session = PlanSession.Open(folder.File("plan.yaml"), false, _ => { })!;
        folder.Write("places.csv", "name,latitude,longitude,mast,power,access\nOn the wall,46.41,-18.65,4 m,mains,own land\nBehind it,46.41,-18.64,,,\n");
        RelayOptions own = Asked with { Goal = RelayGoal.Stations, PlacesFile = folder.File("places.csv") };
        RelayReport report = Search(session, own)!;
        Assert.Equal("On the wall", Assert.Single(report.Chosen).Candidate.Name);
        Assert.DoesNotContain(report.Findings, finding => finding.Code is "relay-power-unknown" or "relay-access-unknown");

        folder.Write("no.geojson", "{\"type\":\"Polygon\",\"coordinates\":[[[-18.66,46],[-18.645,46],[-18.645,47],[-18.66,47],[-18.66,46]]]}");
        RelayReport none = Search(session, own with { ExcludeFile = folder.File("no.geojson") })!;
        Assert.Equal(["relay-none"], none.Findings.Select(finding => finding.Code));
    }

    /// <summary>Three houses behind the wall, one before it: only those that are not reached now count.</summary>
    [Fact]
    public void Weights_count_where_nobody_reaches_now()
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder, wallMetres: 300);
        using PlanSession session = PlanSession.Open(folder.File("plan.yaml"), false, _ => { })!;
        folder.Write("houses.csv", "latitude,longitude,weight\n46.40,-18.63,5\n46.41,-18.62,7\n46.405,-18.615,1\n46.40,-18.69,100\n");
        RelayReport report = Search(session, Asked with { Goal = RelayGoal.Weights, Relays = 1, WeightsFile = folder.File("houses.csv") })!;
        Assert.Equal((100.0, 13.0, 13.0), (report.Before, report.Open, report.Choice.Value));
        Assert.Equal("weight", report.Unit);
    }

    [Fact]
    public void Through_relays_never_less_is_opened_than_without()
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder, wallMetres: 300);
        using PlanSession session = PlanSession.Open(folder.File("plan.yaml"), false, _ => { })!;
        RelayOptions few = Asked with { Candidates = 8 };
        RelayReport without = Search(session, few)!;
        RelayReport with = Search(session, few with { ThroughRelays = true })!;
        Assert.True(with.Choice.Value >= without.Choice.Value - 1e-9, $"{with.Choice.Value} and {without.Choice.Value}");
        Assert.True(with.ThroughRelays && with.Linked >= without.Linked);
    }

    private static RelayReport? Search(PlanSession session, string? cache, IProgress<JobProgress>? progress, CancellationToken cancellation) =>
        Search(session, Asked, cache, progress, cancellation);

    private static RelayReport? Search(PlanSession session, RelayOptions options, string? cache = null, IProgress<JobProgress>? progress = null, CancellationToken cancellation = default)
    {
        List<string> told = [];
        using LongWork work = new(cache, new(), told.Add, progress);
        ImmutableArray<LinkStation> stations = LinkSelection.Stations(session.Plan, ImmutableDictionary<string, string>.Empty);
        RelayReport? report = RelayRun.Make(session, stations, options, work, cache, told.Add, null, cancellation);
        Assert.True(report is not null, string.Join('\n', told));
        return report;
    }

    private sealed class Telling(Action<JobProgress> tell) : IProgress<JobProgress>
    {
        public void Report(JobProgress value) => tell(value);
    }
}
