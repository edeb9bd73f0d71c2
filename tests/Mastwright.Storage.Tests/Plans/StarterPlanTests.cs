using Mastwright.Plans;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Tests.Plans;

public class StarterPlanTests
{
    [Theory]
    [InlineData("Our valley")]
    [InlineData("Valley: the #2 \"net\"")]
    [InlineData("null")]
    [InlineData("- x\n y")]
    public void The_starter_plan_reads_without_a_problem_or_a_note(string name)
    {
        using PlanFolderFixture folder = new();
        PlanDocument document = PlanFileTests.Good(folder.Read(StarterPlan.Text(name)));

        Assert.Equal(name.Replace('\n', ' '), document.Plan.Name);
        Assert.Empty(document.Notes);
        Assert.Single(document.Plan.Sites);
        Assert.Single(document.Plan.Neighbours);
    }

    [Fact]
    public void The_starter_plan_is_written_whole_and_never_over_another_file()
    {
        using PlanFolderFixture folder = new();

        Assert.Null(StarterPlan.Write(folder.Plan, "Ours"));
        PlanFileTests.Good(PlanFile.Read(folder.Plan));
        Assert.Equal("plan-exists", StarterPlan.Write(folder.Plan, "Theirs")?.Code);
        Assert.Equal("plan-file", StarterPlan.Write(Path.Combine(folder.Folder, "nowhere", "plan.yaml"), "Theirs")?.Code);
        Assert.Equal(StarterPlan.Text("Ours"), File.ReadAllText(folder.Plan));
        Assert.Single(Directory.GetFileSystemEntries(folder.Folder));
    }

    [Fact]
    public void The_remarks_of_the_starter_plan_read_too_once_they_are_no_remarks()
    {
        // Every line that is a remark with a key in it is what a keeper would switch on.
        IEnumerable<string> lines = StarterPlan.Text("x").Split('\n').Select(line =>
            System.Text.RegularExpressions.Regex.Replace(line, "^(?<lead> *)# (?<key> *(-|[a-z-]+:) ?.*)$", "${lead}${key}", System.Text.RegularExpressions.RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)));
        using PlanFolderFixture folder = new();
        Plan plan = PlanFileTests.Good(folder.Read(string.Join('\n', lines))).Plan;

        Assert.Equal("EU", plan.Region);
        Assert.Equal(0.8, plan.Air.LowKFactor);
        Assert.Single(plan.Covers);
        Assert.Single(plan.Links);
        FitOut fitOut = plan.Sites[0].FitOuts[0];
        Assert.Equal(18, fitOut.Mismatch?.ReturnLossDb);
        Assert.Equal("II", plan.Wind?.Terrain);
        Assert.Equal(3, plan.Sites[0].Hazards?.LocalClearanceMetres);
        Assert.Equal(4, fitOut.Supply.Length);
        Assert.Equal("vent-plug", fitOut.Box.Seal);
        Assert.Equal("zinc", fitOut.Mast?.Clamp);
        Assert.Equal(16, fitOut.Earthing!.ConductorSquareMillimetres!.Value, 1e-9);
        Assert.Equal(0.022, fitOut.Antenna.DiameterMetres!.Value, 1e-12);
    }
}
