namespace Mastwright.Propagation;

/// <summary>One point of a path as the ray sees it, in a frame in which the ray is straight and the Earth bulges.</summary>
/// <param name="DistanceMetres">Distance from the transmitter.</param>
/// <param name="GroundMetres">Height of the ground above sea level, bulge included.</param>
/// <param name="SurfaceMetres">Height of the cover's top above sea level, bulge included; the ground's at both ends.</param>
/// <param name="RayMetres">Height of the straight ray above sea level.</param>
/// <param name="FresnelRadiusMetres">Radius of the first Fresnel zone.</param>
public readonly record struct ClearancePoint(
    double DistanceMetres, double GroundMetres, double SurfaceMetres, double RayMetres, double FresnelRadiusMetres)
{
    /// <summary>How far the ray passes above the surface, in metres; negative when the surface stands in the way.</summary>
    public double ClearanceMetres => RayMetres - SurfaceMetres;

    /// <summary>The clearance in radii of the first Fresnel zone; infinite at the antennas.</summary>
    public double ClearanceRadii => FresnelRadiusMetres > 0 ? ClearanceMetres / FresnelRadiusMetres : double.PositiveInfinity;

    /// <summary>Parameter v of a knife edge at this point: −√2 times the clearance in radii.</summary>
    public double EdgeParameter => -Math.Sqrt(2) * ClearanceRadii;

    /// <summary>Distance and clearance, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{DistanceMetres:0} m: {ClearanceMetres:0.0} m, {ClearanceRadii:0.00} radii");
}
