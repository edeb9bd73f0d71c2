using System.Collections.Immutable;

namespace Mastwright.Station.Rules;

/// <summary>Rows of law that touch, taken together as one band under the strictest condition of each.</summary>
/// <remarks>
/// Source: Decision 2006/771/EC, annex as replaced by Decision (EU) 2019/1345, general technical conditions: member states must allow adjacent
/// bands to be used as one, provided that the specific conditions of each are met.
/// </remarks>
public static class AdjacentRows
{
    /// <summary>Edges of rows are given in MHz: less than a hertz between two is none.</summary>
    private const double SameHz = 1;

    /// <summary>Every run of adjacent rows whose inner edges lie within a signal.</summary>
    /// <param name="rules">The rows of a region.</param>
    /// <param name="lowHz">Lower edge of the signal in hertz.</param>
    /// <param name="highHz">Upper edge of the signal in hertz.</param>
    public static ImmutableArray<RadioRule> Across(ImmutableArray<RadioRule> rules, double lowHz, double highHz)
    {
        ImmutableArray<RadioRule> open = [.. rules.Where(rule => rule.Access == RuleAccess.Any)];
        IEnumerable<RadioRule> RunsFrom(RadioRule run) => run.HighHz <= lowHz || run.HighHz >= highHz
            ? []
            : open.Where(next => Math.Abs(next.LowHz - run.HighHz) < SameHz)
                .Select(next => Together(run, next))
                .OfType<RadioRule>()
                .SelectMany(longer => (IEnumerable<RadioRule>)[longer, .. RunsFrom(longer)]);
        return [.. open.SelectMany(RunsFrom)];
    }

    /// <summary>Two rows as one: the strictest condition of each; null where they are of different documents, or their limits not of one kind.</summary>
    /// <param name="low">The lower row.</param>
    /// <param name="high">The row that begins where it ends.</param>
    public static RadioRule? Together(RadioRule low, RadioRule high)
    {
        ArgumentNullException.ThrowIfNull(low);
        ArgumentNullException.ThrowIfNull(high);
        bool oneText = string.Equals(low.Source.Document, high.Source.Document, StringComparison.Ordinal);
        bool onePower = low.PowerDbm is null || high.PowerDbm is null || low.Reference == high.Reference;
        bool oneDensity = low.DensityBandwidthHz == high.DensityBandwidthHz;
        return !oneText || !onePower || !oneDensity
            ? null
            : new()
            {
                Key = $"{low.Key}+{high.Key}",
                Region = low.Region,
                Name = $"{low.Name} with {high.Name}",
                LowHz = low.LowHz,
                HighHz = high.HighHz,
                Access = RuleAccess.Any,
                PowerDbm = Least(low.PowerDbm, high.PowerDbm),
                Reference = low.PowerDbm is null ? high.Reference : low.Reference,
                GainFreeDbi = Least(low.GainFreeDbi, high.GainFreeDbi),
                DensityDbm = Least(low.DensityDbm, high.DensityDbm),
                DensityBandwidthHz = low.DensityBandwidthHz,
                LeastOccupiedHz = Most(low.LeastOccupiedHz, high.LeastOccupiedHz),
                MostOccupiedHz = Least(low.MostOccupiedHz, high.MostOccupiedHz),
                LeastSixDecibelHz = Most(low.LeastSixDecibelHz, high.LeastSixDecibelHz),
                DutyCyclePercent = Least(low.DutyCyclePercent, high.DutyCyclePercent),
                PoliteAllowed = BearsPolite(low) && BearsPolite(high),
                PoliteRequired = low.PoliteRequired || high.PoliteRequired,
                Asks = string.Join(", and ", new[] { low.Asks, high.Asks }.Where(asks => asks.Length > 0).Distinct(StringComparer.Ordinal)),
                IsJoined = true,
                Source = Together(low.Source, high.Source),
            };
    }

    /// <summary>A row without a duty cycle has none that listening first would take the place of.</summary>
    private static bool BearsPolite(RadioRule rule) => rule.PoliteAllowed || rule.DutyCyclePercent is null;

    /// <summary>Where both come from: in doubt when either is.</summary>
    private static RuleSource Together(RuleSource low, RuleSource high) => new(
        low.Document,
        low.EditionKnown && high.EditionKnown ? Both(low.Edition, high.Edition) : RuleSource.UnknownEdition,
        Both(low.Clause, high.Clause),
        string.CompareOrdinal(low.Read, high.Read) < 0 ? low.Read : high.Read,
        Both(low.How, high.How),
        low.FromMemory || high.FromMemory);

    private static string Both(string one, string other) => one == other || other.Length == 0 ? one : one.Length == 0 ? other : $"{one} and {other}";

    private static double? Least(double? one, double? other) => one is { } a && other is { } b ? Math.Min(a, b) : one ?? other;

    private static double? Most(double? one, double? other) => one is { } a && other is { } b ? Math.Max(a, b) : one ?? other;
}
