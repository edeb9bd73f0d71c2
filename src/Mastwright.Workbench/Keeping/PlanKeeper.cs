using System.Collections.Immutable;
using Mastwright.Reports.Evidence;
using Mastwright.Storage.Plans;
using Mastwright.Workbench.Desk;
using Mastwright.Workbench.Hosting;

namespace Mastwright.Workbench.Keeping;

/// <summary>Writes the plan: a text from the editor, a change from the map, an earlier state. Nothing else is ever written to.</summary>
/// <remarks>
/// Each change names the hash of the state that it was made from. Where the file is in another state by then, nothing is written and both
/// texts come back, with the two put together where they touch different places. Safe from many threads.
/// </remarks>
internal sealed class PlanKeeper : IDisposable
{
    private readonly WorkbenchOptions options;
    private readonly PlanDesk desk;
    private readonly TimeProvider time;
    private readonly VersionShelf shelf;
    private readonly Lock writing = new();

    /// <summary>Opens what was kept of the plan before.</summary>
    public PlanKeeper(WorkbenchOptions options, PlanDesk desk, TimeProvider time)
    {
        this.options = options;
        this.desk = desk;
        this.time = time;
        shelf = new(KeptFolder.Of(options), desk.FilePath);
        desk.Changed += Remember;
        Remember(this, EventArgs.Empty);
    }

    /// <summary>The last saved change that can be undone; null when there is none.</summary>
    internal HistoryStep? LastStep
    {
        get
        {
            lock (writing)
            {
                return shelf.Steps is [.., var last] ? last : null;
            }
        }
    }

    /// <summary>The file as it is now.</summary>
    internal PlanRevision? Read(out PlanProblem? problem)
    {
        PlanRevision? now = PlanRevision.Read(desk.FilePath, out problem);
        if (now is not null)
        {
            shelf.Remember(now);
        }

        return now;
    }

    /// <summary>Everything that is wrong with a text in the place of the plan's: what the command line would say.</summary>
    internal DraftCheck Check(string text)
    {
        // A file that cannot be read now (it is away, or no text) is no reason not to judge the new one.
        PlanRevision? now = Read(out PlanProblem? problem) ?? PlanRevision.FromBytes(desk.FilePath, [], out problem);
        if (now?.With(text, out problem) is not { } draft)
        {
            return new([problem!], []);
        }

        PlanReading reading = draft.Check(new() { AllowOutside = options.AllowOutside });
        return reading.Document is { } document
            ? new(desk.ProblemsBehind(document), [.. document.Notes])
            : new(reading.Problems, []);
    }

    /// <summary>Writes the text of the editor.</summary>
    internal KeepResult Save(string basedOn, string text) => Write(basedOn, state => state.With(text, out PlanProblem? problem) is { } changed ? new(changed, null) : new(null, problem), "the text of the plan");

    /// <summary>Writes a change from the map: a site's place, the height of its antenna, or a new site.</summary>
    internal KeepResult Keep(string basedOn, KeptChange change) => Write(basedOn, change.In, change.What);

    /// <summary>Writes a fitted correction into the plan and puts it to use.</summary>
    internal KeepResult Adopt(string basedOn, CorrectionAnswer answer, string name) => desk.Current.Session is { } session && CorrectionText.Refusal(session.Plan, name) is { } refusal
        ? KeepResult.Of(refusal)
        : Write(basedOn, state => CorrectionKeeping.In(answer, name, state), $"correction {name} adopted");

    /// <summary>Puts back the state before the last saved change.</summary>
    internal KeepResult Undo(string basedOn)
    {
        lock (writing)
        {
            if (Read(out PlanProblem? problem) is not { } now)
            {
                return KeepResult.Of(problem!);
            }

            if (shelf.Steps is not [.., var step] || shelf.Find(step.Before) is not { } before)
            {
                return KeepResult.Of(new PlanProblem { Code = "plan-undo", File = desk.FileName, Message = "There is no saved change to undo." });
            }

            if (now.Hash != basedOn || now.Hash != step.After)
            {
                return Conflict(shelf.Find(step.After), before, now, $"Undo: {step.What}");
            }

            if (before.Save(now.Hash) is { } fault)
            {
                return fault.Code == "plan-changed" && Read(out _) is { } other ? Conflict(now, before, other, $"Undo: {step.What}") : KeepResult.Of(fault);
            }

            shelf.TakeLast();
            shelf.Remember(before);
            return Written(before);
        }
    }

