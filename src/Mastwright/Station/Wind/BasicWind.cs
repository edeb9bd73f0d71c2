namespace Mastwright.Station.Wind;

/// <summary>Over what time a wind speed is a mean.</summary>
public enum WindAveraging
{
    /// <summary>Mean of ten minutes.</summary>
    TenMinuteMean,

    /// <summary>Gust: mean of three seconds.</summary>
    ThreeSecondGust,
}

/// <summary>Whether load factors are still to be applied to the pressure of a wind.</summary>
public enum WindLevel
{
    /// <summary>A characteristic wind: the load factor comes on top.</summary>
    Characteristic,

    /// <summary>An ultimate wind: rare enough that the load factor is one.</summary>
    Ultimate,
}

/// <summary>The form by which a wind becomes a pressure.</summary>
public enum WindForm
{
    /// <summary>EN 1991-1-4:2005+A1:2010.</summary>
    Eurocode,

    /// <summary>ASCE/SEI 7-16.</summary>
    Asce,
}

/// <summary>A basic wind with its kind, and what turns it into a pressure at a height. A null or an empty text is what nobody gave.</summary>
/// <remarks>The speed is a national value: it stands in a national annex or on a wind map, and is left to the user.</remarks>
public sealed record BasicWind
{
    /// <summary>Speed in m/s at 10 m above open ground.</summary>
    public double? SpeedMetresPerSecond { get; init; }

    /// <summary>Over what time the speed is a mean.</summary>
    public WindAveraging? Averaging { get; init; }

    /// <summary>Return period of the speed in years.</summary>
    public int? ReturnPeriodYears { get; init; }

    /// <summary>Characteristic or ultimate.</summary>
    public WindLevel? Level { get; init; }

    /// <summary>The form to calculate by.</summary>
    public WindForm? Form { get; init; }

    /// <summary>Terrain category of EN 1991-1-4.</summary>
    public string Terrain { get; init; } = "";

    /// <summary>Exposure category of ASCE/SEI 7.</summary>
    public string Exposure { get; init; } = "";

    /// <summary>Gust of three seconds over mean of ten minutes: asks for the conversion between the two.</summary>
    public double? GustFactor { get; init; }

    /// <summary>Ultimate speed over characteristic speed: asks for the conversion between the two.</summary>
    public double? UltimateFactor { get; init; }

    /// <summary>Return period in years to design for (EN 1991-1-4 (4.2)): asks for the conversion from the speed's own.</summary>
    public int? DesignReturnPeriodYears { get; init; }

    /// <summary>Orography factor co of EN 1991-1-4, on the speed.</summary>
    public double? OrographyFactor { get; init; }

    /// <summary>Directional factor cdir of EN 1991-1-4, on the speed.</summary>
    public double? DirectionFactor { get; init; }

    /// <summary>Season factor cseason of EN 1991-1-4, on the speed.</summary>
    public double? SeasonFactor { get; init; }

    /// <summary>Density of the air in kg/m³, for EN 1991-1-4.</summary>
    public double? AirDensity { get; init; }

    /// <summary>Topographic factor Kzt of ASCE/SEI 7, on the pressure.</summary>
    public double? TopographicFactor { get; init; }

    /// <summary>Directionality factor Kd of ASCE/SEI 7, on the pressure.</summary>
    public double? DirectionalityFactor { get; init; }

    /// <summary>Ground elevation factor Ke of ASCE/SEI 7, on the pressure.</summary>
    public double? ElevationFactor { get; init; }

    /// <summary>Structural factor cs·cd of EN 1991-1-4, or gust-effect factor G of ASCE/SEI 7, on the force.</summary>
    public double? StructuralFactor { get; init; }

    /// <summary>Partial factor for wind, on the force.</summary>
    public double? LoadFactor { get; init; }

    /// <summary>Ice class of ISO 12494; empty when no ice is counted.</summary>
    public string IceClass { get; init; } = "";

    /// <summary>Density of the ice in kg/m³ in place of the class's own.</summary>
    public double? IceDensity { get; init; }

    /// <summary>Share of the wind pressure that is counted together with ice, 0 to 1.</summary>
    public double? IceWindShare { get; init; }
}
