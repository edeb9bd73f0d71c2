using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;
using Mastwright.Storage.Reach;

namespace Mastwright.Reports.Reach;

/// <summary>Makes a reach map of a station of an opened plan, and that of the fit-out it is compared with.</summary>
internal static class ReachRun
{
    /// <summary>More than the two steps that a sweep looks beyond the radius, over any ground that is worth a map.</summary>
    private const double RimMetres = 2_000;

    /// <summary>The report; null with what is wrong, line by line, when there is none.</summary>
    /// <param name="session">The plan.</param>
    /// <param name="options">What is asked for.</param>
    /// <param name="problems">What is wrong.</param>
    /// <param name="progress">Told the number of cells done, from any thread; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    internal static ReachReport? Make(
        PlanSession session, ReachOptions options, out ImmutableArray<string> problems, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        List<string> told = [];
        ReachReport? report = Make(session, options, told, progress, cancellation);
        problems = [.. told];
        return report;
    }

    private static ReachReport? Make(PlanSession session, ReachOptions options, List<string> problems, IProgress<int>? progress, CancellationToken cancellation)
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

        if (ReachGrid.Problem(station.Position.Point, options.Area.RadiusMetres, options.Area.CellMetres, options.OwnPaths ? ReachGrid.MostDirectCells : ReachGrid.MostCells) is { Length: > 0 } problem)
        {
            problems.Add($"reach: {problem}");
            return null;
        }

        ReachWeights? weights = null;
        if (Receiver(session, options, problems) is not { } receiver
            || (options.WeightsFile is not null
                && (weights = Weights(options.WeightsFile, ReachGrid.Of(station.Position.Point, options.Area.RadiusMetres, options.Area.CellMetres, ReachGrid.MostCells), problems, cancellation)) is null)
            || Map(session, station, receiver, options, null, null, problems, progress, cancellation) is not { } report)
        {
            return null;
        }

        report = report with { Weights = weights };
        if (options.WithRanges)
        {
            if (WithRange(report, receiver, options, problems, progress, cancellation) is not { } ranged)
            {
                return null;
            }

            report = ranged;
        }

        if (compared is null)
        {
            return report;
        }

        return Map(session, compared, receiver, options, null, report, problems, progress, cancellation) is { } other ? report with { Compared = other } : null;
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
        ReachReport report, ReachReceiver receiver, ReachOptions options, List<string> problems, IProgress<int>? progress, CancellationToken cancellation)
    {
        ReachRange range = new(report.Map);
        double step = report.Map.Field.SweepStepMetres ?? report.Ground.Heights.Min(window => window.ResolutionMetres);
        ImmutableArray<StationTry> tries = StationTries.Of(report.Setup.Station, step);
        GridFrame frame = report.Map.Field.Frame;
        foreach (StationTry one in tries)
        {
            if (Map(report.Session, one.Station, receiver, options, (frame.UtmZone, frame.IsNorth), report, problems, progress, cancellation) is not { } tried)
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
        CancellationToken cancellation)
    {
        GroundMosaic ground = before?.Ground ?? session.Ground.MosaicFor(GeoBounds.Of(station.Position.Point).Expanded(GroundMetres(options, zone is not null)));
        ReachSetup setup = session.Assessment.Reach(station, receiver, options.Area, ground);
        if (session.TellDamage(problems.Add) || !IsComplete(setup, problems))
        {
            return null;
        }

        ReachFieldInput input = setup.Field! with { SharedZone = zone };

        bool ownPaths = options.OwnPaths || !SweptArea.Fits(input, ground);
        if (ownPaths && options.LeastStepMetres > 0)
        {
            problems.Add("reach: over this ground each cell needs a path of its own, so there is no quick map");
            return null;
        }

        if (ownPaths && ReachGrid.Problem(input.Station, input.RadiusMetres, input.CellMetres) is { Length: > 0 } problem)
        {
            problems.Add($"reach: over this ground each cell needs a path of its own: {problem}");
            return null;
        }

        // Two fit-outs that differ in what is bolted on, not in height or polarisation, share their losses.
        ReachField field = before is not null && before.Map.Field.Input == input ? before.Map.Field
            : ownPaths ? DirectArea.Evaluate(input, ground, progress, cancellation: cancellation)
            : SweptArea.Evaluate(input, ground, progress, leastStepMetres: options.LeastStepMetres, cancellation: cancellation);
        if (!field.LossDb.ContainsAnyExcept(float.NaN))
        {
            problems.Add($"There is no ground for any cell around {station.Subject}: {string.Join("; ", field.Gaps)}");
            return null;
        }

        return new(session, setup, ReachMap.Of(field, setup.Budget!), ground);
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
