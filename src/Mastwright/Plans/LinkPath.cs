using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Propagation;
using Mastwright.Quantities;

namespace Mastwright.Plans;

/// <summary>The path between two stations of a plan: ground, what is in the way, and the loss in both directions.</summary>
public sealed record LinkPath
{
    /// <summary>The ordinary air along it.</summary>
    public required PathAir Air { get; init; }

    /// <summary>The ground as cut, with gaps if it has any; null when the stations stand at one place or further apart than the model reaches.</summary>
    public TerrainProfile? Terrain { get; init; }

    /// <summary>
    /// The same with the bare ground of both sites at its ends, as far as the plan or the source tells it; for showing a path whose
    /// <see cref="Profile"/> is null. Null when there is a profile.
    /// </summary>
    public TerrainProfile? KnownGround { get; init; }

    /// <summary>What the loss model read; null when the ground has gaps or a height is missing.</summary>
    public PathProfile? Profile { get; init; }

    /// <summary>Height of the first antenna above the ground at its foot, in metres; null when unknown.</summary>
    public Estimate? FromHeightMetres { get; init; }

    /// <summary>Height of the second antenna above the ground at its foot, in metres; null when unknown.</summary>
    public Estimate? ToHeightMetres { get; init; }

    /// <summary>Prediction from the first to the second at the best guess of everything; null when it could not be made.</summary>
    public PathLossPrediction? Out { get; init; }

    /// <summary>Prediction from the second to the first.</summary>
    public PathLossPrediction? Back { get; init; }

    /// <summary>Loss over the ranges, from the first to the second; null when it could not be predicted.</summary>
    public PathLossRange? OutLoss { get; init; }

    /// <summary>Loss over the ranges, from the second to the first.</summary>
    public PathLossRange? BackLoss { get; init; }

    /// <summary>What is in the way in ordinary air.</summary>
    public ClearanceAnalysis? Clearance { get; init; }

    /// <summary>What is in the way in the worst air to plan for.</summary>
    public ClearanceAnalysis? ClearanceLowK { get; init; }

    /// <summary>How many places and heights the range of the loss was found from: 1 when nothing has a range.</summary>
    public int Tries { get; init; }

    /// <summary>Standard deviation of location variability in dB.</summary>
    public double LocationDb { get; init; }

    /// <summary>What is to be said of the path.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>What was assumed.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>Plan paths, tiles and the like without which the loss is unknown.</summary>
    public ImmutableArray<string> Missing { get; init; } = [];
}
