using System.Collections.Immutable;
using Mastwright.Station.Exposure;

namespace Mastwright.Station.Rules;

/// <summary>Every row of law that the program knows: radio rules, conditions of approval, limits of exposure.</summary>
/// <remarks>Immutable. A later row of the same key replaces an earlier one: a user's file overrides.</remarks>
public sealed record RuleBook
{
    /// <summary>A book without rows.</summary>
    public static RuleBook Empty { get; } = new();

    /// <summary>The regions, in their order.</summary>
    public ImmutableArray<RadioRegion> Regions { get; init; } = [];

    /// <summary>The regions whose text was not read.</summary>
    public ImmutableArray<MissingRegion> Missing { get; init; } = [];

    /// <summary>The radio rules of all regions.</summary>
    public ImmutableArray<RadioRule> Rules { get; init; } = [];

    /// <summary>The conditions of approval of all regions.</summary>
    public ImmutableArray<ApprovalCondition> Approvals { get; init; } = [];

    /// <summary>The limits of exposure of all regions.</summary>
    public ImmutableArray<ExposureLimit> ExposureLimits { get; init; } = [];

    /// <summary>The region that a plan's word means: the one of that key before one that covers it; null when there is none.</summary>
    public RadioRegion? Region(string word) =>
        Regions.FirstOrDefault(region => string.Equals(region.Key, word, StringComparison.OrdinalIgnoreCase)) ?? Regions.FirstOrDefault(region => region.Is(word));

    /// <summary>The radio rules of a region.</summary>
    public ImmutableArray<RadioRule> RulesOf(RadioRegion region)
    {
        ArgumentNullException.ThrowIfNull(region);
        return [.. Rules.Where(rule => region.HasRowsOf(rule.Region))];
    }

    /// <summary>This book with another's rows added; a row of the same key replaces. A region whose rows are given is missing no longer.</summary>
    public RuleBook Overlay(RuleBook other)
    {
        ArgumentNullException.ThrowIfNull(other);
        ImmutableArray<RadioRegion> regions = LastOfEach(Regions, other.Regions, row => row.Key);
        return new()
        {
            Regions = regions,
            Missing = [.. LastOfEach(Missing, other.Missing, row => row.Key).Where(missing => !regions.Any(region => region.Is(missing.Key)))],
            Rules = LastOfEach(Rules, other.Rules, row => row.Key),
            Approvals = LastOfEach(Approvals, other.Approvals, row => row.Key),
            ExposureLimits = LastOfEach(ExposureLimits, other.ExposureLimits, row => row.Key),
        };
    }

    private static ImmutableArray<T> LastOfEach<T>(ImmutableArray<T> below, ImmutableArray<T> above, Func<T, string> key) =>
    [
        .. below.Concat(above)
            .GroupBy(key, StringComparer.OrdinalIgnoreCase)
            .Select(group => group.Last()),
    ];
}
