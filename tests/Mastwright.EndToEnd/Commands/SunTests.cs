namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>sun on Skerrin: the hut that lives on a panel.</summary>
public sealed class SunTests(SkerrinRun skerrin)
{
    [Fact]
    public void The_year_is_told_month_by_month_and_its_darkest_one_drawn()
    {
        ProgramRun run = skerrin.Run("sun skerrin-demo/plan.yaml ferry-house/hill-hut --picture hut.svg").EndsWith(0);
        string text = string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("December 1.0", text, StringComparison.Ordinal);
        Assert.Contains("With 10 W of panel and 256 Wh of battery", text, StringComparison.Ordinal);
        Assert.Contains("The smallest that keep to 8.8 h a year without service: a panel of", text, StringComparison.Ordinal);
        Assert.Contains("Written: hut.svg", text, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    [Theory]
    [InlineData("sun skerrin-demo/plan.yaml ferry-house", "has no panel; give it one under sites/ferry-house/fit-outs/net-loft/solar")]
    [InlineData("sun skerrin-demo/plan.yaml ferry-house/hill-hut --month 13", "13 is no month")]
    [InlineData("sun skerrin-demo/plan.yaml ferry-house/hill-hut --picture hut.gif", "ends neither in .svg nor in .png")]
    public void What_cannot_be_is_refused(string line, string words) => ProgramRun.Of(skerrin.Start, line.Split(' ')).IsRefusedWith(words);
}
