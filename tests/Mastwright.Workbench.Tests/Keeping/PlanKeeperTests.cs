using Mastwright.Tests.EndToEnd;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Hosting;
using Mastwright.Workbench.Keeping;

namespace Mastwright.Tests.Workbench.Keeping;

/// <summary>Writing the plan: what was not meant stays byte for byte, and what was written by somebody else is never lost.</summary>
public sealed class PlanKeeperTests : IDisposable
{
    private const string Plan = """
        # A plan with remarks.
        mastwright: 1
        name: 'Two huts'   # in quotes
        modem: {frequency: 869.525 MHz, bandwidth: 125 kHz, spreading-factor: 10, coding-rate: 4/5, preamble: 16, payload: 40 B}

        sites:
          west:
            name: West hut
            position: 46.4000, -18.7000 ± 3 m   # by hand
            ground-height: 12 m
            in-use: mast
            fit-outs:
              mast:
                antenna: {gain: 3 dBi, height: 5 m}   # on the gable
                radio: {power: 14 dBm}
              roof:
                antenna: {gain: 3 dBi, height: 2 m, above: roof, roof: 4 m}
                radio: {power: 14 dBm}

        """;

    private readonly TemporaryFolder folder = new();
    private readonly string path;
    private PlanDesk desk;
    private PlanKeeper keeper;

    public PlanKeeperTests()
    {
        path = folder.Write("plan/plan.yaml", Plan);
        (desk, keeper) = Open();
    }

    public void Dispose()
    {
        keeper.Dispose();
        desk.Dispose();
        folder.Dispose();
    }

    [Fact]
    public void A_moved_site_changes_its_place_and_no_other_byte()
    {
        KeepResult kept = keeper.Keep(Hash, new() { Site = "west", LatitudeDegrees = 46.41, LongitudeDegrees = -18.705 });
        Assert.Equal(Plan.Replace("46.4000, -18.7000 ± 3 m", "46.41000, -18.70500", StringComparison.Ordinal), OnDisk);
        Assert.Equal(kept.Now!.Hash, Hash);
        Assert.Equal("sites/west/ground-height was written for the old place: look whether it still holds.", Assert.Single(kept.Notes));
        Assert.Equal(46.41, Sites[0].Position.Point.LatitudeDegrees);
    }

    [Fact]
    public void Values_by_their_path_change_their_characters_and_no_other_byte()
    {
        KeepResult kept = keeper.Keep(Hash, new() { Edits = [new("west", "mast", "antenna/gain", "5 dBi"), new("west", "roof", "antenna/roof", "6 m")] });
        Assert.NotNull(kept.Now);
        Assert.Equal(Plan.Replace("{gain: 3 dBi, height: 5 m}", "{gain: 5 dBi, height: 5 m}", StringComparison.Ordinal).Replace("roof: 4 m", "roof: 6 m", StringComparison.Ordinal), OnDisk);
        Assert.Equal("west/mast: 2 values changed", keeper.LastStep!.What);
        Assert.NotNull(keeper.Undo(Hash).Now);
        Assert.Equal(Plan, OnDisk);
    }

    [Fact]
    public void What_is_tried_stands_in_memory_alone()
    {
        PlanView view = desk.Current;
        ChangedPlan tried = view.Changing([new("west", "mast", "antenna/gain", "5 dBi")]);
        Assert.Equal(5, GainDbi(tried.View!), 1e-9);
        Assert.Equal(3, GainDbi(view), 1e-9);
        Assert.Equal(Plan, OnDisk);
        Assert.Same(tried, view.Changing([new("west", "mast", "antenna/gain", "5 dBi")]));

        // A value that does not read is told with its place, and so is a key that is nowhere.
        Assert.Contains("antenna/gain", Assert.Single(view.Changing([new("west", "mast", "antenna/gain", "much")]).Problems), StringComparison.Ordinal);
        Assert.Contains("fit-outs/loft", Assert.Single(view.Changing([new("west", "loft", "antenna/gain", "5 dBi")]).Problems), StringComparison.Ordinal);

        static double GainDbi(PlanView view) => view.Report(new Dictionary<string, string>(StringComparer.Ordinal)).Plan.Sites[0].FitOuts[0].Antenna.GainDbi!.Value.Median;
    }

