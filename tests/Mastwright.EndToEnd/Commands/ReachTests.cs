using System.Globalization;
using System.IO.Compression;
using System.Text.Json;
using System.Xml.Linq;
using Mastwright.Geodesy;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>reach: the real program over the demo's ground and over a small plan's.</summary>
public sealed class ReachTests(SkerrinRun skerrin) : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_new_fit_out_is_heard_further_than_the_old_one()
    {
        using JsonDocument document = JsonDocument.Parse(
            skerrin.Run("reach skerrin-demo/plan.yaml ferry-house --radius 3km --cell 250m --compare-fit-out eaves --json").Output);
        JsonElement root = document.RootElement;
        JsonElement comparison = root.GetProperty("comparison");
        Assert.Equal("ferry-house/net-loft", root.GetProperty("station").GetString());
        Assert.Equal("ferry-house/eaves", comparison.GetProperty("station").GetString());
        Assert.InRange(comparison.GetProperty("median-db").GetDouble(), 10, 40);
        Assert.True(comparison.GetProperty("gained-square-metres").GetDouble() > 20 * comparison.GetProperty("lost-square-metres").GetDouble());
        double area = root.GetProperty("heard").GetProperty("classes").EnumerateArray().Sum(one => one.GetProperty("area-square-metres").GetDouble());
        Assert.Equal(Math.PI * 9e6, area, Math.PI * 9e6 * 0.02);
        Assert.Equal(0, root.GetProperty("cells-without-ground").GetInt32());
    }

    /// <summary>Two runs, one of them on a single thread: the same document and the same raster.</summary>
    /// <summary>Left to the full run: it makes the same map twice.</summary>
    [Fact, Trait("needs", "system")]
    public void The_same_question_gets_the_same_bytes()
    {
        string plan = SmallPlan.Write(folder);
        string[] line = ["reach", plan, "west", "--radius", "3 km", "--cell", "200 m", "--out", "reach.tif", "--json"];
        string first = ProgramRun.Of(folder.Path, line).EndsWith(0).Output;
        byte[] raster = File.ReadAllBytes(folder.File("reach.tif"));
        Dictionary<string, string> single = new(StringComparer.Ordinal) { ["DOTNET_PROCESSOR_COUNT"] = "1" };
        Assert.Equal(first, ProgramRun.Of(folder.Path, single, line).EndsWith(0).Output);
        Assert.Equal(raster, File.ReadAllBytes(folder.File("reach.tif")));
    }

    [Fact]
    public void One_sweep_gives_the_areas_that_every_cells_own_path_gives()
    {
        double[][] areas = [.. new[] { "", " --own-paths" }.Select(option =>
        {
            using JsonDocument document = JsonDocument.Parse(skerrin.Run("reach skerrin-demo/plan.yaml ferry-house --radius 6km --cell 150m --json" + option).Output);
            Assert.Equal(option.Length == 0, document.RootElement.GetProperty("sweep-step-metres").ValueKind == JsonValueKind.Number);
            return document.RootElement.GetProperty("heard").GetProperty("classes").EnumerateArray().Select(one => one.GetProperty("area-square-metres").GetDouble()).ToArray();
        })];
        Assert.Equal(5, areas[0].Length);
        double whole = areas[0].Sum();
        Assert.All(areas[0].Zip(areas[1]), pair => Assert.Equal(pair.First, pair.Second, whole * 0.01));
    }

    [Fact]
    public void Pictures_and_raster_are_written_and_named()
    {
        string plan = SmallPlan.Write(folder);
        ProgramRun run = ProgramRun.Of(folder.Path, "reach", plan, "west", "--radius", "2 km", "--cell", "200 m", "--out", "map.png", "--out", "map.svg", "--out", "map.tif").EndsWith(0);
        Assert.Contains("Written: map.png", run.Output, StringComparison.Ordinal);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], File.ReadAllBytes(folder.File("map.png"))[..4]);
        Assert.Contains("Where west is heard", File.ReadAllText(folder.File("map.svg")), StringComparison.Ordinal);
        Assert.Equal("II"u8, File.ReadAllBytes(folder.File("map.tif")).AsSpan(0, 2));

        // The world file lays the map's middle, 428 and 492 pixels from the sheet's corner at scale 1, over the station.
        double[] world = [.. File.ReadAllLines(folder.File("map.pgw")).Select(line => double.Parse(line, CultureInfo.InvariantCulture))];
        Assert.Equal(6, world.Length);
        UtmPosition station = UniversalTransverseMercator.FromGeo(new(46.40, -18.70));
        Assert.Equal(station.EastingMetres, world[4] + (world[0] * ((428 * 2) - 0.5)), 0.01);
        Assert.Equal(station.NorthingMetres, world[5] + (world[3] * ((492 * 2) - 0.5)), 0.01);
    }

    /// <summary>Each cell is served best by one station or by none: what they serve and what none reaches make up the whole, as do the areas by count.</summary>
    [Fact]
    public void Several_stations_share_the_area_between_them()
    {
        string line = $" --radius 3km --cell 250m --out {folder.File("several.tif")} --out {folder.File("several.geojson")} --out {folder.File("several.png")} --json";
        string first = skerrin.Run("reach skerrin-demo/plan.yaml ferry-house creamery/flue comb-cairn" + line).Output;
        byte[] raster = File.ReadAllBytes(folder.File("several.tif"));
        Assert.Equal(first, skerrin.Run("reach skerrin-demo/plan.yaml comb-cairn ferry-house/net-loft creamery" + line).Output);
        Assert.Equal(raster, File.ReadAllBytes(folder.File("several.tif")));

        using JsonDocument document = JsonDocument.Parse(first);
        JsonElement root = document.RootElement;
        Assert.Equal(["comb-cairn/trial", "creamery/flue", "ferry-house/net-loft"], root.GetProperty("stations").EnumerateArray().Select(one => one.GetProperty("station").GetString()!));
        foreach (string direction in (string[])["heard", "hears", "both"])
        {
            JsonElement way = root.GetProperty(direction);
            double known = way.GetProperty("known-square-metres").GetDouble();
            double[] byCount = [.. way.GetProperty("by-count").EnumerateArray().Select(one => one.GetProperty("area-square-metres").GetDouble())];
            JsonElement[] stations = [.. way.GetProperty("stations").EnumerateArray()];
            Assert.Equal(known, byCount.Sum(), 1);
            Assert.Equal(known - byCount[0], stations.Sum(one => one.GetProperty("best-square-metres").GetDouble()), 1);
            Assert.Equal(byCount.Select((area, count) => area * count).Sum(), stations.Sum(one => one.GetProperty("reached-square-metres").GetDouble()), 1);
            Assert.Equal(byCount[1], stations.Sum(one => one.GetProperty("only-square-metres").GetDouble()), 1);
        }

        Assert.Contains("<Category>Comb Cairn</Category>", File.ReadAllText(folder.File("several.tif.aux.xml")), StringComparison.Ordinal);
        using JsonDocument shapes = JsonDocument.Parse(File.ReadAllText(folder.File("several.geojson")));
        JsonElement[] features = [.. shapes.RootElement.GetProperty("features").EnumerateArray()];
        Assert.Equal(["Point", "Point", "Point", "MultiPolygon", "MultiPolygon", "MultiPolygon"], features.Select(one => one.GetProperty("geometry").GetProperty("type").GetString()!));
        Assert.Equal(["Comb Cairn", "Creamery", "Ferry House"], features[3..].Select(one => one.GetProperty("properties").GetProperty("station-name").GetString()!));
    }

    /// <summary>What one station of several reaches is what its own map says, cell for cell: the grids lie on one another.</summary>
    [Fact]
    public void A_station_among_several_reaches_what_it_reaches_alone()
    {
        string plan = SmallPlan.Write(folder);
        string[] area = ["--radius", "3 km", "--cell", "200 m", "--json"];
        using JsonDocument both = JsonDocument.Parse(ProgramRun.Of(folder.Path, ["reach", plan, "west", "east", .. area]).EndsWith(0).Output);
        using JsonDocument alone = JsonDocument.Parse(ProgramRun.Of(folder.Path, ["reach", plan, "west", .. area]).EndsWith(0).Output);
        double reached = both.RootElement.GetProperty("heard").GetProperty("stations")[1].GetProperty("reached-square-metres").GetDouble();
        double[] classes = [.. alone.RootElement.GetProperty("heard").GetProperty("classes").EnumerateArray().Select(one => one.GetProperty("area-square-metres").GetDouble())];
        Assert.Equal(classes[1..].Sum(), reached, 1);
        Assert.True(reached > 0);
    }

    /// <summary>Two houses beside the station, one 1.5 km away, one 40 km away and outside: the weights by class make up the whole.</summary>
    [Fact]
    public void Weights_are_summed_inside_and_outside()
    {
        string plan = SmallPlan.Write(folder);
        folder.Write("houses.csv", "latitude,longitude,weight\n46.4005,-18.7005,3\n46.4,-18.699,2\n46.41,-18.711,5\n46.4,-18.2,7\n");
        string[] line = ["reach", plan, "west", "--radius", "2 km", "--cell", "100 m", "--weights", folder.File("houses.csv")];
        using JsonDocument document = JsonDocument.Parse(ProgramRun.Of(folder.Path, [.. line, "--json"]).EndsWith(0).Output);
        JsonElement weights = document.RootElement.GetProperty("weights");
        Assert.Equal((17.0, 7.0, 0.0), (weights.GetProperty("total").GetDouble(), weights.GetProperty("outside").GetDouble(), weights.GetProperty("without-ground").GetDouble()));
        foreach (string direction in (string[])["heard", "hears", "both"])
        {
            double[] classes = [.. weights.GetProperty(direction).GetProperty("classes").EnumerateArray().Select(one => one.GetProperty("weight").GetDouble())];
            Assert.Equal(10, classes.Sum(), 1e-9);
            Assert.Equal(classes[1..].Sum(), weights.GetProperty(direction).GetProperty("reached").GetDouble(), 1e-9);
        }

        string words = string.Join(' ', ProgramRun.Of(folder.Path, line).EndsWith(0).Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("0 dB and more 10 58.8 %", words, StringComparison.Ordinal);
        Assert.Contains("outside 7 41.2 %", words, StringComparison.Ordinal);

        using JsonDocument several = JsonDocument.Parse(ProgramRun.Of(folder.Path, ["reach", plan, "west", "east", "--radius", "2 km", "--cell", "100 m", "--weights", folder.File("houses.csv"), "--json"]).EndsWith(0).Output);
        JsonElement shared = several.RootElement.GetProperty("weights");
        Assert.Equal([0, 10], shared.GetProperty("heard").GetProperty("by-count").EnumerateArray().Select(one => one.GetDouble()));
        Assert.Equal([0, 10], shared.GetProperty("heard").GetProperty("best").EnumerateArray().Select(one => one.GetDouble()));
    }

    /// <summary>A mast of 6 to 24 m over level ground, heard in houses: the higher, the further.</summary>
    [Fact]
    public void The_range_of_a_height_moves_the_map()
    {
        string plan = SmallPlan.Write(folder, SmallPlan.Text.Replace("gain: 5 dBi, height: 12 m", "gain: 5 dBi, height: 6…24 m", StringComparison.Ordinal));
        string[] line = ["reach", plan, "west", "--radius", "20 km", "--cell", "500 m", "--receiver", "handheld-indoors", "--ranges", "--layer", "margin-low", "--out", "low.tif"];
        using JsonDocument document = JsonDocument.Parse(ProgramRun.Of(folder.Path, [.. line, "--json"]).EndsWith(0).Output);
        JsonElement range = document.RootElement.GetProperty("range");
        Assert.Equal(["antenna at 6 m", "antenna at 24 m"], range.GetProperty("tried").EnumerateArray().Select(one => one.GetString()!));
        (double low, double median, double high) = (Area("low"), Area("median"), Area("high"));
        Assert.True(low < median && median < high, $"{low} {median} {high}");
        Assert.DoesNotContain(document.RootElement.GetProperty("assumptions").EnumerateArray(), one => one.GetProperty("code").GetString() == "reach-best-guess");
        Assert.Contains("(3 maps)", ProgramRun.Of(folder.Path, line).EndsWith(0).Output, StringComparison.Ordinal);

        double Area(string which) => range.GetProperty("heard").GetProperty(which + "-square-metres").GetDouble();
    }

    [Fact]
    public void A_receiver_may_be_like_a_site_of_the_plan()
    {
        string plan = SmallPlan.Write(folder);
        using JsonDocument document = JsonDocument.Parse(ProgramRun.Of(folder.Path, "reach", plan, "east", "--radius", "2 km", "--cell", "200 m", "--receiver", "west", "--json").EndsWith(0).Output);
        Assert.Equal("west/pole", document.RootElement.GetProperty("receiver").GetString());
        Assert.Equal(12, document.RootElement.GetProperty("receiver-height-metres").GetDouble());
        Assert.Equal(5, document.RootElement.GetProperty("budget").GetProperty("receiver-gain-dbi").GetProperty("median").GetDouble());
        Assert.Contains(document.RootElement.GetProperty("assumptions").EnumerateArray(), one => one.GetProperty("code").GetString() == "receiver-points-here");
    }

    [Fact]
    public void Contours_are_closed_lines_around_what_is_heard()
    {
        string plan = SmallPlan.Write(folder);
        ProgramRun.Of(folder.Path, "reach", plan, "west", "--radius", "2 km", "--cell", "100 m", "--out", "map.geojson").EndsWith(0);
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(folder.File("map.geojson")));
        JsonElement[] features = [.. document.RootElement.GetProperty("features").EnumerateArray()];
        Assert.Equal([-18.70, 46.40], features[0].GetProperty("geometry").GetProperty("coordinates").EnumerateArray().Select(one => one.GetDouble()));
        Assert.Equal([0, 10, 20, 30], features[1..].Select(one => one.GetProperty("properties").GetProperty("margin-from-db").GetDouble()));
        double[] areas = [.. features[1..].Select(one => one.GetProperty("properties").GetProperty("area-square-metres").GetDouble())];
        Assert.Equal(areas.OrderDescending(), areas);
        Assert.Equal(Math.PI * 4e6, areas[0], Math.PI * 4e6 * 0.02);
        JsonElement[] ring = [.. features[1].GetProperty("geometry").GetProperty("coordinates")[0][0].EnumerateArray()];
        Assert.Equal(ring[0].ToString(), ring[^1].ToString());
        Assert.All(ring, place => Assert.InRange(place[0].GetDouble(), -18.73, -18.67));
    }

    [Fact]
    public void The_overlay_lies_around_the_station_with_its_colours()
    {
        string plan = SmallPlan.Write(folder);
        string[] line = ["reach", plan, "west", "--radius", "2 km", "--cell", "100 m", "--out", "map.kmz"];
        ProgramRun.Of(folder.Path, line).EndsWith(0);
        byte[] first = File.ReadAllBytes(folder.File("map.kmz"));
        ProgramRun.Of(folder.Path, line).EndsWith(0);
        Assert.Equal(first, File.ReadAllBytes(folder.File("map.kmz")));

        using ZipArchive zip = ZipFile.OpenRead(folder.File("map.kmz"));
        Assert.Equal(["doc.kml", "map.png", "legend.png"], zip.Entries.Select(entry => entry.FullName));
        using Stream stream = zip.Entries[0].Open();
        XElement box = XDocument.Load(stream).Descendants(XName.Get("LatLonBox", "http://www.opengis.net/kml/2.2")).Single();
        double[] edges = [.. box.Elements().Select(edge => double.Parse(edge.Value, CultureInfo.InvariantCulture))];
        Assert.Equal(["north", "south", "east", "west"], box.Elements().Select(edge => edge.Name.LocalName));
        Assert.Equal(46.40, (edges[0] + edges[1]) / 2, 1e-6);
        Assert.Equal(-18.70, (edges[2] + edges[3]) / 2, 1e-6);

        // The box holds the radius and hardly more: 2 km are 0.01799° of latitude at 46.4° north.
        Assert.Equal(2 * 0.01799, edges[0] - edges[1], 0.0005);
    }

    [Theory]
    [InlineData("best-server")]
    [InlineData("station-count")]
    [InlineData("margin")]
    public void The_overlay_of_several_stations_holds_all_their_radii_and_names_them(string layer)
    {
        string plan = SmallPlan.Write(folder);
        ProgramRun.Of(folder.Path, "reach", plan, "west", "east", "--radius", "2 km", "--cell", "100 m", "--layer", layer, "--out", "map.kmz").EndsWith(0);
        using ZipArchive zip = ZipFile.OpenRead(folder.File("map.kmz"));
        using Stream stream = zip.GetEntry("doc.kml")!.Open();
        XDocument document = XDocument.Load(stream);
        static XName Kml(string name) => XName.Get(name, "http://www.opengis.net/kml/2.2");
        double[][] places = [.. document.Descendants(Kml("coordinates")).Select(text => text.Value.Split(',').Select(number => double.Parse(number, CultureInfo.InvariantCulture)).ToArray())];
        Assert.Equal(2, places.Length);
        double[] edges = [.. document.Descendants(Kml("LatLonBox")).Single().Elements().Select(edge => double.Parse(edge.Value, CultureInfo.InvariantCulture))];
        Assert.Equal(places.Max(place => place[1]) + 0.01799, edges[0], 0.0003);
        Assert.Equal(places.Min(place => place[1]) - 0.01799, edges[1], 0.0003);
        Assert.True(edges[2] > places.Max(place => place[0]) && edges[3] < places.Min(place => place[0]));
    }

    [Fact]
    public void Ground_that_the_radius_leaves_is_named_with_where_it_is_missing()
    {
        string plan = SmallPlan.Write(folder, SmallPlan.Text.Replace("46.40, -18.70", "46.40, -18.03", StringComparison.Ordinal));
        ProgramRun run = ProgramRun.Of(folder.Path, "reach", plan, "west", "--radius", "4 km", "--cell", "200 m").EndsWith(0);
        string words = string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("meets no tile N46W018, from 2.", words, StringComparison.Ordinal);
        ProgramRun.Of(folder.Path, "reach", plan, "west", "--radius", "4 km", "--cell", "200 m", "--fail-on", "unknown").EndsWith(1);
    }

    [Fact]
    public void A_station_without_any_ground_is_refused()
    {
        string plan = SmallPlan.Write(folder, SmallPlan.Text.Replace("46.40, -18.70", "48.40, -18.70", StringComparison.Ordinal));
        ProgramRun.Of(folder.Path, "reach", plan, "west", "--radius", "2 km").IsRefusedWith("N48W019");
    }

    [Theory]
    [InlineData("nowhere", "'nowhere' is no station of the plan")]
    [InlineData("west --fit-out mast", "names no fit-out")]
    [InlineData("west --radius 3000km", "200 km or less")]
    [InlineData("west --radius 200km --cell 5m", "A cell of 25 m would do, or a radius of 44.6 km")]
    [InlineData("west --radius 30km --cell 30m --own-paths", "A cell of 85 m would do, or a radius of 10.7 km")]
    [InlineData("west --radius 5", "has no unit")]
    [InlineData("west --radius -5km", "several cells")]
    [InlineData("west --cell 1m", "5 m or more")]
    [InlineData("west --receiver whale", "handheld, handheld-indoors, mast, east, west/pole")]
    [InlineData("west --receiver mast --receiver-height 0m", "0.5 to 500 m")]
    [InlineData("west --out map.bmp", "ends in none of")]
    [InlineData("west --out none/map.png", "there is no folder")]
    [InlineData("west --layer difference", "--compare-fit-out")]
    [InlineData("west --direction up", "heard")]
    [InlineData("", "no station is named")]
    [InlineData("west west/pole", "'west/pole' is named twice")]
    [InlineData("west east --fit-out mast", "name each as SITE/FIT-OUT")]
    [InlineData("west east --layer level", "several stations have no 'level', but best-server, station-count, margin")]
    [InlineData("west --layer best-server", "one station has no 'best-server'")]
    [InlineData("west east --cell 1m", "5 m or more")]
    [InlineData("west east --ranges", "--ranges is about one station")]
    [InlineData("west --layer margin-low", "needs --ranges")]
    [InlineData("west --weights none.csv", "there is no such file")]
    [InlineData("west east --weights plan.yaml", "ends in none of .csv")]
    public void Wrong_input_is_refused_and_nothing_is_written(string line, string part)
    {
        string plan = SmallPlan.Write(folder);
        ProgramRun.Of(folder.Path, ["reach", plan, .. line.Split(' ', StringSplitOptions.RemoveEmptyEntries)]).IsRefusedWith(part);
        Assert.Equal(["ground", "plan.yaml"], Directory.EnumerateFileSystemEntries(folder.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_neighbour_of_whom_too_little_is_known_is_refused_with_what_is_missing()
    {
        string plan = SmallPlan.Write(folder, SmallPlan.Text.Replace("    gain: 2 dBi\n", "", StringComparison.Ordinal));
        ProgramRun.Of(folder.Path, "reach", plan, "west", "--radius", "2 km", "--receiver", "east").IsRefusedWith("neighbours/east/gain");
    }
}
