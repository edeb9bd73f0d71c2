using Mastwright.Plans;

namespace Mastwright.Reports.Sessions;

/// <summary>Which station is meant: a neighbour by its key, a site by its key or as SITE/FIT-OUT.</summary>
internal static class StationChoice
{
    /// <summary>Finds a station; null with what is wrong when the name means none.</summary>
    internal static LinkStation? Find(Plan plan, string name, out string problem)
    {
        problem = "";
        if (plan.Neighbours.FirstOrDefault(neighbour => neighbour.Key == name) is { } neighbour)
        {
            return LinkSelection.Station(plan, neighbour);
        }

        string[] parts = name.Split('/');
        if (plan.Sites.FirstOrDefault(site => site.Key == parts[0]) is not { } site)
        {
            problem = $"'{name}' is no station of the plan; there are {FitOutChoice.Listed(plan.Sites.Select(one => one.Key).Concat(plan.Neighbours.Select(one => one.Key)))}";
            return null;
        }

        string key = parts.Length > 1 ? parts[1] : site.InUse;
        if (key.Length == 0 && site.FitOuts.Length == 1)
        {
            key = site.FitOuts[0].Key;
        }

        if (site.FitOuts.FirstOrDefault(fitOut => fitOut.Key == key) is { } fitOut)
        {
            return LinkStation.Of(site, fitOut);
        }

        problem = key.Length == 0
            ? $"'{name}' has no fit-out in use; write one of {FitOutChoice.Listed(site.FitOuts.Select(one => $"{site.Key}/{one.Key}"))}"
            : $"'{name}' names no fit-out; there are {FitOutChoice.Listed(site.FitOuts.Select(one => $"{site.Key}/{one.Key}"))}";
        return null;
    }
}
