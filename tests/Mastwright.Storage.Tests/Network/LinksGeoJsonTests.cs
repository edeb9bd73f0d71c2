using System.Text.Json;
using Mastwright.Findings;
using Mastwright.Network.Links;
using Mastwright.Quantities;
using Mastwright.Storage.Network;

namespace Mastwright.Storage.Tests.Network;

/// <summary>RFC 7946: positions are longitude, latitude; clause 3.1.9: what crosses the antimeridian is cut in two.</summary>
public sealed class LinksGeoJsonTests
{
    private static readonly LinkMatrix Three = new(
        [new("a", "a", "A", new(10, 179.5), true), new("b", "b", "B", new(11, -179.5), true), new("c", "c", "C", new(10, 179), true)],
        [new(0, 1, 1, 0, Way(5), Way(-1)), new(0, 2, 1, 0, Way(5), Way(5)), new(1, 2, 1, 0, Way(-5), Way(-5))]);

    [Fact]
    public void Stations_are_points_and_links_lines_cut_where_longitudes_jump()
    {
        using JsonDocument document = JsonDocument.Parse(LinksGeoJson.Write(Three, all: false));
        JsonElement[] features = [.. document.RootElement.GetProperty("features").EnumerateArray()];
        Assert.Equal(["Point", "Point", "Point", "MultiLineString", "LineString"], features.Select(one => one.GetProperty("geometry").GetProperty("type").GetString()));
        Assert.Equal("[179.5,10]", features[0].GetProperty("geometry").GetProperty("coordinates").GetRawText());
        Assert.Equal("[[[179.5,10],[180,10.5]],[[-180,10.5],[-179.5,11]]]", features[3].GetProperty("geometry").GetProperty("coordinates").GetRawText());
        Assert.Equal(-1, features[3].GetProperty("properties").GetProperty("margin-back-db").GetDouble());
        using JsonDocument whole = JsonDocument.Parse(LinksGeoJson.Write(Three, all: true));
        Assert.Equal(6, whole.RootElement.GetProperty("features").GetArrayLength());
    }

    private static LinkOneWay Way(double margin) => new() { Verdict = margin < 0 ? Verdict.Fails : Verdict.Tight, MarginDb = Estimate.Exactly(margin) };
}
