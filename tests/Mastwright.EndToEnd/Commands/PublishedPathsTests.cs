using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Mastwright.Tests.EndToEnd.Commands;

/// <summary>The bare path of the command line, on every profile of the validation set published beside ITU-R P.1812.</summary>
public sealed class PublishedPathsTests
{
    /// <summary>dB for losses and field strength, relative for the rest; the results are printed with ten figures.</summary>
    private const double Tolerance = 1e-6;

    [Fact]
    public void Every_published_result_comes_out_of_the_command_line()
    {
        string[] results = [.. Directory.EnumerateFiles(TestPlaces.Reference("itu-p1812", "results"), "*.csv").Order(StringComparer.Ordinal)];
        Assert.NotEmpty(results);
        ConcurrentBag<string> missed = [];
        using TemporaryFolder folder = new();
        foreach (string profile in Directory.EnumerateFiles(TestPlaces.Reference("itu-p1812", "profiles"), "*.csv"))
        {
            folder.Write(Path.GetFileName(profile), Profile(profile));
        }

        Parallel.ForEach(results, new ParallelOptions { MaxDegreeOfParallelism = 2 }, result =>
        {
            foreach (string miss in Misses(folder.Path, result))
            {
                missed.Add($"{Path.GetFileNameWithoutExtension(result)}: {miss}");
            }
        });
        Assert.Empty(missed.Order(StringComparer.Ordinal));
    }

    private static List<string> Misses(string folder, string result)
    {
        string[][] rows = [.. File.ReadLines(result).Select(line => line.Split(',')).Where(cells => cells.Length >= 4 && cells[3] is not ("" or "Value"))];
        int firstResult = Array.FindIndex(rows, cells => Name(cells) == "d");
        Dictionary<string, string> given = rows[..firstResult].ToDictionary(Name, cells => cells[3], StringComparer.Ordinal);
        string name = Path.GetFileNameWithoutExtension(result);
        ProgramRun run = ProgramRun.Of(
            folder,
            "path", "--profile", name[..name.LastIndexOf('_')] + ".csv",
            "--frequency", given["f"] + " GHz",
            "--tx-height", given["htg"] + " m",
            "--rx-height", given["hrg"] + " m",
            "--polarisation", given["pol"] == "1" ? "horizontal" : "vertical",
            "--time", given["p"],
            "--location", given["pL"],
            "--sigma-location", given["sigmaL"] + " dB",
            "--n0", given["N0"],
            "--dn", given["DN"],
            "--tx-position", $"{given["phi_t"]},{given["lam_t"]}",
            "--rx-position", $"{given["phi_r"]},{given["lam_r"]}",
            "--distance-to-coast-tx", given["dct"] + " km",
            "--distance-to-coast-rx", given["dcr"] + " km",
            "--json");
        if (run.ExitCode != 0)
        {
            return [$"exit code {run.ExitCode}: {run.Error}"];
        }

        using JsonDocument document = JsonDocument.Parse(run.Output);
        JsonElement found = document.RootElement.GetProperty("p1812");
        List<string> missed = [];
        foreach (string[] row in rows[firstResult..].Where(row => row[0].Length > 0 && !row[0].Contains("w.r.t.", StringComparison.Ordinal)))
        {
            string key = Property(Name(row), row[1]);
            double printed = double.Parse(row[3], CultureInfo.InvariantCulture);
            double allowed = key[0] is 'L' or 'E' || printed == 0 ? Tolerance : Tolerance * Math.Abs(printed);
            if (!found.TryGetProperty(key, out JsonElement value) || !(Math.Abs(value.GetDouble() - printed) <= allowed))
            {
                missed.Add(string.Create(CultureInfo.InvariantCulture, $"{key}: {value} instead of {printed:R}"));
            }
        }

        double loss = document.RootElement.GetProperty("basic-transmission-loss-db").GetDouble();
        if (loss != found.GetProperty("Lb").GetDouble())
        {
            missed.Add("the loss is not the Lb of its intermediates");
        }

        return missed;
    }

    /// <summary>Two names are printed twice, for two equations.</summary>
    private static string Property(string name, string equation) => (name, equation) switch
    {
        ("hst", "Eq (85)") => "hst_n",
        ("hsr", "Eq (86)") => "hsr_n",
        ("htc", "Table 5") => "hts",
        ("hrc", "Table 5") => "hrs",
        _ => name,
    };

    private static string Name(string[] cells) => cells[0].Split('(')[0].Trim();

    /// <summary>A profile of the published form as the program's own: distance_km,height_m,cover_m,zone.</summary>
    private static string Profile(string file)
    {
        StringBuilder text = new("distance_km,height_m,cover_m,zone\n");
        foreach (string line in File.ReadLines(file)
            .SkipWhile(line => !line.StartsWith("{Begin of Profile}", StringComparison.Ordinal))
            .Skip(2)
            .TakeWhile(line => !line.StartsWith("{End", StringComparison.Ordinal)))
        {
            string[] cells = line.Split(',');
            string zone = cells[4].Trim() switch { "1" => "sea", "3" => "coast", _ => "inland" };
            text.Append(CultureInfo.InvariantCulture, $"{cells[0]},{cells[1]},{cells[3]},{zone}\n");
        }

        return text.ToString();
    }
}
