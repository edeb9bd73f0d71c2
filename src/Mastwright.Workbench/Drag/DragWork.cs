using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Reports.Reach;
using Mastwright.Reports.Sessions;
using Mastwright.Workbench.Desk;

namespace Mastwright.Workbench.Drag;

/// <summary>Works out one step of a drag. It reads no file that was read before: the ground's pieces stay in memory.</summary>
internal static class DragWork
{
    /// <summary>The answer; null with what is wrong with the question.</summary>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    internal static DragAnswer? Of(PlanView view, DragQuestion question, out string problem, CancellationToken cancellation)
    {
        PlanView tried = view;
        string name = question.Station;
        if (name.Contains('@', StringComparison.Ordinal))
        {
            if (Trial.Parse(name, view.Session!.Plan, out problem) is not { } trial)
            {
                return null;
            }

            tried = view.Trying(trial);
            name = $"{trial.KeyIn(view.Session.Plan)}/{trial.FitOut}";
        }

        PlanSession session = tried.Session!;
        if (FitOutChoice.Read(session.Plan, question.FitOuts.IsDefault ? [] : question.FitOuts, out problem) is not { } chosen
            || StationChoice.Find(session.Plan, name, out problem) is not { } station)
        {
            return null;
        }

        LinkStation? far = null;
        if (question.To is { } to && to != station.Key && (far = StationChoice.Find(session.Plan, chosen.TryGetValue(to, out string? fitOut) ? $"{to}/{fitOut}" : to, out problem)) is null)
        {
            return null;
        }

        ReachOptions? reach = null;
        if (question.Reach is { } asked && (reach = Options(asked, station, out problem)) is null)
        {
            return null;
        }

        problem = "";
        long start = Stopwatch.GetTimestamp();
        ImmutableArray<LinkReport> links = question.WithLinks ? Links(session, station, chosen, cancellation) : [];
        LinkReport? path = far is null ? null
            : links.FirstOrDefault(link => link.From.Key == station.Key && link.To.Subject == far.Subject) ?? session.Assessment.Link(station, far);
        cancellation.ThrowIfCancellationRequested();
        double linksMilliseconds = Stopwatch.GetElapsedTime(start).TotalMilliseconds;
        start = Stopwatch.GetTimestamp();
        ImmutableArray<string> problems = [];
        ReachReport? report = reach is null ? null : ReachRun.Make(session, reach, out problems, cancellation: cancellation);
        return new()
        {
            Station = station,
            Links = links,
            Path = path,
            IsBack = question.IsBack,
            Reach = report,
            ReachOptions = reach,
            Problems = problems,
            Timing = string.Create(CultureInfo.InvariantCulture, $"links;dur={linksMilliseconds:0.0}, reach;dur={Stopwatch.GetElapsedTime(start).TotalMilliseconds:0.0}"),
        };
    }

    private static ImmutableArray<LinkReport> Links(PlanSession session, LinkStation station, Dictionary<string, string> chosen, CancellationToken cancellation)
    {
        if (station.FitOut is { } fitOut)
        {
            chosen[station.Key] = fitOut.Key;
        }

        ImmutableArray<(LinkStation From, LinkStation To)> pairs = LinkSelection.Pairs(session.Plan, LinkSelection.Stations(session.Plan, chosen), station.Key);
        LinkReport[] links = new LinkReport[pairs.Length];
        Parallel.For(0, pairs.Length, new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount }, i =>
        {
            links[i] = session.Assessment.Link(pairs[i].From, pairs[i].To);
        });
        return [.. links];
    }

    private static ReachOptions? Options(DragReach asked, LinkStation station, out string problem)
    {
        if (asked.Direction is not (null or "heard" or "hears" or "both"))
        {
            problem = "direction: write heard, hears or both";
            return null;
        }

        ReachOptions options = new()
        {
            Stations = [station.Subject],
            CompareFitOut = asked.Layer == ReachLayers.Difference ? asked.CompareFitOut : null,
            Area = new(asked.RadiusMetres, asked.CellMetres),
            Receiver = asked.Receiver ?? ReachReceiver.HandheldKey,
            Direction = ReachReport.DirectionOf(asked.Direction),
            LayerAsked = asked.Layer,
            LeastStepMetres = asked.IsQuick ? asked.CellMetres : 0,
            IsDark = asked.IsDark,
            Files = [],
        };
        problem = ReachLayers.Problem(options) ?? "";
        return problem.Length == 0 ? options : null;
    }
}
