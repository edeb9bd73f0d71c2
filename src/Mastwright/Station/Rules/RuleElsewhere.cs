using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Station.Radio;

namespace Mastwright.Station.Rules;

/// <summary>Where else in its region a station could send as it is.</summary>
internal static class RuleElsewhere
{
    /// <summary>The row that would do with the least move of the carrier, as advice to follow another; empty when the radio hops.</summary>
    /// <param name="input">The station.</param>
    /// <param name="traffic">Its time on the air.</param>
    internal static string Advice(RadioRulesInput input, TrafficEstimate traffic)
    {
        if (input.Modem.Emission.Hopping is not null)
        {
            return "";
        }

        RuleJudgement? best = input.Book.RulesOf(input.Region)
            .Where(rule => rule.Access != RuleAccess.Refused)
            .Select(rule => In(rule, input, traffic))
            .Where(judgement => judgement.Overall is Verdict.Ok or Verdict.Tight || (judgement is { AccessVerdict: Verdict.Ok, TimeVerdict: Verdict.Unknown } && judgement.PowerVerdict is Verdict.Ok or Verdict.Tight))
            .OrderBy(judgement => !judgement.IsFirm)
            .ThenBy(judgement => Math.Abs(Middle(judgement.Rule) - input.Modem.FrequencyHz))
            .FirstOrDefault();
        if (best is not { Rule: { } row })
        {
            return $" No row of {input.Region.Name} in the catalogue would hold the station as it is.";
        }

        string allows = string.Join(" and ", RuleRows.Limits(best));
        return $" Or move the carrier to {RuleWords.Megahertz(Middle(row))}, where {RuleWords.Named(row)} allows {allows}{(best.IsFirm ? "" : ", by a row that was not read in a known edition")}.";
    }

    /// <summary>A station judged by a row as if it sent in the middle of it; one that hops takes its frequencies along.</summary>
    internal static RuleJudgement In(RadioRule rule, RadioRulesInput input, TrafficEstimate traffic)
    {
        double middle = Middle(rule);
        EmissionSetting emission = input.Modem.Emission.Hopping is { } hopping
            ? input.Modem.Emission with { Hopping = Around(hopping, middle) }
            : input.Modem.Emission;
        RadioRulesInput moved = input with { Modem = input.Modem with { FrequencyHz = middle, Emission = emission } };
        OccupiedBand band = OccupiedBand.Of(moved.Modem, moved.Radio, StationDefaults.Join(moved.PlanPath, "radio"), moved.BoxCelsius);
        return RuleJudge.Judge(rule, moved, band, traffic);
    }

    private static HoppingSetting Around(HoppingSetting hopping, double middleHz)
    {
        double half = (hopping.HighestHz - hopping.LowestHz) / 2;
        return hopping with { LowestHz = middleHz - half, HighestHz = middleHz + half };
    }

    private static double Middle(RadioRule rule) => (rule.LowHz + rule.HighHz) / 2;
}
