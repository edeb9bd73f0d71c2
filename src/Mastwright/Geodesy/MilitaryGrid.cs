using System.Globalization;

namespace Mastwright.Geodesy;

/// <summary>The Military Grid Reference System on WGS 84, between 80° S and 84° N: "18SUJ2348306479".</summary>
/// <remarks>
/// Source: NGA.STND.0037, chapter on MGRS; FGDC-STD-011-2001 (United States National Grid) section 5.2 for truncation: a
/// reference names the square that holds the place, so digits are cut off and never rounded.
/// </remarks>
public static class MilitaryGrid
{
    /// <summary>Latitude bands of 8° from 80° S; the last, X, has 12°.</summary>
    internal const string Bands = "CDEFGHJKLMNPQRSTUVWX";

    private const string Rows = "ABCDEFGHJKLMNPQRSTUV";
    private const double SquareMetres = 100_000;
    private const double RowCycleMetres = 2_000_000;
    private const double LeastScale = 0.9996;

    private static readonly string[] ColumnSets = ["ABCDEFGH", "JKLMNPQR", "STUVWXYZ"];

    /// <summary>The reference of the square that holds a place.</summary>
    /// <param name="point">A place between 80° S and 84° N.</param>
    /// <param name="digitPairs">Digits in each of easting and northing, 1 (10 km) to 5 (1 m).</param>
    /// <exception cref="ArgumentOutOfRangeException">The place is outside the grid, or the number of digits is.</exception>
    public static string Format(GeoPoint point, int digitPairs = 5)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(digitPairs, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(digitPairs, 5);
        if (!UniversalTransverseMercator.Covers(point))
        {
            throw new ArgumentOutOfRangeException(nameof(point), point, "Grid references reach from 80° S to 84° N; the polar grid is not written here.");
        }

        // The hemisphere comes from the band, not from the sign of the latitude, so that the two never disagree by rounding.
        char band = Band(point.LatitudeDegrees);
        UtmPosition utm = UniversalTransverseMercator.FromGeo(point, UniversalTransverseMercator.Zone(point), north: band >= 'N');
        int column = (int)Math.Floor(utm.EastingMetres / SquareMetres);

        // Within rounding of the equator the northing can leave its hemisphere by a nanometre.
        double northing = Math.Clamp(utm.NorthingMetres, 0, Math.BitDecrement(1e7));
        int row = (int)Math.Floor(northing / SquareMetres) + RowShift(utm.Zone);
        double cell = Math.Pow(10, 5 - digitPairs);
        int east = (int)Math.Floor((utm.EastingMetres - (column * SquareMetres)) / cell);
        int north = (int)Math.Floor(northing % SquareMetres / cell);
        string digits = "D" + digitPairs.ToString(CultureInfo.InvariantCulture);
        return string.Concat(
            utm.Zone.ToString("00", CultureInfo.InvariantCulture),
            new string([band, ColumnSets[(utm.Zone - 1) % 3][column - 1], Rows[row % 20]]),
            east.ToString(digits, CultureInfo.InvariantCulture),
            north.ToString(digits, CultureInfo.InvariantCulture));
    }

    /// <summary>Reads a reference of 1 to 5 digit pairs, with or without spaces.</summary>
    /// <param name="text">The reference, such as "18SUJ2348306479" or "18S UJ 23483 06479".</param>
    /// <param name="position">The middle of its square, and half of the square's diagonal.</param>
    /// <param name="problem">What is wrong and what would be right; empty when the answer is true.</param>
    public static bool TryParse(string text, out LocatedPoint position, out string problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        position = default;
        string compact = text.Replace(" ", "", StringComparison.Ordinal).ToUpperInvariant();
        int zoneDigits = 0;
        while (zoneDigits < compact.Length && char.IsAsciiDigit(compact[zoneDigits]))
        {
            zoneDigits++;
        }

        if (compact.Length is < 5 or > 15 || zoneDigits is 0 or > 2 || compact.Length < zoneDigits + 3)
        {
            problem = compact.Length is > 2 and < 16 && zoneDigits == 0 && compact[0] is 'A' or 'B' or 'Y' or 'Z'
                ? $"'{text}' lies in the polar grid (UPS), which is not read here; write decimal degrees"
                : $"'{text}' is no grid reference; write one such as '27TXM7680441062'";
            return false;
        }

        int zone = int.Parse(compact.AsSpan(0, zoneDigits), NumberStyles.None, CultureInfo.InvariantCulture);
        if (zone is < 1 or > 60)
        {
            problem = $"'{text}' has the zone {zone}; zones run from 1 to 60";
            return false;
        }

        char band = compact[zoneDigits];
        if (!Bands.Contains(band, StringComparison.Ordinal))
        {
            problem = $"'{text}' has the latitude band '{band}'; bands run from C to X, without I and O";
            return false;
        }

        string columns = ColumnSets[(zone - 1) % 3];
        int column = columns.IndexOf(compact[zoneDigits + 1], StringComparison.Ordinal);
        int row = Rows.IndexOf(compact[zoneDigits + 2], StringComparison.Ordinal);
        if (column < 0 || row < 0)
        {
            problem = $"'{text}' has the square '{compact.Substring(zoneDigits + 1, 2)}'; in zone {zone} the first letter is "
                + $"one of {columns} and the second one of {Rows}";
            return false;
        }

        return TryPlace(text, compact.AsSpan(zoneDigits + 3), zone, band, column + 1, (row - RowShift(zone) + 20) % 20, out position, out problem);
    }

