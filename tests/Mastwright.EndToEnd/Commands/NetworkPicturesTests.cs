using System.Collections.Immutable;
using System.Text.Json;
using Mastwright.Network.Hops;
using Mastwright.Network.Shadow;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Network;
using Mastwright.Plans;
using Mastwright.Reports.Network;
using Mastwright.Reports.Reach;
using Mastwright.Reports.Sessions;
using Mastwright.Storage.Network;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>Pictures and files about stations together, over flat land with a wall of 300 m across it, 3.8 km east of the station.</summary>
public sealed class NetworkPicturesTests
{
    private static readonly ReachOptions Around = new() { Stations = ["west"], Area = new(6_000, 300), Receiver = ReachReceiver.HandheldKey, Files = [] };

    [Theory]
    [InlineData(Theme.Light)]
    [InlineData(Theme.Dark)]
    public void A_shadow_is_drawn_and_written_by_its_causes(Theme theme)
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder, wallMetres: 300);
        using PlanSession session = PlanSession.Open(folder.File("plan.yaml"), false, _ => { })!;
        ImmutableArray<LinkStation> stations = LinkSelection.Stations(session.Plan, ImmutableDictionary<string, string>.Empty);
        ShadowReport report = ShadowRun.Make(session, stations[0], stations, null, Around, 1, _ => { }, null, CancellationToken.None)!;
        ShadowPart ground = report.Parts.Single(part => part.Cause == ShadowCause.Ground);
        Assert.True(ground.Cells > 100);

        Drawing drawing = ShadowPicture.Draw(report, theme);
        Assert.Equal(report.Ridge.Length, drawing.Group("ridge")!.Members.Length);
        Assert.Contains("behind bare ground", drawing.Description, StringComparison.Ordinal);
        Assert.Empty(drawing.MissingGlyphs());
        Assert.All(drawing.Texts(), text => Assert.InRange(text.At.X, 0, drawing.WidthPixels));

        using JsonDocument geoJson = JsonDocument.Parse(ShadowGeoJson.Write(report));
        JsonElement[] features = [.. geoJson.RootElement.GetProperty("features").EnumerateArray()];
        JsonElement area = features.Single(one => one.GetProperty("properties").TryGetProperty("cause", out JsonElement cause) && cause.GetString() == "ground");
        Assert.Equal(Math.Round(ground.AreaSquareMetres), area.GetProperty("properties").GetProperty("area-square-metres").GetDouble());

        // All of it lies east of the wall at 18.65° west, or in the wall's own steps.
        Assert.All(
            area.GetProperty("geometry").GetProperty("coordinates").EnumerateArray().SelectMany(polygon => polygon[0].EnumerateArray()),
            place => Assert.True(place[0].GetDouble() > -18.66, place.GetRawText()));
        Assert.Equal(report.Ridge.Length, features.Count(one => one.GetProperty("properties").GetProperty("what").GetString() == "ridge"));
    }

    [Fact]
    public void Hops_are_drawn_with_their_routes_and_who_has_none()
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder, SmallPlan.Text + """
              near:
                position: 46.42, -18.72
                height: 12 m
                gain: 2 dBi
                power: 14 dBm

            """, wallMetres: 600);
        using PlanSession session = PlanSession.Open(folder.File("plan.yaml"), false, _ => { })!;
        ImmutableArray<LinkStation> stations = LinkSelection.Stations(session.Plan, ImmutableDictionary<string, string>.Empty);
        MatrixReport links = new MatrixRun(session, null).Run(stations, null, null, CancellationToken.None);
        HopReport report = HopExamination.Of(links, [], 0, new HopSettings { Worlds = 50, Packets = 2 }, null, CancellationToken.None);
        Drawing drawing = HopsPicture.Draw(report, Theme.Light);
        Assert.Equal(stations.Length, drawing.Group("stations")!.Members.OfType<AreaShape>().Count());
        Assert.Contains("near: 1 hop", drawing.Description, StringComparison.Ordinal);
        int used = report.Stations.Where(one => one.Route is not null).SelectMany(one => one.Route!.Stations.Zip(one.Route.Stations.Skip(1))).Distinct().Count();
        Assert.Equal(used, drawing.Group("routes")!.Members.Length);
        Assert.Empty(drawing.MissingGlyphs());
        Assert.All(drawing.Texts(), text => Assert.InRange(text.At.X, 0, drawing.WidthPixels));
    }
}
