using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>Fills the cells of a sweep's plane from a mosaic, band by band.</summary>
/// <remarks>
/// Places are exact at nodes at most 1 km apart and bilinear between them: within 0.06 m of the geodesic below 70° of latitude, and not
/// growing with the distance from the station (measured in SweepGroundTests). A node costs a geodesic, a cell four multiplications.
/// </remarks>
internal sealed class SweepWarp
{
    private const double LongestNodeMetres = 1_000;

    private readonly GroundMosaic mosaic;
    private readonly SweepFrame frame;
    private readonly int cellsPerNode;
    private readonly int nodes;
    private readonly double[] latitudes;
    private readonly double[] longitudes;
    private readonly Dictionary<(int Zone, bool IsNorth), (double[] X, double[] Y)> projected = [];

    internal SweepWarp(GroundMosaic mosaic, SweepFrame frame)
    {
        this.mosaic = mosaic;
        this.frame = frame;
        cellsPerNode = Math.Clamp((int)(LongestNodeMetres / frame.CellMetres), 1, 64);
        nodes = ((frame.Side + cellsPerNode - 1) / cellsPerNode) + 1;
        latitudes = new double[nodes * nodes];
        longitudes = new double[nodes * nodes];
        Parallel.For(0, nodes, row =>
        {
            for (int column = 0; column < nodes; column++)
            {
                GeoPoint point = frame.PointAt((column * cellsPerNode) - frame.Reach, frame.Reach - (row * cellsPerNode));
                int node = (row * nodes) + column;
                latitudes[node] = point.LatitudeDegrees;

                // Running on past 180° instead of jumping.
                longitudes[node] = point.LongitudeDegrees + (360 * Math.Round((frame.Station.LongitudeDegrees - point.LongitudeDegrees) / 360));
            }
        });
        foreach (GroundWindow window in mosaic.Heights.Concat(mosaic.Covers))
        {
            GridFrame grid = window.Frame;
            if (grid.IsGeographic || projected.ContainsKey((grid.UtmZone, grid.IsNorth)))
            {
                continue;
            }

            double[] x = new double[latitudes.Length];
            double[] y = new double[latitudes.Length];
            for (int i = 0; i < x.Length; i++)
            {
                (x[i], y[i]) = GridFrame.Project(grid.UtmZone, grid.IsNorth, latitudes[i], longitudes[i]);
            }

            projected.Add((grid.UtmZone, grid.IsNorth), (x, y));
        }
    }

    internal required float[] Heights { get; init; }

    internal required byte[]? Cover { get; init; }

    internal required byte[]? Zones { get; init; }

    internal int Bands => nodes - 1;

    /// <summary>The place of a cell, between the nodes.</summary>
    internal GeoPoint PointNear(int east, int north)
    {
        int column = east + frame.Reach;
        int row = frame.Reach - north;
        int node = (row / cellsPerNode * nodes) + (column / cellsPerNode);
        double across = (double)(column % cellsPerNode) / cellsPerNode;
        double down = (double)(row % cellsPerNode) / cellsPerNode;
        double latitude = Between(latitudes, node, across, down);
        double longitude = Between(longitudes, node, across, down);
        return new(Math.Clamp(latitude, -90, 90), longitude - (360 * Math.Round(longitude / 360)));
    }

    /// <summary>Fills the rows of one band of nodes.</summary>
    internal void Fill(int band)
    {
        byte[] surface = new byte[cellsPerNode * cellsPerNode];
        for (int block = 0; block < nodes - 1; block++)
        {
            int node = (band * nodes) + block;
            int columns = Math.Min(cellsPerNode, frame.Side - (block * cellsPerNode));
            int rows = Math.Min(cellsPerNode, frame.Side - (band * cellsPerNode));
            int first = (band * cellsPerNode * frame.Side) + (block * cellsPerNode);
            for (int row = 0; row < rows; row++)
            {
                Heights.AsSpan(first + (row * frame.Side), columns).Fill(float.NaN);
            }

            if (IsBeyond(band, block))
            {
                continue;
            }

            Array.Clear(surface);
            for (int w = 0; w < mosaic.Heights.Length; w++)
            {
                FillHeights(w, node, first, columns, rows, surface);
            }

            if (Cover is not null)
            {
                foreach (GroundWindow window in mosaic.Covers)
                {
                    FillCover(window, node, first, columns, rows);
                }
            }

            FillZones(node, first, columns, rows, surface);
        }
    }

    /// <summary>Whether a block lies beyond the radius, with room for the points beside its last cells.</summary>
    private bool IsBeyond(int band, int block)
    {
        double x = Nearest(block * cellsPerNode);
        double y = Nearest(band * cellsPerNode);
        return (x * x) + (y * y) > Math.Pow(frame.Reach + 2, 2);
    }

    private double Nearest(int first) => Math.Max(0, Math.Max(first - frame.Reach, frame.Reach - (first + cellsPerNode)));

    /// <summary>Columns and rows of a block's corners in a grid, and whether the block may meet it.</summary>
    private bool Meets(GridFrame grid, int node, out Corners column, out Corners row)
    {
        (double[] x, double[] y) = grid.IsGeographic ? (longitudes, latitudes) : projected[(grid.UtmZone, grid.IsNorth)];
        double origin = grid.OriginX - (grid.IsGeographic ? grid.Turn(x[node]) : 0);
        column = Corners.Of(x, node, nodes).Scaled(origin, 1 / grid.StepX);
        row = Corners.Of(y, node, nodes).Scaled(grid.OriginY, -1 / grid.StepY);
        return column.High >= -0.5 && column.Low <= grid.Columns - 0.5 && row.High >= -0.5 && row.Low <= grid.Rows - 0.5;
    }

