using Mastwright.Plans;

namespace Mastwright.Cli;

/// <summary>Which station is meant: a neighbour by its key, a site by its key or as SITE/FIT-OUT.</summary>
internal static class StationChoice
{
    /// <summary>Finds a station; tells what is wrong on the error output and gives null.</summary>
    internal static LinkStation? Find(Plan plan, string name)
    {
        if (plan.Neighbours.FirstOrDefault(neighbour => neighbour.Key == name) is { } neighbour)
        {
            return LinkStation.Of(neighbour);
        }

        string[] parts = name.Split('/');
        if (plan.Sites.FirstOrDefault(site => site.Key == parts[0]) is not { } site)
        {
            Console.Error.WriteLine($"'{name}' is no station of the plan; there are {FitOutChoice.Listed(plan.Sites.Select(one => one.Key).Concat(plan.Neighbours.Select(one => one.Key)))}");
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

        Console.Error.WriteLine(key.Length == 0
            ? $"'{name}' has no fit-out in use; write one of {FitOutChoice.Listed(site.FitOuts.Select(one => $"{site.Key}/{one.Key}"))}"
            : $"'{name}' names no fit-out; there are {FitOutChoice.Listed(site.FitOuts.Select(one => $"{site.Key}/{one.Key}"))}");
        return null;
    }
}
