using Mastwright.Network;

namespace Mastwright.Plans;

/// <summary>What every path of a plan is computed with: the plan's values, and the defaults for what it does not give.</summary>
/// <remarks>The air differs from path to path where it comes from maps: see <see cref="PathAir"/>.</remarks>
public sealed record PathSettings
{
    /// <summary>Frequency in Hz.</summary>
    public required double FrequencyHz { get; init; }

    /// <summary>Time percentage of the prediction.</summary>
    public required double TimePercent { get; init; }

    /// <summary>Location percentage of the prediction.</summary>
    public required double LocationPercent { get; init; }

    /// <summary>Effective-earth factor of the worst air to plan for.</summary>
    public required double LowKFactor { get; init; }

    /// <summary>Standard deviation of location variability in dB, where the plan gives it.</summary>
    public double? LocationDb { get; init; }

    /// <summary>What is wanted of a link, and its other spreads.</summary>
    public required LinkWanted Wanted { get; init; }
}
