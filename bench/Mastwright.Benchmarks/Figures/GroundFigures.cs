using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Storage.Ground;
using Mastwright.Storage.Plans;

namespace Mastwright.Benchmarks.Figures;

/// <summary>A path of 50 km cut from the demo's ground, 1 arc-second, which is in memory.</summary>
internal static class GroundFigures
{
    private static readonly GeoPoint South = new(46.1, -18.62);

    internal static IEnumerable<Figure> Measure(string demoFolder)
    {
        PlanReading reading = PlanFile.Read(Path.Combine(demoFolder, "plan.yaml"));
        PlanDocument document = reading.Document ?? throw new InvalidOperationException($"{demoFolder}: {reading.Problems[0]}");
        GeoPoint north = Geodesic.Direct(South, 15, 50_000);
        using GroundLibrary library = GroundLibrary.Open(document.Folder, document.Plan.Heights, document.Plan.Covers);
        GroundMosaic mosaic = library.MosaicFor(South, north);
        int points = 0;
        yield return Sample.Time(
            "profile of 50 km, 1 arc-second, ground in memory", "µs", 500, 101, () => points = TerrainProfile.Extract(mosaic, South, north).Count);

        // What a link costs once its tiles are read: finding them, joining them, the sea, the profile.
        yield return Sample.Time(
            "the same with its ground found in the library", "µs", 700, 101, () => points = TerrainProfile.Extract(library.MosaicFor(South, north), South, north).Count);
        Console.Out.WriteLine($"The profile has {points} points.");
    }
}
