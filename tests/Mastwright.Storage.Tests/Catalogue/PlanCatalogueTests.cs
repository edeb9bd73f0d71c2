using System.Collections.Immutable;
using Mastwright.Station;
using Mastwright.Storage.Catalogue;
using Mastwright.Storage.Plans;
using Mastwright.Storage.Tests.Plans;

namespace Mastwright.Storage.Tests.Catalogue;

public sealed class PlanCatalogueTests
{
    [Fact]
    public void Files_of_a_plan_lie_over_the_shipped_rows_and_the_later_one_wins()
    {
        using PlanFolderFixture folder = new();
        folder.Write("a.yaml", Line("roll", 20) + Line("rg-213", 30, heading: false));
        folder.Write("own/b.yaml", Line("roll", 40));

        StationCatalogue catalogue = PlanCatalogue.Load(folder.Folder, ["a.yaml", "own/b.yaml"], false, out ImmutableArray<PlanProblem> problems)!;

        Assert.Empty(problems);
        Assert.Equal(40, catalogue.LineType("roll")!.Points[^1].DbPer100Metres);
        Assert.Equal(30, catalogue.LineType("rg-213")!.Points[^1].DbPer100Metres);
        Assert.NotNull(catalogue.LineType("rg-58"));
        Assert.Null(StationCatalogueFile.LoadBuiltIn().LineType("roll"));
    }

    [Fact]
    public void A_plan_without_files_has_the_shipped_catalogue()
    {
        Assert.Same(StationCatalogueFile.LoadBuiltIn(), PlanCatalogue.Load(Path.GetTempPath(), [], false, out ImmutableArray<PlanProblem> problems));
        Assert.Empty(problems);
    }

    [Fact]
    public void Every_fault_of_every_file_is_told_in_one_go_with_file_line_and_key()
    {
        using PlanFolderFixture folder = new();
        using PlanFolderFixture outside = new();
        folder.Write("a.yaml", "format: 1\nline-types:\n  - key: roll\n    name: a roll\n    points: {100: five, 400: 9}\n    source: own\n");
        folder.Write("b.yaml", "format: 1\nparts: []\n");
        File.CreateSymbolicLink(Path.Combine(folder.Folder, "link.yaml"), outside.Write("c.yaml", Line("roll", 20)));

        Assert.Null(PlanCatalogue.Load(folder.Folder, ["a.yaml", "b.yaml", "gone.yaml", "link.yaml"], false, out ImmutableArray<PlanProblem> problems));

        Assert.Equal(["a.yaml", "b.yaml", "gone.yaml", "link.yaml"], problems.Select(problem => problem.File));
        Assert.Equal((5, "line-types/roll/points/100"), (problems[0].Line, problems[0].Path));
        Assert.StartsWith("a.yaml:5:1: line-types/roll/points/100: 'five' is not a number", problems[0].ToString(), StringComparison.Ordinal);
        Assert.Equal(2, problems[1].Line);
        Assert.Contains("cannot be read", problems[2].Message, StringComparison.Ordinal);
        Assert.Contains("outside", problems[3].Message, StringComparison.Ordinal);
        Assert.NotNull(PlanCatalogue.Load(folder.Folder, ["link.yaml"], true, out _));
    }

    private static string Line(string key, int db, bool heading = true) =>
        (heading ? "format: 1\nline-types:\n" : "") + $"  - key: {key}\n    name: {key}\n    points: {{100: {db / 3}, 900: {db}}}\n    source: made up\n";
}
