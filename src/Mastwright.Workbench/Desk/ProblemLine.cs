using System.Globalization;
using System.Text.RegularExpressions;
using Mastwright.Storage.Plans;

namespace Mastwright.Workbench.Desk;

/// <summary>Finds the place that a line of the command line's own words begins with, so that an editor can show it there.</summary>
internal static partial class ProblemLine
{
    /// <summary>The problem that a line tells: "plan.yaml:11:14: ground/heights/1/files: …". Without a place it is about the whole file.</summary>
    internal static PlanProblem Parse(string line, string file)
    {
        Match place = Place().Match(line);
        return place.Success
            ? new()
            {
                Code = "plan-names",
                File = place.Groups["file"].Value,
                Line = int.Parse(place.Groups["line"].Value, CultureInfo.InvariantCulture),
                Column = int.Parse(place.Groups["column"].Value, CultureInfo.InvariantCulture),
                Path = place.Groups["path"].Value,
                Message = place.Groups["rest"].Value,
            }
            : new() { Code = "plan-names", File = file, Message = line };
    }

    [GeneratedRegex(@"^(?<file>[^:\n]+):(?<line>\d{1,9}):(?<column>\d{1,9}): (?:(?<path>[a-z0-9/-]+): )?(?<rest>.+)$", RegexOptions.ExplicitCapture | RegexOptions.Singleline, 1000)]
    private static partial Regex Place();
}
