using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Station;

/// <summary>What one examination of a fit-out (its mast, its earth, its supply …) came to.</summary>
public sealed record Examination
{
    /// <summary>An examination that says nothing: the plan does not speak of its subject.</summary>
    public static Examination Nothing { get; } = new();

    /// <summary>The budgets behind the numbers, in the order to read them.</summary>
    public ImmutableArray<Ledger> Ledgers { get; init; } = [];

    /// <summary>The judgements.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>Every value that was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>Several examinations as one, in their order.</summary>
    public static Examination Of(params ReadOnlySpan<Examination> parts)
    {
        List<Ledger> ledgers = [];
        List<Finding> findings = [];
        List<Assumption> assumptions = [];
        foreach (Examination part in parts)
        {
            ledgers.AddRange(part.Ledgers);
            findings.AddRange(part.Findings);
            assumptions.AddRange(part.Assumptions);
        }

        return new() { Ledgers = [.. ledgers], Findings = [.. findings], Assumptions = [.. assumptions] };
    }
}
