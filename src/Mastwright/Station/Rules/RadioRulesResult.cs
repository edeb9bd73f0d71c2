using System.Collections.Immutable;

namespace Mastwright.Station.Rules;

/// <summary>What a station comes to under the rules of its region.</summary>
public sealed record RadioRulesResult
{
    /// <summary>The band that it takes.</summary>
    public required OccupiedBand Band { get; init; }

    /// <summary>Its time on the air.</summary>
    public required TrafficEstimate Traffic { get; init; }

    /// <summary>Each row of law whose band could hold it, the best first.</summary>
    public required ImmutableArray<RuleJudgement> Judgements { get; init; }

    /// <summary>Ledgers, findings and assumptions.</summary>
    public required Examination Examination { get; init; }
}
