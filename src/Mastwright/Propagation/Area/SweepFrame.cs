using Mastwright.Geodesy;

namespace Mastwright.Propagation.Area;

/// <summary>The plane of a sweep: each place lies at its true distance and true bearing from the station (azimuthal equidistant on WGS 84).</summary>
/// <remarks>Every straight line through the station is a geodesic. Immutable and safe from many threads.</remarks>
public sealed record SweepFrame
{
    /// <summary>Most cells on each side of the station.</summary>
    public const int MostReach = 20_000;

    /// <summary>Nearer to a pole than this, in degrees of latitude, there is no map: grids of degrees have no square cells there.</summary>
    public const double HighestLatitude = 89;

    private SweepFrame(GeoPoint station, int reach, double cellMetres)
    {
        Station = station;
        Reach = reach;
        CellMetres = cellMetres;
    }

    /// <summary>Place of the station, in the middle of the middle cell.</summary>
    public GeoPoint Station { get; }

    /// <summary>Cells on each side of the station's own.</summary>
    public int Reach { get; }

    /// <summary>Side of a cell, in metres.</summary>
    public double CellMetres { get; }

    /// <summary>Columns, and rows, of the grid.</summary>
    public int Side => (2 * Reach) + 1;

    /// <summary>Radius of the map, in metres: a whole number of cells.</summary>
    public double RadiusMetres => Reach * CellMetres;

    /// <summary>The plane around a station.</summary>
    /// <param name="station">Place of the station.</param>
    /// <param name="radiusMetres">Least radius of the map in metres; the map's is a whole number of cells, two or more.</param>
    /// <param name="cellMetres">Side of a cell in metres, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The station is nearer than a degree to a pole, a length is not above zero, or the radius is more than <see cref="MostReach"/> cells.
    /// </exception>
    public static SweepFrame Around(GeoPoint station, double radiusMetres, double cellMetres)
    {
        if (!(Math.Abs(station.LatitudeDegrees) <= HighestLatitude))
        {
            throw new ArgumentOutOfRangeException(nameof(station), station, FormattableString.Invariant($"A map around a station lies between {-HighestLatitude} and {HighestLatitude} degrees of latitude."));
        }

        double cells = Math.Ceiling((Domain.Positive(radiusMetres, nameof(radiusMetres)) / Domain.Positive(cellMetres, nameof(cellMetres))) - 1e-9);
        return cells <= MostReach
            ? new(station, (int)Math.Max(2, cells), cellMetres)
            : throw new ArgumentOutOfRangeException(nameof(radiusMetres), radiusMetres, FormattableString.Invariant($"A map has at most {MostReach} cells on each side; {radiusMetres:0} m are {cells:0} cells of {cellMetres:0.###} m."));
    }

    /// <summary>The place of a position counted in cells from the station, exact on the geodesic.</summary>
    /// <param name="east">Cells to the east.</param>
    /// <param name="north">Cells to the north.</param>
    public GeoPoint PointAt(double east, double north) => east == 0 && north == 0
        ? Station
        : Geodesic.Direct(Station, double.RadiansToDegrees(Math.Atan2(east, north)), Math.Sqrt((east * east) + (north * north)) * CellMetres);

    /// <summary>Where a place lies, in cells to the east and north of the station.</summary>
    public (double East, double North) Locate(GeoPoint point)
    {
        GeodesicSegment segment = Geodesic.Inverse(Station, point);
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(segment.InitialBearingDegrees));
        double cells = segment.DistanceMetres / CellMetres;
        return (cells * sin, cells * cos);
    }

    /// <summary>Size and place, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{Side} × {Side} cells of {CellMetres:0.###} m around {Station}");
}
