using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Plans;

/// <summary>What moves when a plan is changed: the measures of a site's fit-out, and every judgement that is another one.</summary>
/// <param name="Measures">The measures that fit-outs are compared in, before and after, in this order.</param>
/// <param name="Findings">Judgements that came, went, or changed their verdict or value; those whose verdict changed first.</param>
public sealed record ReportDifference(ImmutableArray<ComparedMeasure> Measures, ImmutableArray<MovedFinding> Findings)
{
    /// <summary>Values that differ by less than this share of themselves are the same.</summary>
    private const double Same = 1e-9;

    /// <summary>Holds two reports against each other.</summary>
    /// <param name="site">Key of the site, which both reports examine.</param>
    /// <param name="before">The plan as it is.</param>
    /// <param name="after">The plan as it would be.</param>
    public static ReportDifference Of(string site, PlanReport before, PlanReport after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        Dictionary<(string, string, string), Finding> old = ByPlace(before);
        Dictionary<(string, string, string), Finding> made = ByPlace(after);
        IEnumerable<MovedFinding> moved = old.Keys.Concat(made.Keys.Where(key => !old.ContainsKey(key)))
            .Select(key => new MovedFinding(old.GetValueOrDefault(key), made.GetValueOrDefault(key)))
            .Where(one => one.Before is null || one.After is null || one.ChangesVerdict || Differ(one.Before, one.After));
        return new(
            ComparedMeasures.Of(site, [before, after]),
            [.. moved.OrderByDescending(one => one.ChangesVerdict).ThenBy(one => (one.After ?? one.Before)!.Subject, StringComparer.Ordinal)]);
    }

    /// <summary>Findings by code, subject and quantity: the first of each.</summary>
    private static Dictionary<(string, string, string), Finding> ByPlace(PlanReport report) => report.AllFindings
        .GroupBy(finding => (finding.Code, finding.Subject, finding.Quantity))
        .ToDictionary(group => group.Key, group => group.First());

    private static bool Differ(Finding one, Finding other) =>
        Differ(one.Value?.Low, other.Value?.Low) || Differ(one.Value?.Median, other.Value?.Median) || Differ(one.Value?.High, other.Value?.High)
        || Differ(one.Limit, other.Limit) || Differ(one.Margin, other.Margin)
        || (one.Value is null && other.Value is null && !one.Details.SequenceEqual(other.Details));

    private static bool Differ(double? one, double? other) => (one, other) switch
    {
        (null, null) => false,
        ({ } left, { } right) => Math.Abs(left - right) > Same * Math.Max(1, Math.Abs(left)),
        _ => true,
    };
}

/// <summary>A judgement before and after a change.</summary>
/// <param name="Before">As it is; null when it is not made.</param>
/// <param name="After">As it would be; null when it is not made any more.</param>
public sealed record MovedFinding(Finding? Before, Finding? After)
{
    /// <summary>Whether the verdict is another, or there was none or will be none.</summary>
    public bool ChangesVerdict => Before?.Verdict != After?.Verdict;
}
