using Mastwright.Ground;
using Mastwright.Network.Reach;

namespace Mastwright.Network.Relays;

/// <summary>Cells that a station reaches at the best guess, one bit each; and what they mean on the grid of a search.</summary>
public static class ReachedCells
{
    /// <summary>The cells of a map with a margin of 0 dB or more, row by row, lowest bit first.</summary>
    public static ulong[] Of(ReachMap map, ReachDirection direction)
    {
        ArgumentNullException.ThrowIfNull(map);
        int cells = map.Field.Frame.Columns * map.Field.Frame.Rows;
        ulong[] reached = new ulong[CoverageObjective.Words(cells)];
        for (int cell = 0; cell < cells; cell++)
        {
            if (map.MarginDb(cell, direction) >= 0)
            {
                reached[cell >> 6] |= 1UL << cell;
            }
        }

        return reached;
    }

    /// <summary>The items of a search that are among the reached cells of a grid.</summary>
    /// <param name="reached">The cells, on their own grid.</param>
    /// <param name="own">That grid; cell on cell with the other.</param>
    /// <param name="frame">The grid of the search.</param>
    /// <param name="itemOf">Number of the item that each cell of the search is; −1 for none.</param>
    /// <param name="into">One bit an item; those that are reached are set.</param>
    public static void Set(ReadOnlySpan<ulong> reached, GridFrame own, GridFrame frame, ReadOnlySpan<int> itemOf, Span<ulong> into)
    {
        ArgumentNullException.ThrowIfNull(own);
        ArgumentNullException.ThrowIfNull(frame);
        (int left, int top) = ReachGrid.OffsetOf(own, frame);
        for (int row = Math.Max(0, -top); row < own.Rows && row + top < frame.Rows; row++)
        {
            for (int column = Math.Max(0, -left); column < own.Columns && column + left < frame.Columns; column++)
            {
                int cell = (row * own.Columns) + column;
                int item = itemOf[((row + top) * frame.Columns) + column + left];
                if (item >= 0 && (reached[cell >> 6] >> cell & 1) != 0)
                {
                    into[item >> 6] |= 1UL << item;
                }
            }
        }
    }
}
