using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Station.Rules;

/// <summary>Every row that holds a signal, with what it allows, and why it is not the one that decides.</summary>
internal static class RuleRows
{
    /// <summary>The list as a finding that repeats the verdict of the row that decides.</summary>
    /// <param name="input">The station.</param>
    /// <param name="judgements">Its judgements, the best first: two or more.</param>
    /// <param name="traffic">Its time on the air.</param>
    internal static Finding Of(RadioRulesInput input, ImmutableArray<RuleJudgement> judgements, TrafficEstimate traffic)
    {
        Verdict verdict = judgements[0].Resting(judgements[0].Overall);
        return new()
        {
            Code = "radio-rows",
            Subject = input.PlanPath,
            Verdict = verdict,
            Source = input.Region.Law,
            Details = FindingDetails.Of(
                ("count", RuleWords.Text($"{judgements.Length}")),
                ("rows", string.Join("; ", judgements.Select((judgement, place) => Row(judgement, place == 0, traffic)))),
                ("advice", verdict == Verdict.Ok ? "" : "See which of them the station could be made to keep." + (Held(judgements[0]) ? "" : RuleElsewhere.Advice(input, traffic)))),
        };
    }

    /// <summary>Whether the row that decides is kept as far as it is known: then there is no reason to go elsewhere.</summary>
    private static bool Held(RuleJudgement best) =>
        best is { IsFirm: true, AccessVerdict: Verdict.Ok or Verdict.Tight, TimeVerdict: not Verdict.Fails, PowerVerdict: not Verdict.Fails };

    /// <summary>What a row allows: power, time on the air.</summary>
    internal static IEnumerable<string> Limits(RuleJudgement judgement)
    {
        yield return judgement.PowerLimit is { } limit
            ? RuleWords.PowerAndWatts(limit.Total, judgement.Rule.Reference)
            : judgement.Rule is { PowerDbm: null, DensityDbm: null } ? "any power" : "a power that hangs on the antenna's gain, which is not known";
        yield return judgement.AllowedPercent is { } percent
            ? RuleWords.Percent(percent) + " of the time" + (judgement.ByPoliteAccess ? " by listening before talking" : judgement.Rule.PoliteAllowed ? ", or listening before talking" : "")
            : "any time on the air";
    }

    private static string Row(RuleJudgement judgement, bool decides, TrafficEstimate traffic)
    {
        RadioRule rule = judgement.Rule;
        string why = string.Join(", ", Reasons(judgement, traffic));
        string last = decides ? " and decides" : why.Length == 0 ? ", and allows less than the one that decides" : "";
        return $"{RuleWords.Named(rule)}, {string.Join(" and ", Limits(judgement))}: {RuleWords.Word(judgement.Resting(judgement.Overall))}{last}{(why.Length > 0 ? ", since it " + why : "")}";
    }

    /// <summary>What keeps a row from being ok.</summary>
    private static IEnumerable<string> Reasons(RuleJudgement judgement, TrafficEstimate traffic)
    {
        if (judgement.EdgeVerdict == Verdict.Unknown)
        {
            yield return "holds the signal only if less is true than was assumed of it";
        }

        foreach (RuleCondition condition in judgement.Conditions.Where(condition => condition.Verdict != Verdict.Ok))
        {
            yield return condition.Text;
        }

        if (judgement.PowerVerdict != Verdict.Ok)
        {
            yield return judgement is { PowerDbm: { } power, PowerLimit: { } limit }
                ? power.High > limit.Total
                    ? RuleWords.Text($"allows {power.High - limit.Total:0.0} dB less than the station may put out")
                    : RuleWords.Text($"leaves {limit.Total - power.High:0.0} dB")
                : "limits a power that is not known";
        }

        if (judgement.TimeVerdict != Verdict.Ok)
        {
            yield return $"limits the busiest hour's {RuleWords.Percent(traffic.WorstPercent)} on the air{(traffic.IsAssumed ? ", which is at least partly assumed" : "")}";
        }

        if (!judgement.LawRead)
        {
            yield return "stands in for a law that was not read";
        }
        else if (judgement.Rule.Source.FromMemory)
        {
            yield return "is from memory";
        }
        else if (!judgement.Rule.Source.EditionKnown)
        {
            yield return "was read in an edition that is not known";
        }
    }
}
