using System.Text;
using Mastwright.Geodesy;
using Mastwright.Network.Relays;
using Mastwright.Storage.Network;

namespace Mastwright.Storage.Tests.Network;

/// <summary>Files that a relay search reads.</summary>
public sealed class RelayFilesTests
{
    private const string Shapes = """
        {"type": "FeatureCollection", "features": [
          {"type": "Feature", "properties": {}, "geometry": {"type": "Polygon", "coordinates": [[[8, 46], [9, 46], [9, 47], [8, 47], [8, 46]], [[8.4, 46.4], [8.6, 46.4], [8.6, 46.6], [8.4, 46.6], [8.4, 46.4]]]}},
          {"type": "Feature", "properties": {}, "geometry": {"type": "GeometryCollection", "geometries": [{"type": "LineString", "coordinates": [[8, 46, 300], [8.1, 46.1]]}, {"type": "MultiLineString", "coordinates": [[[7, 45], [7.1, 45]]]}]}},
          {"type": "Feature", "properties": {}, "geometry": {"type": "Point", "coordinates": [8, 46]}},
          {"type": "Feature", "properties": {}, "geometry": null}
        ]}
        """;

    [Fact]
    public void Areas_with_their_holes_and_lines_are_read()
    {
        RelayShapes shapes = RelayShapes.Parse("shapes.geojson", Encoding.UTF8.GetBytes(Shapes), out string problem)!;
        Assert.Equal("", problem);
        Assert.Equal([5, 5], Assert.Single(shapes.Areas).Select(ring => ring.Length));
        Assert.Equal([new(46, 8), new(46.1, 8.1)], shapes.Lines[0]);
        Assert.Equal(2, shapes.Lines.Length);

        // Inside, in the hole, outside.
        RelayLimits limits = new() { Excluded = shapes.Areas };
        Assert.Equal([false, true, true], new GeoPoint[] { new(46.2, 8.2), new(46.5, 8.5), new(47.5, 8.5) }.Select(limits.Allow));

        // 45.003° N is 333 m from the line along 45° N.
        Assert.Equal([true, false], new[] { 400.0, 300.0 }.Select(metres => new RelayLimits { Tracks = shapes.Lines, TrackMetres = metres }.Allow(new(45.003, 7.05))));
    }

    [Theory]
    [InlineData("{\"type\": \"Polygon\", \"coordinates\": [[[8, 146], [9, 46], [9, 47], [8, 146]]]}", "'[8, 146]' is no point")]
    [InlineData("{\"type\": \"Polygon\"}", "a Polygon has no 'coordinates'")]
    [InlineData("{\"type\": \"Polygon\", \"coordinates\": [7]}", "a line or ring is a list of points")]
    [InlineData("{\"type\": \"Rhubarb\"}", "this is not GeoJSON")]
    [InlineData("[[", "shapes.geojson:1: this is not well-formed JSON")]
    [InlineData("7", "this is not GeoJSON")]
    public void What_is_wrong_with_a_file_of_shapes_is_told(string text, string words)
    {
        Assert.Null(RelayShapes.Parse("shapes.geojson", Encoding.UTF8.GetBytes(text), out string problem));
        Assert.Contains(words, problem, StringComparison.Ordinal);
    }

    [Fact]
    public void Places_bring_their_mast_power_and_access()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("mastwright-relay-");
        string path = Path.Combine(folder.FullName, "places.csv");
        try
        {
            File.WriteAllText(path, "name,latitude,longitude,mast,power,access\nTower,46.1,8.2,12 m,mains,key at the parish\nKnoll,46.2,8.3,,,\n");
            RelayCandidate[] places = [.. RelayPlacesFile.Read(path, 6, out string problem)];
            Assert.Equal("", problem);
            Assert.Equal([("place-1", "Tower", 12.0, "mains", "key at the parish"), ("place-2", "Knoll", 6.0, "", "")], places.Select(one => (one.Key, one.Name, one.MastMetres, one.Power, one.Access)));

            File.WriteAllText(path, "name,latitude,longitude,mast\nTower,46.1,8.2,1 km\n");
            Assert.Empty(RelayPlacesFile.Read(path, 6, out problem));
            Assert.Contains("Tower: mast '1 km' is out of range", problem, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
