namespace Mastwright.Tests.EndToEnd.Published;

/// <summary>The self-contained program, moved away from where it was published.</summary>
[Trait("needs", "system")]
public sealed class PublishedProgramTests(MovedProgram program) : IClassFixture<MovedProgram>
{
    [Fact]
    public void Tells_its_version() => Assert.Matches(@"^\d+\.\d+\.\d+", Run("--version").EndsWith(0).Output);

    [Fact]
    public void Does_not_tell_where_it_was_built()
    {
        byte[] place = System.Text.Encoding.UTF8.GetBytes(TestPlaces.Repository + "/src");
        Assert.DoesNotContain(
            Directory.EnumerateFiles(Path.GetDirectoryName(program.File)!, "Mastwright*"),
            file => File.ReadAllBytes(file).AsSpan().IndexOf(place) >= 0);
    }

    [Fact]
    public void Runs_the_main_job_and_draws_it()
    {
        ProgramRun demo = Run("demo", "island").EndsWith(0);
        Assert.Contains("Links:", demo.Output, StringComparison.Ordinal);
        Run("check", "island/plan.yaml").EndsWith(1);
        Run("path", "island/plan.yaml", "ferry-house", "lantern-bay", "--picture", "path.png").EndsWith(1);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], File.ReadAllBytes(Path.Combine(program.Folder, "path.png"))[..4]);
    }

    [Fact]
    public void Runs_the_demo_without_any_network()
    {
        // A namespace of its own holds no interface but a loopback that is down. Without the right to make one there is nothing to test.
        string[] flags = ProgramRun.Start("unshare", program.Folder, null, "-n", "true").ExitCode == 0 ? ["-n"] : ["-r", "-n"];
        ProgramRun allowed = ProgramRun.Start("unshare", program.Folder, null, [.. flags, "true"]);
        if (allowed.ExitCode != 0)
        {
            string reason = "network namespace: unshare is not permitted here: " + allowed.Error.Trim();
            Assert.False(Environment.GetEnvironmentVariable("CI") is { Length: > 0 }, reason);
            Assert.Skip(reason);
        }

        ProgramRun closed = ProgramRun.Start("unshare", program.Folder, null, [.. flags, "cat", "/proc/net/route"]);
        Assert.Single(closed.Lines);
        ProgramRun.Start("unshare", program.Folder, null, [.. flags, program.File, "demo", "alone"]).EndsWith(0);
        Assert.True(File.Exists(Path.Combine(program.Folder, "alone", "ferry-house-lantern-bay.png")));
    }

    private ProgramRun Run(params string[] arguments) => ProgramRun.Start(program.File, program.Folder, WithoutDotnet, arguments);

    /// <summary>A self-contained program finds its own runtime, wherever another one may be.</summary>
    private static Dictionary<string, string> WithoutDotnet => new(StringComparer.Ordinal) { ["DOTNET_ROOT"] = "/nonexistent", ["PATH"] = "/usr/bin:/bin" };
}
