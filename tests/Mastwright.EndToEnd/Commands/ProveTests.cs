namespace Mastwright.Tests.EndToEnd.Commands;

public sealed class ProveTests(SkerrinRun skerrin)
{
    private const string Ask = "prove skerrin-demo/plan.yaml ferry-house --store skerrin-demo/records.sqlite";

    [Fact]
    public void The_demo_ends_with_its_proof()
    {
        string told = skerrin.Demo.Output;
        Assert.Contains("Ferry House hears better by ", told, StringComparison.Ordinal);
        Assert.Contains("Newly heard directly: Creamery; no longer heard: none; Lantern Bay in 2 hops", told, StringComparison.Ordinal);
        Assert.Contains("Upper School changed on", told, StringComparison.Ordinal);
        Assert.True(new FileInfo(Path.Combine(skerrin.Folder, "proof.svg")).Length > 5_000);
    }

    [Fact]
    public void A_picture_is_drawn_of_periods_by_their_days()
    {
        using TemporaryFolder folder = new();
        string picture = Path.Combine(folder.Path, "proof.png");
        ProgramRun run = skerrin.Run($"{Ask} --before 2025-06-01..2025-06-23 --after 2025-07-08..2025-07-31 --picture {picture}");
        Assert.Contains("better by", run.Output, StringComparison.Ordinal);

        // The week in which the old antenna failed is left out.
        Assert.DoesNotContain("failing", run.Output, StringComparison.Ordinal);
        Assert.Equal([0x89, 0x50, 0x4E, 0x47], File.ReadAllBytes(picture)[..4]);
    }

    [Theory]
    [InlineData("--before 2025-06-01..2025-07-01", "Give both periods")]
    [InlineData("--before 2025-06-01..2025-07-01 --after 2025-06-20..2025-07-20", "must end before")]
    [InlineData("--before yesterday --after 2025-06-20..2025-07-20", "'yesterday' is no period")]
    [InlineData("--before 2025-07-01..2025-06-01 --after 2025-07-20..2025-07-21", "ends before it begins")]
    [InlineData("--entry 99", "no entry 99")]
    [InlineData("--before 2020-01-01..2020-02-01 --after 2025-07-20..2025-07-21", "heard nothing in the period before")]
    public void What_cannot_be_proved_is_told(string rest, string problem)
    {
        ProgramRun run = ProgramRun.Of(skerrin.Start, $"{Ask} {rest}".Split(' '));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(problem, run.Error, StringComparison.Ordinal);
    }
}
