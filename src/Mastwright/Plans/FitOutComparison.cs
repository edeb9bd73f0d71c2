using System.Collections.Immutable;
using Mastwright.Quantities;

namespace Mastwright.Plans;

/// <summary>The fit-outs of a site side by side.</summary>
/// <param name="Site">The site.</param>
/// <param name="FitOuts">Its fit-outs, in the plan's order.</param>
/// <param name="Measures">What they are compared in, in the order to read them.</param>
public sealed record FitOutComparison(Site Site, ImmutableArray<ComparedFitOut> FitOuts, ImmutableArray<ComparedMeasure> Measures);

/// <summary>One fit-out of a comparison.</summary>
/// <param name="FitOut">The fit-out.</param>
/// <param name="IsInUse">Whether it is the one in use.</param>
/// <param name="Report">The plan with it in use, for this site.</param>
/// <param name="Parts">What has to be bought and cut.</param>
public sealed record ComparedFitOut(FitOut FitOut, bool IsInUse, PlanReport Report, ImmutableArray<PartNeeded> Parts);

/// <summary>A part of a fit-out, for a list of parts.</summary>
/// <param name="What">What it is, with its catalogue key or name.</param>
/// <param name="Count">How many.</param>
/// <param name="LengthMetres">Length of one in metres; null for what has none.</param>
/// <param name="PlanPath">Where in the plan it stands.</param>
public sealed record PartNeeded(string What, int Count, Estimate? LengthMetres, string PlanPath);

/// <summary>Which way a measure is better.</summary>
public enum BetterWhen
{
    /// <summary>Neither: it is held against a limit of its own.</summary>
    Neither,

    /// <summary>The more the better.</summary>
    More,

    /// <summary>The less the better.</summary>
    Less,
}

/// <summary>One measure of every fit-out.</summary>
/// <param name="Code">Stable name, kebab-case.</param>
/// <param name="Label">What a person reads.</param>
/// <param name="Unit">Unit of the values; empty for a count.</param>
/// <param name="Better">Which way it is better.</param>
/// <param name="Values">A value for each fit-out, in their order.</param>
public sealed record ComparedMeasure(string Code, string Label, string Unit, BetterWhen Better, ImmutableArray<ComparedValue> Values)
{
    /// <summary>
    /// The places of the fit-outs that are ahead: the best by its median, and every other whose range is not wholly behind its own. Empty while fewer than two are
    /// known, when neither way is better, and when none is behind.
    /// </summary>
    public ImmutableArray<int> Ahead
    {
        get
        {
            int[] known = [.. Enumerable.Range(0, Values.Length).Where(i => Values[i].Value is not null)];
            if (known.Length < 2 || Better == BetterWhen.Neither)
            {
                return [];
            }

            int best = Better == BetterWhen.More ? known.MaxBy(i => Values[i].Value!.Value.Median) : known.MinBy(i => Values[i].Value!.Value.Median);
            Estimate one = Values[best].Value!.Value;
            ImmutableArray<int> ahead =
            [
                .. known.Where(i => i == best || !(Better == BetterWhen.More
                    ? one.Low > Values[i].Value!.Value.High + Noise(one)
                    : one.High < Values[i].Value!.Value.Low - Noise(one))),
            ];
            return ahead.Length == known.Length ? [] : ahead;
        }
    }

    /// <summary>What two sums of the same numbers may differ by.</summary>
    private static double Noise(Estimate value) => 1e-9 * Math.Max(1, Math.Abs(value.Median));
}

/// <summary>A measure of one fit-out.</summary>
/// <param name="Value">The value; null when unknown.</param>
/// <param name="Limit">The limit that it is held against; null when there is none.</param>
/// <param name="Note">What belongs to it: the station of the weakest link, why it is not known.</param>
public sealed record ComparedValue(Estimate? Value, double? Limit = null, string Note = "");
