using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Network;

/// <summary>One direction of a link: who is heard by whom, with how much to spare.</summary>
public sealed record LinkDirection
{
    /// <summary>The sending end.</summary>
    public required LinkEnd From { get; init; }

    /// <summary>The receiving end.</summary>
    public required LinkEnd To { get; init; }

    /// <summary>Whether this is the way back: from the path's second station to its first.</summary>
    public bool IsReversed { get; init; }

    /// <summary>The budget: from the radio's power to the margin, in dB; null when an input is missing.</summary>
    public Ledger? Budget { get; init; }

    /// <summary>Level at the receiving antenna's connector, in dBm; null when an input is missing.</summary>
    public Estimate? LevelDbm { get; init; }

    /// <summary>Margin above the required level, in dB; null when an input is missing.</summary>
    public Estimate? MarginDb { get; init; }

    /// <summary>The two spreads; null when an input is missing.</summary>
    public LinkSpread? Spread { get; init; }

    /// <summary>What the spreads make of the margin; null when an input is missing.</summary>
    public LinkOdds? Odds { get; init; }

    /// <summary>What is vague most, in words; empty when nothing has a range.</summary>
    public string Vaguest { get; init; } = "";

    /// <summary>The judgement.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Plan paths of the inputs that are missing.</summary>
    public ImmutableArray<string> Missing { get; init; } = [];

    /// <summary>Names of both ends, the margin and the verdict.</summary>
    public override string ToString() => $"{From.Name} → {To.Name}: {MarginDb} dB, {Verdict}";
}
