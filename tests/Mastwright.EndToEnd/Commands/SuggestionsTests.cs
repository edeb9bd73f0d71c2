namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>Completion for shells, and the nearest word for a mistyped one.</summary>
public sealed class SuggestionsTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("ch", "check")]
    [InlineData("sites ", "import")]
    [InlineData("check plan.yaml --fail-on ", "unknown")]
    [InlineData("path plan.yaml --pi", "--picture")]
    public void The_completion_directive_offers(string typed, string offered)
    {
        ProgramRun run = ProgramRun.Of(folder.Path, $"[suggest:{typed.Length}]", typed).EndsWith(0);
        Assert.Contains(offered, run.Lines);
    }

    [Theory]
    [InlineData("chek", "check")]
    [InlineData("airtme", "airtime")]
    [InlineData("check plan.yaml --jsn", "--json")]
    public void The_nearest_word_is_offered_for_a_mistyped_one(string line, string nearest)
    {
        ProgramRun run = ProgramRun.Of(folder.Path, line.Split(' ')).EndsWith(2);
        Assert.Contains(nearest, (run.Output + run.Error).Split('\n', StringSplitOptions.TrimEntries));
    }
}
