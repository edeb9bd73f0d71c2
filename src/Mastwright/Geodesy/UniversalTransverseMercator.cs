namespace Mastwright.Geodesy;

/// <summary>From latitude and longitude to the Universal Transverse Mercator grid and back.</summary>
/// <remarks>
/// Source: NGA.STND.0037 (The Universal Grids and the Transverse Mercator and Polar Stereographic Map Projections): scale 0.9996
/// on the meridian, false easting 500,000 m, false northing 10,000,000 m in the south, zones of 6° with the exceptions of
/// Norway (32V) and Svalbard. Series: see the projection's own remarks.
/// Error: under 10 nm within 30° of the zone's meridian by the source; measured in UniversalTransverseMercatorTests.
/// </remarks>
public static class UniversalTransverseMercator
{
    /// <summary>Southern end of the grid, in degrees.</summary>
    public const double SouthLimitDegrees = -80;

    /// <summary>Northern end of the grid, in degrees.</summary>
    public const double NorthLimitDegrees = 84;

    private const double MeridianScale = 0.9996;
    internal const double FalseEastingMetres = 500_000;
    private const double SouthFalseNorthingMetres = 10_000_000;

    /// <summary>How far from the meridian the projection is trusted here; it runs to infinity at 90°.</summary>
    private const double WidestDegrees = 30;

    /// <summary>Whether a place lies in the grid: from 80° S to 84° N.</summary>
    public static bool Covers(GeoPoint point) => point.LatitudeDegrees is >= SouthLimitDegrees and <= NorthLimitDegrees;

    /// <summary>The zone that the grid gives a place, with the exceptions of Norway and Svalbard.</summary>
    public static int Zone(GeoPoint point)
    {
        double longitude = point.LongitudeDegrees;
        return (point.LatitudeDegrees, longitude) switch
        {
            ( >= 56 and < 64, >= 3 and < 12) => 32,
            ( >= 72, >= 0 and < 9) => 31,
            ( >= 72, >= 9 and < 21) => 33,
            ( >= 72, >= 21 and < 33) => 35,
            ( >= 72, >= 33 and < 42) => 37,
            _ => (int)Math.Floor((longitude + 180) / 6) + 1,
        };
    }

    /// <summary>The longitude in the middle of a zone, in degrees.</summary>
    /// <param name="zone">Zone, 1 to 60.</param>
    public static double MeridianDegrees(int zone) => (6 * zone) - 183;

    /// <summary>A place in its own zone and hemisphere.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The place is south of 80° S or north of 84° N.</exception>
    public static UtmPosition FromGeo(GeoPoint point)
    {
        if (!Covers(point))
        {
            throw new ArgumentOutOfRangeException(nameof(point), point, "The UTM grid reaches from 80° S to 84° N.");
        }

        return FromGeo(point, Zone(point), point.LatitudeDegrees >= 0);
    }

    /// <summary>A place in the grid of a given zone and hemisphere, such as the one in which a raster file is kept.</summary>
    /// <param name="point">The place, within 30° of longitude from the zone's meridian.</param>
    /// <param name="zone">Zone, 1 to 60.</param>
    /// <param name="north">Which hemisphere's northing.</param>
    /// <exception cref="ArgumentOutOfRangeException">The zone does not exist, or the place is too far from it.</exception>
    public static UtmPosition FromGeo(GeoPoint point, int zone, bool north)
    {
        Forward(point.LatitudeDegrees, point.LongitudeDegrees, zone, north, out double easting, out double northing);
        return double.IsNaN(easting)
            ? throw new ArgumentOutOfRangeException(nameof(point), point, "The place is more than 30° of longitude from the zone's meridian.")
            : new UtmPosition(zone, north, easting, northing);
    }

    /// <summary>The place of a position.</summary>
    public static GeoPoint ToGeo(UtmPosition position)
    {
        ArgumentNullException.ThrowIfNull(position);
        Reverse(
            position.EastingMetres,
            position.NorthingMetres,
            position.Zone,
            position.North,
            out double latitudeDegrees,
            out double longitudeDegrees);
        return new GeoPoint(latitudeDegrees, longitudeDegrees);
    }

    /// <summary>Easting and northing in a given zone, without making anything; for loops over many places.</summary>
    /// <param name="latitudeDegrees">Latitude, -90 to 90.</param>
    /// <param name="longitudeDegrees">Longitude, -180 to 180.</param>
    /// <param name="zone">Zone, 1 to 60.</param>
    /// <param name="north">Which hemisphere's northing.</param>
    /// <param name="eastingMetres">Easting in metres; NaN when the place is more than 30° of longitude from the zone's meridian.</param>
    /// <param name="northingMetres">Northing in metres; NaN in the same case.</param>
    /// <exception cref="ArgumentOutOfRangeException">The zone does not exist.</exception>
    public static void Forward(
        double latitudeDegrees, double longitudeDegrees, int zone, bool north, out double eastingMetres, out double northingMetres)
    {
        ThrowUnlessZone(zone);
        double fromMeridian = Degrees.Wrap(longitudeDegrees - MeridianDegrees(zone));
        if (!(Math.Abs(fromMeridian) <= WidestDegrees))
        {
            (eastingMetres, northingMetres) = (double.NaN, double.NaN);
            return;
        }

        (double east, double northward) = TransverseMercator.Forward(latitudeDegrees, fromMeridian);
        eastingMetres = (MeridianScale * east) + FalseEastingMetres;
        northingMetres = (MeridianScale * northward) + (north ? 0 : SouthFalseNorthingMetres);
    }

    /// <summary>The way back from <see cref="Forward"/>.</summary>
    /// <param name="eastingMetres">Easting in metres.</param>
    /// <param name="northingMetres">Northing in metres.</param>
    /// <param name="zone">Zone, 1 to 60.</param>
    /// <param name="north">Which hemisphere's northing.</param>
    /// <param name="latitudeDegrees">Latitude, -90 to 90.</param>
    /// <param name="longitudeDegrees">Longitude, in [-180, 180).</param>
    /// <exception cref="ArgumentOutOfRangeException">The zone does not exist.</exception>
    public static void Reverse(
        double eastingMetres, double northingMetres, int zone, bool north, out double latitudeDegrees, out double longitudeDegrees)
    {
        ThrowUnlessZone(zone);
        (latitudeDegrees, double fromMeridian) = TransverseMercator.Reverse(
            (eastingMetres - FalseEastingMetres) / MeridianScale,
            (northingMetres - (north ? 0 : SouthFalseNorthingMetres)) / MeridianScale);
        longitudeDegrees = Degrees.Wrap(fromMeridian + MeridianDegrees(zone));
    }

    private static void ThrowUnlessZone(int zone)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(zone, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(zone, 60);
    }
}
