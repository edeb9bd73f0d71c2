using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Rules;

/// <summary>Holds a station against every row of law of its region whose band could hold its signal.</summary>
public static class RuleJudge
{
    /// <summary>Margin in dB below which a kept power limit is tight: what a simple power meter may be off. Common practice.</summary>
    public const double WantedMarginDb = 1;

    /// <summary>Share of the allowed time on the air above which it is tight. Common practice.</summary>
    public const double TightShare = 0.8;

    /// <summary>The judgements, the best row first; empty when no band holds the signal.</summary>
    /// <param name="input">The station.</param>
    /// <param name="band">The band that it takes.</param>
    /// <param name="traffic">Its time on the air.</param>
    public static ImmutableArray<RuleJudgement> Judge(RadioRulesInput input, OccupiedBand band, TrafficEstimate traffic)
    {
        ArgumentNullException.ThrowIfNull(input);
        ArgumentNullException.ThrowIfNull(band);
        ArgumentNullException.ThrowIfNull(traffic);
        ImmutableArray<RadioRule> rules = input.Book.RulesOf(input.Region);
        return
        [
            .. rules.Concat(AdjacentRows.Across(rules, band.LowHz, band.HighHz))
                .Where(rule => rule.Access != RuleAccess.Refused)
                .Select(rule => Judge(rule, input, band, traffic))
                .Where(judgement => judgement.EdgeVerdict != Verdict.Fails)
                .OrderBy(judgement => judgement.AccessVerdict == Verdict.Fails)
                .ThenBy(judgement => RuleJudgement.Severity(judgement.Resting(judgement.Overall)))
                .ThenBy(judgement => RuleJudgement.Severity(judgement.AccessVerdict))
                .ThenBy(judgement => !judgement.IsFirm)
                .ThenByDescending(judgement => judgement.Setting?.Total ?? double.NegativeInfinity)
                .ThenByDescending(judgement => judgement.AllowedPercent ?? 100),
        ];
    }

    /// <summary>What a station comes to under one row, wherever its signal lies.</summary>
    /// <param name="rule">The row.</param>
    /// <param name="input">The station.</param>
    /// <param name="band">The band that it takes.</param>
    /// <param name="traffic">Its time on the air.</param>
    internal static RuleJudgement Judge(RadioRule rule, RadioRulesInput input, OccupiedBand band, TrafficEstimate traffic)
    {
        double margin = Math.Min(band.LowHz - rule.LowHz, rule.HighHz - band.HighHz);
        RuleJudgement judgement = new()
        {
            Rule = rule,
            EdgeMarginHz = margin,

            // A billionth of the frequency is far below anything that was measured: 250 kHz fill 250 kHz.
            EdgeVerdict = margin >= -1e-9 * rule.HighHz ? Verdict.Ok : margin >= -band.VagueHz ? Verdict.Unknown : Verdict.Fails,
            Conditions = [.. Joined(rule, input.Region), .. RuleConditions.Judge(rule, input.Modem, band, traffic.PacketSeconds)],
            LawRead = input.Region.Unread.Length == 0,
        };
        return Time(Power(judgement, input, band), input, band, traffic);
    }

    /// <summary>Whether rows may be taken together is a condition of its own.</summary>
    private static ImmutableArray<RuleCondition> Joined(RadioRule rule, RadioRegion region) => rule.IsJoined
        ?
        [
            region.Adjacent.Length > 0
                ? new("adjacent-rows", Verdict.Ok, $"is of adjacent rows, which {region.Adjacent} lets be used as one under the conditions of each")
                : new("adjacent-rows", Verdict.Unknown, "is of adjacent rows, and whether the law lets them be used as one was not read"),
        ]
        : [];

    private static RuleJudgement Power(RuleJudgement judgement, RadioRulesInput input, OccupiedBand band)
    {
        RadioRule rule = judgement.Rule;
        if (rule is { PowerDbm: null, DensityDbm: null })
        {
            return judgement with { PowerVerdict = Verdict.Ok };
        }

        if (input.Chain.Pattern.MainBeamDbi is not { } gain)
        {
            return judgement with { PowerVerdict = Verdict.Unknown };
        }

        Ledger limit = PowerAllowance.Limit(rule, band.WidthHz, gain)!;
        Estimate? power = rule.Reference switch
        {
            PowerReference.Conducted => input.Chain.PowerIntoAntennaDbm,
            PowerReference.Erp => input.Chain.RadiatedPower?.ErpDbm,
            _ => input.Chain.RadiatedPower?.EirpDbm,
        };
        double tolerance = input.Radio.ConductedPowerDbm is { } setting ? setting.High - setting.Median : 0;
        return judgement with
        {
            PowerLimit = limit,
            PowerDbm = power,
            PowerVerdict = Power(power, limit.Total),
            Setting = PowerAllowance.Setting(limit, rule.Reference, gain, input.Chain.Feed.Stages, tolerance, input.PlanPath),
        };
    }

    private static Verdict Power(Estimate? power, double limit) => power switch
    {
        null => Verdict.Unknown,
        { } known when known.Low > limit => Verdict.Fails,
        { } known when known.High > limit => Verdict.Unknown,
        { } known when known.High > limit - WantedMarginDb => Verdict.Tight,
        _ => Verdict.Ok,
    };

    private static RuleJudgement Time(RuleJudgement judgement, RadioRulesInput input, OccupiedBand band, TrafficEstimate traffic)
    {
        RadioRule rule = judgement.Rule;
        bool polite = input.Modem.Emission.Polite && (rule.PoliteAllowed || rule.PoliteRequired);
        double? byPolite = polite && traffic.PacketSeconds <= PoliteAccess.LongestSeconds
            ? PoliteAccess.Percent(input.Modem.Emission.Hopping?.Channels ?? 1, band.WidthHz, rule.HighHz - rule.LowHz)
            : null;

        // Where listening first is asked for whatever the duty cycle, both hold; else the better of the two does.
        double? allowed = rule.PoliteRequired
            ? Least(rule.DutyCyclePercent, byPolite)
            : rule.DutyCyclePercent is { } duty ? Math.Max(duty, byPolite ?? 0) : null;
        if (allowed is not { } limit)
        {
            return judgement;
        }

        Verdict verdict = traffic.WorstPercent > limit ? Verdict.Fails : traffic.WorstPercent > TightShare * limit ? Verdict.Tight : Verdict.Ok;
        return judgement with
        {
            AllowedPercent = limit,
            ByPoliteAccess = byPolite == limit && rule.DutyCyclePercent != limit,
            TimeVerdict = traffic.IsAssumed ? Verdict.Unknown : verdict,
        };
    }

    private static double? Least(double? one, double? other) => one is { } a && other is { } b ? Math.Min(a, b) : one ?? other;
}
