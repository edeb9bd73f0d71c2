using Mastwright.Quantities;

namespace Mastwright.Station.Earthing;

/// <summary>Whether a data cable that leaves the building has a surge arrester.</summary>
public enum DataCableSurge
{
    /// <summary>Nobody said whether there is such a cable.</summary>
    NotSaid,

    /// <summary>There is no such cable.</summary>
    NoCable,

    /// <summary>There is one, with an arrester.</summary>
    Arrester,

    /// <summary>There is one, without.</summary>
    Bare,
}

/// <summary>Whether something higher stands by that takes the strike.</summary>
public enum AirTermination
{
    /// <summary>Nobody said.</summary>
    NotSaid,

    /// <summary>There is none: the antenna is the highest.</summary>
    None,

    /// <summary>A rod.</summary>
    Rod,
}

/// <summary>How a fit-out is earthed. A null or an empty text is "nobody said".</summary>
public sealed record EarthingFit
{
    /// <summary>Class of lightning protection to hold the numbers against.</summary>
    public string LightningClass { get; init; } = "";

    /// <summary>Whether something higher stands by.</summary>
    public AirTermination AirTermination { get; init; }

    /// <summary>Height of the tip of the air termination above the ground, in metres.</summary>
    public double? RodHeightMetres { get; init; }

    /// <summary>Level distance in metres from the air termination to the antenna.</summary>
    public double? RodDistanceMetres { get; init; }

    /// <summary>Cross-section in mm² of the conductor from mast to earth.</summary>
    public double? ConductorSquareMillimetres { get; init; }

    /// <summary>Its material: "copper", "aluminium", "steel".</summary>
    public string ConductorMaterial { get; init; } = "";

    /// <summary>How far the antenna is below the edge of the roof, in metres; null when it is not, or nobody said.</summary>
    public double? BelowRoofEdgeMetres { get; init; }

    /// <summary>How far the antenna is from the wall, in metres.</summary>
    public double? FromWallMetres { get; init; }

    /// <summary>Resistivity of the soil in Ω·m.</summary>
    public Estimate? SoilOhmMetres { get; init; }

    /// <summary>Catalogue key of the soil, in place of its resistivity.</summary>
    public string Soil { get; init; } = "";

    /// <summary>Number of earth rods.</summary>
    public int? Rods { get; init; }

    /// <summary>Driven length of one in metres.</summary>
    public double? RodLengthMetres { get; init; }

    /// <summary>Its diameter in metres.</summary>
    public double? RodDiameterMetres { get; init; }

    /// <summary>Distance in metres between neighbouring rods.</summary>
    public double? RodSpacingMetres { get; init; }

    /// <summary>Whether the building has a lightning protection system; null when nobody said.</summary>
    public bool? HasLightningProtection { get; init; }

    /// <summary>Distance in metres from the antenna and its cables to that system.</summary>
    public double? SeparationMetres { get; init; }

    /// <summary>Length in metres along that system's conductor to the nearest bond.</summary>
    public double? SeparationLengthMetres { get; init; }

    /// <summary>Number of its down-conductors.</summary>
    public int? DownConductors { get; init; }

    /// <summary>Whether what lies between is solid (brick, concrete, wood) and not air; null when nobody said, and then air, which is listed as assumed.</summary>
    public bool? ThroughSolid { get; init; }

    /// <summary>Surge protection of the data cable.</summary>
    public DataCableSurge DataCable { get; init; }
}
