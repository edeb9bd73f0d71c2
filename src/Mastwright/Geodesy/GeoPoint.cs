using System.Globalization;

namespace Mastwright.Geodesy;

/// <summary>A place on the WGS 84 ellipsoid. The default value is 0° N 0° E.</summary>
public readonly record struct GeoPoint
{
    /// <summary>Makes a point; the longitude is brought into [-180, 180).</summary>
    /// <param name="latitudeDegrees">Geodetic latitude, -90 to 90, north positive.</param>
    /// <param name="longitudeDegrees">Longitude, -540 to 540, east positive.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or not a number.</exception>
    public GeoPoint(double latitudeDegrees, double longitudeDegrees)
    {
        if (!(latitudeDegrees is >= -90 and <= 90))
        {
            throw new ArgumentOutOfRangeException(nameof(latitudeDegrees), latitudeDegrees, "A latitude is between -90° and 90°.");
        }

        if (!(longitudeDegrees is >= -540 and <= 540))
        {
            throw new ArgumentOutOfRangeException(nameof(longitudeDegrees), longitudeDegrees, "A longitude is between -180° and 180°.");
        }

        LatitudeDegrees = latitudeDegrees;
        LongitudeDegrees = longitudeDegrees switch
        {
            >= 180 => longitudeDegrees - 360,
            < -180 => longitudeDegrees + 360,
            _ => longitudeDegrees,
        };
    }

    /// <summary>Geodetic latitude in degrees, north positive.</summary>
    public double LatitudeDegrees { get; }

    /// <summary>Longitude in degrees, east positive, in [-180, 180).</summary>
    public double LongitudeDegrees { get; }

    /// <summary>Decimal degrees in the invariant culture: "46.40000, -18.70000".</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{LatitudeDegrees:0.00000}, {LongitudeDegrees:0.00000}");
}
