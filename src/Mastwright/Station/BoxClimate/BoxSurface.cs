namespace Mastwright.Station.BoxClimate;

/// <summary>How a box is mounted.</summary>
public enum BoxMounting
{
    /// <summary>Nobody said.</summary>
    NotSaid,

    /// <summary>Air on all sides: on a pole or a bracket.</summary>
    Free,

    /// <summary>Its back against a wall.</summary>
    Wall,
}

/// <summary>The surface of an upright box with six plane faces.</summary>
/// <param name="WidthMetres">Width in metres, greater than zero.</param>
/// <param name="HeightMetres">Height in metres, greater than zero.</param>
/// <param name="DepthMetres">Depth in metres, greater than zero.</param>
public readonly record struct BoxSurface(double WidthMetres, double HeightMetres, double DepthMetres)
{
    // IEC TR 60890, table of surface factors, from memory: the factors of the trade's own formulas 1.8·H·(W+D) + 1.4·W·D and 1.4·W·(H+D) + 1.8·D·H.
    private const double RoofFactor = 1.4;
    private const double FreeFactor = 0.9;
    private const double WallFactor = 0.5;

    /// <summary>Share of what the ground sends back of the sun (common practice: grass, soil).</summary>
    private const double GroundReflection = 0.2;

    /// <summary>All six faces in m².</summary>
    public double WholeSquareMetres => 2 * ((WidthMetres * HeightMetres) + (WidthMetres * DepthMetres) + (HeightMetres * DepthMetres));

    /// <summary>Volume in m³.</summary>
    public double CubicMetres => WidthMetres * HeightMetres * DepthMetres;

    /// <summary>The roof in m².</summary>
    public double RoofSquareMetres => WidthMetres * DepthMetres;

    /// <summary>The widest area in m² that a box can turn to parallel light: √(A₁² + A₂² + A₃²) of its three faces, exactly.</summary>
    public double LargestShadowSquareMetres => Norm(Norm(WidthMetres * HeightMetres, HeightMetres * DepthMetres), RoofSquareMetres);

    /// <summary>The area in m² that gives off heat: the floor not counted, the back against a wall by half.</summary>
    /// <param name="mounting">How it is mounted; where nobody said, against a wall.</param>
    public double EffectiveSquareMetres(BoxMounting mounting) =>
        (RoofFactor * RoofSquareMetres)
        + (((2 * FreeFactor * DepthMetres) + (FreeFactor * WidthMetres) + ((mounting == BoxMounting.Free ? FreeFactor : WallFactor) * WidthMetres)) * HeightMetres);

    /// <summary>The area in m² that sees the sky: the roof, and half of what upright faces stand free.</summary>
    /// <param name="mounting">How it is mounted.</param>
    public double SkySquareMetres(BoxMounting mounting) => RoofSquareMetres + (UprightSquareMetres(mounting) / 2);

    /// <summary>Power in watts of the sun on all faces.</summary>
    /// <remarks>
    /// The direct light meets the roof and, whatever way the box faces, the corner that turns most of its sides to the sun: nothing is said of the front's
    /// bearing, and what is left out by it is on the warm side. Diffuse light comes evenly from the whole sky, reflected light from the whole ground.
    /// </remarks>
    /// <param name="directNormal">Direct light square to the beam, in W/m².</param>
    /// <param name="diffuseHorizontal">Diffuse light on the level, in W/m².</param>
    /// <param name="globalHorizontal">All light on the level, in W/m².</param>
    /// <param name="mounting">How the box is mounted.</param>
    public double SunWatts(double directNormal, double diffuseHorizontal, double globalHorizontal, BoxMounting mounting)
    {
        double beam = Math.Max(0, directNormal);
        double onLevel = Math.Clamp(globalHorizontal - diffuseHorizontal, 0, beam);
        double onUpright = Math.Sqrt(Math.Max(0, (beam * beam) - (onLevel * onLevel)));
        double side = Norm(WidthMetres, DepthMetres) * HeightMetres;
        return (RoofSquareMetres * onLevel) + (side * onUpright)
            + (SkySquareMetres(mounting) * Math.Max(0, diffuseHorizontal))
            + (GroundReflection * Math.Max(0, globalHorizontal) * (RoofSquareMetres + (UprightSquareMetres(mounting) / 2)));
    }

    private double UprightSquareMetres(BoxMounting mounting) =>
        HeightMetres * ((2 * DepthMetres) + ((mounting == BoxMounting.Free ? 2 : 1) * WidthMetres));

    private static double Norm(double one, double other) => Math.Sqrt((one * one) + (other * other));
}
