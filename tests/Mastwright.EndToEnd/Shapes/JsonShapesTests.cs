using System.Text.Json;
using Json.Schema;

namespace Mastwright.Tests.EndToEnd.Shapes;

/// <summary>The JSON documents are what docs/guide/json.md and the schemas beside it say, now and as they were stored.</summary>
public sealed class JsonShapesTests(SkerrinRun skerrin)
{
    private static readonly string Guide = Path.Combine(TestPlaces.Repository, "docs", "guide");
    private static readonly string Stored = Path.Combine(TestPlaces.Repository, "tests", "Mastwright.EndToEnd", "Shapes", "Stored");

    /// <summary>Every schema, by the name of its file: "check-1".</summary>
    public static TheoryData<string> Shapes =>
        [.. Directory.EnumerateFiles(Path.Combine(Guide, "json"), "*.schema.json").Select(file => Path.GetFileName(file)[..^".schema.json".Length]).Order(StringComparer.Ordinal)];

    [Theory]
    [InlineData("check skerrin-demo/plan.yaml --json", "check-1")]
    [InlineData("check skerrin-demo/plan.yaml --json --site ferry-house", "check-1")]
    [InlineData("check skerrin-demo/plan.yaml --compare --json", "comparison-1")]
    [InlineData("path skerrin-demo/plan.yaml ferry-house lantern-bay --json", "path-1")]
    [InlineData("path skerrin-demo/plan.yaml ferry-house pilot-hut --json", "path-1")]
    [InlineData("reach skerrin-demo/plan.yaml ferry-house --radius 2km --cell 250m --json", "reach-1")]
    [InlineData("reach skerrin-demo/plan.yaml ferry-house --radius 2km --cell 250m --compare-fit-out eaves --receiver mast --json", "reach-1")]
    [InlineData("reach skerrin-demo/plan.yaml ferry-house creamery --radius 2km --cell 250m --json", "reach-several-1")]
    [InlineData("prove skerrin-demo/plan.yaml ferry-house --store skerrin-demo/records.sqlite --entry 1 --prediction --json", "proof-1")]
    [InlineData("links skerrin-demo/plan.yaml --no-cache --json", "links-1")]
    [InlineData("hops skerrin-demo/plan.yaml ferry-house --worlds 50 --no-cache --json", "hops-1")]
    [InlineData("air skerrin-demo/plan.yaml --hours 1 --no-cache --json", "air-1")]
    [InlineData("shadow skerrin-demo/plan.yaml ferry-house --radius 2km --cell 250m --no-cache --json", "shadow-1")]
    [InlineData("relay skerrin-demo/plan.yaml ferry-house --goal stations --candidate comb-cairn/trial --candidate peat-top/trial --no-cache --json", "relay-1")]
    [InlineData("airtime skerrin-demo/plan.yaml --json", "airtime-1")]
    [InlineData("ground info skerrin-demo/plan.yaml --json", "ground-info-1")]
    public void What_the_program_writes_has_the_shape_it_names(string line, string shape) => HasShape(skerrin.Run(line).Output, shape);