    /// <summary>The letter of a latitude's band; -80 to 84.</summary>
    internal static char Band(double latitudeDegrees) =>
        Bands[Math.Clamp((int)Math.Floor((latitudeDegrees + 80) / 8), 0, Bands.Length - 1)];

    private static bool TryPlace(
        string text, ReadOnlySpan<char> digits, int zone, char band, int column, int row, out LocatedPoint position, out string problem)
    {
        position = default;
        int pairs = digits.Length / 2;
        if (pairs == 0 || digits.Length % 2 != 0 || digits.ContainsAnyExceptInRange('0', '9'))
        {
            problem = $"'{text}' needs as many digits for the easting as for the northing, one to five each, such as '27TXM7680441062'";
            return false;
        }

        double cell = Math.Pow(10, 5 - pairs);
        double easting = (column * SquareMetres) + (cell * int.Parse(digits[..pairs], NumberStyles.None, CultureInfo.InvariantCulture));
        double rowNorthing = (row * SquareMetres) + (cell * int.Parse(digits[pairs..], NumberStyles.None, CultureInfo.InvariantCulture));
        bool north = band >= 'N';

        // The letters of the rows repeat every 2,000 km; the band says which round is meant.
        for (double northing = rowNorthing; northing < 1e7; northing += RowCycleMetres)
        {
            if (TouchesCell(zone, north, band, easting, northing, cell))
            {
                UtmPosition middle = new(zone, north, easting + (cell / 2), northing + (cell / 2));
                position = new LocatedPoint(UniversalTransverseMercator.ToGeo(middle), cell / Math.Sqrt(2) / LeastScale);
                problem = "";
                return true;
            }
        }

        problem = $"'{text}' names a square that does not reach into zone {zone} band {band}; check the letters";
        return false;
    }

    /// <summary>
    /// Whether the cell reaches into the band and into the zone. Their edges cut cells nearly straight, and a cut cell keeps a corner on
    /// either side; the allowance is for the bow of an edge. The exceptions of the zones follow the bands.
    /// </summary>
    private static bool TouchesCell(int zone, bool north, char band, double easting, double northing, double cell)
    {
        const double BowDegrees = 1e-4;
        double bandSouth = -80 + (8 * Bands.IndexOf(band, StringComparison.Ordinal));
        double bandNorth = band == 'X' ? 84 : bandSouth + 8;
        bool isInBand = false;
        bool isInZone = false;
        ReadOnlySpan<(double East, double North)> places = [(0.5, 0.5), (0, 0), (1, 0), (0, 1), (1, 1)];
        foreach ((double eastShare, double northShare) in places)
        {
            GeoPoint point = UniversalTransverseMercator.ToGeo(
                new UtmPosition(zone, north, easting + (eastShare * cell), northing + (northShare * cell)));
            isInBand |= point.LatitudeDegrees >= bandSouth - BowDegrees && point.LatitudeDegrees <= bandNorth + BowDegrees;
            isInZone |= IsInZone(point.LongitudeDegrees - BowDegrees) || IsInZone(point.LongitudeDegrees + BowDegrees);
        }

        return isInBand && isInZone;

        bool IsInZone(double longitudeDegrees) => UniversalTransverseMercator.Zone(new GeoPoint(bandSouth + 4, longitudeDegrees)) == zone;
    }

    private static int RowShift(int zone) => zone % 2 == 0 ? 5 : 0;
}
