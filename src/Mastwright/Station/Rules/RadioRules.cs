using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Station.Radio;

namespace Mastwright.Station.Rules;

/// <summary>Whether a station's band, power and time on the air are within the licence-exempt rows of its region.</summary>
/// <remarks>
/// One row that is kept whole suffices: the best is judged, and the others that hold the signal are listed with what they allow. Amateur and other licences are
/// outside this. An engineering aid, not legal advice: a standard's table is no law, and a country may differ.
/// </remarks>
public static class RadioRules
{
    /// <summary>Examines a station.</summary>
    public static RadioRulesResult Examine(RadioRulesInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        OccupiedBand band = OccupiedBand.Of(input.Modem, input.Radio, StationDefaults.Join(input.PlanPath, "radio"), input.BoxCelsius);
        AirtimeResult airtime = Airtime.Compute(input.Modem);
        TrafficEstimate traffic = TrafficEstimate.Of(input.Traffic, airtime.TotalSeconds, input.TrafficPath);
        ImmutableArray<RuleJudgement> judgements = RuleJudge.Judge(input, band, traffic);
        RuleJudgement? best = judgements.FirstOrDefault();
        List<Finding> findings = [BandFindings.Of(input, band, judgements, traffic)];
        if (best is { PowerLimit: not null } || best is { PowerVerdict: Verdict.Unknown })
        {
            findings.Add(PowerFindings.Of(input, best, judgements, traffic));
        }

        if (best is { AllowedPercent: not null })
        {
            findings.Add(TimeFindings.Of(input, best, traffic));
        }

        if (judgements.Length > 1)
        {
            findings.Add(RuleRows.Of(input, judgements, traffic));
        }

        findings.AddRange(ApprovalFindings.Of(input));
        return new()
        {
            Band = band,
            Traffic = traffic,
            Judgements = judgements,
            Examination = new()
            {
                Ledgers = Ledgers(input, band, traffic, best),
                Findings = [.. findings],
                Assumptions = [.. NationalLaw.Assumed(input.Region), .. band.Assumptions, .. best?.AllowedPercent is null ? [] : traffic.Assumptions, .. airtime.Assumptions],
            },
        };
    }

    /// <summary>What is to be said when a plan names no region whose rows are known; null when it does.</summary>
    /// <param name="word">The region as the plan writes it; empty when it does not.</param>
    /// <param name="book">The rows of law.</param>
    public static Finding? RegionUnknown(string word, RuleBook book)
    {
        ArgumentNullException.ThrowIfNull(word);
        ArgumentNullException.ThrowIfNull(book);
        if (book.Region(word) is not null)
        {
            return null;
        }

        MissingRegion? missing = book.Missing.FirstOrDefault(region => string.Equals(region.Key, word, StringComparison.OrdinalIgnoreCase));
        return new()
        {
            Code = "radio-region-unknown",
            Subject = "region",
            Verdict = Verdict.Unknown,
            Source = "catalogue",
            Details = FindingDetails.Of(
                ("why", word.Length == 0
                    ? "The plan does not say whose rules apply"
                    : missing is null
                        ? $"The catalogue has no rules for '{word}'"
                        : $"The rules of {missing.Name} are not in the catalogue ({missing.Reason})"),
                ("known", string.Join(", ", book.Regions.Select(region => $"{region.Key} ({region.Name})")))),
        };
    }

    private static ImmutableArray<Ledger> Ledgers(RadioRulesInput input, OccupiedBand band, TrafficEstimate traffic, RuleJudgement? best)
    {
        List<Ledger> ledgers = [band.LowerEdge, band.UpperEdge];
        if (best?.Rule.Reference is PowerReference.Erp && input.Chain.RadiatedPower is { } erp)
        {
            ledgers.Add(erp.ErpLedger);
        }
        else if (best?.Rule.Reference is PowerReference.Eirp && input.Chain.RadiatedPower is { } eirp)
        {
            ledgers.Add(eirp.EirpLedger);
        }
        else if (input.Chain.TransmitLedger is { } conducted)
        {
            ledgers.Add(conducted);
        }

        if (best?.PowerLimit is { } limit)
        {
            ledgers.Add(limit);
        }

        if (best?.Setting is { } setting)
        {
            ledgers.Add(setting);
        }

        ledgers.Add(traffic.Mean);
        ledgers.Add(traffic.Worst);
        return [.. ledgers];
    }
}
