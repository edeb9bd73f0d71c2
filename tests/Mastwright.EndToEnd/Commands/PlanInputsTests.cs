using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>What a plan may bring of its own: maps of the air, surroundings, catalogue rows.</summary>
public sealed class PlanInputsTests
{
    private const string Plan = """
        mastwright: 1
        name: Two hills
        catalogue: own.yaml
        ground:
          heights:
            - {files: land.asc, kind: bare-earth, datum: EGM96}
        air: {maps: itu, noise-environment: residential}
        modem: {frequency: 144.8 MHz, bandwidth: 125 kHz, spreading-factor: 10, payload: 40 B}
        sites:
          west:
            position: 46.40, -18.70
            in-use: pole
            fit-outs:
              pole:
                antenna: {gain: 5 dBi, height: 6 m}
                feed: [{line: old-roll, length: 20 m}]
                radio: {power: 14 dBm, noise-figure: 6 dB, frequency-error: 2 ppm}
        neighbours:
          east: {position: "46.40, -18.60", height: 6 m, gain: 2 dBi, power: 14 dBm}

        """;

    private const string Catalogue = """
        format: 1
        line-types:
          - key: old-roll
            name: The roll in the shed
            points: {100: 5, 400: 11}
            source: made up

        """;

    [Fact]
    public void The_air_of_the_maps_reaches_the_path_and_is_named()
    {
        using TemporaryFolder folder = Folder();

        ProgramRun run = ProgramRun.Of(folder.Path, "path", "plan.yaml", "west", "east", "--json");

        Assert.Equal("", run.Error);
        using JsonDocument json = JsonDocument.Parse(run.Output);
        JsonElement path = json.RootElement;
        Assert.Equal(62, path.GetProperty("refractivity-gradient").GetDouble(), 1e-9);
        Assert.Equal(340, path.GetProperty("surface-refractivity").GetDouble(), 1e-9);
        Assert.Equal("map DN50 of ITU-R P.1812 at the station, 46.40, -18.70", path.GetProperty("refractivity-gradient-source").GetString());

        // Rec. ITU-R P.1812 equation (7a): ae = 6 371 km · 157 / (157 − ΔN).
        Assert.Equal(6371 * 157 / (157.0 - 62), path.GetProperty("p1812").GetProperty("ae").GetDouble(), 1e-6);
    }

    [Fact]
    public void The_path_in_words_tells_the_air_the_surroundings_and_the_own_line()
    {
        using TemporaryFolder folder = Folder();

        string words = string.Join(' ', ProgramRun.Of(folder.Path, "path", "plan.yaml", "west", "east").Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        folder.Write("plan.yaml", Plan.Replace("maps: itu, ", "surface-refractivity: 350, ", StringComparison.Ordinal));
        string without = string.Join(' ', ProgramRun.Of(folder.Path, "path", "plan.yaml", "west", "east").Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

        Assert.Contains("Air at west: ΔN 62.0 N-units/km (map DN50 of ITU-R P.1812 at the station, 46.40, -18.70), k = 1.65; N0 340.0 N-units (map N050", words, StringComparison.Ordinal);
        Assert.Contains("The roll in the shed", words, StringComparison.Ordinal);
        Assert.DoesNotContain("refractivity 45", words, StringComparison.Ordinal);
        Assert.Contains("Air at west: ΔN 45.0 N-units/km (assumed), k = 1.40; N0 350.0 N-units (air/surface-refractivity)", without, StringComparison.Ordinal);
        Assert.Contains("Assumed: fall of refractivity 45 N-units/km", without, StringComparison.Ordinal);
    }

    [Fact]
    public void The_surroundings_give_the_noise_from_outside_below_250_MHz()
    {
        using TemporaryFolder folder = Folder();

        Assert.DoesNotContain("external-noise-unknown", Json(folder), StringComparison.Ordinal);
        folder.Write("plan.yaml", Plan.Replace("144.8 MHz", "868 MHz", StringComparison.Ordinal));
        Assert.Contains("external-noise-unknown", Json(folder), StringComparison.Ordinal);

        static string Json(TemporaryFolder folder) => ProgramRun.Of(folder.Path, "check", "plan.yaml", "--json").Output;
    }

    [Fact]
    public void Faults_of_maps_and_catalogue_are_told_in_one_go_with_exit_code_2()
    {
        using TemporaryFolder folder = Folder();
        folder.Write("own.yaml", Catalogue.Replace("100: 5", "100: five", StringComparison.Ordinal));
        folder.Write("itu/DN50.TXT", "45 45 45\n");

        ProgramRun run = ProgramRun.Of(folder.Path, "check", "plan.yaml");

        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Output);
        Assert.Equal(
            [
                "own.yaml:5:1: line-types/old-roll/points/100: 'five' is not a number from 0.001 to 10000.",
                "itu/DN50.TXT:1:1: air/maps: The line has 3 numbers. Wanted 121 lines (90° N to 90° S) of 241 numbers (0° to 360° E), a grid of 1.5°.",
            ],
            run.Error.ReplaceLineEndings("\n").TrimEnd().Split('\n'));
    }

    [Fact]
    public void A_file_that_is_not_there_is_told_with_the_place_where_the_plan_names_it()
    {
        using TemporaryFolder folder = Folder();
        File.Delete(folder.File("own.yaml"));
        File.Delete(folder.File("itu/N050.TXT"));

        ProgramRun run = ProgramRun.Of(folder.Path, "path", "plan.yaml", "west", "east");

        Assert.Equal(2, run.ExitCode);
        string[] lines = run.Error.ReplaceLineEndings("\n").TrimEnd().Split('\n');
        Assert.Equal(2, lines.Length);
        Assert.StartsWith("plan.yaml:3:12: catalogue: own.yaml: The file cannot be read", lines[0], StringComparison.Ordinal);
        Assert.Equal("plan.yaml:7:13: air/maps: itu/N050.TXT: There is no such file. Wanted the digital map N050.TXT that comes with ITU-R P.1812.", lines[1]);
    }

    private static TemporaryFolder Folder()
    {
        TemporaryFolder folder = new();
        folder.Write("plan.yaml", Plan);
        folder.Write("own.yaml", Catalogue);
        folder.Write("itu/DN50.TXT", Map(62));
        folder.Write("itu/N050.TXT", Map(340));
        folder.Write("land.asc", "ncols 81\nnrows 41\nxllcorner -18.8\nyllcorner 46.3\ncellsize 0.005\n" + string.Concat(Enumerable.Repeat(string.Join(' ', Enumerable.Repeat("10", 81)) + "\n", 41)));
        return folder;
    }

    private static string Map(double value)
    {
        string row = string.Concat(Enumerable.Repeat(value.ToString(" 0.0000000e+000", CultureInfo.InvariantCulture), 241));
        return new StringBuilder().Insert(0, row + "\n", 121).ToString();
    }
}
