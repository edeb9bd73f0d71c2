namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>The picture and the text of a path that cannot be judged: what is known is shown, what is not known is called so.</summary>
public sealed class UnknownPathsTests
{
    private const string EastHeight = "    position: 46.41, -18.60\n    height: 12 m\n";
    private const string WestHeight = "height: 12 m}";

    [Theory]
    [InlineData("height: 12 m}", "12 m")]
    [InlineData("height: 3 m, above: roof, roof: 6 m}", "9 m")]
    [InlineData("height: 25 m, above: sea-level, datum: EGM96}", "15 m")]
    public void A_neighbour_without_height_leaves_the_known_height_and_draws_no_ray(string height, string aboveGround)
    {
        using TemporaryFolder folder = new();
        string plan = SmallPlan.Text.Replace(EastHeight, "    position: 46.41, -18.60\n", StringComparison.Ordinal).Replace(WestHeight, height, StringComparison.Ordinal);
        SmallPlan.Write(folder, plan);

        string picture = Picture(folder, out _);

        Assert.Contains($"{aboveGround} mast<", picture, StringComparison.Ordinal);
        Assert.Contains($"antenna {aboveGround} above ground", picture, StringComparison.Ordinal);
        Assert.Contains(">height unknown<", picture, StringComparison.Ordinal);
        Assert.DoesNotContain("direct ray", picture, StringComparison.Ordinal);
        Assert.DoesNotContain(">0 m mast<", picture, StringComparison.Ordinal);
        Assert.Contains(">unknown<", picture, StringComparison.Ordinal);
    }

    [Fact]
    public void Ground_that_is_missing_is_neither_drawn_nor_counted_as_inland()
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder, SmallPlan.Text.Replace("46.41, -18.60", "46.40, -17.80", StringComparison.Ordinal));

        string picture = Picture(folder, out ProgramRun run);

        Assert.Contains("no ground data<", picture, StringComparison.Ordinal);
        Assert.Contains("antenna 12 m above unknown ground", picture, StringComparison.Ordinal);
        Assert.DoesNotContain("direct ray", picture, StringComparison.Ordinal);

        // Of 0.9° of longitude 0.7° have a tile; all of that is land without sea in sight.
        string zones = Assert.Single(run.Lines, line => line.StartsWith("Zones", StringComparison.Ordinal));
        Assert.Equal("Zones of the 78 % with ground: sea 0 %, coastal land 0 %, inland 100 %", zones);
    }

    [Fact]
    public void The_plans_own_ground_at_the_foot_of_a_mast_gives_it_a_height_above_the_sea_and_a_ray()
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder, SmallPlan.Text.Replace("46.41, -18.60", "46.40, -17.80\n    ground-height: 30 m", StringComparison.Ordinal));

        string picture = Picture(folder, out _);

        Assert.Contains("antenna 12 m above ground, 42 m above sea", picture, StringComparison.Ordinal);
        Assert.Contains("direct ray", picture, StringComparison.Ordinal);
        Assert.Contains("no ground data<", picture, StringComparison.Ordinal);
    }

    [Fact]
    public void Over_a_surface_model_a_mast_stands_on_the_bare_ground_also_when_the_other_height_is_unknown()
    {
        // The west site stands on the eastern edge of a wall of 40 m: the surface there is 40 m high, the land beside it 10 m.
        using TemporaryFolder folder = new();
        string plan = SmallPlan.Text.Replace("bare-earth", "surface", StringComparison.Ordinal).Replace("46.40, -18.70", "46.40, -18.64835", StringComparison.Ordinal);
        SmallPlan.Write(folder, plan, wallMetres: 40);
        string judged = Picture(folder, out _);
        SmallPlan.Write(folder, plan.Replace(EastHeight, "    position: 46.41, -18.60\n", StringComparison.Ordinal), wallMetres: 40);

        string unknown = Picture(folder, out _);

        string known = System.Text.RegularExpressions.Regex.Match(judged, "antenna 12 m above ground, [0-9.]+ m above sea", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(10)).Value;
        Assert.NotEqual("", known);
        Assert.DoesNotContain("above ground, 52 m", known, StringComparison.Ordinal);
        Assert.Contains(known, unknown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_path_without_any_ground_has_no_zones()
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder, SmallPlan.Text.Replace("46.40, -18.70", "46.40, -16.70", StringComparison.Ordinal).Replace("46.41, -18.60", "46.40, -16.60", StringComparison.Ordinal));

        string picture = Picture(folder, out ProgramRun run);

        Assert.Contains("no ground data", picture, StringComparison.Ordinal);
        Assert.Contains("Zones: unknown, for want of ground", run.Lines);
    }

    [Fact]
    public void A_range_that_leaves_the_verdict_open_is_the_headline()
    {
        using TemporaryFolder folder = new();
        SmallPlan.Write(folder, SmallPlan.Text.Replace("gain: 2 dBi", "gain: -60…60 dBi", StringComparison.Ordinal));

        string picture = Picture(folder, out _);

        Assert.Matches(@">unknown: −\d+ to \+\d+ dB<", picture);
        Assert.DoesNotContain("to spare<", picture, StringComparison.Ordinal);
    }

    private static string Picture(TemporaryFolder folder, out ProgramRun run)
    {
        run = ProgramRun.Of(folder.Path, "path", "plan.yaml", "west", "east", "--picture", "path.svg");
        Assert.True(run.ExitCode <= 1, run.Error);
        return File.ReadAllText(folder.File("path.svg"));
    }
}
