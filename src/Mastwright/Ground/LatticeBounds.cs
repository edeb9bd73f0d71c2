using Mastwright.Geodesy;

namespace Mastwright.Ground;

/// <summary>A rectangle of the 15-arc-second lattice that the sea is looked up on.</summary>
/// <remarks>The default value is one point at 0° N 0° E; columns may run past 180° east.</remarks>
public readonly record struct LatticeBounds
{
    private const double DegreeMetres = 111_195;
    private const double MostDegrees = 12;
    private const int Around = 360 * SeaMap.PointsPerDegree;

    private readonly int _moreColumns;
    private readonly int _moreRows;

    private LatticeBounds(int west, int south, int moreColumns, int moreRows)
    {
        West = west;
        South = south;
        _moreColumns = moreColumns;
        _moreRows = moreRows;
    }

    /// <summary>Longitude of the first column in lattice steps.</summary>
    public int West { get; }

    /// <summary>Latitude of the first row in lattice steps.</summary>
    public int South { get; }

    /// <summary>Number of columns, 1 or more.</summary>
    public int Columns => _moreColumns + 1;

    /// <summary>Number of rows, 1 or more.</summary>
    public int Rows => _moreRows + 1;

    /// <summary>Number of lattice points.</summary>
    public int Count => Columns * Rows;

    /// <summary>The lattice points within a margin of two places.</summary>
    /// <param name="one">A place.</param>
    /// <param name="other">Another place; the rectangle goes the short way round the earth.</param>
    /// <param name="marginMetres">Margin in metres, zero or more.</param>
    /// <remarks>Limited to 12° of longitude and latitude (8 million points): of a longer path only the south-western part is mapped.</remarks>
    public static LatticeBounds Along(GeoPoint one, GeoPoint other, double marginMetres)
    {
        double turn = 360 * Math.Round((one.LongitudeDegrees - other.LongitudeDegrees) / 360);
        double otherLongitude = other.LongitudeDegrees + turn;
        double marginNorth = marginMetres / DegreeMetres;
        double south = Math.Max(-90, Math.Min(one.LatitudeDegrees, other.LatitudeDegrees) - marginNorth);
        double north = Math.Min(90, Math.Max(one.LatitudeDegrees, other.LatitudeDegrees) + marginNorth);
        double cos = Math.Max(0.05, Math.Cos(double.DegreesToRadians(Math.Max(Math.Abs(south), Math.Abs(north)))));
        double west = Math.Min(one.LongitudeDegrees, otherLongitude) - (marginNorth / cos);
        double east = Math.Max(one.LongitudeDegrees, otherLongitude) + (marginNorth / cos);
        return Between(south, west, Math.Min(north, south + MostDegrees), Math.Min(east, west + MostDegrees));
    }

    /// <summary>The lattice points of a rectangle in degrees; the east may be past 180°.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The rectangle is empty or larger than 60° × 60°.</exception>
    public static LatticeBounds Between(double southDegrees, double westDegrees, double northDegrees, double eastDegrees)
    {
        if (!(northDegrees >= southDegrees && eastDegrees >= westDegrees && northDegrees - southDegrees <= 60 && eastDegrees - westDegrees <= 60))
        {
            throw new ArgumentOutOfRangeException(nameof(northDegrees), northDegrees, "The rectangle is not empty and at most 60° × 60°.");
        }

        int west = (int)Math.Floor(westDegrees * SeaMap.PointsPerDegree);
        int south = (int)Math.Ceiling(southDegrees * SeaMap.PointsPerDegree);
        int east = (int)Math.Ceiling(eastDegrees * SeaMap.PointsPerDegree);
        int north = (int)Math.Floor(northDegrees * SeaMap.PointsPerDegree);
        return new(west, south, east - west, Math.Max(0, north - south));
    }

    /// <summary>The bounds widened to whole quarters of a degree, so that paths near one another share a map.</summary>
    public LatticeBounds Rounded()
    {
        const int quarter = SeaMap.PointsPerDegree / 4;
        int west = (int)Math.Floor(West / (double)quarter) * quarter;
        int south = (int)Math.Floor(South / (double)quarter) * quarter;
        int east = (int)Math.Ceiling((West + _moreColumns) / (double)quarter) * quarter;
        int north = (int)Math.Ceiling((South + _moreRows) / (double)quarter) * quarter;
        return new(west, south, east - west, north - south);
    }

    /// <summary>South-western corner of the one-degree tile that a lattice point stands in, in whole degrees; the west may be past 180°.</summary>
    public (int South, int West) TileCorner(int index)
    {
        int row = RowFromPole(index) / SeaMap.PointsPerDegree;
        int column = ColumnFromFarWest(index) / SeaMap.PointsPerDegree;
        return (row - 90, column - 720);
    }

    /// <summary>Where a lattice point stands in its one-degree tile, counted row by row from the tile's south-west.</summary>
    public int IndexInTile(int index) =>
        (RowFromPole(index) % SeaMap.PointsPerDegree * SeaMap.PointsPerDegree) + (ColumnFromFarWest(index) % SeaMap.PointsPerDegree);

    /// <summary>Latitude of a row in degrees.</summary>
    public double LatitudeDegrees(int row) => (South + row) / (double)SeaMap.PointsPerDegree;

    /// <summary>Longitude of a column in degrees, which may be past 180°.</summary>
    public double LongitudeDegrees(int column) => (West + column) / (double)SeaMap.PointsPerDegree;

    /// <summary>The place of a lattice point, counted row by row from the south-west.</summary>
    public GeoPoint PointAt(int index) => new(LatitudeDegrees(index / Columns), LongitudeDegrees(index % Columns));

    /// <summary>Column and row of the nearest lattice point; may be outside.</summary>
    internal (int Column, int Row) Nearest(double latitudeDegrees, double longitudeDegrees)
    {
        int column = (int)Math.Round(longitudeDegrees * SeaMap.PointsPerDegree) - West;
        column -= Around * (int)Math.Round((column - (Columns / 2.0)) / Around);
        return (column, (int)Math.Round(latitudeDegrees * SeaMap.PointsPerDegree) - South);
    }

    internal double ColumnMetres(int row) =>
        DegreeMetres / SeaMap.PointsPerDegree * Math.Cos(double.DegreesToRadians(Math.Clamp(LatitudeDegrees(row), -90, 90)));

    internal double CellSquareMetres(int row) => ColumnMetres(row) * (DegreeMetres / SeaMap.PointsPerDegree);

    /// <summary>Row counted from the south pole; the north pole itself belongs to the tile below it.</summary>
    private int RowFromPole(int index) =>
        Math.Min(South + (index / Columns) + (90 * SeaMap.PointsPerDegree), (180 * SeaMap.PointsPerDegree) - 1);

    private int ColumnFromFarWest(int index) => West + (index % Columns) + (2 * Around);

    /// <summary>Size and corner, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        System.Globalization.CultureInfo.InvariantCulture,
        $"{Columns} × {Rows} lattice points from {LatitudeDegrees(0):0.###}° {LongitudeDegrees(0):0.###}°");
}
