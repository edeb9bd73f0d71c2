using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
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
    private readonly GroundMosaic mosaic;
    private readonly SweepFrame frame;
    private readonly SweepLayout layout;
    private readonly SweepBlocks blocks;
    private readonly int cellsPerNode;
    private readonly int nodes;
    private readonly bool hasSurface;
    private readonly double[] latitudes;
    private readonly double[] longitudes;
    private readonly Dictionary<(int Zone, bool IsNorth), (double[] X, double[] Y)> projected = [];

    internal SweepWarp(GroundMosaic mosaic, SweepFrame frame, SweepLayout? layout = null, SweepBlocks? part = null)
    {
        this.mosaic = mosaic;
        this.frame = frame;
        this.layout = layout ?? SweepLayout.Whole(frame.Reach);
        cellsPerNode = SweepBlocks.CellsASide(frame);
        blocks = part ?? SweepBlocks.All(frame);
        nodes = blocks.Columns + 1;
        hasSurface = mosaic.Heights.Any(window => window.Kind == HeightKind.Surface);
        int nodeRows = blocks.Rows + 1;
        latitudes = new double[nodes * nodeRows];
        longitudes = new double[nodes * nodeRows];
        Parallel.For(0, nodeRows, row =>
        {
            for (int column = 0; column < nodes; column++)
            {
                GeoPoint point = frame.PointAt(((blocks.Column + column) * cellsPerNode) - frame.Reach, frame.Reach - ((blocks.Row + row) * cellsPerNode));
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

    /// <summary>Receives the heights; NaN throughout before.</summary>
    internal required float[] Heights { get; init; }

    internal required byte[]? Cover { get; init; }

    internal required byte[]? Zones { get; init; }

    internal int Bands => blocks.Rows;

    /// <summary>The place of a cell, between the nodes.</summary>
    internal GeoPoint PointNear(int east, int north)
    {
        int column = east + frame.Reach - (blocks.Column * cellsPerNode);
        int row = frame.Reach - north - (blocks.Row * cellsPerNode);
        int node = (row / cellsPerNode * nodes) + (column / cellsPerNode);
        double across = (double)(column % cellsPerNode) / cellsPerNode;
        double down = (double)(row % cellsPerNode) / cellsPerNode;
        double latitude = Between(latitudes, node, across, down);
        double longitude = Between(longitudes, node, across, down);
        return new(Math.Clamp(latitude, -90, 90), longitude - (360 * Math.Round(longitude / 360)));
    }

    /// <summary>The rows of its blocks, each with the run of columns that the layout holds.</summary>
    internal IEnumerable<(int Row, int First, int Count)> Lines()
    {
        int west = blocks.Column * cellsPerNode;
        int top = blocks.Row * cellsPerNode;
        for (int row = top; row < Math.Min(top + (blocks.Rows * cellsPerNode), frame.Side); row++)
        {
            (int first, int last) = layout.Row(row);
            first = Math.Max(first, west);
            last = Math.Min(last, Math.Min(west + (blocks.Columns * cellsPerNode), frame.Side) - 1);
            if (first <= last)
            {
                yield return (row, first, last - first + 1);
            }
        }
    }

    /// <summary>Fills the rows of one band of nodes.</summary>
    internal void Fill(int band)
    {
        byte[] surface = new byte[cellsPerNode * cellsPerNode];
        for (int i = 0; i < blocks.Columns; i++)
        {
            Block block = new(
                (band * nodes) + i,
                (blocks.Column + i) * cellsPerNode,
                (blocks.Row + band) * cellsPerNode,
                Math.Min(cellsPerNode, frame.Side - ((blocks.Column + i) * cellsPerNode)),
                Math.Min(cellsPerNode, frame.Side - ((blocks.Row + band) * cellsPerNode)));
            if (SweepBlocks.IsBeyond(frame, blocks.Column + i, blocks.Row + band))
            {
                continue;
            }

            Array.Clear(surface);
            for (int w = 0; w < mosaic.Heights.Length; w++)
            {
                FillHeights(w, in block, surface);
            }

            if (Cover is not null)
            {
                foreach (GroundWindow window in mosaic.Covers)
                {
                    FillCover(window, in block);
                }
            }

            if (Zones is not null || hasSurface)
            {
                FillZones(in block, surface);
            }
        }
    }

    /// <summary>The cells of a block's row that the layout holds, and how far from the block's western edge they begin.</summary>
    private Span<T> Line<T>(T[] values, in Block block, int row, out int start)
    {
        (int first, int last) = layout.Row(block.Top + row);
        start = Math.Max(first - block.West, 0);
        int count = Math.Min(last - block.West + 1, block.Columns) - start;
        return count <= 0 ? [] : values.AsSpan(layout.Index(block.West + start, block.Top + row), count);
    }

    /// <summary>Columns and rows of a block's corners in a grid, and whether the block may meet it.</summary>
    private bool Meets(GridFrame grid, int node, out Corners column, out Corners row)
    {
        (double[] x, double[] y) = grid.IsGeographic ? (longitudes, latitudes) : projected[(grid.UtmZone, grid.IsNorth)];
        double origin = grid.OriginX - (grid.IsGeographic ? grid.Turn(x[node]) : 0);
        column = Corners.Of(x, node, nodes).Scaled(origin, 1 / grid.StepX);
        row = Corners.Of(y, node, nodes).Scaled(grid.OriginY, -1 / grid.StepY);
        return column.High >= -0.5 && column.Low <= grid.Columns - 0.5 && row.High >= -0.5 && row.Low <= grid.Rows - 0.5;
    }

    private void FillHeights(int index, in Block block, byte[] surface)
    {
        GroundWindow window = mosaic.Heights[index];
        GridFrame grid = window.Frame;
        if (!Meets(grid, block.Node, out Corners column, out Corners row))
        {
            return;
        }

        // Inside the window a height needs no question about its neighbours.
        bool isInside = column.Low >= 0 && column.High < grid.Columns - 1 && row.Low >= 0 && row.High < grid.Rows - 1;
        bool isSurface = window.Kind == HeightKind.Surface;
        ReadOnlySpan<float> samples = window.Heights;
        double share = 1.0 / cellsPerNode;
        for (int r = 0; r < block.Rows; r++)
        {
            (double c0, double c1) = column.Row(r * share);
            (double r0, double r1) = row.Row(r * share);
            Span<float> line = Line(Heights, in block, r, out int start);
            int done = isInside && !isSurface ? FillInside(line, samples, grid, start, share, (c0, c1), (r0, r1)) : 0;
            for (int i = done; i < line.Length; i++)
            {
                if (!float.IsNaN(line[i]))
                {
                    continue;
                }

                int c = start + i;
                double atColumn = c0 + (c * share * c1);
                double atRow = r0 + (c * share * r1);
                float height = isInside ? Inside(samples, grid.Columns, atColumn, atRow) : float.NaN;
                line[i] = float.IsNaN(height) ? (float)mosaic.HeightIn(index, atColumn, atRow) : height;
                if (isSurface && !float.IsNaN(line[i]))
                {
                    surface[(r * cellsPerNode) + c] = 1;
                }
            }
        }
    }

    /// <summary>Fills cells eight at a time, as long as none of them is filled already and none lies beside a void.</summary>
    /// <returns>Number of cells filled; the rest must be looked at one by one.</returns>
    private static int FillInside(Span<float> line, ReadOnlySpan<float> samples, GridFrame grid, int start, double share, (double Start, double Width) columns, (double Start, double Width) rows)
    {
        Span<long> room = stackalloc long[EightLanes.Count];
        Vector512<long> last = Vector512.Create((long)samples.Length - 2 - grid.Columns);
        int i = 0;
        for (; i <= line.Length - EightLanes.Count; i += EightLanes.Count)
        {
            Vector512<double> shares = (Vector512<double>.Indices + Vector512.Create((double)(start + i))) * share;
            Vector512<double> column = Vector512.Create(columns.Start) + (shares * columns.Width);
            Vector512<double> row = Vector512.Create(rows.Start) + (shares * rows.Width);
            Vector512<double> west = Vector512.Floor(column);
            Vector512<double> above = Vector512.Floor(row);
            Vector512<long> at = Vector512.ConvertToInt64Native((above * grid.Columns) + west);
            ref long place = ref FourCorners.OneByOne(Vector512.Min(Vector512.Max(at, Vector512<long>.Zero), last), room);
            Vector512<double> between = FourCorners.Read(ref MemoryMarshal.GetReference(samples), grid.Columns, ref place).Between(column - west, row - above);
            Vector256<float> heights = Vector256.Narrow(between.GetLower(), between.GetUpper());
            Vector256<float> filled = Vector256.LoadUnsafe(ref line[i]);
            if (!Vector256.EqualsAll(heights, heights) || Vector256.EqualsAny(filled, filled))
            {
                return i;
            }

            heights.StoreUnsafe(ref line[i]);
        }

        return i;
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

    private void FillCover(GroundWindow window, in Block block)
    {
        if (!Meets(window.Frame, block.Node, out Corners column, out Corners row))
        {
            return;
        }

        GridFrame grid = window.Frame;
        bool isInside = column.Low >= 0 && column.High < grid.Columns - 1 && row.Low >= 0 && row.High < grid.Rows - 1;
        ReadOnlySpan<byte> codes = window.Cover;
        double share = 1.0 / cellsPerNode;
        for (int r = 0; r < block.Rows; r++)
        {
            (double c0, double c1) = column.Row(r * share);
            (double r0, double r1) = row.Row(r * share);
            Span<byte> line = Line(Cover!, in block, r, out int start);
            for (int i = 0; i < line.Length; i++)
            {
                if (line[i] == 0)
                {
                    int c = start + i;
                    double atColumn = c0 + (c * share * c1);
                    double atRow = r0 + (c * share * r1);
                    line[i] = isInside ? codes[((int)(atRow + 0.5) * grid.Columns) + (int)(atColumn + 0.5)] : window.CoverAt(atColumn, atRow);
                }
            }
        }
    }

    /// <summary>Sea by tile index, zones, and no cover at sea or over a surface model: the rule of a single path.</summary>
    private void FillZones(in Block block, byte[] surface)
    {
        (int Column, int Row, bool Answer) asked = (int.MinValue, 0, false);
        double share = 1.0 / cellsPerNode;
        for (int r = 0; r < block.Rows; r++)
        {
            int held = Line(Heights, in block, r, out int start).Length;
            for (int c = start; c < start + held; c++)
            {
                int cell = layout.Index(block.West + c, block.Top + r);
                Zone zone = Zone.Inland;
                if (Zones is not null)
                {
                    zone = ZoneOf(cell, Between(latitudes, block.Node, c * share, r * share), Between(longitudes, block.Node, c * share, r * share), ref asked);
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

    /// <summary>The cells between four nodes, counted from the north-western cell of the square.</summary>
    private readonly record struct Block(int Node, int West, int Top, int Columns, int Rows);

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
