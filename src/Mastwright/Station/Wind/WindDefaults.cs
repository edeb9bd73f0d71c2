using Mastwright.Findings;

namespace Mastwright.Station.Wind;

/// <summary>Every value of the wind that is used when nobody gave it: one place, each listed as assumed where it is used.</summary>
public static class WindDefaults
{
    /// <summary>Density of the air in kg/m³ (recommended value, note to EN 1991-1-4 clause 4.5).</summary>
    public const double AirDensity = 1.25;

    /// <summary>Partial factor for wind as the leading unfavourable action (EN 1990:2002, Table A1.2(B), from memory).</summary>
    public const double EurocodeLoadFactor = 1.5;

    /// <summary>Partial factor for weight (EN 1990:2002, Table A1.2(B), from memory).</summary>
    public const double EurocodeWeightFactor = 1.35;

    /// <summary>Load factor for weight together with wind (ASCE/SEI 7-16, clause 2.3.1, combination 4, from memory).</summary>
    public const double AsceWeightFactor = 1.2;

    /// <summary>Gust-effect factor of a rigid structure (ASCE/SEI 7-16, clause 26.11, from memory).</summary>
    public const double AsceGustEffect = 0.85;

    /// <summary>Directionality factor of a round pole (ASCE/SEI 7-16, Table 26.6-1, from memory).</summary>
    public const double AsceDirectionality = 0.95;

    /// <summary>Force coefficient of a flat face: a box, a panel, an area of unknown shape (from memory, TIA-222 for flat members).</summary>
    public const double FlatCoefficient = 2.0;

    internal static Assumption Orography(string path) => new(
        "wind-orography", "no speed-up over a hill or an edge: orography factor 1", "EN 1991-1-4, clause 4.3.3 asks for more on an isolated hill, ridge, cliff or bank", Key(path, "orography"));

    internal static Assumption Direction(string path) => new("wind-direction", "directional factor 1", "EN 1991-1-4, clause 4.2, recommended value", Key(path, "direction-factor"));

    internal static Assumption Season(string path) => new("wind-season", "season factor 1: the mast stands all year", "EN 1991-1-4, clause 4.2, recommended value", Key(path, "season-factor"));

    internal static Assumption Density(string path) => new("air-density", "air of 1.25 kg/m³", "EN 1991-1-4, clause 4.5, recommended value", Key(path, "air-density"));

    internal static Assumption Structural(string path) => new(
        "structural-factor", "structural factor 1: gusts do not set the mast swinging", "EN 1991-1-4, clause 6.2; a slender pole may need more", Key(path, "structural-factor"));

    internal static Assumption LoadFactor(string path) => new(
        "wind-load-factor", "partial factor for wind 1.5", "EN 1990, Table A1.2(B), from memory", Key(path, "load-factor"));

    internal static Assumption Topographic(string path) => new("wind-topography", "topographic factor 1: no hill or edge", "ASCE/SEI 7-16, clause 26.8, from memory", Key(path, "topographic-factor"));

    internal static Assumption Directionality(string path) => new(
        "wind-directionality", "directionality factor 0.95, a round pole", "ASCE/SEI 7-16, Table 26.6-1, from memory", Key(path, "directionality"));

    internal static Assumption Elevation(string path) => new("wind-elevation", "ground elevation factor 1: sea level", "ASCE/SEI 7-16, clause 26.9, from memory", Key(path, "elevation-factor"));

    internal static Assumption GustEffect(string path) => new(
        "structural-factor", "gust-effect factor 0.85, a rigid structure", "ASCE/SEI 7-16, clause 26.11, from memory", Key(path, "structural-factor"));

    internal static Assumption UltimateLoad(string path) => new("wind-load-factor", "load factor for wind 1: the wind is an ultimate one", "ASCE/SEI 7-16, clause 2.3, from memory", Key(path, "load-factor"));

    internal static Assumption EurocodeWeight() => new("weight-factor", "partial factor for weight 1.35", "EN 1990, Table A1.2(B), from memory");

    internal static Assumption AsceWeight() => new("weight-factor", "load factor for weight 1.2", "ASCE/SEI 7-16, clause 2.3.1, combination 4, from memory");

    internal static Assumption IceShare(string path) => new(
        "ice-wind-share", "the full wind pressure together with ice", "ISO 12494 allows less", Key(path, "ice-wind-share"));

    private static string Key(string path, string key) => StationDefaults.Join(path, key);
}
