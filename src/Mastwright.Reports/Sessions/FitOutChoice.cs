using Mastwright.Plans;

namespace Mastwright.Reports.Sessions;

/// <summary>Which fit-out stands in for the one in use: "--fit-out ferry-house/eaves".</summary>
internal static class FitOutChoice
{
    /// <summary>Reads the choices; null with what is wrong when one names nothing.</summary>
    internal static Dictionary<string, string>? Read(Plan plan, IEnumerable<string> choices, out string problem)
    {
        Dictionary<string, string> chosen = new(StringComparer.Ordinal);
        foreach (string choice in choices)
        {
            if (Add(plan, choice, chosen) is { } wrong)
            {
                problem = wrong;
                return null;
            }
        }

        problem = "";
        return chosen;
    }

    /// <summary>Adds a choice; what is wrong with it, or null.</summary>
    internal static string? Add(Plan plan, string choice, Dictionary<string, string> chosen)
    {
        string[] parts = choice.Split('/');
        if (plan.Sites.FirstOrDefault(site => site.Key == parts[0]) is not { } site)
        {
            return $"'{parts[0]}' is not a site of the plan; its sites are {Listed(plan.Sites.Select(one => one.Key))}";
        }

        if (parts.Length != 2 || site.FitOuts.All(fitOut => fitOut.Key != parts[1]))
        {
            return $"'{choice}' names no fit-out; write {Listed(site.FitOuts.Select(fitOut => $"{site.Key}/{fitOut.Key}"))}";
        }

        chosen[parts[0]] = parts[1];
        return null;
    }

    internal static string Listed(IEnumerable<string> names)
    {
        string[] all = [.. names];
        return all.Length == 0 ? "(none)" : string.Join(", ", all);
    }
}