    /// <summary>Keeps a page's unsaved text; one that is the file's own text again is dropped.</summary>
    internal void WriteDraft(string id, string basedOn, string text)
    {
        lock (writing)
        {
            if (Read(out _) is { } now && now.Text == text)
            {
                shelf.DropDraft(id);
                return;
            }

            if (shelf.Find(basedOn) is { } from)
            {
                shelf.Keep(from);
            }

            shelf.Write(new(id, time.GetUtcNow(), basedOn, text));
        }
    }

    /// <summary>Drops a draft: it was saved, or its writer wants it no more.</summary>
    internal void DropDraft(string id)
    {
        lock (writing)
        {
            shelf.DropDraft(id);
        }
    }

    /// <summary>All drafts of the plan, newest first.</summary>
    internal Draft[] Drafts()
    {
        lock (writing)
        {
            return shelf.Drafts();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => desk.Changed -= Remember;

    private KeepResult Write(string basedOn, Func<PlanRevision, PlanChange> change, string what)
    {
        lock (writing)
        {
            if (Read(out PlanProblem? problem) is not { } now)
            {
                return KeepResult.Of(problem!);
            }

            PlanRevision? from = now.Hash == basedOn ? now : shelf.Find(basedOn);
            PlanChange made = change(from ?? now);
            if (made.State is not { } yours)
            {
                return KeepResult.Of(made.Problem!);
            }

            if (yours.Text == now.Text)
            {
                return Written(now);
            }

            if (now.Hash != basedOn)
            {
                return Conflict(from, yours, now, what);
            }

            if (yours.Save(now.Hash) is { } fault)
            {
                return fault.Code == "plan-changed" && Read(out _) is { } other ? Conflict(now, yours, other, what) : KeepResult.Of(fault);
            }

            shelf.Keep(now);
            shelf.Keep(yours);
            shelf.Add(new(time.GetUtcNow(), what, now.Hash, yours.Hash));
            shelf.Remember(yours);
            return Written(yours) with { Notes = made.Notes };
        }
    }

    private KeepResult Written(PlanRevision state)
    {
        // Pages hear of it now, not at the next look.
        desk.Reload();
        return new() { Now = state };
    }

    private static KeepResult Conflict(PlanRevision? from, PlanRevision yours, PlanRevision theirs, string what) =>
        new() { Conflict = new(what, yours.Text, theirs, from is null ? null : LineMerge.Of(from.Text, yours.Text, theirs.Text)) };

    private void Remember(object? sender, EventArgs nothing) => Read(out _);
}

/// <summary>What is wrong with a draft, and what is worth a look.</summary>
internal sealed record DraftCheck(ImmutableArray<PlanProblem> Problems, ImmutableArray<PlanProblem> Notes);

/// <summary>A changed state of the plan, or why there is none.</summary>
internal sealed record PlanChange(PlanRevision? State, PlanProblem? Problem)
{
    /// <summary>What the reader should look at after it.</summary>
    internal ImmutableArray<string> Notes { get; init; } = [];
}

/// <summary>What came of writing: the state that the file is in now, two versions to choose from, or a problem.</summary>
internal sealed record KeepResult
{
    internal PlanRevision? Now { get; init; }

    internal KeepConflict? Conflict { get; init; }

    internal PlanProblem? Problem { get; init; }

    internal ImmutableArray<string> Notes { get; init; } = [];

    internal static KeepResult Of(PlanProblem problem) => new() { Problem = problem };
}

/// <summary>The file was changed meanwhile.</summary>
/// <param name="What">What was to be done.</param>
/// <param name="Yours">The text that was to be written.</param>
/// <param name="Theirs">The file as it is.</param>
/// <param name="Merged">Both changes in one text; null where they touch the same place.</param>
internal sealed record KeepConflict(string What, string Yours, PlanRevision Theirs, string? Merged);
