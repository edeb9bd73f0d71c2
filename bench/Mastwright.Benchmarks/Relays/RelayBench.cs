using System.Globalization;
using System.Text;
using System.Text.Json;
using Mastwright.Benchmarks.Figures;
using Mastwright.Benchmarks.Reach;
using Mastwright.Geodesy;

namespace Mastwright.Benchmarks.Relays;

/// <summary>What a relay search over a county costs: 100 × 100 km of made hills with woods at 3 arc-seconds, 20 stations, 2,000 candidates, three relays.</summary>
internal static class RelayBench
{
    private const double HalfSideMetres = 50_000;
    private const double GroundMetres = 92.6;
    private const int Stations = 20;
    private const int Candidates = 2_000;
    private const double BoundSeconds = 300;

    /// <summary>Prints the figures.</summary>
    /// <param name="scratch">Folder for the made ground and for what is written.</param>
    /// <param name="program">The command.</param>
    /// <returns>Whether the bound holds.</returns>
    internal static bool Run(string scratch, string program)
    {
        ReachScene scene = ReachScene.Make(Path.Combine(scratch, "county"), program, HalfSideMetres + 4_000, GroundMetres);
        string plan = WritePlan(scene);
        string geoJson = Path.Combine(scene.Folder, "relays.geojson");
        ReachReport report = new();
        ReachReport.Head();
        ReachReport.Part(string.Create(CultureInfo.InvariantCulture, $"100 × 100 km in cells of 90 m, {Stations} stations, {Candidates:#,0} candidates, 3 relays; nothing kept from before"));
        foreach ((string name, int swept) in new[] { ("120 candidates swept, as usual", 120), ("every candidate swept", Candidates) })
        {
            string[] arguments =
            [
                "relay", plan, "s0", "--relays", "3", "--area", "50 km", "--cell", "90 m", "--candidates", Candidates.ToString(CultureInfo.InvariantCulture),
                "--swept", swept.ToString(CultureInfo.InvariantCulture), "--no-cache", "--geojson", geoJson,
            ];
            double seconds = ProcessFigures.Run(program, arguments, isWatched: false).Milliseconds / 1e3;
            report.Most(name, seconds, BoundSeconds, "s", $"the relays add {Added(geoJson)}");
        }

        return report.IsOk;
    }

    private static string Added(string path)
    {
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(path));
        double[] gains =
        [
            .. document.RootElement.GetProperty("features").EnumerateArray().Select(feature => feature.GetProperty("properties"))
                .Where(one => one.GetProperty("what").GetString() == "relay").Select(one => one.GetProperty("gain").GetDouble()),
        ];
        return string.Create(CultureInfo.InvariantCulture, $"{gains.Sum():0.0} km² ({string.Join(" + ", gains.Select(gain => gain.ToString("0.0", CultureInfo.InvariantCulture)))})");
    }

    /// <summary>The scene's plan with stations spread over the middle of the county; the first in the very middle.</summary>
    private static string WritePlan(ReachScene scene)
    {
        string text = File.ReadAllText(scene.Plan);

        // The slowest setting and high masts: so nearly every candidate is in a link with the network, and none is let go cheaply.
        StringBuilder plan = new(text[..text.IndexOf("sites:", StringComparison.Ordinal)].Replace("spreading-factor: 10", "spreading-factor: 12", StringComparison.Ordinal));
        plan.AppendLine("sites:");
        for (int i = 0; i < Stations; i++)
        {
            double east = i == 0 ? 0 : ((i * 0.7548776662466927 % 1) - 0.5) * 60_000;
            double north = i == 0 ? 0 : ((i * 0.5698402909980532 % 1) - 0.5) * 60_000;
            GeoPoint place = Geodesic.Direct(scene.Station, double.RadiansToDegrees(Math.Atan2(east, north)), Math.Sqrt((east * east) + (north * north)));
            plan.Append(CultureInfo.InvariantCulture, $$"""
                  s{{i}}:
                    position: {{place.LatitudeDegrees:0.0000000}}, {{place.LongitudeDegrees:0.0000000}}
                    in-use: pole
                    fit-outs:
                      pole:
                        antenna: {gain: 5 dBi, height: 40 m}
                        radio: {power: 14 dBm, noise-figure: 6 dB, frequency-error: 2 ppm}

                """);
        }

        File.WriteAllText(scene.Plan, plan.ToString());
        return scene.Plan;
    }
}
