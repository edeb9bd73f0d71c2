using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Rules;

/// <summary>What a station comes to under one row of law whose band holds its signal.</summary>
public sealed record RuleJudgement
{
    /// <summary>The row.</summary>
    public required RadioRule Rule { get; init; }

    /// <summary>Distance in hertz from the signal's edges to the nearer edge of the band, frequency error counted: negative outside.</summary>
    public required double EdgeMarginHz { get; init; }

    /// <summary>Whether the band holds the signal.</summary>
    public required Verdict EdgeVerdict { get; init; }

    /// <summary>The conditions besides power and time on the air.</summary>
    public ImmutableArray<RuleCondition> Conditions { get; init; } = [];

    /// <summary>The power allowed in dBm against the rule's reference, line by line; null when it is unknown or there is no limit.</summary>
    public Ledger? PowerLimit { get; init; }

    /// <summary>The station's power against the same reference, in dBm; null when unknown.</summary>
    public Estimate? PowerDbm { get; init; }

    /// <summary>The verdict on the power.</summary>
    public Verdict PowerVerdict { get; init; }

    /// <summary>The largest lawful setting of the radio in dBm, line by line; null when unknown.</summary>
    public Ledger? Setting { get; init; }

    /// <summary>The most time on the air in percent of any hour; null when the rule sets none.</summary>
    public double? AllowedPercent { get; init; }

    /// <summary>Whether that comes from listening before talking rather than from the duty cycle.</summary>
    public bool ByPoliteAccess { get; init; }

    /// <summary>The verdict on the time on the air.</summary>
    public Verdict TimeVerdict { get; init; } = Verdict.Ok;

    /// <summary>The verdict on everything but power and time.</summary>
    public Verdict AccessVerdict => Worst([EdgeVerdict, .. Conditions.Select(condition => condition.Verdict)]);

    /// <summary>The verdict on everything, before it is asked how the row was read.</summary>
    public Verdict Overall => Worst([AccessVerdict, PowerVerdict, TimeVerdict]);

    /// <summary>Whether the law of the region itself was read, of which the row is.</summary>
    public bool LawRead { get; init; } = true;

    /// <summary>Whether a verdict may rest on the row.</summary>
    public bool IsFirm => LawRead && Rule.Source.IsFirm;

    /// <summary>A verdict that rests on the row: at best unknown when nobody held its text, nobody knows its edition, or the law itself was not read.</summary>
    public Verdict Resting(Verdict verdict) => !IsFirm && (verdict is Verdict.Ok or Verdict.Tight) ? Verdict.Unknown : verdict;

    /// <summary>The worst of some verdicts: fails, then unknown, then tight.</summary>
    internal static Verdict Worst(ImmutableArray<Verdict> verdicts) => verdicts.MaxBy(Severity);

    /// <summary>How bad a verdict is.</summary>
    internal static int Severity(Verdict verdict) => verdict switch
    {
        Verdict.Ok => 0,
        Verdict.Tight => 1,
        Verdict.Unknown => 2,
        _ => 3,
    };
}
