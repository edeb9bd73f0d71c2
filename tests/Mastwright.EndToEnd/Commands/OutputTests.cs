using System.Text.Json;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>How the output looks wherever it goes: plain when redirected, the same everywhere and every time.</summary>
public sealed class OutputTests(SkerrinRun skerrin)
{
    private const int Columns = 80;

    /// <summary>Commands whose output has tables and wrapped text.</summary>
    public static TheoryData<string> Lines =>
    [
        "check skerrin-demo/plan.yaml",
        "links skerrin-demo/plan.yaml --no-cache --all",
        "hops skerrin-demo/plan.yaml lantern-bay --worlds 50 --no-cache",
        "air skerrin-demo/plan.yaml --reports 60 --hours 1 --no-cache",
        "shadow skerrin-demo/plan.yaml lantern-bay --radius 3km --cell 250m --no-cache",
        "check skerrin-demo/plan.yaml --site ferry-house --all",
        "check skerrin-demo/plan.yaml --compare",
        "path skerrin-demo/plan.yaml ferry-house lantern-bay",
        "path skerrin-demo/plan.yaml ferry-house pilot-hut",
        "reach skerrin-demo/plan.yaml ferry-house --radius 2km --cell 250m --compare-fit-out eaves",
        "airtime skerrin-demo/plan.yaml",
    ];

    [Theory, MemberData(nameof(Lines))]
    public void Is_plain_and_fits_80_columns(string line)
    {
        ProgramRun run = Run(line);
        Assert.DoesNotContain('\u001b', run.Output + run.Error);
        Assert.DoesNotContain(run.Lines, text => text.EnumerateRunes().Count() > Columns);
    }

    [Theory]
    [InlineData("path skerrin-demo/plan.yaml ferry-house lantern-bay")]
    [InlineData("path skerrin-demo/plan.yaml ferry-house lantern-bay --json")]
    public void Is_the_same_bytes_on_one_processor_with_another_language_and_terminal(string line) => IsTheSameElsewhere(line);

    /// <summary>Left to the full run: commands that take longer.</summary>
    [Theory, Trait("needs", "system")]
    [InlineData("check skerrin-demo/plan.yaml")]
    [InlineData("check skerrin-demo/plan.yaml --json")]
    [InlineData("check skerrin-demo/plan.yaml --site ferry-house --all")]
    [InlineData("path skerrin-demo/plan.yaml ferry-house pilot-hut")]
    [InlineData("reach skerrin-demo/plan.yaml ferry-house --radius 2km --cell 250m --compare-fit-out eaves")]
    [InlineData("reach skerrin-demo/plan.yaml ferry-house --radius 2km --cell 250m --json")]
    [InlineData("airtime skerrin-demo/plan.yaml")]
    public void Is_the_same_bytes_elsewhere_for_longer_commands_too(string line) => IsTheSameElsewhere(line);

    [Theory]
    [InlineData("check skerrin-demo/plan.yaml --json")]
    [InlineData("reach skerrin-demo/plan.yaml ferry-house --radius 2km --cell 250m --json")]
    [InlineData("path skerrin-demo/plan.yaml ferry-house lantern-bay --json")]
    [InlineData("air skerrin-demo/plan.yaml --hours 1 --no-cache --json")]
    [InlineData("shadow skerrin-demo/plan.yaml ferry-house --radius 2km --cell 250m --no-cache --json")]
    [InlineData("airtime skerrin-demo/plan.yaml --json")]
    public void Every_ledger_sums_to_its_total(string line)
    {
        using JsonDocument document = JsonDocument.Parse(Run(line).Output);
        int ledgers = 0;
        Walk(document.RootElement, element =>
        {
            if (element.TryGetProperty("total", out JsonElement total) && element.TryGetProperty("lines", out JsonElement lines))
            {
                ledgers++;
                double sum = lines.EnumerateArray().Sum(one => one.GetProperty("value").GetDouble());
                Assert.Equal(total.GetDouble(), sum, 1e-9);
            }
        });
        Assert.True(ledgers > 0);
    }

    /// <summary>Left to the full run: it starts the program four times.</summary>
    [Fact, Trait("needs", "system")]
    public void Pictures_are_the_same_bytes_every_time()
    {
        using TemporaryFolder folder = new();
        foreach (string ending in (string[])[".svg", ".png"])
        {
            string[] names = [folder.File("one" + ending), folder.File("two" + ending)];
            foreach (string name in names)
            {
                ProgramRun.Of(skerrin.Start, "path", "skerrin-demo/plan.yaml", "ferry-house", "gannet-stack", "--picture", name).EndsWith(0);
            }

            Assert.Equal(File.ReadAllBytes(names[0]), File.ReadAllBytes(names[1]));
        }
    }

    private void IsTheSameElsewhere(string line)
    {
        Dictionary<string, string> elsewhere = new(StringComparer.Ordinal)
        {
            ["DOTNET_PROCESSOR_COUNT"] = "1",
            ["LANG"] = "de_DE.UTF-8",
            ["LC_ALL"] = "de_DE.UTF-8",
            ["NO_COLOR"] = "1",
            ["TERM"] = "xterm-256color",
            ["COLORTERM"] = "truecolor",
            ["COLUMNS"] = "200",
        };
        Assert.Equal(Run(line), ProgramRun.Of(skerrin.Start, elsewhere, line.Split(' ')));
    }

    /// <summary>One run of each line, shared by all tests.</summary>
    private ProgramRun Run(string line) => skerrin.Run(line);

    private static void Walk(JsonElement element, Action<JsonElement> visit)
    {
        if (element.ValueKind == JsonValueKind.Object)
        {
            visit(element);
            foreach (JsonProperty property in element.EnumerateObject())
            {
                Walk(property.Value, visit);
            }
        }
        else if (element.ValueKind == JsonValueKind.Array)
        {
            foreach (JsonElement item in element.EnumerateArray())
            {
                Walk(item, visit);
            }
        }
    }
}
