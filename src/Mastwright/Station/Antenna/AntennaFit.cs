using Mastwright.Quantities;

namespace Mastwright.Station.Antenna;

/// <summary>What a height is measured from.</summary>
public enum HeightAbove
{
    /// <summary>The ground at the foot.</summary>
    Ground,

    /// <summary>The roof that the mast stands on.</summary>
    Roof,

    /// <summary>Sea level, by a named datum.</summary>
    SeaLevel,
}

/// <summary>Polarisation of an antenna.</summary>
public enum Polarisation
{
    /// <summary>Electric field upright.</summary>
    Vertical,

    /// <summary>Electric field level.</summary>
    Horizontal,
}

/// <summary>Where an antenna's elevation (and azimuth) pattern comes from.</summary>
public enum PatternKind
{
    /// <summary>Nobody said: the gain is used at every angle, and the finding says so.</summary>
    NotGiven,

    /// <summary>A table of angle and level from the user's file.</summary>
    Table,

    /// <summary>A uniform collinear array: number of elements, spacing, null fill.</summary>
    CollinearArray,

    /// <summary>A Yagi by gain and beamwidths.</summary>
    Yagi,

    /// <summary>The average side-lobe envelope of Rec. ITU-R F.1336 for omnidirectional antennas.</summary>
    AverageSideLobes,
}

/// <summary>The height of an antenna's centre and what it is measured from.</summary>
/// <param name="Metres">The height in metres, with its precision.</param>
/// <param name="Above">What it is measured from.</param>
/// <param name="RoofMetres">Height of the roof above the ground, where the height is above the roof.</param>
/// <param name="Datum">Vertical datum, where the height is above sea level.</param>
public sealed record MountHeight(Estimate Metres, HeightAbove Above, Estimate? RoofMetres = null, string Datum = "");

/// <summary>An antenna as it is mounted. A null is "nobody said".</summary>
public sealed record AntennaFit
{
    /// <summary>Name to speak of it by.</summary>
    public string Name { get; init; } = "";

    /// <summary>Gain in dBi along the main beam, with its precision (a gain in dBd was turned into dBi on reading).</summary>
    public Estimate? GainDbi { get; init; }

    /// <summary>Height of the antenna's centre.</summary>
    public required MountHeight Height { get; init; }

    /// <summary>Polarisation.</summary>
    public Polarisation Polarisation { get; init; }

    /// <summary>Kind of pattern.</summary>
    public PatternKind Pattern { get; init; }

    /// <summary>Elevation pattern: angle in degrees above the horizon (rising) and level in dB relative to the main beam. For <see cref="PatternKind.Table"/>.</summary>
    public System.Collections.Immutable.ImmutableArray<PatternPoint> ElevationTable { get; init; } = [];

    /// <summary>Number of elements of a collinear array.</summary>
    public int? Elements { get; init; }

    /// <summary>Spacing of the elements of a collinear array, in wavelengths.</summary>
    public double? SpacingWavelengths { get; init; }

    /// <summary>Null fill of a collinear array in dB below the main beam; null for none.</summary>
    public double? NullFillDb { get; init; }

    /// <summary>Half-power beamwidth in the vertical plane, in degrees.</summary>
    public double? ElevationBeamwidthDegrees { get; init; }

    /// <summary>Half-power beamwidth in the horizontal plane, in degrees; null for an omnidirectional antenna.</summary>
    public double? AzimuthBeamwidthDegrees { get; init; }

    /// <summary>Direction of the main beam clockwise from true north, in degrees; null for an omnidirectional antenna.</summary>
    public double? BearingDegrees { get; init; }

    /// <summary>Elevation of the main beam in degrees, up positive.</summary>
    public double TiltDegrees { get; init; }

    /// <summary>Length of the radiating part in metres; null when unknown.</summary>
    public double? LengthMetres { get; init; }

    /// <summary>Distance from a mast that runs up beside the antenna, in metres; null when it stands free on top.</summary>
    public double? SideMountOffsetMetres { get; init; }

    /// <summary>Length over all in metres; null for that of the radiating part.</summary>
    public double? TotalLengthMetres { get; init; }

    /// <summary>Outer diameter of a rod-shaped antenna in metres; null when unknown.</summary>
    public double? DiameterMetres { get; init; }

    /// <summary>Area in m² that it turns to the wind, without any force coefficient; null when unknown.</summary>
    public double? WindAreaSquareMetres { get; init; }

    /// <summary>Force coefficient of that area; null when unknown.</summary>
    public double? DragCoefficient { get; init; }

    /// <summary>Mass in kg; null when unknown.</summary>
    public double? MassKilograms { get; init; }

    /// <summary>Whether the antenna is inside a building.</summary>
    public bool Indoors { get; init; }
}

/// <summary>One row of an elevation pattern.</summary>
/// <param name="AngleDegrees">Angle above the horizon of the antenna, -90 to 90.</param>
/// <param name="LevelDb">Level relative to the main beam in dB: zero or less.</param>
public readonly record struct PatternPoint(double AngleDegrees, double LevelDb);
