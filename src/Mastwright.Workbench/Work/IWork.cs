using System.Collections.Immutable;
using Mastwright.Workbench.Desk;

namespace Mastwright.Workbench.Work;

/// <summary>A kind of work that a page asks for and that may take long.</summary>
public interface IWork
{
    /// <summary>Its name in addresses.</summary>
    string Kind { get; }

    /// <summary>What it counts, in the plural.</summary>
    string Unit { get; }

    /// <summary>Whether it goes on where it was after the server was ended.</summary>
    bool GoesOn { get; }

    /// <summary>Whether its answer holds as long as plan and question are the same.</summary>
    bool HangsOnPlan { get; }

    /// <summary>What it does, for the tray: "Shadow of Ferry House".</summary>
    string Title(WorkQuestion question);

    /// <summary>Does it; null, with what is wrong told, when there is no answer.</summary>
    WorkAnswer? Run(WorkItem item, Action<string> tell);
}

/// <summary>What is asked of work.</summary>
/// <param name="View">The reading of the plan that it is about, with a trial in it where one is made.</param>
/// <param name="Settings">What else was asked, by name.</param>
public sealed record WorkQuestion(PlanView View, ImmutableSortedDictionary<string, string> Settings)
{
    /// <summary>Tells questions apart: the plan as it was read, the trial, and all that is asked.</summary>
    internal string Key { get; } = string.Join('\n', [View.PlanHash, View.GroundHash, View.Trial?.What.ToString() ?? "", .. Settings.Select(one => $"{one.Key}={one.Value}")]);

    /// <summary>What was asked under a name; null where nothing was.</summary>
    internal string? this[string name] => Settings.TryGetValue(name, out string? value) && value.Length > 0 ? value : null;
}
