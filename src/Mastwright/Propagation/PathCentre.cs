using Mastwright.Geodesy;

namespace Mastwright.Propagation;

/// <summary>The middle of a path on the sphere that ITU-R P.1812 uses, for the latitude that ducting depends on.</summary>
public static class PathCentre
{
    /// <summary>Latitude, in degrees, half the length of the profile along the great circle from the transmitter to the receiver.</summary>
    /// <param name="transmitter">Place of the transmitter.</param>
    /// <param name="receiver">Place of the receiver.</param>
    /// <param name="lengthMetres">Length of the profile in metres, above zero; it need not be the exact distance between the places.</param>
    /// <remarks>
    /// Source: Rec. ITU-R P.1812 equation (4), φ of the path centre; the published results take the point at half the profile length on a
    /// sphere of radius 6 371 km. Not meant for antipodal places.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The length is not above zero.</exception>
    public static double LatitudeDegrees(GeoPoint transmitter, GeoPoint receiver, double lengthMetres)
    {
        double half = Domain.Positive(lengthMetres, nameof(lengthMetres)) / 2 / EffectiveEarth.MeanRadiusMetres;
        (double sinT, double cosT) = Math.SinCos(double.DegreesToRadians(transmitter.LatitudeDegrees));
        (double sinR, double cosR) = Math.SinCos(double.DegreesToRadians(receiver.LatitudeDegrees));
        (double sinL, double cosL) = Math.SinCos(double.DegreesToRadians(receiver.LongitudeDegrees - transmitter.LongitudeDegrees));

        // Cosine of the bearing from the north and east parts of the way to the receiver.
        double north = (cosT * sinR) - (sinT * cosR * cosL);
        double east = cosR * sinL;
        double horizontal = Math.Sqrt((north * north) + (east * east));
        double cosBearing = horizontal > 0 ? north / horizontal : 1;
        (double sinHalf, double cosHalf) = Math.SinCos(half);
        return double.RadiansToDegrees(Math.Asin(Math.Clamp((sinT * cosHalf) + (cosT * sinHalf * cosBearing), -1, 1)));
    }
}
