using System.Collections.Immutable;

namespace Mastwright.Propagation;

/// <summary>What stands in the way of a ray, point by point.</summary>
public sealed record ClearanceAnalysis
{
    /// <summary>Every point of the profile, in order.</summary>
    public required ImmutableArray<ClearancePoint> Points { get; init; }

    /// <summary>The runs of points that leave less than 0.6 of the first Fresnel zone free, from the transmitter on.</summary>
    public required ImmutableArray<Obstruction> Obstructions { get; init; }

    /// <summary>The point between the antennas with the least clearance in radii.</summary>
    public required ClearancePoint Worst { get; init; }

    /// <summary>Elevation of the direct line at the transmitter, or of its horizon when the line is blocked, in degrees.</summary>
    public required double TransmitterElevationDegrees { get; init; }

    /// <summary>The same at the receiver.</summary>
    public required double ReceiverElevationDegrees { get; init; }

    /// <summary>Effective earth-radius factor that was used.</summary>
    public required double KFactor { get; init; }

    /// <summary>Whether nothing stands above the ray.</summary>
    public bool IsLineOfSight => Worst.ClearanceMetres >= 0;

    /// <summary>Whether 0.6 of the first Fresnel zone is free everywhere.</summary>
    public bool IsClear => Obstructions.IsEmpty;
}
