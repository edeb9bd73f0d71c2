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
            return None(input, band, traffic);
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
                ("rule", RuleWords.Named(rule)),
                ("room", best.EdgeMarginHz >= 0 ? $"{RuleWords.Kilohertz(best.EdgeMarginHz)} inside its nearer edge" : $"{RuleWords.Kilohertz(-best.EdgeMarginHz)} over its edge, by what is only assumed of it"),
                ("open", open.Length == 0 ? "" : $" The row {string.Join("; it ", open)}."),
                ("memory", RuleWords.Doubt(rule.Source, input.Region)),
                ("note", (rule.IsJoined ? $" It {best.Conditions.First(condition => condition.Code == "adjacent-rows").Text}." : "") + (input.Region.Note.Length > 0 ? " " + input.Region.Note : ""))),
        };
    }

    private static Finding None(RadioRulesInput input, OccupiedBand band, TrafficEstimate traffic)
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
                ("advice", Nearest(input, rules, band, traffic))),
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

    /// <summary>The least move of the carrier into a row that is wide enough and that the station would not break there.</summary>
    private static string Nearest(RadioRulesInput input, ImmutableArray<RadioRule> rules, OccupiedBand band, TrafficEstimate traffic)
    {
        double width = band.HighHz - band.LowHz;
        double middle = (band.HighHz + band.LowHz) / 2;
        RuleJudgement[] wide = [.. rules
            .Where(rule => rule.Access != RuleAccess.Refused && rule.HighHz - rule.LowHz >= width && (rule.MostOccupiedHz ?? double.MaxValue) >= band.WidthHz && (rule.LeastOccupiedHz ?? 0) <= band.WidthHz)
            .OrderBy(rule => Math.Abs(Math.Clamp(middle, rule.LowHz + (width / 2), rule.HighHz - (width / 2)) - middle))
            .Select(rule => RuleElsewhere.In(rule, input, traffic))];
        if (wide.Length == 0)
        {
            return "Use a narrower signal, or a band of the region.";
        }

        if (wide.FirstOrDefault(judgement => judgement.Overall != Verdict.Fails) is { Rule: { } kept } best)
        {
            string[] open = [.. best.Conditions.Where(condition => condition.Verdict == Verdict.Unknown).Select(condition => condition.Text)];
            return $"Move it: the nearest row that the station could keep as it is: {RuleWords.Named(kept)}, with its middle at {RuleWords.Megahertz((kept.LowHz + kept.HighHz) / 2)}{(open.Length > 0 ? "; it " + string.Join(", ", open) : "")}.";
        }

        return $"No row of {input.Region.Name} in the catalogue would hold the station as it is. The nearest that is wide enough: {Reason(wide[0])}. Send in a way that a row asks for.";
    }
}
