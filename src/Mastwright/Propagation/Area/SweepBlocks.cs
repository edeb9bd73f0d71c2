using Mastwright.Geodesy;

namespace Mastwright.Propagation.Area;

/// <summary>A rectangle of the blocks that a sweep's plane is filled in: the cells between nodes at most 1 km apart.</summary>
/// <param name="Column">First column of blocks, from the west.</param>
/// <param name="Row">First row of blocks, from the north.</param>
/// <param name="Columns">Number of columns, 1 or more.</param>
/// <param name="Rows">Number of rows, 1 or more.</param>
internal sealed record SweepBlocks(int Column, int Row, int Columns, int Rows)
{
    private const double LongestNodeMetres = 1_000;

    /// <summary>So many blocks a side are cut from the ground at once: some 30 km, and so a few pieces of a height file.</summary>
    private const int GroupSide = 32;

    /// <summary>Cells a side of a block.</summary>
    internal static int CellsASide(SweepFrame frame) => Math.Clamp((int)(LongestNodeMetres / frame.CellMetres), 1, 64);

    /// <summary>All blocks of a plane.</summary>
    internal static SweepBlocks All(SweepFrame frame)
    {
        int side = (frame.Side + CellsASide(frame) - 1) / CellsASide(frame);
        return new(0, 0, side, side);
    }

    /// <summary>Groups that hold every block with a cell of a layout within the radius, from the north.</summary>
    internal static IEnumerable<SweepBlocks> Groups(SweepFrame frame, SweepLayout layout)
    {
        int cells = CellsASide(frame);
        int side = All(frame).Columns;
        for (int row = 0; row < side; row += GroupSide)
        {
            for (int column = 0; column < side; column += GroupSide)
            {
                SweepBlocks group = new(column, row, Math.Min(GroupSide, side - column), Math.Min(GroupSide, side - row));
                if (group.Shrunk(frame, layout, cells) is { } held)
                {
                    yield return held;
                }
            }
        }
    }

    /// <summary>The ground that its cells lie on, with room for their neighbours.</summary>
    internal GeoBounds Ground(SweepFrame frame)
    {
        int cells = CellsASide(frame);
        GeoPoint[] edge = new GeoPoint[4 * 8];
        for (int i = 0; i < 8; i++)
        {
            double share = i / 7.0;
            double across = (Column + (share * Columns)) * cells;
            double down = (Row + (share * Rows)) * cells;
            edge[4 * i] = At(frame, across, Row * cells);
            edge[(4 * i) + 1] = At(frame, across, (Row + Rows) * cells);
            edge[(4 * i) + 2] = At(frame, Column * cells, down);
            edge[(4 * i) + 3] = At(frame, (Column + Columns) * cells, down);
        }

        return GeoBounds.Of(edge).Expanded((2 * frame.CellMetres) + (0.01 * Columns * cells * frame.CellMetres));
    }

    /// <summary>Whether a block lies beyond the radius, with room for the points beside its last cells.</summary>
    internal static bool IsBeyond(SweepFrame frame, int column, int row)
    {
        int cells = CellsASide(frame);
        double x = Nearest(frame, column * cells, cells);
        double y = Nearest(frame, row * cells, cells);
        return (x * x) + (y * y) > Math.Pow(frame.Reach + 2, 2);
    }

    private static double Nearest(SweepFrame frame, int first, int cells) => Math.Max(0, Math.Max(first - frame.Reach, frame.Reach - (first + cells)));

    private static GeoPoint At(SweepFrame frame, double column, double row) => frame.PointAt(column - frame.Reach, frame.Reach - row);

    /// <summary>The least rectangle of its blocks that holds all cells of the layout in it; null when there is none.</summary>
    private SweepBlocks? Shrunk(SweepFrame frame, SweepLayout layout, int cells)
    {
        int west = int.MaxValue;
        int east = -1;
        int north = int.MaxValue;
        int south = -1;
        for (int row = Row; row < Row + Rows; row++)
        {
            for (int column = Column; column < Column + Columns; column++)
            {
                if (!IsBeyond(frame, column, row) && Holds(layout, column * cells, row * cells, cells))
                {
                    (west, east) = (Math.Min(west, column), Math.Max(east, column));
                    (north, south) = (Math.Min(north, row), Math.Max(south, row));
                }
            }
        }

        return east < 0 ? null : new(west, north, east - west + 1, south - north + 1);
    }

    private static bool Holds(SweepLayout layout, int west, int top, int cells)
    {
        for (int row = top; row < Math.Min(top + cells, layout.Side); row++)
        {
            (int first, int last) = layout.Row(row);
            if (first < west + cells && last >= west)
            {
                return true;
            }
        }

        return false;
    }
}
