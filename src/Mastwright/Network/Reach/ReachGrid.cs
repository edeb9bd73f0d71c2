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

    /// <summary>Most cells of a field that is swept.</summary>
    public const long MostCells = 4_000_000;

    /// <summary>Smallest side of a cell, in metres.</summary>
    public const double LeastCellMetres = 5;

    /// <summary>Largest radius, in metres.</summary>
    public const double MostRadiusMetres = 100_000;

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

        UtmPosition at = UniversalTransverseMercator.FromGeo(station);

        // The grid's scale departs from 1 by up to 0.1 % within a zone; a little further out on the far side of it.
        double reach = radiusMetres * 1.002;
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
