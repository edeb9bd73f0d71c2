using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Jobs;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;
using Mastwright.Storage.Jobs;
using Mastwright.Storage.Reach;

namespace Mastwright.Reports.Reach;

/// <summary>Makes a reach map of a station of an opened plan, and that of the fit-out it is compared with.</summary>
internal static class ReachRun
{
    /// <summary>More than the two steps that a sweep looks beyond the radius, over any ground that is worth a map.</summary>
    private const double RimMetres = 2_000;

    /// <summary>Cells from which on a map that is only written row by row is not held as a whole.</summary>
    private const double WorthBands = 2e6;

    /// <summary>Ground around a station that tells what its setup needs.</summary>
    private const double NearMetres = 1_000;

    /// <summary>The report; null with what is wrong, line by line, when there is none.</summary>
    /// <param name="session">The plan.</param>
    /// <param name="options">What is asked for.</param>
    /// <param name="problems">What is wrong.</param>
    /// <param name="progress">Told the number of cells done, from any thread; null for nobody.</param>
    /// <param name="work">Works off what is too large for memory; null to refuse it.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    internal static ReachReport? Make(
        PlanSession session, ReachOptions options, out ImmutableArray<string> problems, IProgress<int>? progress = null, LongWork? work = null, CancellationToken cancellation = default)
    {
        List<string> told = [];
        ReachReport? report = session.Guarded(told.Add, () => Make(session, options, told, progress, work, cancellation));
        problems = [.. told];
        return report;
    }

    private static ReachReport? Make(PlanSession session, ReachOptions options, List<string> problems, IProgress<int>? progress, LongWork? work, CancellationToken cancellation)
    {
        if (Station(session, options.StationName, problems) is not { } station)
        {
            return null;
        }

        LinkStation? compared = null;
        if (options.CompareFitOut is not null && (compared = Station(session, options.ComparedName, problems)) is null)
        {
            return null;
        }

        // Weights and ranges are counted cell by cell: all cells are in memory.
        long mostCells = options.OwnPaths ? ReachGrid.MostDirectCells
            : work is null || options.WeightsFile is not null || options.WithRanges ? ReachGrid.MostCells
            : ReachGrid.MostCellsInPieces;
        if (ReachGrid.Problem(station.Position.Point, options.Area.RadiusMetres, options.Area.CellMetres, mostCells) is { Length: > 0 } problem)
        {
            problems.Add($"reach: {problem}");
            return null;
        }

        ReachWeights? weights = null;
        if (Receiver(session, options, problems) is not { } receiver
            || (options.WeightsFile is not null
                && (weights = Weights(options.WeightsFile, ReachGrid.Of(station.Position.Point, options.Area.RadiusMetres, options.Area.CellMetres, ReachGrid.MostCells), problems, cancellation)) is null)
            || Map(session, station, receiver, options, null, null, problems, progress, work, cancellation) is not { } report)
        {
            return null;
        }

        report = report with { Weights = weights };
        if (options.WithRanges)
        {
            if (WithRange(report, receiver, options, problems, progress, work, cancellation) is not { } ranged)
            {
                return null;
            }

            report = ranged;
        }

        if (compared is null)
        {
            return report;
        }

        return Map(session, compared, receiver, options, null, report, problems, progress, work, cancellation) is { } other ? report with { Compared = other } : null;
    }

    /// <summary>The weights of a file on a grid; null, with the problem added, when it cannot be read.</summary>
    internal static ReachWeights? Weights(string path, GridFrame frame, List<string> problems, CancellationToken cancellation)
    {
        ReachWeights weights = new(frame);
        if (WeightFile.Read(path, weights, cancellation) is not { Length: > 0 } problem)
        {
            return weights;
        }

        problems.Add($"--weights: {problem}");
        return null;
    }

    /// <summary>The same report with what the map does over the range of the station's place and height.</summary>
    private static ReachReport? WithRange(
        ReachReport report, ReachReceiver receiver, ReachOptions options, List<string> problems, IProgress<int>? progress, LongWork? work, CancellationToken cancellation)
    {
        ReachRange range = new(report.Map);
        double step = report.Map.Field.SweepStepMetres ?? report.Ground.FinestStepMetres;
        ImmutableArray<StationTry> tries = StationTries.Of(report.Setup.Station, step);
        GridFrame frame = report.Map.Field.Frame;
        foreach (StationTry one in tries)
        {
            if (Map(report.Session, one.Station, receiver, options, (frame.UtmZone, frame.IsNorth), report, problems, progress, work, cancellation) is not { } tried)
            {
                return null;
            }

            range.Take(tried.Map);
        }

        return report with { Range = range, Tried = [.. tries.Select(one => one.Text)] };
    }

    /// <summary>The receiver asked for; null, with the problem added, when there is none.</summary>
    internal static ReachReceiver? Receiver(PlanSession session, ReachOptions options, List<string> problems)
    {
        ReachReceiver? receiver = ReachReceiver.Find(session.Plan, options.Receiver, options.ReceiverHeightMetres, out string wrong);
        if (receiver is null)
        {
            problems.Add($"--receiver: {wrong}");
        }

        return receiver;
    }

    /// <summary>The station of a name; null, with the problem added, when there is none.</summary>
    internal static LinkStation? Station(PlanSession session, string name, List<string> problems)
    {
        LinkStation? station = StationChoice.Find(session.Plan, name, out string problem);
        if (station is null)
        {
            problems.Add(problem);
        }

        return station;
    }

    /// <summary>How far around the station ground is read: the corners of a picture, else a little more than the radius.</summary>
    private static double GroundMetres(ReachOptions options, bool isOneOfSeveral) => !isOneOfSeveral && ReachFiles.HaveRelief(options.Files)
        ? options.Area.RadiusMetres * (1 + ReachFiles.RimShare) * Math.Sqrt(2)
        : (options.Area.RadiusMetres * 1.01) + RimMetres;

    /// <summary>The map of one station; null, with the problem added, when it cannot be made.</summary>
    /// <param name="session">The plan.</param>
    /// <param name="station">The station.</param>
    /// <param name="receiver">Who is carried about.</param>
    /// <param name="options">What is asked for.</param>
    /// <param name="zone">UTM zone of a grid shared with others; null for the station's own.</param>
    /// <param name="before">A map of the same place with another fit-out; null for none.</param>
    /// <param name="problems">Told what is wrong.</param>
    /// <param name="progress">Told the number of cells done, from any thread; null for nobody.</param>
    /// <param name="work">Works off what is too large for memory; null to refuse it.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static ReachReport? Map(
        PlanSession session,
        LinkStation station,
        ReachReceiver receiver,
        ReachOptions options,
        (int Number, bool IsNorth)? zone,
        ReachReport? before,
        List<string> problems,
        IProgress<int>? progress,
        LongWork? work,
        CancellationToken cancellation)
    {
        if (Prepare(session, station, receiver, options, zone, before?.Ground, work, false, problems) is not { } task)
        {
            return null;
        }

        // Two fit-outs that differ in what is bolted on, not in height or polarisation, share their losses.
        if (before is { Wide: null } && before.Map.Field.Input == task.Input)
        {
            return new(session, task.Setup, ReachMap.Of(before.Map.Field, task.Setup.Budget!), task.Ground);
        }

        if (task.Pieces is not { } pieces || work is null)
        {
            GroundMosaic ground = task.Ground.Cut(task.Area);
            return Report(session, task, task.IsByOwnPaths
                ? DirectArea.Evaluate(task.Input, ground, progress, cancellation: cancellation)
                : SweptArea.Evaluate(task.Input, ground, progress, leastStepMetres: options.LeastStepMetres, cancellation: cancellation), problems);
        }

        Job job = new() { Name = $"Reach of {station.Subject}", Chunks = ReachFieldJob.ChunksOf(pieces, task.Ground) };
        JobResult result = work.Run(job, pieces.PlaceCount, LongWork.BytesACell * pieces.CellCount, cancellation);
        try
        {
            bool isSeenWhole = options.WeightsFile is not null || options.WithRanges || zone is not null || options.Files.Any(file => ReachFiles.Ending(file) is not (".tif" or ".tiff"));
            if (pieces.CellCount <= (isSeenWhole ? ReachGrid.MostCells : WorthBands))
            {
                return Report(session, task, ReachFieldJob.Field(pieces, result), problems);
            }

            WideMap wide = WideMap.Of(pieces, ReachFieldJob.Open(pieces, result), task.Setup.Budget!, isSeenWhole ? ReachGrid.MostCells : (long)WorthBands / 8, cancellation);
            ReachReport? report = Report(session, task, wide.Overview.Field, problems);
            if (report is null)
            {
                return null;
            }

            // The pieces are read again when files are written: they are let go of with the work.
            work.Keep(result);
            return report with { Wide = wide };
        }
        finally
        {
            work.Release(result);
        }
    }

    /// <summary>What a map of a station is worked out from, and how; null, with the problem added, when it cannot be.</summary>
    /// <param name="session">The plan.</param>
    /// <param name="station">The station.</param>
    /// <param name="receiver">Who is carried about.</param>
    /// <param name="options">What is asked for.</param>
    /// <param name="zone">UTM zone of a grid shared with others; null for the station's own.</param>
    /// <param name="known">The ground of the area, where it is known; null to look for it.</param>
    /// <param name="work">Where pieces are kept; null to work everything out at once.</param>
    /// <param name="alwaysInPieces">Whether a small field, too, is worked out as a piece that is kept.</param>
    /// <param name="problems">Told what is wrong.</param>
    internal static ReachTask? Prepare(
        PlanSession session, LinkStation station, ReachReceiver receiver, ReachOptions options, (int Number, bool IsNorth)? zone, GroundExtent? known, LongWork? work, bool alwaysInPieces, List<string> problems)
    {
        GeoPoint place = station.Position.Point;
        GeoBounds area = GeoBounds.Of(place).Expanded(GroundMetres(options, zone is not null));
        GroundExtent ground = known ?? session.Ground.ExtentOf(area, work?.Hashes);
        double step = Math.Max(ground.FinestStepMetres, options.LeastStepMetres);
        bool isInPieces = work is not null && !options.OwnPaths && (alwaysInPieces
            || 2 * options.Area.RadiusMetres / step > Math.Sqrt(SweptArea.WorthPieces)
            || ReachGrid.Problem(place, options.Area.RadiusMetres, options.Area.CellMetres, ReachGrid.MostCells).Length > 0);
        if (!isInPieces && known is null)
        {
            ground = GroundExtent.Of(session.Ground.MosaicFor(area));
        }

        ground = session.Assessment.ReachGround(station, ground);
        ReachSetup setup = session.Assessment.Reach(station, receiver, options.Area, ground.Cut(GeoBounds.Of(place).Expanded(NearMetres)));
        if (session.TellDamage(problems.Add) || !IsComplete(setup, problems))
        {
            return null;
        }

        ReachFieldInput input = setup.Field! with { SharedZone = zone };
        bool isByOwnPaths = options.OwnPaths || input.ReplacesCoverAtStation || ground.HasSurface || double.IsInfinity(ground.FinestStepMetres);
        if (isByOwnPaths && options.LeastStepMetres > 0)
        {
            problems.Add("reach: over this ground each cell needs a path of its own, so there is no quick map");
            return null;
        }

        string problem = isByOwnPaths ? ReachGrid.Problem(place, input.RadiusMetres, input.CellMetres) : "";
        if (problem.Length > 0)
        {
            problems.Add($"reach: over this ground each cell needs a path of its own: {problem}");
            return null;
        }

        if (isByOwnPaths || !isInPieces)
        {
            return new(setup, input, area, ground, null, isByOwnPaths);
        }

        if (ReachPieces.Problem(input, step) is { Length: > 0 } tooFine)
        {
            problems.Add($"reach: {tooFine} (--step)");
            return null;
        }

        return new(setup, input, area, ground, ReachPieces.Of(input, step), false);
    }

    /// <summary>The report over a field; null, with the problem added, when no cell of it has ground.</summary>
    internal static ReachReport? Report(PlanSession session, ReachTask task, ReachField field, List<string> problems)
    {
        if (field.LossDb.ContainsAnyExcept(float.NaN))
        {
            return new(session, task.Setup, ReachMap.Of(field, task.Setup.Budget!), task.Ground);
        }

        problems.Add($"There is no ground for any cell around {task.Setup.Station.Subject}: {string.Join("; ", field.Gaps)}");
        return null;
    }

    /// <summary>Whether nothing is missing for a map; adds what is.</summary>
    internal static bool IsComplete(ReachSetup setup, List<string> problems)
    {
        if (setup.Field is not null && setup.Budget is not null)
        {
            return true;
        }

        problems.Add($"There is no map of {setup.Station.Subject}, for want of {string.Join("; ", setup.Missing)}");
        return false;
    }
}
