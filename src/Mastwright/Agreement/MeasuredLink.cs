using System.Collections.Immutable;

namespace Mastwright.Agreement;

/// <summary>A way to predict: what a correction may change about the profile.</summary>
/// <param name="CoverMetres">Uniform height of what stands on the ground along the whole path, in metres, zero or more.</param>
/// <param name="HeightMetres">Height above ground of each station whose height nobody knows, in metres; null where every height is known.</param>
public sealed record CorrectionCandidate(double CoverMetres, double? HeightMetres);

/// <summary>One direct link that was measured, with what each way to predict says of it.</summary>
/// <remarks>A class, because a record of arrays would compare them by reference.</remarks>
public sealed class MeasuredLink
{
    /// <summary>Who heard: the unit whose own offset can be told.</summary>
    public required string Receiver { get; init; }

    /// <summary>Who was heard.</summary>
    public required string Sender { get; init; }

    /// <summary>Name of the patch of ground that the sender stands in; links of one patch are left out together.</summary>
    public required string Block { get; init; }

    /// <summary>Length of the path in metres, above zero.</summary>
    public required double DistanceMetres { get; init; }

    /// <summary>Measured signal power in dBm: one value a link, however many packets it has.</summary>
    public required double MeasuredDbm { get; init; }

    /// <summary>Signal power in dBm if the path lost nothing: powers, gains and feeds.</summary>
    public required double AtNoLossDbm { get; init; }

    /// <summary>Predicted signal power in dBm by each candidate, in their order.</summary>
    public required ImmutableArray<double> PredictedDbm { get; init; }

    /// <summary>Measured less predicted, in dB.</summary>
    /// <param name="candidate">Place of the candidate.</param>
    public double OffDb(int candidate) => MeasuredDbm - PredictedDbm[candidate];
}
