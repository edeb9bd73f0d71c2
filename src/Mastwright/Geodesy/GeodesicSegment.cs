using System.Globalization;

namespace Mastwright.Geodesy;

/// <summary>The shortest line between two places on the ellipsoid.</summary>
/// <param name="DistanceMetres">Length along the ellipsoid in metres, zero or more.</param>
/// <param name="InitialBearingDegrees">Direction at the first place, clockwise from true north, 0 to 360.</param>
/// <param name="FinalBearingDegrees">Direction of travel on arriving at the second place, clockwise from true north, 0 to 360.</param>
public readonly record struct GeodesicSegment(double DistanceMetres, double InitialBearingDegrees, double FinalBearingDegrees)
{
    /// <summary>Distance and bearing, in the invariant culture.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{DistanceMetres:0.###} m at {InitialBearingDegrees:0.####}°");
}
