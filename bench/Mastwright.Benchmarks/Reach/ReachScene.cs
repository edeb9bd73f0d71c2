using System.Globalization;
using Mastwright.Benchmarks.Figures;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Storage.Ground;
using Mastwright.Storage.Reach;

namespace Mastwright.Benchmarks.Reach;

/// <summary>Made hills as files: a plan with one station in the middle of a GeoTIFF of heights and one of cover.</summary>
internal sealed class ReachScene
{
    internal const double RadiusMetres = 50_000;
    internal const double CellMetres = 30;
    internal const string StationKey = "mast";

    /// <summary>Samples beyond the radius: a map reads some.</summary>
    private const int Rim = 12;

    private ReachScene(string folder, string program, GridFrame frame)
    {
        Folder = folder;
        Program = program;
        Frame = frame;
    }

    internal string Folder { get; }

    internal string Program { get; }

    /// <summary>The grid of both files.</summary>
    internal GridFrame Frame { get; }

    internal string Heights => Path.Combine(Folder, "heights.tif");

    internal string Plan => Path.Combine(Folder, "plan.yaml");

    /// <summary>Samples of the ground.</summary>
    internal long Samples => (long)Frame.Columns * Frame.Rows;

    /// <summary>The station's place: the middle of the middle sample.</summary>
    internal GeoPoint Station => PlaceOf(Frame.OriginX + (Frame.Columns / 2 * Frame.StepX), Frame.OriginY - (Frame.Rows / 2 * Frame.StepY));

    internal static ReachScene Make(string scratch, string program) => Make(Path.Combine(scratch, "30-m"), program, RadiusMetres, CellMetres);

    internal static ReachScene Make(string folder, string program, double radiusMetres, double cellMetres)
    {
        const double easting = 500_000;
        int reach = (int)Math.Ceiling(radiusMetres / cellMetres) + Rim;
        UniversalTransverseMercator.Forward(MadeHills.LatitudeDegrees, 9, 32, true, out _, out double northing);
        northing = Math.Round(northing / cellMetres) * cellMetres;
        int side = (2 * reach) + 1;
        GridFrame frame = GridFrame.Utm(32, true, easting - (reach * cellMetres), northing + (reach * cellMetres), cellMetres, cellMetres, side, side, samplesAreAreas: true);
        ReachScene scene = new(folder, program, frame);
        Directory.CreateDirectory(folder);
        (float[] heights, byte[] cover) = MadeHills.Samples(reach, cellMetres);
        ReachTiffWriter.Write(scene.Heights, frame, heights);
        CoverTiffWriter.Write(Path.Combine(folder, "cover.tif"), frame, cover);
        File.WriteAllText(scene.Plan, string.Create(CultureInfo.InvariantCulture, $$"""
            mastwright: 1
            name: Made hills
            ground:
              heights:
                - files: heights.tif
                  kind: bare-earth
                  datum: EGM96
              cover:
                - files: cover.tif
            air: {refractivity-gradient: 45, surface-refractivity: 325, external-noise: 3 dB}
            modem: {frequency: 868 MHz, bandwidth: 125 kHz, spreading-factor: 10, payload: 40 B}
            wanted: {time: 50 %, location: 50 %}
            sites:
              {{StationKey}}:
                position: {{scene.Station.LatitudeDegrees:0.0000000}}, {{scene.Station.LongitudeDegrees:0.0000000}}
                in-use: pole
                fit-outs:
                  pole:
                    antenna: {gain: 5 dBi, height: 10 m}
                    radio: {power: 14 dBm, noise-figure: 6 dB, frequency-error: 2 ppm}
              other:
                position: {{scene.Station.LatitudeDegrees + 0.1:0.0000000}}, {{scene.Station.LongitudeDegrees + 0.1:0.0000000}}
                in-use: pole
                fit-outs:
                  pole:
                    antenna: {gain: 5 dBi, height: 10 m}
                    radio: {power: 14 dBm, noise-figure: 6 dB, frequency-error: 2 ppm}

            """));
        return scene;
    }

    /// <summary>Arguments of the command that makes the map of the scene and writes its losses.</summary>
    internal string[] Command(double radiusMetres, double cellMetres) =>
    [
        "reach", Plan, StationKey,
        "--radius", string.Create(CultureInfo.InvariantCulture, $"{radiusMetres:0} m"),
        "--cell", string.Create(CultureInfo.InvariantCulture, $"{cellMetres:0} m"),
        // Worked out each time, not found where the last run kept it.
        "--receiver-height", "2 m", "--layer", "loss", "--no-cache", "--out", Path.Combine(Folder, "loss.tif"),
    ];

    /// <summary>Runs the published command once.</summary>
    internal (double Milliseconds, long Bytes) Run(string[] arguments, bool isWatched) => ProcessFigures.Run(Program, arguments, isWatched);

    private static GeoPoint PlaceOf(double easting, double northing)
    {
        UniversalTransverseMercator.Reverse(easting, northing, 32, true, out double latitude, out double longitude);
        return new(latitude, longitude);
    }
}
