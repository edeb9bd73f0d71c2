using System.Collections.Immutable;
using Mastwright.Quantities;

namespace Mastwright.Plans;

/// <summary>A correction of the prediction that a plan has taken over from a fit to measurements (<see cref="Agreement.CorrectionFit"/>).</summary>
public sealed record AdoptedCorrection
{
    /// <summary>Key in the plan: the name by which it is adopted.</summary>
    public required string Key { get; init; }

    /// <summary>What it was fitted to, in words.</summary>
    public string Source { get; init; } = "";

    /// <summary>What is added to the predicted level of every link, in dB, with its range.</summary>
    public required Estimate OffsetDb { get; init; }

    /// <summary>Height of cover along the whole path in metres, used where the ground has no cover file; null to leave the ground as it is.</summary>
    public Estimate? CoverMetres { get; init; }

    /// <summary>Height above ground in metres of stations whose height the plan does not give; null to leave them unknown.</summary>
    public Estimate? StationHeightMetres { get; init; }

    /// <summary>Standard deviation in dB of what remains; stands in for the model's own error and for location variability.</summary>
    public required double SpreadDb { get; init; }

    /// <summary>Keys of the stations whose links it is for, at either end; empty for all.</summary>
    public ImmutableArray<string> AppliesTo { get; init; } = [];

    /// <summary>What single stations are off by beyond the offset in what they hear, by key: each for that station alone.</summary>
    public ImmutableSortedDictionary<string, OwnCorrection> Stations { get; init; } = ImmutableSortedDictionary<string, OwnCorrection>.Empty;

    /// <summary>Whether it is for links of a station.</summary>
    /// <param name="station">Key of the station.</param>
    public bool IsFor(string station) => AppliesTo.IsEmpty || AppliesTo.Contains(station);
}

/// <summary>What one station is off by beyond what all are.</summary>
/// <param name="OffsetDb">Added to the predicted level of what it hears, in dB.</param>
/// <param name="SpreadDb">Standard deviation in dB of what then remains; null to keep that of the correction.</param>
public readonly record struct OwnCorrection(Estimate OffsetDb, double? SpreadDb);
