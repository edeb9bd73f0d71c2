using Mastwright.Storage.Tests.Ground;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>ground fetch against a server of our own: the plan's tiles arrive whole, or nothing stands under their names.</summary>
public sealed class GroundFetchTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public GroundFetchTests() => folder.Write("plan.yaml", SmallPlan.Text);

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_plan_without_ground_gets_it_and_is_judged()
    {
        await using TileServer server = new();
        server.Files["/N46W019.hgt"] = SmallPlan.Tile(wallMetres: 10);
        ProgramRun list = Fetch("--url", server.Root + "/{name}.hgt", "--list").EndsWith(0);
        Assert.Contains("N46W019", list.Output, StringComparison.Ordinal);
        Assert.Empty(server.Requests);

        ProgramRun fetched = Fetch("--url", server.Root + "/{name}.hgt").EndsWith(0);
        Assert.Contains("N46W019  fetched", fetched.Output, StringComparison.Ordinal);
        Assert.Equal(["N46W019.hgt"], Directory.EnumerateFiles(folder.File("ground")).Select(Path.GetFileName));
        ProgramRun.Of(folder.Path, "check", "plan.yaml").EndsWith(0);

        Assert.Contains("Nothing is missing", Fetch("--url", server.Root + "/{name}.hgt").EndsWith(0).Output, StringComparison.Ordinal);
        Assert.Single(server.Requests);
    }

    [Fact]
    public async Task What_is_no_tile_is_not_kept()
    {
        await using TileServer server = new();
        server.Files["/N46W019.hgt"] = new byte[1000];
        ProgramRun run = Fetch("--url", server.Root + "/{name}.hgt").EndsWith(2);
        Assert.Contains("N46W019", run.Output + run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder.File("ground/N46W019.hgt")));
    }

    [Fact]
    public async Task A_tile_that_the_source_lacks_is_told()
    {
        await using TileServer server = new();
        ProgramRun run = Fetch("--url", server.Root + "/{name}.hgt").EndsWith(0);
        Assert.Contains("N46W019  is not at the source", run.Output, StringComparison.Ordinal);
        Assert.Empty(Directory.Exists(folder.File("ground")) ? Directory.EnumerateFiles(folder.File("ground")) : []);
    }

    [Theory]
    [InlineData("--url", "ftp://example.org/{name}.hgt")]
    [InlineData("--url", "nonsense")]
    [InlineData("--source", "nowhere")]
    public void A_wrong_source_is_refused(string option, string value) => Fetch(option, value).IsRefusedWith(option, value);

    private ProgramRun Fetch(params string[] options) => ProgramRun.Of(folder.Path, ["ground", "fetch", "plan.yaml", .. options]);
}
