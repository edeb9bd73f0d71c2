using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using Mastwright.Geodesy;
using Mastwright.Plans;
using Mastwright.Storage.Plans;
using Mastwright.Storage.Plans.Exchange;

namespace Mastwright.Storage.Tests.Plans.Exchange;

public class SitesExchangeTests
{
    private static readonly Gen<ExchangedPlace> Place = Gen.Select(
        Gen.OneOf("Ferry House", "Café «Ö»", "a,b;\"c\"", "x: y # z", "<&>", "日本", "null", "-1", "Ferry House"),
        Gen.Double[-90, 90],
        Gen.Double[-180, 179.99],
        Gen.Int[0, 5000],
        Gen.Bool,
        Gen.Int[-10, 3000]).Select((name, latitude, longitude, radius, neighbour, height) => new ExchangedPlace
        {
            Name = name,
            Position = new(new(Math.Round(latitude, 7), Math.Round(longitude, 7)), radius),
            IsNeighbour = neighbour,
            ElevationMetres = height % 2 == 0 ? height / 4.0 : null,
        });

    [Theory]
    [InlineData(PlaceFormat.Gpx)]
    [InlineData(PlaceFormat.GeoJson)]
    [InlineData(PlaceFormat.Kml)]
    [InlineData(PlaceFormat.Csv)]
    public void Stations_survive_the_way_out_and_back(PlaceFormat format) => Place.Array[0, 12].Sample(
        places =>
        {
            Plan there = Read(SitesImport.Insert(Starter(), [.. places], new() { ElevationIsGround = true }));
            string file = SitesExport.Write(there, format);
            PlaceReading reading = PlaceFile.Read("x", Encoding.UTF8.GetBytes(file), format);
            Assert.Empty(reading.Problems);
            Plan back = Read(SitesImport.Insert(Bare(), reading.Places, new() { ElevationIsGround = true }));

            Assert.Equal(there.Sites.Select(Facts), back.Sites.Select(Facts));
            Assert.Equal(there.Neighbours.Select(Facts), back.Neighbours.Select(Facts));
        },
        iter: 60,
        threads: 1);

    [Fact]
    public void Importing_adds_lines_and_leaves_every_other_byte()
    {
        PlanText before = Text(SamplePlans.Whole.ReplaceLineEndings("\r\n"));
        SitesImportResult result = SitesImport.Insert(before, [At("Ferry House", 46.5, -18.5), At("Ferry House", 46.6, -18.5), At("Old Ferry", 46.7, -18.5) with { IsNeighbour = true }]);

        Assert.Equal(["sites/ferry-house-2", "sites/ferry-house-3", "neighbours/old-ferry-2"], result.Paths.AsEnumerable());
        string[] added = result.Text!.Text.Split("\r\n");
        string[] old = before.Text.Split("\r\n");
        Assert.Equal(old, added.Where((_, i) => !IsAdded(i)));
        Assert.Equal(3, Read(result).Sites.Length - 1);

        bool IsAdded(int i) => i > 0 && Blocks(added).Contains(i);
    }

