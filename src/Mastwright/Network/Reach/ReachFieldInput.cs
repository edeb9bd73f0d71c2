using Mastwright.Geodesy;
using Mastwright.Propagation;

namespace Mastwright.Network.Reach;

/// <summary>What a field of losses is worked out from, besides the ground.</summary>
/// <remarks>One state of the air for the whole field. The loss from the station to a cell stands for both directions.</remarks>
public sealed record ReachFieldInput
{
    /// <summary>The station.</summary>
    public required GeoPoint Station { get; init; }

    /// <summary>Radius of the field in metres.</summary>
    public required double RadiusMetres { get; init; }

    /// <summary>Side of a cell in metres.</summary>
    public required double CellMetres { get; init; }

    /// <summary>Height of the station's antenna above its ground, in metres, above zero.</summary>
    public required double StationHeightMetres { get; init; }

    /// <summary>Bare ground at the station in metres above sea level; null for what the ground's source says.</summary>
    public double? StationGroundMetres { get; init; }

    /// <summary>Height of the receiver above the ground of each cell, in metres, above zero.</summary>
    public required double ReceiverHeightMetres { get; init; }

    /// <summary>Frequency in Hz, above zero.</summary>
    public required double FrequencyHz { get; init; }

    /// <summary>Share of the time at which the loss is not exceeded, 1 to 50 %.</summary>
    public double TimePercent { get; init; } = 50;

    /// <summary>Share of the places at which the loss is not exceeded, 1 to 99 %.</summary>
    public double LocationPercent { get; init; } = 50;

    /// <summary>Standard deviation of the loss over the places of a cell, in dB, zero or more.</summary>
    public double LocationSigmaDb { get; init; }

    /// <summary>Polarisation of the wave.</summary>
    public WavePolarisation Polarisation { get; init; } = WavePolarisation.Vertical;

    /// <summary>Fall ΔN of refractivity in the lowest kilometre, in N-units/km, for the whole field.</summary>
    public double RefractivityGradient { get; init; } = EffectiveEarth.DefaultGradient;

    /// <summary>Sea-level surface refractivity N0 in N-units, for the whole field.</summary>
    public double SurfaceRefractivity { get; init; } = P1812Input.DefaultSurfaceRefractivity;

    /// <summary>UTM zone of the grid, where it is to lie cell on cell with those of other stations; null for the station's own.</summary>
    public (int Number, bool IsNorth)? SharedZone { get; init; }

    /// <summary>Whether terminal clutter stands for the cover near the station, which is then taken out of each path.</summary>
    public bool ReplacesCoverAtStation { get; init; }
}
