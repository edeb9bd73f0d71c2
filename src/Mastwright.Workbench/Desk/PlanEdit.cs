using System.Collections.Immutable;
using Mastwright.Storage.Plans;

namespace Mastwright.Workbench.Desk;

/// <summary>One value of a fit-out that is tried with another text. It stands in addresses and in no file until it is kept.</summary>
/// <param name="Site">Key of the site.</param>
/// <param name="FitOut">Key of the fit-out.</param>
/// <param name="Path">Path below the fit-out: "supply/3/length".</param>
/// <param name="Value">What is tried, as the plan would write it: "40 m".</param>
/// <remarks>As text: "ferry-house/net-loft/supply/3/length:40 m".</remarks>
public sealed record PlanEdit(string Site, string FitOut, string Path, string Value)
{
    private const int MostLength = 300;
    private const int LeastSteps = 3;

    /// <summary>The path in the whole plan.</summary>
    public string PlanPath => $"sites/{Site}/fit-outs/{FitOut}/{Path}";

    /// <summary>Reads a change; null when the text is none.</summary>
    public static PlanEdit? Parse(string? text)
    {
        if (text is null or { Length: > MostLength } || text.IndexOf(':', StringComparison.Ordinal) is not (> 0 and var colon))
        {
            return null;
        }

        string[] steps = text[..colon].Split('/');
        string value = text[(colon + 1)..].Trim();
        return steps.Length >= LeastSteps && value.Length > 0 && steps.All(IsStep) ? new(steps[0], steps[1], string.Join('/', steps[2..]), value) : null;
    }

    /// <summary>What is said of a text that is no change.</summary>
    internal static string Refusal(string text) => $"change: '{text}' is no change; write SITE/FIT-OUT/PATH:VALUE, such as ferry-house/net-loft/supply/3/length:40 m";

    /// <summary>The plan's text with all changes in it; comments, order and quoting stay.</summary>
    /// <param name="state">The file.</param>
    /// <param name="edits">The changes, one after another.</param>
    /// <param name="problem">Why there is none; null when there is one.</param>
    internal static PlanRevision? In(PlanRevision state, ImmutableArray<PlanEdit> edits, out PlanProblem? problem)
    {
        PlanTextResult result = state.AsText();
        foreach (PlanEdit edit in edits)
        {
            if (result.Text is not { } text)
            {
                break;
            }

            result = text.With(edit.PlanPath, edit.Value);
        }

        problem = result.Problem;
        return result.Text is { } done ? state.With(done.Text, out problem) : null;
    }

    /// <summary>The text that means this change.</summary>
    public override string ToString() => $"{Site}/{FitOut}/{Path}:{Value}";

    private static bool IsStep(string step) => step.Length > 0 && step.All(letter => char.IsAsciiLetterOrDigit(letter) || letter == '-');
}
