using System.Globalization;
using Mastwright.Benchmarks.Figures;

namespace Mastwright.Benchmarks.Reach;

/// <summary>The most memory (VmHWM) that the published command holds.</summary>
internal static class PeakMemory
{
    private const double Mebibyte = 1 << 20;
    private const double BoardMebibytes = 1024;
    private const int Runs = 3;

    internal static void Measure(ReachReport report, ReachScene scene)
    {
        ReachReport.Part("Most memory of the published command (VmHWM), median of 3");
        string[] command = scene.Command(ReachScene.RadiusMetres, ReachScene.CellMetres);
        double ground = scene.Samples * 5 / Mebibyte;
        double result = scene.Samples * 4 / Mebibyte;
        report.Most(
            "reach, 50 km at 30 m, cover, loss.tif",
            Peak(scene, command),
            ground + result + 96,
            "MiB",
            string.Create(CultureInfo.InvariantCulture, $"ground {ground:0.0} (heights 4 bytes, cover 1) + result {result:0.0} (4 bytes a cell) + 96"));

        ReachScene coarse = ReachScene.Make(Path.Combine(Path.GetDirectoryName(scene.Folder)!, "3-arc-seconds"), scene.Program, 100_000, 92.6);
        report.Most("check, 3 arc-seconds, a path of 13 km", Peak(coarse, ["check", coarse.Plan]), BoardMebibytes / 2, "MiB", "half of a board with 1 GiB");
        report.Most("reach, 10 km at 3 arc-seconds, picture", Peak(coarse, ["reach", coarse.Plan, ReachScene.StationKey, "--out", Path.Combine(coarse.Folder, "map.png")]), BoardMebibytes / 2, "MiB", "half of a board with 1 GiB");
        report.Most("reach, 100 km at 3 arc-seconds, loss.tif", Peak(coarse, coarse.Command(100_000, 93)), BoardMebibytes / 2, "MiB", "half of a board with 1 GiB");
    }

    private static double Peak(ReachScene scene, string[] command) =>
        Sample.Median(Enumerable.Range(0, Runs).Select(_ => scene.Run(command, isWatched: true).Bytes / Mebibyte));
}
