using System.Text;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Tests.Plans;

public class PlanTextTests
{
    private static readonly Gen<string> Value = Gen.OneOf<string>(
        Gen.String[Gen.Char[' ', '~'], 1, 20],
        Gen.String[Gen.OneOf('a', ' ', ':', '#', '-', ',', '{', ']', '\'', '"', '\\', 'é', '±'), 1, 8],
        Gen.OneOf("5 m", "-3 dB", "6 ± 2 m", "😀", "null", "~", "", "true", "<<", "- x", "? y", "a: b", "a #b", "0…6 dBi", " x ", "---", "...", "%x", "[a]", "{a}"));

    [Fact]
    public void Changing_a_value_changes_its_characters_and_no_other_byte()
    {
        string[] texts = [.. Variants()];
        Gen.Select(Gen.OneOf(texts), Gen.Int[0, 10_000], Value).Sample((text, pick, value) =>
        {
            PlanText before = Parse(text);
            (string path, PlanNode node) = Pick(before.Root, pick);
            PlanTextResult result = before.With(path, value);
            if (result.Text is not { } after)
            {
                // Refused is right only where the text cannot be written: never for ordinary words.
                return value.Length == 0 || value.AsSpan().IndexOfAnyExceptInRange(' ', '~') >= 0;
            }

            byte[] old = Encoding.UTF8.GetBytes(before.Text);
            byte[] now = Encoding.UTF8.GetBytes(after.Text);
            int lead = Encoding.UTF8.GetByteCount(before.Text.AsSpan(0, node.Start));
            int tail = old.Length - Encoding.UTF8.GetByteCount(before.Text.AsSpan(0, node.End));
            return old.AsSpan(0, lead).SequenceEqual(now.AsSpan(0, lead))
                && old.AsSpan(old.Length - tail).SequenceEqual(now.AsSpan(now.Length - tail))
                && after.Value(path) == value;
        });
    }

    [Fact]
    public void Every_value_can_be_changed_to_words_and_to_a_quantity()
    {
        // Each value takes each of the three, one in each way of writing the plan.
        string[] values = ["-3.5 dB", "46.1, -18.2 ± 3 km", "a: b # c"];
        foreach ((int variant, string text) in Variants().Index())
        {
            PlanText before = Parse(text);
            foreach ((int i, (string path, PlanNode _)) in Scalars(before.Root, "").Index())
            {
                string value = values[(i + variant) % values.Length];
                Assert.Equal(value, before.With(path, value).Text?.Value(path));
            }
        }
    }

    [Fact]
    public void Changing_a_value_to_itself_and_back_gives_the_same_text()
    {
        PlanText before = Parse(SamplePlans.Whole);
        foreach ((string path, PlanNode node) in Scalars(before.Root, ""))
        {
            if (!node.IsEmpty)
            {
                PlanText there = before.With(path, "other").Text!;
                Assert.Equal(node.Text, there.With(path, node.Text).Text!.Value(path));
                Assert.Equal(before.Text, before.With(path, node.Text).Text!.Text);
            }
        }
    }

    [Fact]
    public void A_plan_is_saved_with_its_line_ends_mark_and_comments()
    {
        using PlanFolderFixture folder = new();
        byte[] bytes = [.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(SamplePlans.Whole.ReplaceLineEndings("\r\n"))];
        File.WriteAllBytes(folder.Plan, bytes);

        PlanText text = PlanText.Read(folder.Plan).Text!.With("sites/ferry-house/in-use", "eaves").Text!;
        Assert.Null(text.Save());

        string expected = SamplePlans.Whole.ReplaceLineEndings("\r\n").Replace("in-use: net-loft", "in-use: eaves", StringComparison.Ordinal);
        Assert.Equal([.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(expected)], File.ReadAllBytes(folder.Plan));
        Assert.Equal("eaves", PlanFileTests.Good(PlanFile.Read(folder.Plan)).Plan.Sites[0].InUse);
        Assert.Single(Directory.GetFiles(folder.Folder));
    }

