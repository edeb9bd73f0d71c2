using System.Diagnostics;
using System.Globalization;
using Mastwright.Benchmarks.Figures;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Storage.Ground;
using Mastwright.Storage.Plans;
using Mastwright.Storage.Reach;

namespace Mastwright.Benchmarks.Reach;

/// <summary>Our time for a map of losses over that of a general program for a yes-or-no map of lines of sight, on the same GeoTIFF.</summary>
/// <remarks>
/// Counted on our side: opening both files, reading heights and cover, the sweep, bringing it onto the grid of the UTM zone, writing the
/// losses as a deflated GeoTIFF. Once inside this process, warm, and once as the published command with its start. The other program is
/// always a whole process; it reads the heights alone, from the same file, and writes one byte a cell. Neither of these is packed.
/// </remarks>
internal static class ViewshedRatio
{
    private const int Runs = 9;

    internal static void Measure(ReachReport report, ReachScene scene, string viewshed)
    {
        ReachReport.Part("Viewshed ratio, 50 km at 30 m, all land, cover, p = 50 %, two cores, wall time, median of 9, alternating, files in the cache");
        string output = Path.Combine(scene.Folder, "seen.tif");

        // Not packed: both programs then read it at their best.
        string plain = Path.Combine(scene.Folder, "plain.tif");
        ProcessFigures.Run(Path.Combine(Path.GetDirectoryName(viewshed)!, "gdal_translate"), ["-q", "-co", "COMPRESS=NONE", scene.Heights, plain], isWatched: false);
        File.Move(plain, scene.Heights, overwrite: true);
        UtmPosition at = UniversalTransverseMercator.FromGeo(scene.Station);
        string[] asked =
        [
            "-q", "-md", "50000", "-oz", "10", "-tz", "2", "-cc", "0.75",
            "-ox", at.EastingMetres.ToString("R", CultureInfo.InvariantCulture), "-oy", at.NorthingMetres.ToString("R", CultureInfo.InvariantCulture),
            scene.Heights, output,
        ];
        string[] command = scene.Command(ReachScene.RadiusMetres, ReachScene.CellMetres);
        double[] theirs = new double[Runs];
        double[] inside = new double[Runs];
        double[] whole = new double[Runs];
        for (int i = -2; i < Runs; i++)
        {
            // Twice for nothing: files come into the cache, code is compiled.
            File.Delete(output);
            double other = ProcessFigures.Run(viewshed, asked, isWatched: false).Milliseconds;
            double ours = Inside(scene);
            double process = scene.Run(command, isWatched: false).Milliseconds;
            if (i >= 0)
            {
                (theirs[i], inside[i], whole[i]) = (other, ours, process);
            }
        }

        double least = Sample.Median(theirs);
        ReachReport.Plain("gdal_viewshed -md 50000 -oz 10 -tz 2 -cc 0.75", least, "ms", "a whole process");
        ReachReport.Plain("ours in this process, warm", Sample.Median(inside), "ms", "heights and cover read, losses written as GeoTIFF inside it");
        ReachReport.Plain("ours as the published command", Sample.Median(whole), "ms", "its start, budget and text as well");
        report.Most(string.Create(CultureInfo.InvariantCulture, $"viewshed ratio {Sample.Median(inside) / least:0.00}"), Sample.Median(inside) / least, 3, "times", "aim 1.5, dream 1.0; in this process, warm");
        ReachReport.Plain("viewshed ratio of the published command", Sample.Median(whole) / least, "times");
        Stages(scene);
    }

    private static double Inside(ReachScene scene)
    {
        long start = Stopwatch.GetTimestamp();
        using GroundLibrary library = Open(scene);
        GroundMosaic ground = library.MosaicFor(GeoBounds.Of(scene.Station).Expanded(ReachScene.RadiusMetres));
        ReachField field = SweptArea.Evaluate(Input(scene), ground);
        ReachTiffWriter.Write(Path.Combine(scene.Folder, "inside.tif"), field.Frame, field.Losses);
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    /// <summary>Where our time goes, in one more run.</summary>
    private static void Stages(ReachScene scene)
    {
        long start = Stopwatch.GetTimestamp();
        using GroundLibrary library = Open(scene);
        GroundMosaic ground = library.MosaicFor(GeoBounds.Of(scene.Station).Expanded(ReachScene.RadiusMetres));
        double read = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        start = Stopwatch.GetTimestamp();
        ReachField field = SweptArea.Evaluate(Input(scene), ground);
        double swept = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        start = Stopwatch.GetTimestamp();
        ReachTiffWriter.Write(Path.Combine(scene.Folder, "inside.tif"), field.Frame, field.Losses);
        ReachReport.Plain(
            "one more run in parts: read", read, "ms", string.Create(CultureInfo.InvariantCulture, $"map {swept:0} ms, write {Stopwatch.GetElapsedTime(start).TotalMilliseconds:0} ms"));
    }

    private static GroundLibrary Open(ReachScene scene)
    {
        PlanReading reading = PlanFile.Read(scene.Plan);
        PlanDocument document = reading.Document ?? throw new InvalidOperationException(reading.Problems[0].ToString());
        return GroundLibrary.Open(document.Folder, document.Plan.Heights, document.Plan.Covers);
    }

    private static ReachFieldInput Input(ReachScene scene) => new()
    {
        Station = scene.Station,
        RadiusMetres = ReachScene.RadiusMetres,
        CellMetres = ReachScene.CellMetres,
        StationHeightMetres = 10,
        ReceiverHeightMetres = 2,
        FrequencyHz = 868e6,
    };
}
