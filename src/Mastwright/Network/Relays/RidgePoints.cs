using System.Collections.Immutable;

namespace Mastwright.Network.Relays;

/// <summary>Points of a plane from which the ground falls away to both sides.</summary>
public static class RidgePoints
{
    /// <summary>How far to each side the ground is looked at, in metres.</summary>
    private const double ReachMetres = 300;

    private static readonly (int Column, int Row)[] Axes = [(1, 0), (0, 1), (1, 1), (1, -1)];

    /// <summary>Finds them, those with the deepest fall on their shallower side first.</summary>
    /// <param name="plane">The plane.</param>
    /// <param name="leastFallMetres">Least fall on both sides, above zero.</param>
    public static ImmutableArray<(int Cell, double FallMetres)> Of(RelayPlane plane, double leastFallMetres)
    {
        ArgumentNullException.ThrowIfNull(plane);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(leastFallMetres);
        int reach = Math.Max(1, (int)Math.Round(ReachMetres / plane.Frame.CellMetres));
        List<(int Cell, double Fall)>[] byRow = new List<(int, double)>[plane.Side];
        Parallel.For(0, plane.Side, row =>
        {
            byRow[row] = [];
            for (int column = 0; column < plane.Side; column++)
            {
                double fall = Axes.Max(axis => Fall(plane, column, row, axis, reach));
                if (fall >= leastFallMetres)
                {
                    byRow[row].Add(((row * plane.Side) + column, fall));
                }
            }
        });
        return [.. byRow.SelectMany(row => row).OrderByDescending(one => one.Fall).ThenBy(one => one.Cell)];
    }

    /// <summary>The fall on the shallower side along an axis; zero where a cell within the reach is higher or not known.</summary>
    private static double Fall(RelayPlane plane, int column, int row, (int Column, int Row) axis, int reach)
    {
        int steps = axis.Column != 0 && axis.Row != 0 ? Math.Max(1, (int)Math.Round(reach / Math.Sqrt(2))) : reach;
        int far = steps * Math.Max(Math.Abs(axis.Column), Math.Abs(axis.Row));
        if (column < far || row < far || column + far >= plane.Side || row + far >= plane.Side)
        {
            return 0;
        }

        ReadOnlySpan<float> heights = plane.Heights;
        int at = (row * plane.Side) + column;
        int stride = (axis.Row * plane.Side) + axis.Column;
        float own = heights[at];
        for (int step = 1; step <= steps; step++)
        {
            if (!(heights[at + (step * stride)] <= own) || !(heights[at - (step * stride)] <= own))
            {
                return 0;
            }
        }

        return own - Math.Max(heights[at + (steps * stride)], heights[at - (steps * stride)]);
    }
}
