using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Rules;

/// <summary>The judgement on where a signal lies and how it is sent.</summary>
internal static class BandFindings
{
    internal static Finding Of(RadioRulesInput input, OccupiedBand band, ImmutableArray<RuleJudgement> judgements, TrafficEstimate traffic)
    {
        if (judgements.IsEmpty)
        {
            return None(input, band);
        }

        RuleJudgement best = judgements[0];

        // Where a row that anybody may use is only the last way out, the others are told of too.
        bool lastWay = best.Rule.Access == RuleAccess.Any && judgements.Any(judgement => judgement.Rule.Access != RuleAccess.Any);
        return best.AccessVerdict == Verdict.Fails || (lastWay && best.Overall == Verdict.Fails)
            ? NotMet(input, judgements, traffic)
            : Holds(input, band, best);
    }

    private static Finding Holds(RadioRulesInput input, OccupiedBand band, RuleJudgement best)
    {
        RadioRule rule = best.Rule;
        string[] open = [.. best.Conditions.Where(condition => condition.Verdict != Verdict.Ok).Select(condition => condition.Text)];
        return new()
        {
            Code = "radio-band",
            Subject = input.PlanPath,
            Verdict = best.Resting(best.AccessVerdict),
            Quantity = "distance to the edge of the band",
            Unit = "kHz",
            Value = Estimate.Exactly(best.EdgeMarginHz / 1e3),
            Limit = 0,
            Margin = best.EdgeMarginHz / 1e3,
            Assumptions = [.. band.Assumptions.Concat(NationalLaw.Assumed(input.Region)).Select(assumption => assumption.Code).Distinct()],
            Source = rule.Source.ToString(),
            Details = FindingDetails.Of(
                ("signal", RuleWords.Band(band.LowHz, band.HighHz)),
                ("error", RuleWords.Kilohertz(band.ErrorHz)),
                ("rule", $"{rule.Name} ({RuleWords.Band(rule.LowHz, rule.HighHz)}, {rule.Source.Short})"),
                ("room", best.EdgeMarginHz >= 0 ? $"{RuleWords.Kilohertz(best.EdgeMarginHz)} inside its nearer edge" : $"{RuleWords.Kilohertz(-best.EdgeMarginHz)} over its edge, by what is only assumed of it"),
                ("open", open.Length == 0 ? "" : $" The row {string.Join("; it ", open)}."),
                ("memory", RuleWords.Doubt(rule.Source, input.Region)),
                ("note", (rule.IsJoined ? $" It {best.Conditions.First(condition => condition.Code == "adjacent-rows").Text}." : "") + (input.Region.Note.Length > 0 ? " " + input.Region.Note : ""))),
        };
    }

    private static Finding None(RadioRulesInput input, OccupiedBand band)
    {
        ImmutableArray<RadioRule> rules = input.Book.RulesOf(input.Region);
        string[] kept = [.. rules
            .Where(rule => rule.Access == RuleAccess.Refused && rule.LowHz < band.HighHz && rule.HighHz > band.LowHz)
            .Select(rule => $" {RuleWords.Band(rule.LowHz, rule.HighHz)} is kept for {rule.KeptFor} ({rule.Source.Short}{(rule.Source.FromMemory ? ", from memory" : "")}).")];
        return new()
        {
            Code = "radio-band-none",
            Subject = input.PlanPath,
            Verdict = Verdict.Fails,
            Quantity = "distance to the edge of the band",
            Unit = "kHz",
            Source = input.Region.Law,
            Details = FindingDetails.Of(
                ("signal", RuleWords.Band(band.LowHz, band.HighHz)),
                ("region", input.Region.Name),
                ("kept", string.Concat(kept)),
                ("advice", Nearest(rules, band))),
        };
    }

    /// <summary>A fixed narrow channel that meets none of several ways onto the air: what each way asks.</summary>
    private static Finding NotMet(RadioRulesInput input, ImmutableArray<RuleJudgement> judgements, TrafficEstimate traffic) => new()
    {
        Code = "radio-rule-none",
        Subject = input.PlanPath,
        Verdict = Verdict.Fails,
        Source = judgements[0].Rule.Source.ToString(),
        Details = FindingDetails.Of(
            ("region", input.Region.Name),
            ("frequency", RuleWords.Megahertz(input.Modem.FrequencyHz)),
            ("reasons", string.Join("; ", Told(judgements).Select(Reason))),
            ("memory", judgements.All(judgement => judgement.IsFirm) ? "" : " Rows that were not read in a known edition are among them."),
            ("elsewhere", RuleElsewhere.Advice(input, traffic))),
    };

    /// <summary>Rows for another width of signal are no way in; they are told of only where there are no others.</summary>
    private static ImmutableArray<RuleJudgement> Told(ImmutableArray<RuleJudgement> judgements)
    {
        ImmutableArray<RuleJudgement> fitting = [.. judgements.Where(judgement => judgement.Conditions.All(condition =>
            condition.Verdict != Verdict.Fails || condition.Code is not ("occupied-bandwidth" or "least-occupied-bandwidth")))];
        return fitting.IsEmpty ? judgements : fitting;
    }

    private static string Reason(RuleJudgement judgement)
    {
        List<string> reasons = [.. judgement.Conditions.Where(condition => condition.Verdict is Verdict.Fails or Verdict.Unknown).Select(condition => condition.Text)];
        if (reasons.Count == 0 && judgement is { PowerVerdict: Verdict.Fails, PowerLimit: { } limit })
        {
            reasons.Add($"allows {RuleWords.PowerAndWatts(limit.Total, judgement.Rule.Reference)}");
        }

        if (judgement is { TimeVerdict: Verdict.Fails, AllowedPercent: { } percent })
        {
            reasons.Add($"allows {RuleWords.Percent(percent)} of the time");
        }

        return $"{judgement.Rule.Name} ({judgement.Rule.Source.Short}) {string.Join(", ", reasons)}";
    }

    /// <summary>The least move of the carrier into a row that is wide enough.</summary>
    private static string Nearest(ImmutableArray<RadioRule> rules, OccupiedBand band)
    {
        double half = (band.HighHz - band.LowHz) / 2;
        double middle = (band.HighHz + band.LowHz) / 2;
        (RadioRule Rule, double MiddleHz)[] fits = [.. rules
            .Where(rule => rule.Access != RuleAccess.Refused && rule.HighHz - rule.LowHz >= 2 * half && (rule.MostOccupiedHz ?? double.MaxValue) >= band.WidthHz && (rule.LeastOccupiedHz ?? 0) <= band.WidthHz)
            .Select(rule => (rule, Math.Clamp(middle, rule.LowHz + half, rule.HighHz - half)))
            .OrderBy(place => Math.Abs(place.Item2 - middle))];
        return fits.Length == 0
            ? "Use a narrower signal, or a band of the region."
            : RuleWords.Text($"Move it: the nearest row that holds it is {fits[0].Rule.Name}, {RuleWords.Band(fits[0].Rule.LowHz, fits[0].Rule.HighHz)}, with its middle at {RuleWords.Megahertz((fits[0].Rule.LowHz + fits[0].Rule.HighHz) / 2)}.");
    }
}
