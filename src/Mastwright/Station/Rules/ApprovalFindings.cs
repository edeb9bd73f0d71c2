using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Radio;

namespace Mastwright.Station.Rules;

/// <summary>Whether antenna and amplifier are those that the radio was approved with, by the conditions of its region.</summary>
internal static class ApprovalFindings
{
    internal static IEnumerable<Finding> Of(RadioRulesInput input)
    {
        foreach (ApprovalCondition condition in input.Book.Approvals.Where(row => input.Region.HasRowsOf(row.Region)))
        {
            if (condition.Subject == ApprovalSubject.Antenna)
            {
                yield return Antenna(input, condition);
            }
            else if (input.Chain.Feed.Stages.Any(stage => stage.AmplifiesTransmission))
            {
                yield return Amplifier(input, condition);
            }
        }
    }

    private static Finding Antenna(RadioRulesInput input, ApprovalCondition condition)
    {
        Estimate? gain = input.Chain.Pattern.MainBeamDbi;
        RadioUnit radio = input.Radio;
        Verdict byGain = (gain, radio.ApprovedGainDbi) switch
        {
            ({ } has, { } named) when has.Low > named => Verdict.Fails,
            ({ } has, { } named) when has.High <= named => Verdict.Ok,
            _ => Verdict.Unknown,
        };
        Verdict byType = radio.ApprovedAntenna switch { true => Verdict.Ok, false => Verdict.Fails, null => Verdict.Unknown };
        return new()
        {
            Code = "approval-antenna",
            Subject = input.PlanPath,
            Verdict = AtBest(RuleJudgement.Worst([byGain, byType]), condition.Source),
            Quantity = "gain",
            Unit = "dBi",
            Value = gain,
            Limit = radio.ApprovedGainDbi,
            Margin = radio.ApprovedGainDbi - gain?.Median,
            Source = condition.Source.ToString(),
            Details = FindingDetails.Of(
                ("condition", condition.Text),
                ("says", Says(gain, radio, byGain, byType)),
                ("memory", RuleWords.Doubt(condition.Source)),
                ("advice", Advice(byGain, byType))),
        };
    }

    private static string Says(Estimate? gain, RadioUnit radio, Verdict byGain, Verdict byType)
    {
        if (byGain == Verdict.Ok && byType == Verdict.Ok)
        {
            return "By the plan the radio's approval covers this antenna, its type and its gain.";
        }

        string has = gain is { } known ? RuleWords.Text($"The antenna has {known.Median:0.0} dBi") : "The antenna's gain is not known";
        string approved = radio.ApprovedGainDbi is { } most ? RuleWords.Text($"the radio's approval names {most:0.0} dBi at most") : "what gain the radio's approval names is not known";
        string type = radio.ApprovedAntenna switch { true => "its type is among those approved", false => "its type is not among those approved", null => "whether its type is among those approved is not known" };
        return $"{has}; {approved}, and {type}.";
    }

    private static string Advice(Verdict byGain, Verdict byType) => RuleJudgement.Worst([byGain, byType]) switch
    {
        Verdict.Fails => "Use an antenna that the approval names, or a radio approved with this one: with another the approval can be void.",
        Verdict.Unknown => "Look up in the radio's papers which antennas it was approved with, and give radio/approved-gain and radio/approved-antenna.",
        _ => "Read the text where you are, and put a row of your own with its source into a catalogue file.",
    };

    private static Finding Amplifier(RadioRulesInput input, ApprovalCondition condition)
    {
        Verdict verdict = input.Radio.ApprovedAmplifier switch { true => Verdict.Ok, false => Verdict.Fails, null => Verdict.Unknown };
        return new()
        {
            Code = "approval-amplifier",
            Subject = input.PlanPath,
            Verdict = AtBest(verdict, condition.Source),
            Source = condition.Source.ToString(),
            Details = FindingDetails.Of(
                ("condition", condition.Text),
                ("approved", input.Radio.ApprovedAmplifier switch { true => "The plan says that the radio was approved with it.", false => "The plan says that the radio was not approved with it.", null => "Whether the radio was approved with it is not known (radio/approved-amplifier)." }),
                ("memory", RuleWords.Doubt(condition.Source))),
        };
    }

    private static Verdict AtBest(Verdict verdict, RuleSource source) => !source.IsFirm && verdict is (Verdict.Ok or Verdict.Tight) ? Verdict.Unknown : verdict;
}
