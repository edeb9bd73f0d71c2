using System.Globalization;

namespace Mastwright.Geodesy;

/// <summary>An area between two parallels and two meridians; it may cross the antimeridian, and then its west is more than its east.</summary>
public sealed record GeoBounds
{
    /// <summary>Makes an area.</summary>
    /// <param name="southDegrees">Southern edge, -90 to 90.</param>
    /// <param name="westDegrees">Western edge, -180 to 180.</param>
    /// <param name="northDegrees">Northern edge, not south of the southern one, to 90.</param>
    /// <param name="eastDegrees">Eastern edge, -180 to 180; less than the western edge when the area crosses the antimeridian.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public GeoBounds(double southDegrees, double westDegrees, double northDegrees, double eastDegrees)
    {
        if (!(southDegrees >= -90 && southDegrees <= northDegrees && northDegrees <= 90))
        {
            throw new ArgumentOutOfRangeException(nameof(southDegrees), southDegrees, "South is not over north, and both are between -90° and 90°.");
        }

        if (!(westDegrees is >= -180 and <= 180 && eastDegrees is >= -180 and <= 180))
        {
            throw new ArgumentOutOfRangeException(nameof(westDegrees), westDegrees, "West and east are between -180° and 180°.");
        }

        (SouthDegrees, WestDegrees, NorthDegrees, EastDegrees) = (southDegrees, westDegrees, northDegrees, eastDegrees);
    }

    /// <summary>Southern edge in degrees.</summary>
    public double SouthDegrees { get; }

    /// <summary>Western edge in degrees.</summary>
    public double WestDegrees { get; }

    /// <summary>Northern edge in degrees.</summary>
    public double NorthDegrees { get; }

    /// <summary>Eastern edge in degrees.</summary>
    public double EastDegrees { get; }

    /// <summary>From west to east, in degrees of longitude: 0 to 360.</summary>
    public double WidthDegrees => EastDegrees >= WestDegrees ? EastDegrees - WestDegrees : EastDegrees - WestDegrees + 360;

    /// <summary>Whether the area reaches over the meridian of 180°.</summary>
    public bool CrossesAntimeridian => WestDegrees > EastDegrees;

    /// <summary>The narrowest area that holds all the points.</summary>
    /// <param name="points">One or more points.</param>
    /// <exception cref="ArgumentException">There is no point.</exception>
    public static GeoBounds Of(params IReadOnlyCollection<GeoPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        if (points.Count == 0)
        {
            throw new ArgumentException("An area needs at least one point.", nameof(points));
        }

        double[] longitudes = [.. points.Select(point => point.LongitudeDegrees).Order()];

        // The area is what is left when the widest empty stretch between neighbours round the earth is taken away.
        double west = longitudes[0];
        double east = longitudes[^1];
        double widest = west + 360 - east;
        for (int i = 1; i < longitudes.Length; i++)
        {
            if (longitudes[i] - longitudes[i - 1] > widest)
            {
                widest = longitudes[i] - longitudes[i - 1];
                (west, east) = (longitudes[i], longitudes[i - 1]);
            }
        }

        return new GeoBounds(points.Min(point => point.LatitudeDegrees), west, points.Max(point => point.LatitudeDegrees), east);
    }

    /// <summary>Whether a point lies in the area or on its edge.</summary>
    public bool Contains(GeoPoint point) =>
        point.LatitudeDegrees >= SouthDegrees && point.LatitudeDegrees <= NorthDegrees && ContainsLongitude(point.LongitudeDegrees);

    /// <summary>Whether two areas have a point in common.</summary>
    public bool Intersects(GeoBounds other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return other.SouthDegrees <= NorthDegrees && other.NorthDegrees >= SouthDegrees
            && (ContainsLongitude(other.WestDegrees) || other.ContainsLongitude(WestDegrees));
    }

    /// <summary>An area that holds every place within a distance of this one: slightly more than needed, never less.</summary>
    /// <param name="metres">The distance in metres, zero or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The distance is negative or not a number.</exception>
    public GeoBounds Expanded(double metres)
    {
        if (!(metres >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(metres), metres, "A distance to expand by is zero or more.");
        }

        if (metres == 0)
        {
            return this;
        }

        // The least radius of curvature, a(1 - e²) on the equator: a sphere of it turns metres into no fewer degrees than there are.
        // The micrometre is for the rounding of whoever computes a place on the edge.
        double radians = (metres + 1e-6) / (Wgs84.EquatorialRadiusMetres * (1 - Wgs84.EccentricitySquared));
        double south = SouthDegrees - (radians * Degrees.PerRadian);
        double north = NorthDegrees + (radians * Degrees.PerRadian);
        double cosine = Math.Cos(Math.Max(Math.Abs(SouthDegrees), Math.Abs(NorthDegrees)) / Degrees.PerRadian);
        double sideways = south <= -90 || north >= 90 || Math.Sin(radians) >= cosine
            ? 180
            : Math.Asin(Math.Sin(radians) / cosine) * Degrees.PerRadian;
        south = Math.Max(-90, south);
        north = Math.Min(90, north);
        return WidthDegrees + (2 * sideways) >= 360
            ? new GeoBounds(south, -180, north, 180)
            : new GeoBounds(south, Degrees.Wrap(WestDegrees - sideways), north, WrapEast(EastDegrees + sideways));
    }

    /// <summary>The four edges, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture, $"{SouthDegrees:0.#####}…{NorthDegrees:0.#####}, {WestDegrees:0.#####}…{EastDegrees:0.#####}");

    private static double WrapEast(double degrees) => degrees > 180 ? degrees - 360 : degrees;

    private bool ContainsLongitude(double degrees) => CrossesAntimeridian
        ? degrees >= WestDegrees || degrees <= EastDegrees
        : (degrees >= WestDegrees && degrees <= EastDegrees) || (Math.Abs(degrees) == 180 && (EastDegrees == 180 || WestDegrees == -180));
}
