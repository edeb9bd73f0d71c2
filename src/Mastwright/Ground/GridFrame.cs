using System.Globalization;
using Mastwright.Geodesy;

namespace Mastwright.Ground;

/// <summary>How a grid of samples lies on the earth: row 0 is the northernmost, column 0 the westernmost.</summary>
/// <remarks>
/// A geographic grid counts in degrees of WGS 84, a UTM grid in metres of one zone. The origin is the centre of the first sample.
/// Immutable and safe from many threads.
/// </remarks>
public sealed record GridFrame
{
    /// <summary>Most columns or rows of one grid.</summary>
    public const int MostSamplesASide = 500_000;

    private GridFrame(
        int utmZone, bool isNorth, double originX, double originY, double stepX, double stepY, int columns, int rows, bool samplesAreAreas)
    {
        UtmZone = utmZone;
        IsNorth = isNorth;
        OriginX = originX;
        OriginY = originY;
        StepX = stepX;
        StepY = stepY;
        Columns = columns;
        Rows = rows;
        SamplesAreAreas = samplesAreAreas;
    }

    /// <summary>UTM zone 1 to 60; 0 for a geographic grid.</summary>
    public int UtmZone { get; }

    /// <summary>Whether a UTM grid counts its northings from the equator (EPSG 326xx), not from the south (327xx).</summary>
    public bool IsNorth { get; }

    /// <summary>Centre of the first column: longitude in degrees, or easting in metres.</summary>
    public double OriginX { get; }

    /// <summary>Centre of the first (northernmost) row: latitude in degrees, or northing in metres.</summary>
    public double OriginY { get; }

    /// <summary>Distance of two columns, in degrees or metres: greater than zero.</summary>
    public double StepX { get; }

    /// <summary>Distance of two rows, in degrees or metres: greater than zero.</summary>
    public double StepY { get; }

    /// <summary>Number of columns, 1 or more.</summary>
    public int Columns { get; }

    /// <summary>Number of rows, 1 or more.</summary>
    public int Rows { get; }

    /// <summary>
    /// Whether a sample stands for the cell around it, so that tiles lie side by side half a cell away from their last samples; else
    /// samples are points and neighbouring tiles share their edges.
    /// </summary>
    public bool SamplesAreAreas { get; }

    /// <summary>Whether the grid counts in degrees.</summary>
    public bool IsGeographic => UtmZone == 0;

    /// <summary>Longitude or easting of the last column's centre.</summary>
    public double LastX => OriginX + ((Columns - 1) * StepX);

    /// <summary>Latitude or northing of the last (southernmost) row's centre.</summary>
    public double LastY => OriginY - ((Rows - 1) * StepY);

    /// <summary>Distance of two rows on the ground in metres (the larger step of a UTM grid).</summary>
    public double ResolutionMetres => IsGeographic
        ? StepY * MetresPerDegreeOfLatitude((OriginY + LastY) / 2)
        : Math.Max(StepX, StepY);

    /// <summary>A grid in degrees.</summary>
    /// <param name="west">Longitude of the first column's centre in degrees, -360 to 360.</param>
    /// <param name="north">Latitude of the first row's centre in degrees.</param>
    /// <param name="stepEast">Distance of two columns in degrees, greater than zero.</param>
    /// <param name="stepSouth">Distance of two rows in degrees, greater than zero.</param>
    /// <param name="columns">Number of columns, 1 to <see cref="MostSamplesASide"/>.</param>
    /// <param name="rows">Number of rows, 1 to <see cref="MostSamplesASide"/>.</param>
    /// <param name="samplesAreAreas">See <see cref="SamplesAreAreas"/>.</param>
    /// <exception cref="ArgumentException">A value is outside its range, or the grid leaves the earth.</exception>
    public static GridFrame Geographic(
        double west, double north, double stepEast, double stepSouth, int columns, int rows, bool samplesAreAreas)
    {
        GridFrame frame = Checked(0, true, west, north, stepEast, stepSouth, columns, rows, samplesAreAreas);
        double half = samplesAreAreas ? stepSouth / 2 : 0;
        bool onEarth = west >= -360 && frame.LastX <= 540 && frame.LastX - west <= 360
            && north - half <= 90 + 1e-9 && frame.LastY + half >= -90 - 1e-9;
        return onEarth ? frame : throw new ArgumentException(string.Create(
            CultureInfo.InvariantCulture,
            $"A grid in degrees from {north:0.####}° to {frame.LastY:0.####}° north and {west:0.####}° to {frame.LastX:0.####}° east is not on the earth."), nameof(west));
    }

