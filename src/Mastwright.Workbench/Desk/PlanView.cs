using System.Collections.Concurrent;
using System.Collections.Immutable;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;
using Mastwright.Storage.Plans;
using Mastwright.Workbench.Tiles;

namespace Mastwright.Workbench.Desk;

/// <summary>One reading of the plan with everything worked out of it so far. Safe from many threads; what is asked twice is worked out once.</summary>
public sealed class PlanView
{
    private const int MostKept = 256;

    /// <summary>Each plan that is tried holds verdicts on all of its links: a page needs the last, and a step back or two.</summary>
    private const int MostChanged = 12;

    private readonly ConcurrentDictionary<string, Lazy<PlanReport>> reports = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<(string From, string To), Lazy<LinkReport>> links = [];
    private readonly ConcurrentDictionary<string, Lazy<PlanView>> trials = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<ChangedPlan>> changes = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<FitOutComparison>> comparisons = new(StringComparer.Ordinal);

    internal PlanView(int number, PlanSession? session, GroundTiles? tiles) => (Number, Session, Tiles) = (number, session, tiles);

    /// <summary>Counts readings, from 1.</summary>
    public int Number { get; }

    /// <summary>The plan with its ground; null when it cannot be used: <see cref="Problems"/> says why.</summary>
    internal PlanSession? Session { get; }

    /// <summary>What keeps the plan from being used, line by line.</summary>
    public ImmutableArray<string> Problems { get; init; } = [];

    /// <summary>What is tried in it, and the key of its station; null when it is the plan as it stands in its file.</summary>
    public (Trial What, string Key)? Trial { get; init; }

    /// <summary>What is no error but worth a look.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>Hash of the plan file as it was read: a change of it names it. Empty when there is no such file.</summary>
    public string PlanHash { get; init; } = "";

    /// <summary>The plan file as it was read; null when it could not be, or was changed while it was read.</summary>
    internal PlanRevision? Revision { get; init; }

    /// <summary>Whether the plan may name files outside its folder.</summary>
    internal bool AllowOutside { get; init; }

    /// <summary>Tiles of the ground; null when the plan cannot be used.</summary>
    internal GroundTiles? Tiles { get; }

    /// <summary>Names the ground's files as they were opened: it stands in the address of every tile.</summary>
    public string GroundHash => Session?.GroundHash[..16] ?? "none";

    /// <summary>A verdict on every link of the plan.</summary>
    /// <param name="chosen">Fit-out by site key that stands in for the one in use.</param>
    /// <exception cref="InvalidOperationException">The plan cannot be used.</exception>
    internal PlanReport Report(IReadOnlyDictionary<string, string> chosen)
    {
        PlanSession session = Session ?? throw new InvalidOperationException("There is no plan to examine.");
        return Kept(reports, Key(chosen), () => session.Assessment.Run(chosen));
    }

    /// <summary>Everything about one path.</summary>
    /// <exception cref="InvalidOperationException">The plan cannot be used.</exception>
    internal LinkReport Link(LinkStation from, LinkStation to)
    {
        PlanSession session = Session ?? throw new InvalidOperationException("There is no plan to examine.");
        return Kept(links, (from.Subject, to.Subject), () => session.Assessment.Link(from, to));
    }

    /// <summary>The same reading with a trial in the plan: it stands in no file.</summary>
    /// <exception cref="InvalidOperationException">The plan cannot be used.</exception>
    internal PlanView Trying(Trial trial)
    {
        PlanSession session = Session ?? throw new InvalidOperationException("There is no plan to try something in.");
        return Kept(trials, trial.ToString(), () => new PlanView(Number, session.With(trial.In(session.Plan)), Tiles) { PlanHash = PlanHash, Notes = Notes, Trial = (trial, trial.KeyIn(session.Plan)) });
    }

    /// <summary>The same reading with values of fit-outs changed: in memory, by the same door as a change that is written.</summary>
    /// <exception cref="InvalidOperationException">The plan cannot be used.</exception>
    internal ChangedPlan Changing(ImmutableArray<PlanEdit> edits)
    {
        PlanSession session = Session ?? throw new InvalidOperationException("There is no plan to change.");
        return edits.IsEmpty ? new(this, []) : Kept(changes, string.Join('\n', edits), () => Changed(session, edits), MostChanged);
    }

    /// <summary>The fit-outs of a site side by side.</summary>
    /// <exception cref="InvalidOperationException">The plan cannot be used.</exception>
    internal FitOutComparison Compare(string site, IReadOnlyDictionary<string, string> chosen)
    {
        PlanSession session = Session ?? throw new InvalidOperationException("There is no plan to examine.");
        return Kept(comparisons, $"{site} {Key(chosen)}", () => session.Assessment.Compare(site, chosen));
    }

    private ChangedPlan Changed(PlanSession session, ImmutableArray<PlanEdit> edits)
    {
        if (Revision is null)
        {
            return new(null, ["The plan file was changed just now; it is read again in a moment."]);
        }

        if (PlanEdit.In(Revision, edits, out PlanProblem? problem) is not { } changed)
        {
            return new(null, [problem!.ToString()]);
        }

        PlanReading reading = changed.Check(new() { AllowOutside = AllowOutside });
        if (reading.Document is not { } document)
        {
            return new(null, [.. reading.Problems.Select(one => one.ToString())]);
        }

        List<string> told = [];
        return PlanSession.Over(document, AllowOutside, told.Add, before: session) is { } tried
            ? new(new(Number, tried, Tiles) { PlanHash = PlanHash, Notes = Notes, AllowOutside = AllowOutside }, [])
            : new(null, [.. told]);
    }

    private static string Key(IReadOnlyDictionary<string, string> chosen) => string.Join(' ', chosen.OrderBy(one => one.Key, StringComparer.Ordinal).Select(one => $"{one.Key}/{one.Value}"));

    private static T Kept<TKey, T>(ConcurrentDictionary<TKey, Lazy<T>> shelf, TKey key, Func<T> make, int most = MostKept)
        where TKey : notnull
    {
        // Everything falls with the next change of the plan; a shelf that is full before that is emptied.
        if (shelf.Count >= most && !shelf.ContainsKey(key))
        {
            shelf.Clear();
        }

        return shelf.GetOrAdd(key, _ => new Lazy<T>(make)).Value;
    }
}
