using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of the wind, of a plan or of a site.</summary>
internal static class WindKeys
{
    private static readonly FormShape Years = new("^\\s*[0-9]{1,5}\\s+years\\s*$", "a whole number of years from 2 to 10000, such as 50 years");

    internal static readonly KeyShape Speed = new("speed", new QuantityShape(Dimension.Speed, 1, 150, "26 m/s"), "Basic wind at 10 m above open ground: a national value, from your national annex or wind map.");
    internal static readonly KeyShape Averaging = new("averaging", new ChoiceShape("ten-minute-mean", "three-second-gust"), "Over what time the speed is a mean.");
    internal static readonly KeyShape ReturnPeriod = new("return-period", Years, "Return period of the speed.");
    internal static readonly KeyShape Level = new("level", new ChoiceShape("characteristic", "ultimate"), "Whether load factors are still to come, or the speed is rare enough to go without.");
    internal static readonly KeyShape Form = new("form", new ChoiceShape("en-1991-1-4", "asce-7"), "The standard to calculate by: EN 1991-1-4:2005+A1:2010 or ASCE/SEI 7-16.");
    internal static readonly KeyShape Terrain = new("terrain", new TextShape("II"), "Terrain category of EN 1991-1-4: 0, I, II, III or IV.");
    internal static readonly KeyShape Exposure = new("exposure", new TextShape("C"), "Exposure category of ASCE/SEI 7: B, C or D.");
    internal static readonly KeyShape GustFactor = new("gust-factor", new NumberShape(1, 3), "Three-second gust over ten-minute mean: asks for the conversion that the form needs.");
    internal static readonly KeyShape UltimateFactor = new("ultimate-factor", new NumberShape(1, 3), "Ultimate speed over characteristic speed: asks for the conversion that the form needs.");
    internal static readonly KeyShape DesignReturnPeriod = new("design-return-period", Years, "Return period to design for: asks for the conversion of EN 1991-1-4 (4.2).");
    internal static readonly KeyShape Orography = new("orography", new NumberShape(0.5, 2), "Orography factor of EN 1991-1-4, on the speed: above 1 on a hill, a bank, an edge.");
    internal static readonly KeyShape DirectionFactor = new("direction-factor", new NumberShape(0.5, 1), "Directional factor of EN 1991-1-4, on the speed.");
    internal static readonly KeyShape SeasonFactor = new("season-factor", new NumberShape(0.5, 1), "Season factor of EN 1991-1-4, on the speed.");
    internal static readonly KeyShape AirDensity = new("air-density", new NumberShape(0.5, 1.6), "Density of the air in kg/m³, for EN 1991-1-4.");
    internal static readonly KeyShape TopographicFactor = new("topographic-factor", new NumberShape(1, 4), "Topographic factor Kzt of ASCE/SEI 7, on the pressure.");
    internal static readonly KeyShape Directionality = new("directionality", new NumberShape(0.5, 1), "Directionality factor Kd of ASCE/SEI 7, on the pressure.");
    internal static readonly KeyShape ElevationFactor = new("elevation-factor", new NumberShape(0.5, 1.1), "Ground elevation factor Ke of ASCE/SEI 7, on the pressure.");
    internal static readonly KeyShape StructuralFactor = new("structural-factor", new NumberShape(0.5, 3), "Structural factor of EN 1991-1-4, or gust-effect factor of ASCE/SEI 7, on the force.");
    internal static readonly KeyShape LoadFactor = new("load-factor", new NumberShape(1, 3), "Partial factor for wind, on the force.");
    internal static readonly KeyShape Ice = new("ice", new TextShape("R3"), "Ice class of ISO 12494: G1 to G5 or R1 to R9.");
    internal static readonly KeyShape IceDensity = new("ice-density", new NumberShape(50, 1000), "Density of the ice in kg/m³, in place of the class's.");
    internal static readonly KeyShape IceWindShare = new("ice-wind-share", new QuantityShape(Dimension.Percent, 0, 100, "60 %"), "Share of the wind pressure that is counted together with ice.");

    internal static readonly MappingShape Shape = new(
        "wind", Speed, Averaging, ReturnPeriod, Level, Form, Terrain, Exposure, GustFactor, UltimateFactor, DesignReturnPeriod, Orography, DirectionFactor, SeasonFactor, AirDensity,
        TopographicFactor, Directionality, ElevationFactor, StructuralFactor, LoadFactor, Ice, IceDensity, IceWindShare);
}
