using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Jobs;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;
using Mastwright.Storage.Jobs;
using Mastwright.Storage.Reach;

namespace Mastwright.Reports.Reach;

/// <summary>Works out the maps of several stations, one after another, on one grid.</summary>
internal static class SeveralReach
{
    /// <summary>Ground around a station that tells what its setup needs.</summary>
    private const double NearMetres = 1_000;

    /// <summary>The report; null with what is wrong, line by line, when there is none.</summary>
    /// <param name="session">The plan.</param>
    /// <param name="options">What is asked for.</param>
    /// <param name="problems">What is wrong.</param>
    /// <param name="progress">Told the number of cells of a station done, from any thread; null for nobody.</param>
    /// <param name="work">Works off the maps as one job and keeps them; null to work out one after another and keep nothing.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    internal static SeveralReport? Make(
        PlanSession session, ReachOptions options, out ImmutableArray<string> problems, IProgress<int>? progress = null, LongWork? work = null, CancellationToken cancellation = default)
    {
        List<string> told = [];
        SeveralReport? report = session.Guarded(told.Add, () => Stations(session, options, told) is { } stations && ReachRun.Receiver(session, options, told) is { } receiver
            ? Make(session, stations, receiver, options, told, progress, work, cancellation)
            : null);
        problems = [.. told];
        return report;
    }

    /// <summary>The stations asked for, by their subjects.</summary>
    private static ImmutableArray<LinkStation>? Stations(PlanSession session, ReachOptions options, List<string> problems)
    {
        if (options.FitOut is not null || options.CompareFitOut is not null)
        {
            problems.Add("--fit-out and --compare-fit-out are about one station; of several, name each as SITE/FIT-OUT");
            return null;
        }

        List<LinkStation> stations = [];
        foreach (string name in options.Stations)
        {
            if (ReachRun.Station(session, name, problems) is not { } station)
            {
                return null;
            }

            if (stations.Exists(one => one.Subject == station.Subject))
            {
                problems.Add($"'{name}' is named twice");
                return null;
            }

            stations.Add(station);
        }

        if (options.AllSites)
        {
            IEnumerable<LinkStation> all = LinkSelection.Stations(session.Plan, ImmutableDictionary<string, string>.Empty).Where(station => station.IsSite);
            stations.AddRange(all.Where(station => !stations.Exists(one => one.Key == station.Key)));
        }

        if (stations.Count is 0 or > BestServers.MostStations)
        {
            problems.Add(stations.Count == 0
                ? "--all-sites: no site of the plan has a fit-out in use"
                : $"there are {stations.Count} stations; the most is {BestServers.MostStations}");
            return null;
        }

        return [.. stations.OrderBy(station => station.Subject, StringComparer.Ordinal)];
    }

    private static SeveralReport? Make(
        PlanSession session, ImmutableArray<LinkStation> stations, ReachReceiver receiver, ReachOptions options, List<string> problems, IProgress<int>? progress, LongWork? work, CancellationToken cancellation)
    {
        ReachArea area = options.Area;
        if (ReachGrid.Shared([.. stations.Select(station => station.Position.Point)], area.RadiusMetres, area.CellMetres, out string problem) is not { } frame)
        {
            problems.Add($"reach: {problem}");
            return null;
        }

        // Whatever is missing is told before hours of work begin.
        if (!AreComplete(session, stations, receiver, area, problems))
        {
            return null;
        }

        ReachWeights? weights = null;
        if (options.WeightsFile is not null && (weights = ReachRun.Weights(options.WeightsFile, frame, problems, cancellation)) is null)
        {
            return null;
        }

        SeveralReport? report = work is null
            ? OneAfterAnother(session, stations, receiver, options, frame, problems, progress, cancellation)
            : InPieces(session, stations, receiver, options, frame, problems, progress, work, cancellation);
        return report is null ? null : report with { Weights = weights };
    }

    /// <summary>All maps as one job whose pieces are kept: only a station that has changed since is worked out again.</summary>
    private static SeveralReport? InPieces(
        PlanSession session,
        ImmutableArray<LinkStation> stations,
        ReachReceiver receiver,
        ReachOptions options,
        GridFrame frame,
        List<string> problems,
        IProgress<int>? progress,
        LongWork work,
        CancellationToken cancellation)
    {
        List<ReachTask> tasks = [];
        List<int> firstChunks = [];
        ImmutableArray<Chunk>.Builder chunks = ImmutableArray.CreateBuilder<Chunk>();
        foreach (LinkStation station in stations)
        {
            cancellation.ThrowIfCancellationRequested();
            if (ReachRun.Prepare(session, station, receiver, options, (frame.UtmZone, frame.IsNorth), null, work, true, problems) is not { } task)
            {
                return null;
            }

            tasks.Add(task.Pieces is null ? task with { Ground = session.Ground.ExtentOf(task.Area, work.Hashes) } : task);
            firstChunks.Add(chunks.Count);
            chunks.AddRange(task.Pieces is { } pieces ? ReachFieldJob.ChunksOf(pieces, task.Ground) : []);
        }

        Job job = new() { Name = $"Reach of {stations.Length} stations", Chunks = chunks.ToImmutable(), Priority = JobPriority.Search };
        using JobResult result = work.Run(job, tasks.Sum(task => task.Pieces?.PlaceCount ?? 0), tasks.Sum(task => LongWork.BytesACell * (task.Pieces?.CellCount ?? 0)), cancellation);
        return Folded(session, receiver, options, frame, tasks.Count, i => ReachRun.Report(session, tasks[i], FieldOf(tasks[i], firstChunks[i]), problems));

        ReachField FieldOf(ReachTask task, int firstChunk) => task.Pieces is { } pieces
            ? ReachFieldJob.Field(pieces, result, firstChunk)
            : DirectArea.Evaluate(task.Input, task.Ground.Cut(task.Area), progress, cancellation: cancellation);
    }

    private static SeveralReport? OneAfterAnother(
        PlanSession session,
        ImmutableArray<LinkStation> stations,
        ReachReceiver receiver,
        ReachOptions options,
        GridFrame frame,
        List<string> problems,
        IProgress<int>? progress,
        CancellationToken cancellation) =>
        Folded(session, receiver, options, frame, stations.Length, i =>
            ReachRun.Map(session, stations[i], receiver, options, (frame.UtmZone, frame.IsNorth), null, problems, progress, null, cancellation));

    /// <summary>Takes one map after another: only the state and the map at hand are in memory.</summary>
    private static SeveralReport? Folded(PlanSession session, ReachReceiver receiver, ReachOptions options, GridFrame frame, int count, Func<int, ReachReport?> mapOf)
    {
        BestServers servers = BestServers.Before(frame, count);
        List<ReachSetup> setups = [];
        List<Finding> findings = [];
        double? step = null;
        bool hasOwnPaths = false;
        for (int i = 0; i < count; i++)
        {
            if (mapOf(i) is not { } report)
            {
                return null;
            }

            servers.Take(i + 1, report.Map);
            setups.Add(report.Setup);
            findings.AddRange(report.Findings);
            step = Math.Max(step ?? 0, report.Map.Field.SweepStepMetres ?? 0);
            hasOwnPaths |= report.Map.Field.SweepStepMetres is null;
        }

        return new(session, receiver, [.. setups], servers, [.. findings]) { SweepStepMetres = step, HasOwnPaths = hasOwnPaths, Area = options.Area };
    }

    private static bool AreComplete(PlanSession session, ImmutableArray<LinkStation> stations, ReachReceiver receiver, ReachArea area, List<string> problems)
    {
        bool complete = true;
        foreach (LinkStation station in stations)
        {
            ReachSetup setup = session.Assessment.Reach(station, receiver, area, session.Ground.MosaicFor(GeoBounds.Of(station.Position.Point).Expanded(NearMetres)));
            complete &= ReachRun.IsComplete(setup, problems);
        }

        return complete && !session.TellDamage(problems.Add);
    }
}
