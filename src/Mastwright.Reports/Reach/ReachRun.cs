using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;

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
        if ((options.CompareFitOut is not null && (compared = Station(session, options.ComparedName, problems)) is null) || !IsComparable(options, problems))
        {
            return null;
        }

        if (ReachGrid.Problem(station.Position.Point, options.Area.RadiusMetres, options.Area.CellMetres, options.OwnPaths ? ReachGrid.MostDirectCells : ReachGrid.MostCells) is { Length: > 0 } problem)
        {
            problems.Add($"reach: {problem}");
            return null;
        }

        if (ReachReceiver.Find(session.Plan, options.Receiver, options.ReceiverHeightMetres, out string wrong) is not { } receiver)
        {
            problems.Add($"--receiver: {wrong}");
            return null;
        }

        if (Map(session, station, receiver, options, null, problems, progress, cancellation) is not { } report)
        {
            return null;
        }

        if (compared is null)
        {
            return report;
        }

        return Map(session, compared, receiver, options, report, problems, progress, cancellation) is { } other ? report with { Compared = other } : null;
    }

    private static LinkStation? Station(PlanSession session, string name, List<string> problems)
    {
        LinkStation? station = StationChoice.Find(session.Plan, name, out string problem);
        if (station is null)
        {
            problems.Add(problem);
        }

        return station;
    }

    private static bool IsComparable(ReachOptions options, List<string> problems)
    {
        if (options.Layer != ReachLayers.Difference || options.CompareFitOut is not null)
        {
            return true;
        }

        problems.Add("--layer difference needs --compare-fit-out KEY: the fit-out that this one is compared with");
        return false;
    }

    /// <summary>How far around the station ground is read: the corners of a picture, else a little more than the radius.</summary>
    private static double GroundMetres(ReachOptions options) => ReachFiles.HaveRelief(options.Files)
        ? options.Area.RadiusMetres * (1 + ReachFiles.RimShare) * Math.Sqrt(2)
        : (options.Area.RadiusMetres * 1.01) + RimMetres;

    private static ReachReport? Map(
        PlanSession session, LinkStation station, ReachReceiver receiver, ReachOptions options, ReachReport? before, List<string> problems, IProgress<int>? progress, CancellationToken cancellation)
    {
        GroundMosaic ground = before?.Ground ?? session.Ground.MosaicFor(GeoBounds.Of(station.Position.Point).Expanded(GroundMetres(options)));
        ReachSetup setup = session.Assessment.Reach(station, receiver, options.Area, ground);
        if (session.TellDamage(problems.Add))
        {
            return null;
        }

        if (setup.Field is not { } input || setup.Budget is not { } budget)
        {
            problems.Add($"There is no map of {station.Subject}, for want of {string.Join("; ", setup.Missing)}");
            return null;
        }

        bool ownPaths = options.OwnPaths || !SweptArea.Fits(input, ground);
        if (ownPaths && ReachGrid.Problem(input.Station, input.RadiusMetres, input.CellMetres) is { Length: > 0 } problem)
        {
            problems.Add($"reach: over this ground each cell needs a path of its own: {problem}");
            return null;
        }

        // Two fit-outs that differ in what is bolted on, not in height or polarisation, share their losses.
        ReachField field = before is not null && before.Map.Field.Input == input ? before.Map.Field
            : ownPaths ? DirectArea.Evaluate(input, ground, progress, cancellation: cancellation)
            : SweptArea.Evaluate(input, ground, progress, cancellation: cancellation);
        if (!field.LossDb.ContainsAnyExcept(float.NaN))
        {
            problems.Add($"There is no ground for any cell around {station.Subject}: {string.Join("; ", field.Gaps)}");
            return null;
        }

        return new(session, setup, ReachMap.Of(field, budget), ground);
    }
}
