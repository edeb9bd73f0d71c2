using System.Collections.Immutable;
using Mastwright.Quantities;

namespace Mastwright.Station.BoxClimate;

/// <summary>How much sun and sky a box sees.</summary>
public enum BoxShade
{
    /// <summary>Nobody said.</summary>
    NotSaid,

    /// <summary>All of it.</summary>
    Open,

    /// <summary>Under a hood, or on the side that the sun does not reach.</summary>
    Shaded,

    /// <summary>None: under a roof, or in a building.</summary>
    None,
}

/// <summary>Which way something on a box faces.</summary>
public enum BoxFacing
{
    /// <summary>Nobody said.</summary>
    NotSaid,

    /// <summary>Down.</summary>
    Down,

    /// <summary>To the side.</summary>
    Side,

    /// <summary>Up.</summary>
    Up,
}

/// <summary>The box that a radio or a battery stands in. A null or an empty text is "nobody said".</summary>
public sealed record BoxFit
{
    /// <summary>Temperature inside in °C as the keeper knows it: coldest, on the whole, hottest. It stands in for what would be worked out.</summary>
    public Estimate? TemperatureCelsius { get; init; }

    /// <summary>Its measures; null when not given in full.</summary>
    public BoxSurface? Surface { get; init; }

    /// <summary>Catalogue key of its material.</summary>
    public string Material { get; init; } = "";

    /// <summary>Catalogue key of its colour.</summary>
    public string Colour { get; init; } = "";

    /// <summary>How it is mounted.</summary>
    public BoxMounting Mounting { get; init; }

    /// <summary>How much sun it sees.</summary>
    public BoxShade Shade { get; init; }

    /// <summary>Catalogue key of how tight it is.</summary>
    public string Seal { get; init; } = "";

    /// <summary>Temperature of the air outside in °C: coldest, on the whole, hottest.</summary>
    public Estimate? OutsideCelsius { get; init; }

    /// <summary>Relative humidity of the air in damp cold nights, as a share.</summary>
    public double? NightHumidity { get; init; }

    /// <summary>Heat of everything inside in W; null for that of the supply.</summary>
    public Estimate? HeatWatts { get; init; }

    /// <summary>Heat of a heater that is always on, in W.</summary>
    public double? HeaterWatts { get; init; }

    /// <summary>Catalogue key of the place and what it does to a box.</summary>
    public string Place { get; init; } = "";

    /// <summary>IP code of the box; null when not known.</summary>
    public IngressCode? Code { get; init; }

    /// <summary>Where cables come in.</summary>
    public BoxFacing Entries { get; init; }

    /// <summary>Whether cables hang in a loop below where they come in; null when nobody said.</summary>
    public bool? DripLoops { get; init; }

    /// <summary>Which way connectors on the box's outside face.</summary>
    public BoxFacing Connectors { get; init; }

    /// <summary>What is in it, and what is in its wall.</summary>
    public ImmutableArray<BoxPart> Parts { get; init; } = [];

    /// <summary>Whether anything is said of it besides its temperature.</summary>
    public bool IsDescribed => this != new BoxFit { TemperatureCelsius = TemperatureCelsius, Parts = Parts } || !Parts.IsEmpty;
}

/// <summary>A part in a box, or in its wall: a board, a gland, a connector.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="Name">What to call it.</param>
/// <param name="RatedCelsius">The temperatures in °C that it bears, lowest and highest; null when not known.</param>
/// <param name="RiseKelvin">By how much it is warmer than the air in the box, in kelvins; null when not known.</param>
/// <param name="Code">IP code of a part in the wall; null for a part inside, or when not known.</param>
public sealed record BoxPart(string PlanPath, string Name, Estimate? RatedCelsius, double? RiseKelvin, IngressCode? Code);
