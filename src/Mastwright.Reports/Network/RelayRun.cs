using System.Collections.Immutable;
using Mastwright.Network.Relays;
using Mastwright.Plans;
using Mastwright.Reports.Reach;
using Mastwright.Reports.Sessions;

namespace Mastwright.Reports.Network;

/// <summary>Looks for relays: candidates, their links, what is in sight of them, the sweep of those left, the choice.</summary>
internal static class RelayRun
{
    /// <summary>The report; null, with what is wrong told, when there is none.</summary>
    /// <param name="session">The plan.</param>
    /// <param name="stations">All stations of the plan that count.</param>
    /// <param name="options">What is asked for.</param>
    /// <param name="work">Works off the sweeps and keeps them.</param>
    /// <param name="cacheFolder">Where paths are kept; null for nowhere.</param>
    /// <param name="tell">Told each line of what is wrong, or worth knowing.</param>
    /// <param name="progress">Told how far it is, from any thread; null for nobody.</param>
    /// <param name="cancellation">Stops the work; paths and sweeps that are done are kept.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    internal static RelayReport? Make(
        PlanSession session,
        ImmutableArray<LinkStation> stations,
        RelayOptions options,
        LongWork work,
        string? cacheFolder,
        Action<string> tell,
        IProgress<RelayProgress>? progress,
        CancellationToken cancellation)
    {
        if (StationChoice.Find(session.Plan, options.Home, out string problem) is not { } home)
        {
            tell(problem);
            return null;
        }

        LinkStation like = home;
        if (options.Like is { } likeName && StationChoice.Find(session.Plan, likeName, out problem) is { } found)
        {
            like = found;
        }

        if (problem.Length > 0)
        {
            tell($"--like: {problem}");
            return null;
        }

        if ((options.LooksOnGround || options.PlacesFile is not null) && !session.Assessment.IsAlikeAllRound(like))
        {
            tell($"--like: the antenna of {like.Subject} points somewhere; a relay that stands anywhere needs one that is alike all round. Name another station");
            return null;
        }

        return session.Guarded(tell, () => Make(session, home, like, stations, options, work, cacheFolder, tell, progress, cancellation));
    }

    private static RelayReport? Make(
        PlanSession session,
        LinkStation home,
        LinkStation like,
        ImmutableArray<LinkStation> stations,
        RelayOptions options,
        LongWork work,
        string? cacheFolder,
        Action<string> tell,
        IProgress<RelayProgress>? progress,
        CancellationToken cancellation)
    {
        progress?.Report(new("reading the ground", 0));
        List<string> problems = [];
        if (ReachRun.Receiver(session, options.AsReach, problems) is not { } receiver)
        {
            problems.ForEach(tell);
            return null;
        }

        if (RelayArea.Read(session, home, options, tell, cancellation) is not { } area
            || RelayPlaces.Gather(session, area, like, options, tell, cancellation) is not { } places)
        {
            return null;
        }

        // A site that is a candidate is no station of the network yet.
        HashSet<string> tried = [.. places.Stations.Select(one => one.Key)];
        stations = [home, .. stations.Where(one => one.Key != home.Key && !tried.Contains(one.Key))];
        Assessment assessment = session.Over((_, _) => area.Ground);
        MatrixRun matrixRun = new(session, cacheFolder);
        try
        {
            MatrixReport matrix = assessment.Matrix(stations, matrixRun.Memory, null, progress is null ? null : new RelayLinks.Step(progress, "links of the plan"), cancellation);
            RelayLinks links = new(assessment, matrix, stations, 0, matrixRun.Memory, progress);
            RelaySearchRun search = new(session, assessment, area, receiver, options, links, stations, work, tell, progress);
            return search.Run(places, like, matrix, cancellation);
        }
        catch (OperationCanceledException) when (!work.HasToldOfStop)
        {
            tell(cacheFolder is null
                ? "Stopped. Without a cache folder nothing is kept."
                : $"Stopped. The links that are worked out are kept in {cacheFolder}; the same command goes on from there.");
            throw;
        }
        finally
        {
            matrixRun.Keep(tell);
        }
    }
}
