using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Rules;

/// <summary>The judgement on a station's power against the best row.</summary>
internal static class PowerFindings
{
    internal static Finding Of(RadioRulesInput input, RuleJudgement best, ImmutableArray<RuleJudgement> judgements, TrafficEstimate traffic)
    {
        RadioRule rule = best.Rule;
        bool aboveAll = judgements.All(judgement => judgement.PowerVerdict == Verdict.Fails);
        return new()
        {
            Code = "radiated-power",
            Subject = input.PlanPath,
            Verdict = best.Resting(best.PowerVerdict),
            Quantity = rule.Reference == PowerReference.Conducted ? "power at the antenna's port" : "radiated power",
            Unit = "dBm",
            Value = best.PowerDbm,
            Limit = best.PowerLimit?.Total,
            Margin = best.PowerLimit?.Total - best.PowerDbm?.Median,
            Source = rule.Source.ToString(),
            Details = FindingDetails.Of(
                ("says", Says(best)),
                ("setting", Setting(best)),
                ("above", aboveAll ? $" That is above every licence-exempt row of {input.Region.Name} at this frequency; amateur and other licences are outside this judgement." : ""),
                ("memory", RuleWords.Doubt(rule.Source, input.Region)),
                ("advice", Advice(best) + (best.PowerVerdict == Verdict.Fails ? RuleElsewhere.Advice(input, traffic) : ""))),
        };
    }

    private static string Says(RuleJudgement best)
    {
        string rule = $"{best.Rule.Name} ({best.Rule.Source.Short})";
        string allowed = best.PowerLimit is { } limit
            ? $"{rule} allows {RuleWords.PowerAndWatts(limit.Total, best.Rule.Reference)}{(limit.Lines.Length > 1 ? " with this antenna and bandwidth" : "")}"
            : $"what {rule} allows with it is not known either";
        if (best.PowerDbm is not { } power)
        {
            return best.PowerLimit is null ? $"The power is not known, for want of the antenna's gain; {allowed}." : $"The power is not known; {allowed}.";
        }

        string value = power.High - power.Low < 0.05
            ? RuleWords.Power(power.Median, best.Rule.Reference)
            : RuleWords.Text($"{power.Low:0.0} to {RuleWords.Power(power.High, best.Rule.Reference)}");
        return $"The station puts out {value}; {allowed}.";
    }

    private static string Setting(RuleJudgement best) => best switch
    {
        { Setting: { } setting } => RuleWords.Text($" The largest lawful setting of the radio with this antenna and feed is {RuleWords.AtMost(setting.Total)} dBm."),
        { PowerLimit: not null } => " An amplifier in the feed decides the power, not the radio's setting.",
        _ => "",
    };

    private static string Advice(RuleJudgement best) => best switch
    {
        { PowerVerdict: Verdict.Unknown, PowerDbm: null } => "Give the power of the radio, its feed and the antenna's gain.",
        { PowerVerdict: Verdict.Tight } => "Measure it, or set the radio a decibel lower: a simple power meter is a decibel off.",
        { PowerVerdict: Verdict.Unknown, Setting: { } setting } => RuleWords.Text($"The range of what is known crosses the limit: set the radio to {RuleWords.AtMost(setting.Total)} dBm or less, or find out more."),
        { PowerVerdict: Verdict.Fails, Setting: { } setting } => RuleWords.Text($"Set the radio to {RuleWords.AtMost(setting.Total)} dBm or less, or use an antenna with less gain."),
        { PowerVerdict: Verdict.Fails } => "Leave the amplifier out.",
        _ => "Read the text where you are, and put a row of your own with its source into a catalogue file.",
    };
}