    /// <summary>A grid in metres of one UTM zone.</summary>
    /// <param name="zone">Zone, 1 to 60.</param>
    /// <param name="isNorth">See <see cref="IsNorth"/>.</param>
    /// <param name="easting">Easting of the first column's centre in metres.</param>
    /// <param name="northing">Northing of the first row's centre in metres.</param>
    /// <param name="stepEast">Distance of two columns in metres, greater than zero.</param>
    /// <param name="stepSouth">Distance of two rows in metres, greater than zero.</param>
    /// <param name="columns">Number of columns, 1 to <see cref="MostSamplesASide"/>.</param>
    /// <param name="rows">Number of rows, 1 to <see cref="MostSamplesASide"/>.</param>
    /// <param name="samplesAreAreas">See <see cref="SamplesAreAreas"/>.</param>
    /// <exception cref="ArgumentException">A value is outside its range, or the grid leaves the zone's own rectangle by far.</exception>
    public static GridFrame Utm(
        int zone, bool isNorth, double easting, double northing, double stepEast, double stepSouth, int columns, int rows, bool samplesAreAreas)
    {
        if (zone is < 1 or > 60)
        {
            throw new ArgumentOutOfRangeException(nameof(zone), zone, "A UTM zone is 1 to 60.");
        }

        GridFrame frame = Checked(zone, isNorth, easting, northing, stepEast, stepSouth, columns, rows, samplesAreAreas);
        bool inZone = easting >= -500_000 && frame.LastX <= 1_500_000 && northing <= 10_500_000 && frame.LastY >= -500_000;
        return inZone ? frame : throw new ArgumentException(string.Create(
            CultureInfo.InvariantCulture,
            $"A UTM grid from {easting:0} to {frame.LastX:0} m east and {frame.LastY:0} to {northing:0} m north is not in a zone."), nameof(easting));
    }

    /// <summary>The part of this grid that starts at a column and a row; a true part lies beside its neighbours like a tile of areas.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The part is not inside the grid.</exception>
    public GridFrame Part(int column, int row, int columns, int rows)
    {
        if (column < 0 || row < 0 || columns < 1 || rows < 1 || column > Columns - columns || row > Rows - rows)
        {
            throw new ArgumentOutOfRangeException(nameof(column), column, "The part of a grid lies inside it.");
        }

        bool isWhole = columns == Columns && rows == Rows;
        return isWhole ? this : new(
            UtmZone, IsNorth, OriginX + (column * StepX), OriginY - (row * StepY), StepX, StepY, columns, rows, samplesAreAreas: true);
    }

    /// <summary>Where a place lies in the grid, counted in samples: 0 is the centre of the first; may be outside.</summary>
    public (double Column, double Row) Locate(GeoPoint point)
    {
        (double x, double y) = Project(UtmZone, IsNorth, point.LatitudeDegrees, point.LongitudeDegrees);
        if (IsGeographic)
        {
            x += Turn(x);
        }

        return ((x - OriginX) / StepX, (OriginY - y) / StepY);
    }

    /// <summary>What to add to a longitude (a multiple of 360°) to bring it next to this geographic grid.</summary>
    internal double Turn(double longitudeDegrees) =>
        360 * Math.Round((((OriginX + LastX) / 2) - longitudeDegrees) / 360);

    /// <summary>Longitude and latitude, or easting and northing in a zone.</summary>
    internal static (double X, double Y) Project(int utmZone, bool isNorth, double latitudeDegrees, double longitudeDegrees)
    {
        if (utmZone == 0)
        {
            return (longitudeDegrees, latitudeDegrees);
        }

        longitudeDegrees -= 360 * Math.Round(longitudeDegrees / 360);
        UniversalTransverseMercator.Forward(latitudeDegrees, longitudeDegrees, utmZone, isNorth, out double easting, out double northing);
        return (easting, northing);
    }

    /// <summary>Length of a degree along a meridian of WGS 84.</summary>
    internal static double MetresPerDegreeOfLatitude(double latitudeDegrees)
    {
        double sin = Math.Sin(double.DegreesToRadians(latitudeDegrees));
        double w = 1 - (Wgs84.EccentricitySquared * sin * sin);
        double radius = Wgs84.EquatorialRadiusMetres * (1 - Wgs84.EccentricitySquared) / (w * Math.Sqrt(w));
        return double.DegreesToRadians(radius);
    }

    /// <summary>Size, step and place, in the invariant culture.</summary>
    public override string ToString() => IsGeographic
        ? string.Create(CultureInfo.InvariantCulture, $"{Columns} × {Rows} samples, {StepX * 3600:0.###}″ × {StepY * 3600:0.###}″")
        : string.Create(CultureInfo.InvariantCulture, $"{Columns} × {Rows} samples, {StepX:0.###} m × {StepY:0.###} m, UTM {UtmZone} {(IsNorth ? "north" : "south")}");

    private static GridFrame Checked(
        int zone, bool isNorth, double x, double y, double stepX, double stepY, int columns, int rows, bool samplesAreAreas)
    {
        if (!double.IsFinite(x) || !double.IsFinite(y))
        {
            throw new ArgumentException("The origin of a grid is a finite number.", nameof(x));
        }

        if (!(stepX > 0 && double.IsFinite(stepX)) || !(stepY > 0 && double.IsFinite(stepY)))
        {
            throw new ArgumentException("The steps of a grid are greater than zero.", nameof(stepX));
        }

        if (columns is < 1 or > MostSamplesASide || rows is < 1 or > MostSamplesASide)
        {
            throw new ArgumentException($"A grid has 1 to {MostSamplesASide} columns and rows; this one has {columns} × {rows}.", nameof(columns));
        }

        return new(zone, isNorth, x, y, stepX, stepY, columns, rows, samplesAreAreas);
    }
}
