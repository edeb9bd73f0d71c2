using System.Globalization;
using System.Text;
using System.Text.Json;
using Mastwright.Tests.EndToEnd.Shapes;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>'records fit' on open measurements (data/mappings/hand-carried.yaml names them), through the mapping file alone.</summary>
public sealed class RecordsFitTests
{
    private const int Places = 36;

    [Fact]
    public void A_correction_is_fitted_adopted_and_used()
    {
        using TemporaryFolder folder = new();
        Write(folder, File.ReadAllLines(TestPlaces.Reference("measured", "brno-868", "links.csv")));
        File.Copy(TestPlaces.Reference("terrain", "N49E016.hgt"), Path.Combine(folder.Path, "N49E016.hgt"));
        string before = File.ReadAllText(Path.Combine(folder.Path, "plan.yaml"));
        ProgramRun.Of(folder.Path, "records", "import", "some.csv", "--as", Path.Combine(TestPlaces.Repository, "data", "mappings", "hand-carried.yaml"), "--store", "r.sqlite").EndsWith(0);

        string output = ProgramRun.Of(folder.Path, "records", "fit", "plan.yaml", "--store", "r.sqlite", "--packets", "1", "--adopt", "carried", "--json").EndsWith(0).Output;
        JsonShapesTests.HasShape(output, "records-fit-1");
        using JsonDocument document = JsonDocument.Parse(output);
        Assert.Equal("carried", document.RootElement.GetProperty("adopted").GetString());
        Assert.True(document.RootElement.GetProperty("fit").GetProperty("adoptable").GetBoolean());

        string after = File.ReadAllText(Path.Combine(folder.Path, "plan.yaml"));
        Assert.StartsWith(before, after, StringComparison.Ordinal);
        Assert.EndsWith("\ncorrection: carried\n", after, StringComparison.Ordinal);
        string path = ProgramRun.Of(folder.Path, "path", "plan.yaml", "p1", "g01").Output;
        Assert.Contains("Adopted correction carried", path, StringComparison.Ordinal);

        ProgramRun again = ProgramRun.Of(folder.Path, "records", "fit", "plan.yaml", "--store", "r.sqlite", "--packets", "1", "--adopt", "carried").EndsWith(2);
        Assert.Contains("A new correction cannot have this name", again.Error, StringComparison.Ordinal);
        Assert.Equal(after, File.ReadAllText(Path.Combine(folder.Path, "plan.yaml")));

        ProgramRun few = ProgramRun.Of(folder.Path, "records", "fit", "plan.yaml", "--store", "r.sqlite", "--packets", "50").EndsWith(0);
        Assert.Contains("No correction can be fitted", few.Output, StringComparison.Ordinal);
    }

    /// <summary>The stations and some of the places as neighbours of a plan, and the rows of those places.</summary>
    private static void Write(TemporaryFolder folder, string[] lines)
    {
        StringBuilder rows = new();
        StringBuilder plan = new("mastwright: 1\nname: Carried by hand\nground: {heights: [{files: N49E016.hgt, kind: bare-earth, datum: EGM96}]}\nmodem: {frequency: 868 MHz, bandwidth: 125 kHz, spreading-factor: 12, payload: 20 B}\nneighbours:\n");
        Dictionary<string, string> places = [];
        HashSet<string> stations = [];
        int place = 0;
        foreach (string[] cells in lines.Skip(1).Select(line => line.Split(',')).Where(cells => cells[0].Length > 0))
        {
            string at = $"{cells[4]},{cells[5]}";
            if (!places.TryGetValue(at, out string? key))
            {
                // Every fifth place: they lie in the order in which they were visited.
                places.Add(at, key = ++place % 5 == 1 && place / 5 < Places ? string.Create(CultureInfo.InvariantCulture, $"p{(place / 5) + 1}") : "");
                if (key.Length > 0)
                {
                    plan.Append(CultureInfo.InvariantCulture, $"  {key}: {{position: \"{cells[4]}, {cells[5]}\", addresses: \"{at}\", height: 1.5 m, gain: 2.15 dBi, power: 14 dBm, noise-figure: 6 dB}}\n");
                }
            }

            if (key.Length > 0)
            {
                rows.Append(string.Join(',', cells)).Append('\n');
                if (stations.Add(cells[0]))
                {
                    plan.Append(CultureInfo.InvariantCulture, $"  {cells[0].ToLowerInvariant()}: {{position: \"{cells[1]}, {cells[2]}\", addresses: {cells[0]}, gain: 0 dBi, power: 14 dBm, noise-figure: 6 dB}}\n");
                }
            }
        }

        folder.Write("some.csv", rows.ToString());
        folder.Write("plan.yaml", plan.ToString());
    }
}
