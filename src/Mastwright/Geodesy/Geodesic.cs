namespace Mastwright.Geodesy;

/// <summary>Shortest lines on the WGS 84 ellipsoid: from two places to distance and bearings, and back.</summary>
/// <remarks>
/// Source: C. F. F. Karney, "Algorithms for geodesics", Journal of Geodesy 87 (2013) 43–55.
/// Error: about 15 nm, between any two places, antipodes included (measured in GeodesicTests).
/// </remarks>
public static class Geodesic
{
    /// <summary>The shortest line between two places.</summary>
    /// <remarks>
    /// At one and the same place the distance and both bearings are 0. At a pole the bearing is measured from the meridian of
    /// the longitude given there. Where two lines are equally short (opposite ends of the earth) one of them is given.
    /// </remarks>
    public static GeodesicSegment Inverse(GeoPoint from, GeoPoint to) => GeodesicInverse.Solve(from, to);

    /// <summary>The place reached from another along a bearing.</summary>
    /// <param name="from">Where the line begins.</param>
    /// <param name="bearingDegrees">Direction there, clockwise from true north; any finite number of degrees.</param>
    /// <param name="distanceMetres">Length of the line in metres; a negative length goes the other way.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite.</exception>
    public static GeoPoint Direct(GeoPoint from, double bearingDegrees, double distanceMetres) =>
        new GeodesicLine(from, bearingDegrees).At(distanceMetres);
}
