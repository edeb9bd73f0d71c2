namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>What is wrong on the command line is told in one line, with what would be right.</summary>
public sealed class ArgumentsTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public ArgumentsTests() => SmallPlan.Write(folder);

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("chek plan.yaml", "chek")]
    [InlineData("check", "PLAN")]
    [InlineData("check none.yaml", "none.yaml")]
    [InlineData("check --jsn", "'--jsn' is not an option")]
    [InlineData("check plan.yaml --jsn", "--jsn")]
    [InlineData("check plan.yaml --fail-on often", "often")]
    [InlineData("check plan.yaml --site nowhere", "its sites are west")]
    [InlineData("check plan.yaml --fit-out west/none", "west/pole")]
    [InlineData("check plan.yaml --fit-out none/pole", "its sites are west")]
    [InlineData("path plan.yaml west", "PLAN FROM TO")]
    [InlineData("path plan.yaml west nobody", "there are west, east")]
    [InlineData("path plan.yaml west west", "two ends")]
    [InlineData("path plan.yaml west east --picture path.jpg", ".svg")]
    [InlineData("path plan.yaml west east --picture none/path.svg", "none")]
    [InlineData("path --profile none.csv", "none.csv")]
    [InlineData("airtime", "--bandwidth")]
    [InlineData("airtime --bandwidth 125 --spreading-factor 10 --payload 40B", "no unit")]
    [InlineData("airtime --bandwidth 125kHz --spreading-factor 30 --payload 40B", "5 to 12")]
    [InlineData("airtime --spreading-factor ten", "'ten' is not a whole number")]
    [InlineData("path --dn steep", "'steep' is not a number")]
    [InlineData("airtime plan.yaml --coding-rate 3/4", "4/5")]
    [InlineData("new plan.yaml", "already")]
    [InlineData("new none/plan.yaml", "none/plan.yaml")]
    [InlineData("sites", "sites")]
    [InlineData("sites import plan.yaml none.gpx", "none.gpx")]
    [InlineData("sites export plan.yaml places.odt", ".gpx")]
    [InlineData("sites export plan.yaml plan.yaml --format csv", "--overwrite")]
    public void Is_refused(string line, string part)
    {
        byte[] before = File.ReadAllBytes(folder.File("plan.yaml"));
        ProgramRun.Of(folder.Path, line.Split(' ')).IsRefusedWith(part);
        Assert.Equal(before, File.ReadAllBytes(folder.File("plan.yaml")));
        Assert.Equal(["ground", "plan.yaml"], Directory.EnumerateFileSystemEntries(folder.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_bare_path_tells_all_that_it_lacks()
    {
        folder.Write("profile.csv", "distance_km,height_m,cover_m,zone\n0,10,0,inland\n1,10,0,inland\n2,10,0,inland\n");
        ProgramRun.Of(folder.Path, "path", "--profile", "profile.csv")
            .IsRefusedWith("--frequency", "--tx-height", "--rx-height", "--tx-position", "--rx-position");
    }

    [Theory]
    [InlineData("0,10,0,inland\n1,NaN,0,inland\n2,10,0,inland\n", "profile.csv:3")]
    [InlineData("0,10,0,inland\n1,10,0,moor\n2,10,0,inland\n", "moor")]
    [InlineData("0,10,0,inland\n2,10,0,inland\n1,10,0,inland\n", "profile.csv:4")]
    [InlineData("0,10,0,inland\n", "profile.csv")]
    public void A_wrong_profile_is_told_with_its_line(string rows, string part)
    {
        folder.Write("profile.csv", "distance_km,height_m,cover_m,zone\n" + rows);
        BarePath("50").IsRefusedWith(part);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("half")]
    [InlineData("NaN")]
    public void A_share_of_time_that_no_equation_takes_is_refused(string time)
    {
        folder.Write("profile.csv", "distance_km,height_m,cover_m,zone\n0,10,0,inland\n1,10,0,inland\n2,10,0,inland\n");
        BarePath(time).IsRefusedWith("time");
    }

    [Theory]
    [InlineData("--dn", "500")]
    [InlineData("--tx-height", "0 m")]
    [InlineData("--rx-height", "-1 m")]
    [InlineData("--tx-height", "5…10 m")]
    [InlineData("--frequency", "0 Hz")]
    [InlineData("--sigma-location", "-1 dB")]
    [InlineData("--distance-to-coast-tx", "-1 km")]
    public void A_value_that_no_equation_takes_names_its_option(string option, string value)
    {
        folder.Write("profile.csv", "distance_km,height_m,cover_m,zone\n0,10,0,inland\n1,10,0,inland\n2,10,0,inland\n");
        Dictionary<string, string> options = new(StringComparer.Ordinal)
        {
            ["--profile"] = "profile.csv",
            ["--frequency"] = "868 MHz",
            ["--tx-height"] = "10 m",
            ["--rx-height"] = "10 m",
            ["--tx-position"] = "46.4,-18.7",
            ["--rx-position"] = "46.4,-18.67",
            [option] = value,
        };
        ProgramRun run = ProgramRun.Of(folder.Path, ["path", .. options.SelectMany(one => (string[])[one.Key, one.Value])]);
        run.IsRefusedWith(option);
        Assert.DoesNotContain("Parameter", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void An_output_that_is_full_is_told()
    {
        ProgramRun run = ProgramRun.Start("sh", folder.Path, null, "-c", $"{ProgramRun.ShellCommand} airtime plan.yaml > /dev/full").EndsWith(2);
        Assert.Single(run.ErrorLines);
    }

    [Fact]
    public void A_bare_path_and_a_plan_exclude_each_other()
    {
        ProgramRun.Of(folder.Path, "path", "plan.yaml", "west", "east", "--profile", "profile.csv").IsRefusedWith("--profile");
        ProgramRun.Of(folder.Path, "path", "--profile", "profile.csv", "--picture", "path.svg").IsRefusedWith("--picture");
    }

    private ProgramRun BarePath(string time) => ProgramRun.Of(
        folder.Path, "path", "--profile", "profile.csv", "--frequency", "868 MHz", "--tx-height", "10 m", "--rx-height", "10 m",
        "--tx-position", "46.4,-18.7", "--rx-position", "46.4,-18.67", "--time", time);
}
