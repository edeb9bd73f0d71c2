using System.Text.Json;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>0: nothing fails; 1: a finding fails, or what the caller lets count; 2: bad input.</summary>
public sealed class ExitCodesTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void A_clear_link_ends_with_0_and_a_blocked_one_with_1()
    {
        SmallPlan.WriteLawful(folder);
        Run("check", "plan.yaml").EndsWith(0);
        Run("path", "plan.yaml", "west", "east").EndsWith(0);
        Run("check", "plan.yaml", "--fail-on", "tight", "--fail-on", "unknown").EndsWith(0);
        SmallPlan.WriteLawful(folder, wallMetres: 2000);
        Run("check", "plan.yaml").EndsWith(1);
        Run("path", "plan.yaml", "west/pole", "east", "--json").EndsWith(1);
    }

    [Fact]
    public void Tight_and_unknown_count_where_the_caller_says_so()
    {
        // 60 dB wanted of a link that has fewer: tight.
        SmallPlan.WriteLawful(folder, SmallPlan.Text.Replace("sites:\n", "wanted: {margin: 60 dB}\nsites:\n", StringComparison.Ordinal));
        Assert.Equal("tight", Verdict(Run("check", "plan.yaml", "--json", "--fail-on", "unknown").EndsWith(0)));
        Run("check", "plan.yaml", "--fail-on", "tight").EndsWith(1);
        Run("path", "plan.yaml", "west", "east", "--fail-on", "tight").EndsWith(1);

        // A gain that may be anything: unknown.
        SmallPlan.WriteLawful(folder, SmallPlan.Text.Replace("gain: 2 dBi", "gain: -40…10 dBi", StringComparison.Ordinal));
        Assert.Equal("unknown", Verdict(Run("check", "plan.yaml", "--json", "--fail-on", "tight").EndsWith(0)));
        Run("check", "plan.yaml", "--fail-on", "unknown").EndsWith(1);
    }

    [Fact]
    public void What_only_writes_or_tells_ends_with_0()
    {
        SmallPlan.Write(folder);
        Run("--version").EndsWith(0);
        Run("--help").EndsWith(0);
        Run("airtime", "plan.yaml").EndsWith(0);
        Run("new", "fresh.yaml").EndsWith(0);
        using (JsonDocument.Parse(Run("schema").EndsWith(0).Output))
        {
        }

        using (JsonDocument.Parse(Run("schema", "--parts").EndsWith(0).Output))
        {
        }
    }

    [Theory]
    [InlineData("gpx")]
    [InlineData("geojson")]
    [InlineData("kml")]
    [InlineData("csv")]
    public void Places_go_out_and_come_back(string form)
    {
        SmallPlan.Write(folder);
        string before = File.ReadAllText(folder.File("plan.yaml"));
        Run("sites", "export", "plan.yaml", "places." + form).EndsWith(0);
        Assert.Equal(before, File.ReadAllText(folder.File("plan.yaml")));
        Run("sites", "export", "plan.yaml", "places." + form).IsRefusedWith("--overwrite");
        Run("sites", "export", "plan.yaml", "places." + form, "--overwrite").EndsWith(0);
        Run("new", "fresh.yaml").EndsWith(0);
        Run("sites", "import", "fresh.yaml", "places." + form, "--as-neighbours").EndsWith(0);
        string after = File.ReadAllText(folder.File("fresh.yaml"));
        Assert.Contains("46.41, -18.6", after, StringComparison.Ordinal);
        Assert.Empty(Directory.EnumerateFiles(folder.Path, "*.part"));
    }

    private static string Verdict(ProgramRun check)
    {
        using JsonDocument document = JsonDocument.Parse(check.Output);
        return document.RootElement.GetProperty("links")[0].GetProperty("verdict").GetString()!;
    }

    private ProgramRun Run(params string[] arguments) => ProgramRun.Of(folder.Path, arguments);
}
