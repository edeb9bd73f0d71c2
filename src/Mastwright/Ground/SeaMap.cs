using Mastwright.Geodesy;

namespace Mastwright.Ground;

/// <summary>What is known about one cell of a sea map before it is worked out what is sea.</summary>
[System.Diagnostics.CodeAnalysis.SuppressMessage("Design", "CA1028", Justification = "A map holds hundreds of thousands of them.")]
public enum SeaCell : byte
{
    /// <summary>Nothing is known: no tile, or a void.</summary>
    Unknown,

    /// <summary>The height is clearly above the sea, or far below it.</summary>
    Land,

    /// <summary>The height could be that of the sea.</summary>
    AtSeaLevel,

    /// <summary>The source's own tile index says that there is no land.</summary>
    OpenSea,
}

/// <summary>Where the sea is: a coarse map, on a lattice of 15 arc-seconds, of the water that is joined to the sea.</summary>
/// <remarks>
/// <para>
/// ITU-R P.1812 calls sea "seas, oceans and other large bodies of water", coastal land the land next to it up to 100 m above mean sea
/// level within 50 km of the nearest sea, and inland all other land (its table of radio-climatic zones, in the words of the editions
/// 4 to 7, from memory). The Recommendation does not say how to find the sea in a height file. The rule here:
/// </para>
/// <para>
/// Lattice points whose height could be the sea's (<see cref="Classify"/>), and those that a tile index leaves to the sea, form bodies
/// by their four neighbours. A body is sea when it holds a point that the index leaves to the sea, or covers
/// <see cref="LeastSeaSquareMetres"/> within the map. A lake above sea level is therefore never sea, however large.
/// </para>
/// <para>The same heights and bounds give the same map. Immutable and safe from many threads.</para>
/// </remarks>
public sealed class SeaMap
{
    /// <summary>Lattice points in a degree.</summary>
    public const int PointsPerDegree = 240;

    /// <summary>Area from which water at sea level counts as sea without a tile index, in square metres (25 km²; chosen here).</summary>
    public const double LeastSeaSquareMetres = 25e6;

    /// <summary>Coastal land is at most this far from the sea, in metres (ITU-R P.1812, radio-climatic zones).</summary>
    public const double CoastalReachMetres = 50_000;

    /// <summary>Coastal land is at most this high above the sea, in metres (ITU-R P.1812, radio-climatic zones).</summary>
    public const double CoastalHeightMetres = 100;

    /// <summary>Heights from here to <see cref="HighestSeaMetres"/> can be the sea's: height files carry its surface with noise.</summary>
    public const double LowestSeaMetres = -50;

    /// <summary>Heights below this and above <see cref="LowestSeaMetres"/> can be the sea's.</summary>
    public const double HighestSeaMetres = 0.5;

    private const double DegreeMetres = 111_195;
    private const float NoSea = 1e9f;

    private readonly LatticeBounds _bounds;
    private readonly bool[] _sea;
    private readonly float[] _eastWestMetres;

    private SeaMap(LatticeBounds bounds, bool[] sea, float[] eastWestMetres)
    {
        _bounds = bounds;
        _sea = sea;
        _eastWestMetres = eastWestMetres;
        HasSea = Array.IndexOf(sea, value: true) >= 0;
    }

    /// <summary>Whether there is any sea in the map.</summary>
    public bool HasSea { get; }

    /// <summary>Memory the map takes, in bytes.</summary>
    public long SizeBytes => _sea.Length * 5L;

    /// <summary>What a height says about the sea.</summary>
    public static SeaCell Classify(double heightMetres) => heightMetres switch
    {
        double.NaN => SeaCell.Unknown,
        >= LowestSeaMetres and < HighestSeaMetres => SeaCell.AtSeaLevel,
        _ => SeaCell.Land,
    };

    /// <summary>Makes the map from what is known at each lattice point, row by row from the south-west.</summary>
    /// <exception cref="ArgumentException">There is not one cell for each lattice point.</exception>
    public static SeaMap Build(LatticeBounds bounds, ReadOnlySpan<SeaCell> cells)
    {
        if (cells.Length != bounds.Count)
        {
            throw new ArgumentException($"The bounds hold {bounds.Count} lattice points, not {cells.Length}.", nameof(cells));
        }

        bool[] sea = FindSea(bounds, cells);
        return new(bounds, sea, EastWestDistances(bounds, sea));
    }

    /// <summary>Makes the map from the heights of a mosaic.</summary>
    public static SeaMap FromMosaic(GroundMosaic mosaic, LatticeBounds bounds)
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        SeaCell[] cells = new SeaCell[bounds.Count];
        for (int i = 0; i < cells.Length; i++)
        {
            GroundHeight height = mosaic.HeightAt(bounds.PointAt(i));
            cells[i] = height.IsOpenSea ? SeaCell.OpenSea : Classify(height.Metres);
        }