    [Theory]
    [InlineData("mast", 7.5, "height: 5 m", "height: 7.5 m")]
    [InlineData("roof", 7.5, "height: 2 m", "height: 3.5 m")]
    public void A_height_above_the_ground_is_written_as_the_plan_measures_it(string fitOut, double metres, string before, string after)
    {
        Assert.NotNull(keeper.Keep(Hash, new() { Site = "west", FitOut = fitOut, HeightMetres = metres }).Now);
        Assert.Equal(Plan.Replace(before, after, StringComparison.Ordinal), OnDisk);
    }

    [Fact]
    public void A_height_below_the_roof_is_refused_and_nothing_written()
    {
        Assert.Contains("below the roof", keeper.Keep(Hash, new() { Site = "west", FitOut = "roof", HeightMetres = 3 }).Problem!.Message, StringComparison.Ordinal);
        Assert.Equal(Plan, OnDisk);
    }

    [Fact]
    public void A_new_site_comes_after_the_last_and_can_be_undone()
    {
        Assert.NotNull(keeper.Keep(Hash, new() { Site = "west", LatitudeDegrees = 46.42, LongitudeDegrees = -18.71, HeightMetres = 9, NewKey = "trial", NewName = "Trial place" }).Now);
        Assert.StartsWith(Plan, OnDisk, StringComparison.Ordinal);
        Assert.Equal(["west", "trial"], Sites.Select(site => site.Key));
        Assert.Equal("trial added", keeper.LastStep!.What);
        Assert.NotNull(keeper.Undo(Hash).Now);
        Assert.Equal(Plan, OnDisk);
        Assert.Null(keeper.LastStep);
    }

    [Fact]
    public void What_another_wrote_meanwhile_stays_and_both_versions_come_back()
    {
        string before = Hash;
        string theirs = Plan.Replace("West hut", "Western hut", StringComparison.Ordinal);
        File.WriteAllText(path, theirs);
        KeepConflict conflict = keeper.Save(before, Plan + "# mine\n").Conflict!;
        Assert.Equal(theirs, OnDisk);
        Assert.Equal(Plan + "# mine\n", conflict.Yours);
        Assert.Equal(theirs, conflict.Theirs.Text);
        Assert.Equal(theirs + "# mine\n", conflict.Merged);
        Assert.NotNull(keeper.Save(conflict.Theirs.Hash, conflict.Merged!).Now);
        Assert.Equal(theirs + "# mine\n", OnDisk);
    }

    [Fact]
    public void Changes_of_one_line_are_not_put_together()
    {
        string before = Hash;
        File.WriteAllText(path, Plan.Replace("West hut", "Western hut", StringComparison.Ordinal));
        KeepConflict conflict = keeper.Save(before, Plan.Replace("West hut", "Hut", StringComparison.Ordinal)).Conflict!;
        Assert.Null(conflict.Merged);
    }

    [Fact]
    public void Undo_of_what_another_wrote_over_takes_only_its_own_change_back()
    {
        Assert.NotNull(keeper.Save(Hash, Plan + "# mine\n").Now);
        File.WriteAllText(path, OnDisk.Replace("West hut", "Western hut", StringComparison.Ordinal));
        KeepConflict conflict = keeper.Undo(Hash).Conflict!;
        Assert.Equal(Plan.Replace("West hut", "Western hut", StringComparison.Ordinal), conflict.Merged);
        Assert.EndsWith("# mine\n", OnDisk, StringComparison.Ordinal);
    }