    private void FillHeights(int index, int node, int first, int columns, int rows, byte[] surface)
    {
        GroundWindow window = mosaic.Heights[index];
        GridFrame grid = window.Frame;
        if (!Meets(grid, node, out Corners column, out Corners row))
        {
            return;
        }

        // Inside the window a height needs no question about its neighbours.
        bool isInside = column.Low >= 0 && column.High < grid.Columns - 1 && row.Low >= 0 && row.High < grid.Rows - 1;
        bool isSurface = window.Kind == HeightKind.Surface;
        ReadOnlySpan<float> samples = window.Heights;
        double share = 1.0 / cellsPerNode;
        for (int r = 0; r < rows; r++)
        {
            (double c0, double c1) = column.Row(r * share);
            (double r0, double r1) = row.Row(r * share);
            Span<float> line = Heights.AsSpan(first + (r * frame.Side), columns);
            for (int c = 0; c < line.Length; c++)
            {
                if (!float.IsNaN(line[c]))
                {
                    continue;
                }

                double atColumn = c0 + (c * share * c1);
                double atRow = r0 + (c * share * r1);
                float height = isInside ? Inside(samples, grid.Columns, atColumn, atRow) : float.NaN;
                line[c] = float.IsNaN(height) ? (float)mosaic.HeightIn(index, atColumn, atRow) : height;
                if (isSurface && !float.IsNaN(line[c]))
                {
                    surface[(r * cellsPerNode) + c] = 1;
                }
            }
        }
    }

    private static float Inside(ReadOnlySpan<float> samples, int columns, double column, double row)
    {
        int c = (int)column;
        int r = (int)row;
        double across = column - c;
        ReadOnlySpan<float> above = samples.Slice((r * columns) + c, 2);
        ReadOnlySpan<float> below = samples.Slice(((r + 1) * columns) + c, 2);
        double top = above[0] + (across * ((double)above[1] - above[0]));
        double bottom = below[0] + (across * ((double)below[1] - below[0]));
        return (float)(top + ((row - r) * (bottom - top)));
    }

    private void FillCover(GroundWindow window, int node, int first, int columns, int rows)
    {
        if (!Meets(window.Frame, node, out Corners column, out Corners row))
        {
            return;
        }

        double share = 1.0 / cellsPerNode;
        for (int r = 0; r < rows; r++)
        {
            (double c0, double c1) = column.Row(r * share);
            (double r0, double r1) = row.Row(r * share);
            Span<byte> line = Cover.AsSpan(first + (r * frame.Side), columns);
            for (int c = 0; c < line.Length; c++)
            {
                line[c] = line[c] != 0 ? line[c] : window.CoverAt(c0 + (c * share * c1), r0 + (c * share * r1));
            }
        }
    }

    /// <summary>Sea by tile index, zones, and no cover at sea or over a surface model: the rule of a single path.</summary>
    private void FillZones(int node, int first, int columns, int rows, byte[] surface)
    {
        (int Column, int Row, bool Answer) asked = (int.MinValue, 0, false);
        double share = 1.0 / cellsPerNode;
        for (int r = 0; r < rows; r++)
        {
            for (int c = 0; c < columns; c++)
            {
                int cell = first + (r * frame.Side) + c;
                Zone zone = Zone.Inland;
                if (Zones is not null)
                {
                    zone = ZoneOf(cell, Between(latitudes, node, c * share, r * share), Between(longitudes, node, c * share, r * share), ref asked);
                    Zones[cell] = (byte)zone;
                }

                if (Cover is not null && (zone == Zone.Sea || surface[(r * cellsPerNode) + c] != 0))
                {
                    Cover[cell] = 0;
                }
            }
        }
    }

    private Zone ZoneOf(int cell, double latitude, double longitude, ref (int Column, int Row, bool Answer) asked)
    {
        if (float.IsNaN(Heights[cell]))
        {
            if (!mosaic.IsLeftToSea(latitude, longitude))
            {
                return Zone.Inland;
            }

            Heights[cell] = 0;
            return Zone.Sea;
        }

        return mosaic.Sea is { HasSea: true } sea && Heights[cell] <= SeaMap.CoastalHeightMetres
            ? ProfileZones.Of(sea, Heights[cell], Cover is null ? null : mosaic.CoverTable.Find(Cover[cell]), latitude, longitude, ref asked)
            : Zone.Inland;
    }

    private double Between(double[] values, int node, double across, double down)
    {
        double top = values[node] + (across * (values[node + 1] - values[node]));
        double bottom = values[node + nodes] + (across * (values[node + nodes + 1] - values[node + nodes]));
        return top + (down * (bottom - top));
    }

    /// <summary>A quantity at the four corners of a block.</summary>
    private readonly record struct Corners(double NorthWest, double NorthEast, double SouthWest, double SouthEast)
    {
        internal double Low => Math.Min(Math.Min(NorthWest, NorthEast), Math.Min(SouthWest, SouthEast));

        internal double High => Math.Max(Math.Max(NorthWest, NorthEast), Math.Max(SouthWest, SouthEast));

        internal static Corners Of(double[] values, int node, int nodes) =>
            new(values[node], values[node + 1], values[node + nodes], values[node + nodes + 1]);

        internal Corners Scaled(double origin, double scale) =>
            new((NorthWest - origin) * scale, (NorthEast - origin) * scale, (SouthWest - origin) * scale, (SouthEast - origin) * scale);

        /// <summary>Where a row begins, and how far it goes over the block.</summary>
        internal (double Start, double Width) Row(double down)
        {
            double west = NorthWest + (down * (SouthWest - NorthWest));
            return (west, NorthEast + (down * (SouthEast - NorthEast)) - west);
        }
    }
}