    [Fact]
    public void Paths_that_know_less_have_their_shape_too()
    {
        using TemporaryFolder folder = new();
        folder.Write("profile.csv", "distance_km,height_m,cover_m,zone\n0,10,0,inland\n0.1,10,0,inland\n0.2,10,0,inland\n");
        string[] bare = ["path", "--profile", "profile.csv", "--frequency", "868 MHz", "--tx-height", "10 m", "--rx-height", "10 m", "--tx-position", "46.4,-18.7", "--rx-position", "46.4,-18.697", "--json"];
        HasShape(ProgramRun.Of(folder.Path, bare).EndsWith(0).Output, "path-profile-1");

        folder.Write("keyed.yaml", "mastwright: 1\nname: Keyed\nmodem: {frequency: 868 MHz, bandwidth: 50 kHz, modulation: frequency-shift-keying, bit-rate: 9.6 kbit/s, payload: 40 B}\n");
        HasShape(ProgramRun.Of(folder.Path, "airtime", "keyed.yaml", "--json").EndsWith(0).Output, "airtime-1");

        SmallPlan.Write(folder);
        folder.Write("houses.csv", "latitude,longitude,weight\n46.4,-18.7,3\n");
        string[] around = ["--radius", "2km", "--cell", "250m", "--weights", "houses.csv", "--json"];
        HasShape(ProgramRun.Of(folder.Path, ["reach", "plan.yaml", "west", "--ranges", .. around]).Output, "reach-1");
        HasShape(ProgramRun.Of(folder.Path, ["reach", "plan.yaml", "west", "east", .. around]).Output, "reach-several-1");

        SmallPlan.Write(folder, SmallPlan.Text.Replace("46.41, -18.60", "47.41, -18.60", StringComparison.Ordinal));
        HasShape(ProgramRun.Of(folder.Path, "path", "plan.yaml", "west", "east", "--json").Output, "path-1");
        HasShape(ProgramRun.Of(folder.Path, "ground", "info", "plan.yaml", "--json").Output, "ground-info-1");

        SmallPlan.Write(folder, SmallPlan.Text.Replace("46.41, -18.60", "46.40, -18.70", StringComparison.Ordinal));
        HasShape(ProgramRun.Of(folder.Path, "check", "plan.yaml", "--json").Output, "check-1");
        HasShape(ProgramRun.Of(folder.Path, "path", "plan.yaml", "west", "east", "--json").Output, "path-1");
    }

    [Theory, MemberData(nameof(Shapes))]
    public void A_stored_document_of_each_version_still_has_its_shape(string shape) =>
        HasShape(File.ReadAllText(Path.Combine(Stored, shape + ".json")), shape);

    [Theory, MemberData(nameof(Shapes))]
    public void A_property_more_or_less_is_noticed(string shape)
    {
        string stored = File.ReadAllText(Path.Combine(Stored, shape + ".json"));
        Assert.False(Evaluate(stored.Replace("\"version\": 1", "\"version\": 1, \"new\": 0", StringComparison.Ordinal), shape).IsValid);
        Assert.False(Evaluate(stored.Replace("\"version\": 1", "\"vers\": 1", StringComparison.Ordinal), shape).IsValid);
    }

    [Theory, MemberData(nameof(Shapes))]
    public void The_page_names_every_property(string shape)
    {
        string page = File.ReadAllText(Path.Combine(Guide, "json.md"));
        using JsonDocument schema = JsonDocument.Parse(File.ReadAllText(SchemaFile(shape)));
        Assert.All(Properties(schema.RootElement).Distinct(StringComparer.Ordinal), name =>
            Assert.True(page.Contains($"`{name}`", StringComparison.Ordinal) || page.Contains($"/{name}`", StringComparison.Ordinal), name));
    }

    internal static void HasShape(string text, string shape)
    {
        EvaluationResults results = Evaluate(text, shape);
        Assert.True(results.IsValid, string.Join('\n', (results.Details ?? []).Where(one => one.Errors is not null).Select(one => $"{one.InstanceLocation}: {string.Join("; ", one.Errors!.Values)}").Take(12)));
    }

    private static EvaluationResults Evaluate(string text, string shape)
    {
        using JsonDocument document = JsonDocument.Parse(text);
        JsonSchema schema = JsonSchema.FromText(File.ReadAllText(SchemaFile(shape)));
        return schema.Evaluate(document.RootElement, new() { OutputFormat = OutputFormat.List });
    }

    private static string SchemaFile(string shape) => Path.Combine(Guide, "json", shape + ".schema.json");

    private static IEnumerable<string> Properties(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(member =>
            member.NameEquals("properties") ? member.Value.EnumerateObject().SelectMany(one => Properties(one.Value).Prepend(one.Name)) : Properties(member.Value)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Properties),
        _ => [],
    };
}