    [Fact]
    public void Drafts_and_steps_outlive_the_server_and_stay_out_of_the_plans_folder()
    {
        string before = Hash;
        Assert.NotNull(keeper.Save(before, Plan + "# one\n").Now);
        keeper.WriteDraft("page-one", Hash, Plan + "# one\n# two\n");
        Again();
        Draft draft = Assert.Single(keeper.Drafts());
        Assert.Equal(("page-one", Hash, Plan + "# one\n# two\n"), (draft.Id, draft.BasedOn, draft.Text));
        Assert.Equal([path], Directory.EnumerateFiles(Path.GetDirectoryName(path)!, "*", SearchOption.AllDirectories));

        // What the draft is based on is known still, though the file went on meanwhile.
        string based = Hash;
        File.WriteAllText(path, OnDisk.Replace("West hut", "Western hut", StringComparison.Ordinal));
        Again();
        Assert.Equal(OnDisk + "# two\n", keeper.Save(based, draft.Text).Conflict!.Merged);
        keeper.DropDraft("page-one");
        Assert.Empty(keeper.Drafts());
    }

    [Fact]
    public void A_draft_that_is_the_files_own_text_again_is_dropped()
    {
        keeper.WriteDraft("page-one", Hash, Plan + "# two\n");
        keeper.WriteDraft("page-one", Hash, Plan);
        Assert.Empty(keeper.Drafts());
    }

    [Fact]
    public void Only_so_many_steps_are_kept()
    {
        for (int i = 0; i < VersionShelf.MostSteps + 5; i++)
        {
            Assert.NotNull(keeper.Save(Hash, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Plan}# {i}\n")).Now);
        }

        int undone = 0;
        while (keeper.LastStep is not null)
        {
            Assert.NotNull(keeper.Undo(Hash).Now);
            undone++;
        }

        Assert.Equal(VersionShelf.MostSteps, undone);
        Assert.EndsWith("# 4\n", OnDisk, StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_with_windows_line_ends_and_a_mark_keeps_both()
    {
        byte[] bytes = [0xEF, 0xBB, 0xBF, .. System.Text.Encoding.UTF8.GetBytes(Plan.ReplaceLineEndings("\r\n"))];
        File.WriteAllBytes(path, bytes);
        Assert.NotNull(keeper.Keep(Hash, new() { Site = "west", FitOut = "mast", HeightMetres = 6 }).Now);
        Assert.NotNull(keeper.Undo(Hash).Now);
        Assert.Equal(bytes, File.ReadAllBytes(path));
    }

    [Fact]
    public void A_check_says_what_the_command_line_says()
    {
        Assert.Empty(keeper.Check(Plan).Problems);
        Mastwright.Storage.Plans.PlanProblem key = Assert.Single(keeper.Check(Plan + "bogus: 1\n").Problems);
        Assert.Equal(("plan-unknown-key", 19, 1), (key.Code, key.Line, key.Column));
        Mastwright.Storage.Plans.PlanProblem file = Assert.Single(keeper.Check(Plan + "ground: {heights: [{name: a, files: no/*.hgt, kind: bare-earth, datum: EGM96}]}\n").Problems);
        Assert.Equal((19, "ground/heights/1/files"), (file.Line, file.Path));
        Assert.Equal(Plan, OnDisk);
    }

    private string OnDisk => File.ReadAllText(path);

    private System.Collections.Immutable.ImmutableArray<Mastwright.Plans.Site> Sites => Mastwright.Storage.Plans.PlanFile.Read(path).Document!.Plan.Sites;

    private string Hash => keeper.Read(out _)!.Hash;

    private void Again()
    {
        keeper.Dispose();
        desk.Dispose();
        (desk, keeper) = Open();
    }

    private (PlanDesk Desk, PlanKeeper Keeper) Open()
    {
        WorkbenchOptions options = new() { PlanPath = path, KeptFolder = folder.File("kept") };
        PlanDesk opened = new(options, TimeProvider.System);
        return (opened, new(options, opened, TimeProvider.System));
    }
}
