using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>reach over areas and lists that are worked off as jobs: kept, found again, stopped, killed, gone on with.</summary>
public sealed class LongReachTests : IDisposable
{
    private const int Kills = 6;
    private const int Stations = 30;

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    /// <summary>Left to the full run: nine runs of the program.</summary>
    [Fact, Trait("needs", "system")]
    public void A_list_that_is_killed_again_and_again_comes_out_as_if_it_had_not_been()
    {
        string plan = SmallPlan.Write(folder, Many());
        string[] line = ["reach", plan, "--all-sites", "--radius", "12 km", "--cell", "400 m", "--layer", "margin", "--json", "--out", "map.tif"];
        string expected = ProgramRun.Of(folder.Path, [.. line, "--cache", "whole"]).EndsWith(0).Output;
        byte[] raster = File.ReadAllBytes(folder.File("map.tif"));
        int whole = Results("whole");
        File.Delete(folder.File("map.tif"));

        // Each run is killed once it has finished one or two more pieces, and a moment later still.
        Random random = new(20261128);
        int kills = 0;
        for (int run = 0; run < Kills; run++)
        {
            kills += IsKilled([.. line, "--cache", "killed"], Results("killed") + random.Next(1, 3), random.Next(0, 15)) ? 1 : 0;
            Assert.False(File.Exists(folder.File("map.tif")) && kills == run + 1, "half a map was there");
        }

        Assert.Equal(Kills, kills);
        Assert.True(Results("killed") < whole, "nothing was left to go on with");
        ProgramRun last = ProgramRun.Of(
            folder.Path, new Dictionary<string, string>(StringComparer.Ordinal) { ["DOTNET_PROCESSOR_COUNT"] = "1" }, [.. line, "--cache", "killed"]).EndsWith(0);
        Assert.Contains("An earlier run was stopped; what it finished is not worked out again.", last.Error, StringComparison.Ordinal);
        Assert.Equal(expected, last.Output);
        Assert.Equal(raster, File.ReadAllBytes(folder.File("map.tif")));
        Assert.Empty(Directory.GetFiles(folder.File("killed/jobs")));
    }

    [Fact]
    public void Only_the_stations_that_were_changed_are_worked_out_again()
    {
        string plan = SmallPlan.Write(folder, Many());
        string[] line = ["reach", plan, "--all-sites", "--radius", "3 km", "--cell", "400 m", "--json", "--cache", "kept"];
        string first = ProgramRun.Of(folder.Path, line).EndsWith(0).Output;
        int pieces = Results("kept");
        Assert.Equal(first, ProgramRun.Of(folder.Path, line).EndsWith(0).Output);
        Assert.Equal(pieces, Results("kept"));
        SmallPlan.Write(folder, Many().Replace("s07, fit-outs: {pole: {antenna: {gain: 5 dBi, height: 12 m}", "s07, fit-outs: {pole: {antenna: {gain: 5 dBi, height: 14 m}", StringComparison.Ordinal)
            .Replace("s08, fit-outs: {pole: {antenna: {gain: 5 dBi", "s08, fit-outs: {pole: {antenna: {gain: 7 dBi", StringComparison.Ordinal));
        Assert.NotEqual(first, ProgramRun.Of(folder.Path, line).EndsWith(0).Output);

        // The one with the higher mast has other losses; the one with the better antenna has not.
        Assert.Equal(pieces + 1, Results("kept"));
    }

    [Fact]
    public void A_cache_that_is_damaged_or_left_out_changes_no_answer()
    {
        string plan = SmallPlan.Write(folder, Many());
        string[] line = ["reach", plan, "s00", "s01", "s02", "--radius", "3 km", "--cell", "400 m", "--json"];
        string expected = ProgramRun.Of(folder.Path, [.. line, "--no-cache"]).EndsWith(0).Output;
        Assert.Equal(expected, ProgramRun.Of(folder.Path, [.. line, "--cache", "bad"]).EndsWith(0).Output);
        foreach (string file in Directory.GetFiles(folder.File("bad/results"), "*", SearchOption.AllDirectories))
        {
            byte[] bytes = File.ReadAllBytes(file);
            bytes[^1] ^= 1;
            File.WriteAllBytes(file, bytes);
        }

        ProgramRun again = ProgramRun.Of(folder.Path, [.. line, "--cache", "bad"]).EndsWith(0);
        Assert.Equal(expected, again.Output);
        Assert.Contains("3 results in", again.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--no-cache --cache x", "--no-cache: without a cache")]
    [InlineData("--cache-limit -1", "--cache-limit: -1 is less than nothing")]
    [InlineData("--radius 201km --cell 1km", "give one of 200 km or less")]
    [InlineData("--radius 200km --cell 10m", "the most is 250,000,000")]
    public void Options_that_cannot_be_are_refused(string options, string part) =>
        ProgramRun.Of(folder.Path, ["reach", SmallPlan.Write(folder), "west", .. options.Split(' ')]).IsRefusedWith(part);

    /// <summary>The small plan with many sites on its tile.</summary>
    private static string Many()
    {
        StringBuilder sites = new();
        for (int i = 0; i < Stations; i++)
        {
            sites.Append(CultureInfo.InvariantCulture, $"  s{i:00}: {{position: \"{46.3 + (0.015 * i):0.000}, {-18.7 + (0.01 * i):0.000}\", in-use: pole, name: s{i:00}, fit-outs: {{pole: {{antenna: {{gain: 5 dBi, height: 12 m}}, radio: {{power: 14 dBm, noise-figure: 6 dB, frequency-error: 2 ppm}}}}}}}}\n");
        }

        int start = SmallPlan.Text.IndexOf("  west:", StringComparison.Ordinal);
        int end = SmallPlan.Text.IndexOf("neighbours:", StringComparison.Ordinal);
        return SmallPlan.Text[..start] + sites + SmallPlan.Text[end..];
    }

    /// <summary>Results of pieces in a cache folder: those of ground are short.</summary>
    private int Results(string cache) => !Directory.Exists(folder.File(cache)) ? 0
        : new DirectoryInfo(folder.File(cache)).EnumerateFiles("*.result", SearchOption.AllDirectories).Count(file => file.Length > 500);

    /// <summary>Starts the program and kills it once so many pieces are on the disk, and so many milliseconds later.</summary>
    private bool IsKilled(string[] line, int results, int milliseconds)
    {
        ProcessStartInfo start = new(ProgramRun.Command[0], [.. ProgramRun.Command.Skip(1), .. line])
        {
            WorkingDirectory = folder.Path,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        using Process process = Process.Start(start)!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        Stopwatch patience = Stopwatch.StartNew();
        while (!process.HasExited && Results(line[^1]) < results && patience.Elapsed < TimeSpan.FromMinutes(3))
        {
            Thread.Sleep(3);
        }

        Thread.Sleep(milliseconds);
        process.Kill();
        process.WaitForExit();
        return process.ExitCode != 0;
    }
}
