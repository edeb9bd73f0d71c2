using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>The cells around a station: a square of the station's UTM zone whose cells lie at whole multiples of their side.</summary>
/// <remarks>Fields of one cell side in one zone so lie cell on cell, whatever station they are of.</remarks>
public static class ReachGrid
{
    /// <summary>Most cells that are evaluated each by its own path.</summary>
    public const long MostDirectCells = 400_000;

    /// <summary>Most cells of a field that is held in memory at once: 50 km in cells of 30 m.</summary>
    public const long MostCells = 9_000_000;

    /// <summary>Most cells of a field that is worked off in pieces and read in bands of rows: some nine bytes each on the disk.</summary>
    public const long MostCellsInPieces = 250_000_000;

    /// <summary>Most cells of a grid that several stations share: some 25 bytes each.</summary>
    public const long MostSharedCells = 9_000_000;

    /// <summary>How far a shared grid may reach from the middle meridian of its zone, in metres: its lengths depart from true ones by up to 0.5 % there.</summary>
    public const double MostFromMeridianMetres = 600_000;

    /// <summary>Smallest side of a cell, in metres.</summary>
    public const double LeastCellMetres = 5;

    /// <summary>Largest radius, in metres.</summary>
    public const double MostRadiusMetres = 200_000;

    /// <summary>Well within the 30° on either side of its meridian to which the projection is trusted.</summary>
    private const double MostWidthDegrees = 40;

    /// <summary>Why a field cannot be made, and what could; empty when it can.</summary>
    /// <param name="station">The station.</param>
    /// <param name="radiusMetres">Radius wanted, in metres.</param>
    /// <param name="cellMetres">Side of a cell wanted, in metres.</param>
    /// <param name="mostCells">Most cells within the radius.</param>
    public static string Problem(GeoPoint station, double radiusMetres, double cellMetres, long mostCells = MostDirectCells)
    {
        if (!UniversalTransverseMercator.Covers(station))
        {
            return "the station lies outside the UTM grid, which reaches from 80° S to 84° N; reach is worked out in that grid";
        }

        if (!(cellMetres >= LeastCellMetres) || !double.IsFinite(cellMetres))
        {
            return Text($"a cell of {cellMetres:0.##} m is too small; give one of {LeastCellMetres:0} m or more");
        }

        if (!(radiusMetres >= cellMetres) || !double.IsFinite(radiusMetres))
        {
            return Text($"a radius of {Length(radiusMetres)} holds no cell of {Length(cellMetres)}; give a radius of several cells");
        }

        if (radiusMetres > MostRadiusMetres)
        {
            return Text($"a radius of {Length(radiusMetres)} is too large; give one of {MostRadiusMetres / 1000:0} km or less");
        }

        double cells = Math.PI * radiusMetres * radiusMetres / (cellMetres * cellMetres);
        if (cells <= mostCells)
        {
            return "";
        }

        double cell = RoundUp(radiusMetres * Math.Sqrt(Math.PI / mostCells));
        double radius = Math.Floor(cellMetres * Math.Sqrt(mostCells / Math.PI) / 100) * 100;
        return Text($"a radius of {Length(radiusMetres)} in cells of {Length(cellMetres)} has some {cells:#,0} cells; the most is {mostCells:#,0}. A cell of {Length(cell)} would do, or a radius of {Length(radius)}");
    }

    /// <summary>The grid.</summary>
    /// <exception cref="ArgumentException">It cannot be made: ask <see cref="Problem"/> first.</exception>
    public static GridFrame Of(GeoPoint station, double radiusMetres, double cellMetres, long mostCells = MostDirectCells)
    {
        if (Problem(station, radiusMetres, cellMetres, mostCells) is { Length: > 0 } problem)
        {
            throw new ArgumentException(problem, nameof(radiusMetres));
        }

        return Square(UniversalTransverseMercator.FromGeo(station), radiusMetres, cellMetres);
    }

    /// <summary>The grid of a field: in the station's zone, or in that of a grid it shares.</summary>
    /// <exception cref="ArgumentException">It cannot be made: ask <see cref="Problem"/> first.</exception>
    public static GridFrame Of(ReachFieldInput input, long mostCells = MostDirectCells)
    {
        ArgumentNullException.ThrowIfNull(input);
        GridFrame own = Of(input.Station, input.RadiusMetres, input.CellMetres, mostCells);
        return input.SharedZone is { } zone
            ? Square(UniversalTransverseMercator.FromGeo(input.Station, zone.Number, zone.IsNorth), input.RadiusMetres, input.CellMetres)
            : own;
    }

