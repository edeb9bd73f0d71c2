using Mastwright.Propagation.Area;

namespace Mastwright.Benchmarks.Reach;

/// <summary>Maps of P.1812 around a station: what they cost, what they hold in memory, and how far their cells are from their own straight paths.</summary>
/// <remarks>Speed and accuracy are those of one and the same setting: the number of radials is the engine's own.</remarks>
internal static class ReachBench
{
    /// <summary>What every sweep here asks.</summary>
    internal static SweepInput Input { get; } = new() { FrequencyHz = 868e6, StationHeightMetres = 10, ReceiverHeightMetres = 2 };

    /// <summary>Prints every figure.</summary>
    /// <param name="scratch">Folder for the made ground and for what is written.</param>
    /// <param name="program">The published command; null to leave out what needs it.</param>
    /// <param name="viewshed">The general line-of-sight program that the time is compared with; null to leave that out.</param>
    /// <returns>Whether every bound holds.</returns>
    internal static bool Run(string scratch, string? program, string? viewshed)
    {
        ReachReport report = new();
        ReachReport.Head();
        SweepCost.Measure(report);
        NearMap.Measure(report);
        OwnPaths.Measure(report);
        PlaneOfTheMap.Measure();
        if (program is not null)
        {
            ReachScene scene = ReachScene.Make(scratch, program);
            if (viewshed is not null)
            {
                ViewshedRatio.Measure(report, scene, viewshed);
            }

            PeakMemory.Measure(report, scene);
        }

        return report.IsOk;
    }
}
