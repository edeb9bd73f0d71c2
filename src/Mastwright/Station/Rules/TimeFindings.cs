using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Rules;

/// <summary>The judgement on a station's time on the air against the best row.</summary>
internal static class TimeFindings
{
    internal static Finding Of(RadioRulesInput input, RuleJudgement best, TrafficEstimate traffic)
    {
        double allowed = best.AllowedPercent!.Value;
        return new()
        {
            Code = "time-on-air",
            Subject = input.PlanPath,
            Verdict = best.Resting(best.TimeVerdict),
            Quantity = "share of the busiest hour on the air",
            Unit = "%",
            Value = Estimate.Exactly(traffic.WorstPercent),
            Limit = allowed,
            Margin = allowed - traffic.WorstPercent,
            Assumptions = [.. traffic.Assumptions.Select(assumption => assumption.Code)],
            Source = best.Rule.Source.ToString(),
            Details = FindingDetails.Of(
                ("mean", RuleWords.Percent(traffic.MeanPercent)),
                ("worst", RuleWords.Percent(traffic.WorstPercent)),
                ("packets", RuleWords.Text($"{traffic.WorstPackets:0.#} packets of {traffic.PacketSeconds:0.000} s")),
                ("rule", $"{best.Rule.Name} ({best.Rule.Source.Short})"),
                ("allowed", RuleWords.Percent(allowed)),
                ("way", best.ByPoliteAccess ? ", by listening before talking" : ""),
                ("count", RuleWords.Text($"{traffic.PacketsIn(allowed):0}")),
                ("assumed", traffic.IsAssumed ? " The traffic is at least partly assumed, so that decides nothing." : ""),
                ("memory", RuleWords.Doubt(best.Rule.Source, input.Region)),
                ("advice", Advice(input, best, traffic))),
        };
    }

    private static string Advice(RadioRulesInput input, RuleJudgement best, TrafficEstimate traffic) => best.TimeVerdict switch
    {
        Verdict.Unknown => "Count its packets, and give them at the site's traffic.",
        Verdict.Ok => "Read the text where you are, and put a row of your own with its source into a catalogue file.",
        _ => "Send or pass on less, make packets shorter, or use a lower spreading factor or a wider bandwidth where the links allow it."
            + (best.TimeVerdict == Verdict.Fails ? RuleElsewhere.Advice(input, traffic) : ""),
    };
}
