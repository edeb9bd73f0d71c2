using System.Collections.Immutable;
using Mastwright.Quantities;

namespace Mastwright.Findings;

/// <summary>One judgement: a value held against a limit, and what comes of it.</summary>
/// <remarks>
/// It holds typed values. Its sentences are made at the edge from one table (<see cref="FindingSentences"/>).
/// Codes are stable: a code never changes its meaning.
/// </remarks>
public sealed record Finding
{
    /// <summary>Stable code, kebab-case, such as "link-margin".</summary>
    public required string Code { get; init; }

    /// <summary>What is judged: a plan path or a pair "ferry-house/net-loft → creamery/shed".</summary>
    public required string Subject { get; init; }

    /// <summary>What comes of it.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Name of the quantity, empty when the finding has no number.</summary>
    public string Quantity { get; init; } = "";

    /// <summary>Unit of value, limit and margin.</summary>
    public string Unit { get; init; } = "";

    /// <summary>The value found: low, median and high; null when there is none.</summary>
    public Estimate? Value { get; init; }

    /// <summary>The limit it is held against; null when there is none.</summary>
    public double? Limit { get; init; }

    /// <summary>How far the limit is kept (positive) or missed (negative), by the median value.</summary>
    public double? Margin { get; init; }

    /// <summary>Probability between 0 and 1 that the limit is kept, where it was computed.</summary>
    public double? Confidence { get; init; }

    /// <summary>Codes of the assumptions that the value rests on.</summary>
    public ImmutableArray<string> Assumptions { get; init; } = [];

    /// <summary>Source of the limit: document and clause, plan path, "common practice".</summary>
    public string Source { get; init; } = "";

    /// <summary>Words and numbers for the sentence, by the names its table entry uses; already in text, with units.</summary>
    public ImmutableSortedDictionary<string, string> Details { get; init; } = ImmutableSortedDictionary<string, string>.Empty;

    /// <summary>A judgement that stays open for want of something.</summary>
    /// <param name="code">Its code.</param>
    /// <param name="subject">What would be judged.</param>
    /// <param name="quantity">Name of the quantity.</param>
    /// <param name="details">Words for its sentence.</param>
    internal static Finding Unknown(string code, string subject, string quantity, params ReadOnlySpan<(string Name, string Value)> details) => new()
    {
        Code = code,
        Subject = subject,
        Verdict = Verdict.Unknown,
        Quantity = quantity,
        Details = FindingDetails.Of(details),
    };

    /// <summary>Code, subject and verdict.</summary>
    public override string ToString() => $"{Code} at {Subject}: {Verdict}";
}
