using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Mastwright.Storage.Plans;
using Mastwright.Tests;

namespace Mastwright.Storage.Tests.Plans;

public class PlanSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(PlanSchema.ToJson());

    [Fact]
    public void The_schema_accepts_plans_that_read()
    {
        Assert.True(Accepts(SamplePlans.Whole));
        Assert.True(Accepts(SamplePlans.Smallest));
        Assert.True(Accepts(StarterPlan.Text("Ours")));
    }

    [Theory]
    [InlineData("name: Net loft", "nmae: Net loft")]
    [InlineData("length: 2 m", "length: 2")]
    [InlineData("connectors: 2", "conectors: 2")]
    [InlineData("coding-rate: 4/6", "coding-rate: 4/9")]
    [InlineData("spreading-factor: 10", "spreading-factor: 13")]
    [InlineData("pattern: yagi", "pattern: yagy")]
    [InlineData("mastwright: 1 ", "mastwright: 2 ")]
    [InlineData("  creamery:\n", "  Creamery:\n")]
    [InlineData("ferry-house ~ creamery", "ferry-house - creamery")]
    [InlineData("return-loss: 18 dB at radio", "return-loss: 18 dB")]
    [InlineData("name: Skerrin\n", "")]
    public void The_schema_refuses_what_the_reader_refuses(string sound, string broken)
    {
        int at = SamplePlans.Whole.IndexOf(sound, StringComparison.Ordinal);
        Assert.True(at >= 0);

        Assert.False(Accepts(SamplePlans.Whole.Remove(at, sound.Length).Insert(at, broken)));
    }

    [Fact]
    public void The_reader_and_the_schema_know_the_same_keys()
    {
        // The reader throws when it leaves a key of its description unread; here the schema is held to the same description.
        using JsonDocument document = JsonDocument.Parse(PlanSchema.ToJson());
        List<string> inSchema = [];
        Collect(document.RootElement, inSchema);

        Assert.Equal(
            ShapeWalk.Mappings(PlanKeys.Shape).SelectMany(shape => shape.Keys.Select(key => key.Name)).Distinct().Order(StringComparer.Ordinal),
            inSchema.Distinct().Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_sample_plan_uses_every_key_so_that_every_key_is_tried()
    {
        HashSet<string> used = [];
        Collect(Tree(SamplePlans.Whole), used);

        string[] elsewhere = ["include", "pattern-file", "weather", "modulation", "bit-rate"];
        Assert.Empty(ShapeWalk.Mappings(PlanKeys.Shape).SelectMany(shape => shape.Keys).Select(key => key.Name).Except(used).Except(elsewhere));
    }

    [Fact]
    public void A_slip_in_any_key_is_refused_by_reader_and_schema_alike()
    {
        using PlanFolderFixture folder = new();
        (string Path, PlanEntry Entry)[] keys = [.. Keys(Tree(SamplePlans.Whole), "")];
        Assert.True(keys.Length > 100);
        Assert.All(keys, key =>
        {
            string text = SamplePlans.Whole.Insert(key.Entry.End, "q");
            PlanReading reading = folder.Read(text);

            Assert.Contains(reading.Problems, problem => problem.Line == key.Entry.Line);
            Assert.False(Accepts(text), key.Path);
        });
    }

    [Fact]
    public void The_guide_page_names_every_key()
    {
        string page = File.ReadAllText(Path.Combine(TestPlaces.Repository, "docs", "guide", "plan.md"));

        Assert.All(
            ShapeWalk.Mappings(PlanKeys.Shape).SelectMany(shape => shape.Keys).Select(key => key.Name).Distinct(),
            key => Assert.True(page.Contains($"`{key}`", StringComparison.Ordinal) || page.Contains($"/{key}`", StringComparison.Ordinal), key));
    }

    [Fact]
    public void Every_example_of_the_description_reads()
    {
        foreach (QuantityShape shape in ShapeWalk.Mappings(PlanKeys.Shape).SelectMany(shape => shape.Keys).Select(key => key.Value).OfType<QuantityShape>())
        {
            PlanProblemList problems = new();
            PlanSource source = PlanSource.FromBytes("x", "", System.Text.Encoding.UTF8.GetBytes($"v: {shape.Example}"), out _)!;
            PlanNode node = PlanTreeReader.Read(source, problems)!.Find("v")!;

            Assert.True(ScalarBinder.Quantity(new(problems, new(".", false)), node, "v", shape) is not null, $"{shape.Example}: {string.Join(' ', problems.Sorted("x"))}");
            Assert.Matches(PlanSchema.QuantityPattern, shape.Example);
        }
    }

    [Fact]
    public void The_schema_of_an_included_file_takes_parts_alone()
    {
        JsonSchema schema = JsonSchema.FromText(PlanSchema.ToJson(included: true));

        Assert.True(Accepts("mastwright: 1\nparts: {feed: {run: {line: rg-213, length: 3 m}}}", schema));
        Assert.False(Accepts("mastwright: 1\nname: x", schema));
    }

    /// <summary>The keys that the format names, without those that the plan chooses.</summary>
    private static IEnumerable<(string Path, PlanEntry Entry)> Keys(PlanNode node, string path)
    {
        bool chosen = path.Split('/')[^1] is "sites" or "neighbours" or "fit-outs" or "nearby-transmitters" or "antennas" or "radios" or "snr-limits" or "branches" || path.EndsWith("box/parts", StringComparison.Ordinal) || path is "parts/feed" or "parts/supply" or "corrections" || path.EndsWith("/stations", StringComparison.Ordinal);
        return node.Entries
            .SelectMany(entry => Keys(entry.Value, path.Length == 0 ? entry.Key : $"{path}/{entry.Key}").Concat(chosen ? [] : [($"{path}/{entry.Key}", entry)]))
            .Concat(node.Items.SelectMany((item, i) => Keys(item, $"{path}/{i + 1}")));
    }

    private static bool Accepts(string yaml, JsonSchema? schema = null)
    {
        using JsonDocument document = JsonDocument.Parse(Json(Tree(yaml))?.ToJsonString() ?? "null");
        return (schema ?? Schema).Evaluate(document.RootElement).IsValid;
    }

    private static PlanNode Tree(string yaml) => PlanText.FromText("plan.yaml", yaml).Text!.Root;

    /// <summary>The tree as an editor sees it, plain scalars typed by the YAML 1.2 core schema.</summary>
    private static JsonNode? Json(PlanNode node)
    {
        switch (node.Kind)
        {
            case PlanNodeKind.Mapping:
                return new JsonObject(node.Entries.Select(entry => KeyValuePair.Create(entry.Key, Json(entry.Value))));
            case PlanNodeKind.Sequence:
                return new JsonArray([.. node.Items.Select(Json)]);
            default:
                return node.IsEmpty ? null
                    : node.Quoting != PlanQuoting.Plain ? JsonValue.Create(node.Text)
                    : node.Text is "true" or "false" ? JsonValue.Create(node.Text == "true")
                    : decimal.TryParse(node.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out decimal number) ? JsonValue.Create(number)
                    : JsonValue.Create(node.Text);
        }
    }

    private static void Collect(JsonElement schema, List<string> keys)
    {
        if (schema.ValueKind == JsonValueKind.Array)
        {
            foreach (JsonElement item in schema.EnumerateArray())
            {
                Collect(item, keys);
            }
        }
        else if (schema.ValueKind == JsonValueKind.Object)
        {
            foreach (JsonProperty property in schema.EnumerateObject())
            {
                if (property.Name == "properties")
                {
                    foreach (JsonProperty key in property.Value.EnumerateObject())
                    {
                        keys.Add(key.Name);
                        Collect(key.Value, keys);
                    }
                }
                else
                {
                    Collect(property.Value, keys);
                }
            }
        }
    }

    private static void Collect(PlanNode node, HashSet<string> keys)
    {
        foreach (PlanEntry entry in node.Entries)
        {
            keys.Add(entry.Key);
            Collect(entry.Value, keys);
        }

        foreach (PlanNode item in node.Items)
        {
            Collect(item, keys);
        }
    }
}
