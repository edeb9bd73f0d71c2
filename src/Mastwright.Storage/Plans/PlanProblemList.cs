using System.Collections.Immutable;
using System.Globalization;

namespace Mastwright.Storage.Plans;

/// <summary>Collects problems, each once, and tells them in the order of the file.</summary>
internal sealed class PlanProblemList
{
    /// <summary>Problems past this number are counted and not kept: a file of nothing but faults must not fill the memory.</summary>
    private const int MostKept = 2000;

    private readonly List<PlanProblem> problems = [];
    private readonly HashSet<string> seen = [];
    private int uncounted;

    /// <summary>Whether there are none.</summary>
    internal bool IsEmpty => problems.Count == 0;

    /// <summary>How many were kept so far.</summary>
    internal int Count => problems.Count;

    /// <summary>Whether there are so many that none is worth a closer look.</summary>
    internal bool HasMany => problems.Count > 2 * PlanLimits.Problems;

    /// <summary>Adds a problem; one that was told already (a part that is used twice) stays one.</summary>
    internal void Add(PlanProblem problem)
    {
        if (problems.Count >= MostKept)
        {
            uncounted++;
        }
        else if (seen.Add(string.Create(CultureInfo.InvariantCulture, $"{problem.File}:{problem.Line}:{problem.Column}:{problem.Message}")))
        {
            problems.Add(problem);
        }
    }

    /// <summary>The problems by file (the plan first), line and column; past the bound only their number.</summary>
    internal ImmutableArray<PlanProblem> Sorted(string plan)
    {
        List<PlanProblem> sorted = [.. problems
            .OrderBy(problem => problem.File == plan ? 0 : 1)
            .ThenBy(problem => problem.File, StringComparer.Ordinal)
            .ThenBy(problem => problem.Line)
            .ThenBy(problem => problem.Column)
            .ThenBy(problem => problem.Message, StringComparer.Ordinal)];
        if (sorted.Count <= PlanLimits.Problems)
        {
            return [.. sorted];
        }

        PlanProblem more = new()
        {
            Code = "plan-more-problems",
            File = plan,
            Message = $"There are {sorted.Count - PlanLimits.Problems + uncounted} more problems; mend these first.",
        };
        return [.. sorted.Take(PlanLimits.Problems), more];
    }

    /// <summary>A found text, on one line and short enough to repeat.</summary>
    internal static string Clip(string text)
    {
        Span<char> clean = stackalloc char[PlanLimits.FoundLength];
        int count = Math.Min(text.Length, clean.Length);
        for (int i = 0; i < count; i++)
        {
            clean[i] = char.IsControl(text[i]) ? ' ' : text[i];
        }

        if (count > 0 && count < text.Length && char.IsHighSurrogate(clean[count - 1]))
        {
            count--;
        }

        return count < text.Length ? string.Concat(clean[..count], "…") : clean[..count].ToString();
    }
}