        return Build(bounds, cells);
    }

    /// <summary>Whether the sea lies at a place or at a lattice point next to it; false outside the map.</summary>
    /// <remarks>The lattice is coarse: the height or cover of the place itself has to say that it is water.</remarks>
    public bool IsBesideSea(double latitudeDegrees, double longitudeDegrees)
    {
        (int x, int y) = _bounds.Nearest(latitudeDegrees, longitudeDegrees);
        for (int row = Math.Max(0, y - 1); row <= Math.Min(_bounds.Rows - 1, y + 1); row++)
        {
            for (int column = Math.Max(0, x - 1); column <= Math.Min(_bounds.Columns - 1, x + 1); column++)
            {
                if (_sea[(row * _bounds.Columns) + column])
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>Distance to the nearest sea in metres, to about half a kilometre; infinity where there is none within 50 km or the place is off the map.</summary>
    public double DistanceToSeaMetres(double latitudeDegrees, double longitudeDegrees)
    {
        (int x, int y) = _bounds.Nearest(latitudeDegrees, longitudeDegrees);
        if (!HasSea || x < 0 || y < 0 || x >= _bounds.Columns || y >= _bounds.Rows)
        {
            return double.PositiveInfinity;
        }

        const double rowMetres = DegreeMetres / PointsPerDegree;
        int reach = (int)(CoastalReachMetres / rowMetres) + 1;
        double least = double.PositiveInfinity;
        for (int row = Math.Max(0, y - reach); row <= Math.Min(_bounds.Rows - 1, y + reach); row++)
        {
            double north = (row - y) * rowMetres;
            double east = _eastWestMetres[(row * _bounds.Columns) + x];
            least = Math.Min(least, (north * north) + (east * east));
        }

        double distance = Math.Sqrt(least);
        return distance <= CoastalReachMetres ? distance : double.PositiveInfinity;
    }

    /// <summary>Whether the sea is within <see cref="CoastalReachMetres"/>, remembered for the lattice point that was asked for last.</summary>
    internal bool IsWithinReach(double latitudeDegrees, double longitudeDegrees, ref (int Column, int Row, bool Answer) last)
    {
        (int x, int y) = _bounds.Nearest(latitudeDegrees, longitudeDegrees);
        if (last.Column != x || last.Row != y)
        {
            last = (x, y, DistanceToSeaMetres(latitudeDegrees, longitudeDegrees) <= CoastalReachMetres);
        }

        return last.Answer;
    }

    private static bool[] FindSea(LatticeBounds bounds, ReadOnlySpan<SeaCell> cells)
    {
        int columns = bounds.Columns;
        double[] rowArea = new double[bounds.Rows];
        for (int row = 0; row < rowArea.Length; row++)
        {
            rowArea[row] = bounds.CellSquareMetres(row);
        }

        bool[] sea = new bool[cells.Length];
        bool[] seen = new bool[cells.Length];

        // The cells of a body in the order in which they were found; each is found once, so this never outgrows the map.
        int[] body = new int[cells.Length];
        for (int start = 0; start < cells.Length; start++)
        {
            if (seen[start] || cells[start] < SeaCell.AtSeaLevel)
            {
                continue;
            }

            body[0] = start;
            seen[start] = true;
            int found = 1;
            bool joined = false;
            double area = 0;
            for (int next = 0; next < found; next++)
            {
                int cell = body[next];
                int row = cell / columns;
                int column = cell - (row * columns);
                joined |= cells[cell] == SeaCell.OpenSea;
                area += rowArea[row];
                if (column > 0)
                {
                    Visit(cell - 1, cells, seen, body, ref found);
                }

                if (column < columns - 1)
                {
                    Visit(cell + 1, cells, seen, body, ref found);
                }

                if (row > 0)
                {
                    Visit(cell - columns, cells, seen, body, ref found);
                }

                if (row < bounds.Rows - 1)
                {
                    Visit(cell + columns, cells, seen, body, ref found);
                }
            }

            if (joined || area >= LeastSeaSquareMetres)
            {
                foreach (int cell in body.AsSpan(0, found))
                {
                    sea[cell] = true;
                }
            }
        }

        return sea;
    }

    private static void Visit(int cell, ReadOnlySpan<SeaCell> cells, bool[] seen, int[] body, ref int found)
    {
        if (!seen[cell] && cells[cell] >= SeaCell.AtSeaLevel)
        {
            seen[cell] = true;
            body[found++] = cell;
        }
    }

    private static float[] EastWestDistances(LatticeBounds bounds, bool[] sea)
    {
        float[] distances = new float[sea.Length];
        for (int row = 0; row < bounds.Rows; row++)
        {
            float step = (float)bounds.ColumnMetres(row);
            int first = row * bounds.Columns;
            float distance = NoSea;
            for (int i = first; i < first + bounds.Columns; i++)
            {
                distance = sea[i] ? 0 : distance + step;
                distances[i] = distance;
            }

            distance = NoSea;
            for (int i = first + bounds.Columns - 1; i >= first; i--)
            {
                distance = sea[i] ? 0 : distance + step;
                distances[i] = Math.Min(distances[i], distance);
            }
        }

        return distances;
    }
}