    /// <summary>The grid that holds the fields of several stations cell on cell, in the UTM zone of the middle between them.</summary>
    /// <param name="stations">One or more stations, in any order.</param>
    /// <param name="radiusMetres">Radius around each, in metres.</param>
    /// <param name="cellMetres">Side of a cell in metres.</param>
    /// <param name="problem">Why there is none, and what could be; empty when there is.</param>
    /// <returns>The grid; null when it cannot be made.</returns>
    public static GridFrame? Shared(IReadOnlyCollection<GeoPoint> stations, double radiusMetres, double cellMetres, out string problem)
    {
        GeoBounds bounds = GeoBounds.Of(stations);
        GeoPoint middle = new((bounds.SouthDegrees + bounds.NorthDegrees) / 2, Degrees.Wrap(bounds.WestDegrees + (bounds.WidthDegrees / 2)));
        problem = stations.Select(station => Problem(station, radiusMetres, cellMetres, MostCells)).FirstOrDefault(one => one.Length > 0)
            ?? (bounds.WidthDegrees > MostWidthDegrees ? Text($"the stations lie {bounds.WidthDegrees:0}° of longitude apart, too far for one UTM grid. Take those of one region at a time") : "");
        if (problem.Length > 0)
        {
            return null;
        }

        UtmPosition centre = UniversalTransverseMercator.FromGeo(middle);
        UtmPosition[] places = [.. stations.Select(station => UniversalTransverseMercator.FromGeo(station, centre.Zone, centre.North))];
        double off = places.Max(place => Math.Abs(place.EastingMetres - UniversalTransverseMercator.FalseEastingMetres)) + radiusMetres;
        if (!(off <= MostFromMeridianMetres))
        {
            problem = Text($"the stations lie up to {Length(off)} from the middle meridian of one UTM grid; the most is {Length(MostFromMeridianMetres)}. Take those of one region at a time");
            return null;
        }

        GridFrame[] squares = [.. places.Select(place => Square(place, radiusMetres, cellMetres))];
        double west = squares.Min(square => square.OriginX);
        double north = squares.Max(square => square.OriginY);
        long columns = (long)Math.Round((squares.Max(square => square.LastX) - west) / cellMetres) + 1;
        long rows = (long)Math.Round((north - squares.Min(square => square.LastY)) / cellMetres) + 1;
        if (columns * rows > MostSharedCells)
        {
            double cell = RoundUp(cellMetres * Math.Sqrt((double)columns * rows / MostSharedCells));
            problem = Text($"one grid over all stations in cells of {Length(cellMetres)} has {columns:#,0} × {rows:#,0} of them; the most is {MostSharedCells:#,0}. A cell of {Length(cell)} would do");
            return null;
        }

        return GridFrame.Utm(centre.Zone, centre.North, west, north, cellMetres, cellMetres, (int)columns, (int)rows, samplesAreAreas: true);
    }

    /// <summary>Where the first cell of a grid lies in another that holds it cell on cell.</summary>
    /// <exception cref="ArgumentException">It does not hold it so.</exception>
    public static (int Column, int Row) PlaceOf(GridFrame inner, GridFrame outer)
    {
        (int column, int row) = OffsetOf(inner, outer);
        return column >= 0 && row >= 0 && column + inner.Columns <= outer.Columns && row + inner.Rows <= outer.Rows
            ? (column, row)
            : throw new ArgumentException($"{inner} does not lie inside {outer}.", nameof(inner));
    }

    /// <summary>Where the first cell of a grid lies, counted in cells of another on which it lies cell on cell; it may be outside.</summary>
    /// <exception cref="ArgumentException">The cells do not lie on one another.</exception>
    public static (int Column, int Row) OffsetOf(GridFrame inner, GridFrame outer)
    {
        ArgumentNullException.ThrowIfNull(inner);
        ArgumentNullException.ThrowIfNull(outer);
        double column = (inner.OriginX - outer.OriginX) / outer.StepX;
        double row = (outer.OriginY - inner.OriginY) / outer.StepY;
        (int c, int r) = ((int)Math.Round(column), (int)Math.Round(row));
        bool isCellOnCell = inner.UtmZone == outer.UtmZone && inner.IsNorth == outer.IsNorth && inner.StepX == outer.StepX && inner.StepY == outer.StepY
            && Math.Abs(column - c) < 1e-6 && Math.Abs(row - r) < 1e-6;
        return isCellOnCell ? (c, r) : throw new ArgumentException($"{inner} does not lie cell on cell on {outer}.", nameof(inner));
    }

    private static GridFrame Square(UtmPosition at, double radiusMetres, double cellMetres)
    {
        // The grid's scale departs from 1 by up to 0.1 % within a zone; a little further out on the far side of it, more in a zone that is not one's own.
        double off = (Math.Abs(at.EastingMetres - UniversalTransverseMercator.FalseEastingMetres) + radiusMetres) / Wgs84.EquatorialRadiusMetres;
        double reach = radiusMetres * Math.Max(1.002, 1.001 + (off * off / 2));
        double west = Math.Floor((at.EastingMetres - reach) / cellMetres);
        double east = Math.Ceiling((at.EastingMetres + reach) / cellMetres);
        double south = Math.Floor((at.NorthingMetres - reach) / cellMetres);
        double north = Math.Ceiling((at.NorthingMetres + reach) / cellMetres);
        return GridFrame.Utm(
            at.Zone, at.North, (west + 0.5) * cellMetres, (north - 0.5) * cellMetres, cellMetres, cellMetres, (int)(east - west), (int)(north - south), samplesAreAreas: true);
    }

    /// <summary>The place of the centre of a cell.</summary>
    public static GeoPoint Centre(GridFrame frame, int column, int row)
    {
        ArgumentNullException.ThrowIfNull(frame);
        UniversalTransverseMercator.Reverse(
            frame.OriginX + (column * frame.StepX), frame.OriginY - (row * frame.StepY), frame.UtmZone, frame.IsNorth, out double latitude, out double longitude);
        return new(latitude, longitude);
    }

    private static double RoundUp(double metres)
    {
        double step = metres < 100 ? 5 : metres < 1000 ? 10 : 100;
        return Math.Ceiling(metres / step) * step;
    }

    private static string Length(double metres) => metres < 1000 ? Text($"{metres:0.##} m") : Text($"{metres / 1000:0.##} km");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