    [Theory]
    [InlineData("mastwright: 1\nname: x\n" + SamplePlans.Modem, 0)]
    [InlineData("mastwright: 1\nname: x\n" + SamplePlans.Modem + "sites:\n", 0)]
    [InlineData("mastwright: 1\nname: x\n" + SamplePlans.Modem + "sites: # mine", 0)]
    [InlineData("mastwright: 1\nname: x\n" + SamplePlans.Modem + "sites:\n      a:\n        position: \"46, -18\" # last", 1)]
    [InlineData("mastwright: 1\nname: x\nsites:\n  a: {position: \"46, -18\"}\n\n# the modem\n" + SamplePlans.Modem + "...\n", 1)]
    [InlineData("---\nmastwright: 1\nname: x\nneighbours:\n  b: {position: \"46, -18\"}\n" + SamplePlans.Modem + "# end", 0)]
    public void Stations_go_where_the_plan_keeps_them(string plan, int before)
    {
        SitesImportResult result = SitesImport.Insert(Text(plan), [At("One", 46.5, -18.5), At("Two", 46.6, -18.5) with { IsNeighbour = true, Remark = "seen\nfrom: the quay" }]);

        Plan read = Read(result);
        Assert.Equal(before + 1, read.Sites.Length);
        Assert.Equal("Two", read.Neighbours[^1].Name);
        Assert.Contains("# from: the quay", result.Text!.Text, StringComparison.Ordinal);
        Assert.All(plan.Split('\n'), line => Assert.Contains(line, result.Text.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void Sites_in_braces_are_refused_with_a_reason()
    {
        SitesImportResult result = SitesImport.Insert(Text(SamplePlans.Smallest + "sites: {a: {position: \"46, -18\"}}\n"), [At("One", 46.5, -18.5)]);

        Assert.Equal(("plan-style", 4), (result.Problem?.Code, result.Problem?.Line));
    }

    [Fact]
    public void Files_of_other_programs_are_read()
    {
        ExchangedPlace gpx = One(PlaceFormat.Gpx, """
            <?xml version="1.0"?><gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1"><metadata><name>Trip</name></metadata>
            <wpt lat="46.4" lon="-18.7"><ele>12.5</ele><time>2026-01-01T00:00:00Z</time><name>Hut &amp; Quay</name><desc>by the slip</desc></wpt>
            <trk><trkseg><trkpt lat="1" lon="2"/></trkseg></trk></gpx>
            """);
        Assert.Equal(("Hut & Quay", 12.5, "time: 2026-01-01T00:00:00Z\nby the slip"), (gpx.Name, gpx.ElevationMetres, gpx.Remark));

        ExchangedPlace kml = One(PlaceFormat.Kml, """
            <kml xmlns="http://www.opengis.net/kml/2.2"><Document><Folder><name>F</name><Placemark><name>Hut</name><description><![CDATA[<b>x</b>]]></description>
            <Point><coordinates> -18.7,46.4,0 </coordinates></Point></Placemark><Placemark><LineString><coordinates>1,2 3,4</coordinates></LineString></Placemark></Folder></Document></kml>
            """);
        Assert.Equal(("Hut", null, "<b>x</b>"), (kml.Name, kml.ElevationMetres, kml.Remark));

        ExchangedPlace json = One(PlaceFormat.GeoJson, """
            {"type":"FeatureCollection","features":[{"type":"Feature","geometry":{"type":"Point","coordinates":[-18.7,46.4]},"properties":{"name":"Hut","owner":"club"}},
            {"type":"Feature","geometry":{"type":"LineString","coordinates":[[0,0],[1,1]]},"properties":null}]}
            """);
        Assert.Equal(("Hut", "owner: club"), (json.Name, json.Remark));

        ExchangedPlace csv = One(PlaceFormat.Csv, "\uFEFFName;Lat;Lon;Owner\r\n\"Hut; \"\"old\"\"\";46.4;-18.7;club\r\n\r\n");
        Assert.Equal(("Hut; \"old\"", "owner: club"), (csv.Name, csv.Remark));

        ExchangedPlace grid = One(PlaceFormat.Csv, "name,position\nHut,\"46.4, -18.7 ± 30 m\"\n");
        Assert.Equal(30, grid.Position.RadiusMetres);
    }

    [Theory]
    [InlineData(PlaceFormat.Gpx, "<!DOCTYPE gpx [<!ENTITY a \"aaaa\">]><gpx/>", 0)]
    [InlineData(PlaceFormat.Gpx, "<gpx>\n<wpt lat=\"91\" lon=\"0\"/></gpx>", 2)]
    [InlineData(PlaceFormat.Gpx, "<gpx>\n<wpt lat=\"NaN\" lon=\"0\"/></gpx>", 2)]
    [InlineData(PlaceFormat.Gpx, "<kml/>", 1)]
    [InlineData(PlaceFormat.Kml, "<kml><Placemark><Point/></Placemark></kml>", 1)]
    [InlineData(PlaceFormat.Kml, "<kml>", 1)]
    [InlineData(PlaceFormat.GeoJson, "{\"type\":\"FeatureCollection\"}", 0)]
    [InlineData(PlaceFormat.GeoJson, "{\n\"type\":", 2)]
    [InlineData(PlaceFormat.GeoJson, "{\"type\":\"Point\",\"coordinates\":[\"a\",{}]}", 0)]
    [InlineData(PlaceFormat.Csv, "name,x1\nHut,2\n", 1)]
    [InlineData(PlaceFormat.Csv, "name,lat,lon\nHut,46.4,190\n", 2)]
    [InlineData(PlaceFormat.Csv, "name,lat,lon\nHut,46,4,18,7\n", 2)]
    [InlineData(PlaceFormat.Csv, "name,lat,lon\n\"Hut,46,18\n", 2)]
    [InlineData(PlaceFormat.Csv, "name,position\nHut,nowhere\n", 2)]
    [InlineData(PlaceFormat.Csv, "", 0)]
    public void A_file_that_cannot_be_taken_says_why_and_where(PlaceFormat format, string text, int line)
    {
        PlaceReading reading = PlaceFile.Read("x", Encoding.UTF8.GetBytes(text), format);

        Assert.Empty(reading.Places);
        Assert.Equal(line, Assert.Single(reading.Problems).Line);
    }

    [Fact]
    public void Deep_nesting_is_refused()
    {
        string xml = "<gpx>" + string.Concat(Enumerable.Repeat("<a>", 100_000));
        string json = string.Concat(Enumerable.Repeat("[", 100_000));

        Assert.Single(PlaceFile.Read("x", Encoding.UTF8.GetBytes(xml), PlaceFormat.Gpx).Problems);
        Assert.Single(PlaceFile.Read("x", Encoding.UTF8.GetBytes(xml.Replace("gpx", "kml", StringComparison.Ordinal)), PlaceFormat.Kml).Problems);
        Assert.Single(PlaceFile.Read("x", Encoding.UTF8.GetBytes(json), PlaceFormat.GeoJson).Problems);
    }

    [Fact]
    public void Mutated_files_are_an_answer()
    {
        Plan plan = Read(SitesImport.Insert(Starter(), [At("One", 46.5, -18.5)]));
        (PlaceFormat Format, byte[] Bytes)[] files = [.. Enum.GetValues<PlaceFormat>().Select(format => (format, Encoding.UTF8.GetBytes(SitesExport.Write(plan, format))))];
        Gen.Select(Gen.Int[0, 3], Gen.Select(Gen.Int[0, 4000], Gen.Byte).Array[0, 5]).Sample(
            (which, changes) =>
            {
                byte[] bytes = [.. files[which].Bytes];
                foreach ((int at, byte value) in changes)
                {
                    bytes[at % bytes.Length] = value;
                }

                PlaceReading reading = PlaceFile.Read("x", bytes, files[which].Format);
                return reading.Problems.IsEmpty ? SitesImport.Insert(Starter(), reading.Places) is { Text: not null } : reading.Places.IsEmpty;
            },
            iter: 2000);
    }

    [Fact]
    public void Written_geojson_has_longitude_first_as_the_standard_says()
    {
        using JsonDocument document = JsonDocument.Parse(SitesExport.Write(Read(SitesImport.Insert(Bare(), [At("One", 46.5, -18.25)])), PlaceFormat.GeoJson));

        // RFC 7946 section 3.1.1: longitude, then latitude.
        Assert.Equal("[\n          -18.25,\n          46.5\n        ]", document.RootElement.GetProperty("features")[0].GetProperty("geometry").GetProperty("coordinates").GetRawText());
    }

    [Theory]
    [InlineData("Ferry House", "ferry-house")]
    [InlineData("  Łódź -- Ærø!", "lodz-aero")]
    [InlineData("日本", "station")]
    [InlineData("2nd Hut", "2nd-hut")]
    public void A_key_is_made_from_a_name(string name, string key)
    {
        Assert.Equal(key, KeyFromName.Of(name));
    }

    [Fact]
    public void Every_name_gives_a_key() => Gen.String.Sample(name => KeyNameShape.IsKey(KeyFromName.Of(name)));

    private static (string, string, double, double, double, double?) Facts(Site site) => Facts(site.Key, site.Name, site.Position, site.GroundHeightMetres?.Median);

    private static (string, string, double, double, double, double?) Facts(Neighbour one) => Facts(one.Key, one.Name, one.Position, one.GroundHeightMetres?.Median);

    private static (string, string, double, double, double, double?) Facts(string key, string name, LocatedPoint place, double? height) =>
        (key, name, Math.Round(place.Point.LatitudeDegrees, 9), Math.Round(place.Point.LongitudeDegrees, 9), place.RadiusMetres, height);

    private static ExchangedPlace At(string name, double latitude, double longitude) => new() { Name = name, Position = new(new(latitude, longitude), 0) };

    private static ExchangedPlace One(PlaceFormat format, string text)
    {
        PlaceReading reading = PlaceFile.Read("x", Encoding.UTF8.GetBytes(text), format);
        Assert.Empty(reading.Problems);
        ExchangedPlace place = Assert.Single(reading.Places);
        Assert.Equal(new GeoPoint(46.4, -18.7), place.Position.Point);
        return place;
    }

    /// <summary>Indices of the lines of the stations that were added: those of the known keys and what is indented below them.</summary>
    private static HashSet<int> Blocks(string[] lines)
    {
        HashSet<int> found = [];
        for (int i = 0; i < lines.Length; i++)
        {
            bool begins = lines[i] is "  ferry-house-2:" or "  ferry-house-3:" or "  old-ferry-2:";
            if (begins || (found.Contains(i - 1) && lines[i].StartsWith("    ", StringComparison.Ordinal)))
            {
                found.Add(i);
            }
        }

        return found;
    }

    private static PlanText Text(string text) => PlanText.FromText("plan.yaml", text).Text!;

    private static PlanText Starter() => Text(StarterPlan.Text("x"));

    private static PlanText Bare() => Text(SamplePlans.Smallest);

    private static Plan Read(SitesImportResult result)
    {
        Assert.Equal("", result.Problem?.ToString() ?? "");
        return PlanFileTests.Good(PlanFile.Read(result.Text!)).Plan;
    }
}
