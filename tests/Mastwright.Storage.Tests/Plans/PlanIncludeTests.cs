using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Tests.Plans;

public class PlanIncludeTests
{
    private const string Including = "include: parts.yaml\n" + SamplePlans.Smallest + "sites:\n  a:\n    position: \"46.4, -18.7\"\n    fit-outs:\n      x: {antenna: {part: whip, height: 3 m}}\n";

    [Fact]
    public void An_included_part_is_used_and_keeps_its_own_place()
    {
        using PlanFolderFixture folder = new();
        folder.Write("parts.yaml", "mastwright: 1\ninclude: [more/antennas.yaml]\n");
        folder.Write("more/antennas.yaml", "mastwright: 1\nparts:\n  antennas:\n    whip: {gain: 2 dBi}\n");

        // Names in an included file count from the plan's folder, like all others.
        PlanDocument document = PlanFileTests.Good(folder.Read(Including));

        Assert.Equal(2, document.Plan.Sites[0].FitOuts[0].Antenna.GainDbi!.Value.Median);
        Assert.Equal(new PlanPlace("more/antennas.yaml", 4, 18), document.Sources.Find("sites/a/fit-outs/x/antenna/gain"));
        Assert.Equal(3, document.Files.Length);
        Assert.All(document.Files, file => Assert.Equal(64, file.Sha256.Length));
        Assert.Equal(document.Sources.Find("sites/a/fit-outs/x/antenna"), document.Sources.FindNearest("sites/a/fit-outs/x/antenna/bearing"));
    }

    [Fact]
    public void A_fault_in_an_included_file_is_told_once_at_its_own_place()
    {
        using PlanFolderFixture folder = new();
        folder.Write("parts.yaml", "mastwright: 1\nparts:\n  antennas:\n    whip: {gain: 2 m}\n");

        PlanProblem problem = Assert.Single(folder.Read(Including).Problems);
        Assert.Equal(("parts.yaml", 4), (problem.File, problem.Line));
    }

    [Theory]
    [InlineData("include: parts.yaml", "plan-include-cycle")]
    [InlineData("include: plan.yaml", "plan-include-cycle")]
    [InlineData("include: ../other.yaml", "plan-outside")]
    [InlineData("include: /etc/hostname", "plan-outside")]
    [InlineData("include: absent.yaml", "plan-file")]
    [InlineData("name: x", "plan-unknown-key")]
    public void An_included_file_that_cannot_be_taken_is_refused(string line, string code)
    {
        using PlanFolderFixture folder = new();
        folder.Write("parts.yaml", "mastwright: 1\n" + line + "\nparts: {antennas: {whip: {gain: 2 dBi}}}\n");

        Assert.Equal(code, Assert.Single(folder.Read(Including).Problems).Code);
    }

    /// <summary>The refusal is the one thing to mend: that parts are then missing everywhere is no fault of the plan.</summary>
    [Theory]
    [InlineData("../parts.yaml", "plan-outside")]
    [InlineData("absent.yaml", "plan-file")]
    [InlineData("plan.yaml", "plan-include-cycle")]
    [InlineData("broken.yaml", "plan-syntax")]
    public void Parts_of_a_file_that_was_refused_are_not_missed_one_by_one(string include, string code)
    {
        using PlanFolderFixture folder = new();
        folder.Write("broken.yaml", "mastwright: 1\nparts: {antennas: [\n");
        string plan = SamplePlans.Whole.Replace("part: collinear-8", "part: away", StringComparison.Ordinal)
            .Replace("part: small-node", "part: away", StringComparison.Ordinal).Replace("part: loft-run", "part: away", StringComparison.Ordinal);

        Assert.Equal(3, folder.Read(plan).Problems.Length);
        Assert.Equal(code, Assert.Single(folder.Read("include: " + include + "\n" + plan).Problems).Code);
    }

    [Fact]
    public void A_part_described_twice_names_both_places()
    {
        using PlanFolderFixture folder = new();
        folder.Write("parts.yaml", "mastwright: 1\nparts: {antennas: {whip: {gain: 2 dBi}}}\n");

        PlanProblem problem = Assert.Single(folder.Read(Including + "parts: {antennas: {whip: {gain: 3 dBi}}}\n").Problems);
        Assert.Equal("plan-duplicate-key", problem.Code);
        Assert.Contains("parts.yaml, line 2", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_link_that_leads_out_of_the_folder_is_refused_unless_allowed()
    {
        using PlanFolderFixture outside = new();
        using PlanFolderFixture folder = new();
        string parts = outside.Write("parts.yaml", "mastwright: 1\nparts: {antennas: {whip: {gain: 2 dBi}}}\n");
        File.CreateSymbolicLink(Path.Combine(folder.Folder, "parts.yaml"), parts);

        Assert.Equal("plan-outside", folder.Read(Including).Problems[0].Code);
        PlanFileTests.Good(folder.Read(Including, new() { AllowOutside = true }));
        PlanFileTests.Good(folder.Read(Including.Replace("parts.yaml", parts, StringComparison.Ordinal), new() { AllowOutside = true }));
    }

    [Fact]
    public void A_pattern_file_gives_the_table_of_an_antenna()
    {
        using PlanFolderFixture folder = new();
        folder.Write("whip.csv", "angle,dB\n10,-3.5\n# a remark\n-90,-20\n90, -20\n0,0\n");
        string plan = Including.Replace("include: parts.yaml\n", "", StringComparison.Ordinal).Replace("part: whip", "pattern: table, pattern-file: whip.csv", StringComparison.Ordinal);

        Assert.Equal(
            [new(-90, -20), new(0, 0), new(10, -3.5), new(90, -20)],
            PlanFileTests.Good(folder.Read(plan)).Plan.Sites[0].FitOuts[0].Antenna.ElevationTable.AsEnumerable());
    }

    [Theory]
    [InlineData("0,0\n", 0)]
    [InlineData("0,0\n10,3\n", 2)]
    [InlineData("0,0\n100,-3\n", 2)]
    [InlineData("0,0\n10,NaN\n", 2)]
    [InlineData("0,0\n0,-3\n", 2)]
    [InlineData("\uFEFF0,0\n10,3\n", 2)]
    [InlineData("\0\u0001", 0)]
    public void A_pattern_file_that_is_none_says_where(string csv, int line)
    {
        using PlanFolderFixture folder = new();
        folder.Write("whip.csv", csv);
        string plan = Including.Replace("include: parts.yaml\n", "", StringComparison.Ordinal).Replace("part: whip", "pattern: table, pattern-file: whip.csv", StringComparison.Ordinal);

        PlanProblem problem = Assert.Single(folder.Read(plan).Problems);
        Assert.Equal(("plan-pattern", "whip.csv", line), (problem.Code, problem.File, problem.Line));
    }
}