    [Fact]
    public void A_plan_that_changed_since_it_was_read_is_not_overwritten()
    {
        using PlanFolderFixture folder = new();
        folder.Write("plan.yaml", SamplePlans.Whole);
        PlanText text = PlanText.Read(folder.Plan).Text!.With("name", "Other").Text!;
        folder.Write("plan.yaml", SamplePlans.Whole + "\n# a note\n");

        Assert.Equal("plan-changed", text.Save()?.Code);
        Assert.EndsWith("# a note\n", File.ReadAllText(folder.Plan), StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(folder.Folder));
    }

    [Fact]
    public void Writing_to_a_file_that_is_gone_is_an_answer()
    {
        using PlanFolderFixture folder = new();
        folder.Write("plan.yaml", SamplePlans.Whole);
        PlanText text = PlanText.Read(folder.Plan).Text!;
        File.Delete(folder.Plan);

        Assert.Equal("plan-file", text.Save()?.Code);
    }

    [Theory]
    [InlineData("sites/ferry-house/fit-outs/eaves/name", "Old: eaves")]
    [InlineData("sites/ferry-house/fit-outs/net-loft/antenna/tilt", "-2°")]
    [InlineData("sites/ferry-house/fit-outs/net-loft/feed/2/name", "both ends")]
    [InlineData("sites/creamery/ground-height", "12 m")]
    [InlineData("neighbours/east-quay/ground-height", "a, b")]
    [InlineData("parts/feed/loft-run/temperature", "40 °C")]
    public void A_missing_key_is_added_and_nothing_else_changes(string path, string value)
    {
        foreach (string text in Variants())
        {
            PlanText before = Parse(text);
            PlanText after = before.With(path, value).Text!;

            Assert.Null(before.Value(path));
            Assert.Equal(value, after.Value(path));
            int more = after.Text.Length - text.Length;
            int at = text.AsSpan().CommonPrefixLength(after.Text);
            Assert.True(more > 0);
            Assert.Contains(Enumerable.Range(Math.Max(0, at - more), more + 1), i => after.Text.Remove(i, more) == text);
        }
    }

    [Theory]
    [InlineData("sites/nowhere/position", "x", "plan-missing-key")]
    [InlineData("sites/ferry-house/Big Key", "x", "plan-missing-key")]
    [InlineData("sites/ferry-house/fit-outs/net-loft/feed/9", "x", "plan-missing-key")]
    [InlineData("name/further", "x", "plan-missing-key")]
    [InlineData("sites/ferry-house", "x", "plan-value")]
    [InlineData("name", "two\nlines", "plan-value")]
    public void What_cannot_be_changed_is_refused(string path, string value, string code)
    {
        PlanTextResult result = Parse(SamplePlans.Whole).With(path, value);

        Assert.Null(result.Text);
        Assert.Equal(code, result.Problem!.Code);
    }

    [Fact]
    public void Half_a_character_is_refused()
    {
        Assert.Equal("plan-value", Parse(SamplePlans.Whole).With("name", "half \ud83d").Problem?.Code);
        Assert.Equal("plan-encoding", PlanText.FromText("plan.yaml", "name: half \ud83d").Problem?.Code);
    }

    private static IEnumerable<string> Variants()
    {
        string lf = SamplePlans.Whole.ReplaceLineEndings("\n");
        yield return lf;
        yield return lf.ReplaceLineEndings("\r\n") + "\r\n# end 😀\r\n";
        yield return "# 😀 ± first\n" + lf.Replace("name: Skerrin", "\"name\" : \"Sk\\u0065rrin\"  # said", StringComparison.Ordinal);
    }

    private static PlanText Parse(string text)
    {
        PlanTextResult result = PlanText.FromText("plan.yaml", text);
        Assert.Null(result.Problem);
        return result.Text!;
    }

    private static (string Path, PlanNode Node) Pick(PlanNode root, int pick)
    {
        (string, PlanNode)[] all = [.. Scalars(root, "")];
        return all[pick % all.Length];
    }

    private static IEnumerable<(string Path, PlanNode Node)> Scalars(PlanNode node, string path)
    {
        string lead = path.Length == 0 ? "" : path + "/";
        return node.Kind switch
        {
            PlanNodeKind.Scalar => [(path, node)],
            PlanNodeKind.Mapping => node.Entries.SelectMany(entry => Scalars(entry.Value, lead + entry.Key)),
            _ => node.Items.SelectMany((item, i) => Scalars(item, $"{lead}{i + 1}")),
        };
    }
}
