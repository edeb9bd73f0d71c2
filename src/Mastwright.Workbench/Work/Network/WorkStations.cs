using System.Collections.Immutable;
using Mastwright.Network;
using Mastwright.Plans;
using Mastwright.Reports.Network;
using Mastwright.Reports.Sessions;
using Mastwright.Storage.Jobs;

namespace Mastwright.Workbench.Work.Network;

/// <summary>The stations that work is about, and the links between them.</summary>
internal static class WorkStations
{
    /// <summary>The plan; null, after telling why, when it cannot be used.</summary>
    internal static PlanSession? Session(WorkItem item, Action<string> tell)
    {
        if (item.Question.View.Session is { } session)
        {
            return session;
        }

        foreach (string problem in item.Question.View.Problems)
        {
            tell(problem);
        }

        return null;
    }

    /// <summary>The plan's stations with the fit-outs that were chosen.</summary>
    internal static ImmutableArray<LinkStation> Of(PlanSession session, WorkQuestion question) => LinkSelection.Stations(session.Plan, Chosen(session, question));

    /// <summary>The station that is meant, with the fit-out that was chosen for it; null, after telling why, when there is none.</summary>
    internal static LinkStation? One(PlanSession session, WorkQuestion question, ImmutableArray<LinkStation> stations, Action<string> tell)
    {
        string name = question["site"] ?? "";
        if (stations.FirstOrDefault(one => one.Key == name) is { } station)
        {
            return station;
        }

        if (StationChoice.Find(session.Plan, name, out string problem) is { } other)
        {
            return other;
        }

        tell(problem);
        return null;
    }

    /// <summary>The links at the plan's time percentage, then at others; null, after telling, when the ground turns out to be damaged.</summary>
    internal static ImmutableArray<MatrixReport>? Links(PlanSession session, ImmutableArray<LinkStation> stations, WorkItem item, Action<string> tell, params IEnumerable<double?> timePercents) =>
        MatrixRun.All(session, stations, CacheFolder.Usual, timePercents, item, tell, _ => { }, item.Cancellation);

    private static Dictionary<string, string> Chosen(PlanSession session, WorkQuestion question) =>
        FitOutChoice.Read(session.Plan, (question["fit-outs"] ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries), out _) ?? new(StringComparer.Ordinal);
}
