using Mastwright.Plans;
using Mastwright.Reports.Sessions;

namespace Mastwright.Workbench.Desk;

/// <summary>Stations of a plan by what a page knows of them.</summary>
internal static class Stations
{
    /// <summary>The station of a key with the fit-out chosen for it, else the one in use, else the only one; null where none of these is there.</summary>
    internal static LinkStation? Of(Plan plan, string? key, IReadOnlyDictionary<string, string> fitOuts) => key is null
        ? null
        : StationChoice.Find(plan, fitOuts.TryGetValue(key, out string? fitOut) ? $"{key}/{fitOut}" : key, out _);

    /// <summary>What a station is called; its key where the plan has none of that key.</summary>
    internal static string Name(Plan plan, string key) =>
        plan.Sites.FirstOrDefault(site => site.Key == key)?.Name ?? plan.Neighbours.FirstOrDefault(neighbour => neighbour.Key == key)?.Name ?? key;

    /// <summary>The same where there may be no plan, or nothing selected.</summary>
    internal static string Name(PlanView view, string? key) => key is null ? "a station" : view.Session is { } session ? Name(session.Plan, key) : key;
}
