using System.Collections.Immutable;

namespace Mastwright.Network.Relays;

/// <summary>A summit.</summary>
/// <param name="Cell">Its cell on the plane.</param>
/// <param name="ProminenceMetres">How far one has to go down from it before one can go up to anything higher; for the highest, down to the lowest of the plane.</param>
public readonly record struct Summit(int Cell, double ProminenceMetres);

/// <summary>The summits of a plane by their prominence.</summary>
/// <remarks>
/// The water falls from the highest cell on: each cell that comes out joins the islands around it, and where two meet, that is the saddle between them; the
/// lower of their summits has its prominence there. Eight neighbours. Beyond the plane nothing is known, so a summit near its edge may have less prominence
/// than is said.
/// </remarks>
public static class Summits
{
    /// <summary>Finds them, the most prominent first; of equals the northernmost, then the westernmost.</summary>
    /// <param name="heightsMetres">Heights, row by row; NaN counts as nothing.</param>
    /// <param name="columns">Cells of a row.</param>
    /// <param name="leastMetres">Least prominence, above zero.</param>
    public static ImmutableArray<Summit> Of(ReadOnlySpan<float> heightsMetres, int columns, double leastMetres)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(columns);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(leastMetres);
        float[] heights = heightsMetres.ToArray();
        int[] order = [.. Enumerable.Range(0, heights.Length).Where(cell => !float.IsNaN(heights[cell]))];
        if (order.Length == 0)
        {
            return [];
        }

        // Sorting by a key of height and place at once makes equal heights come in one order.
        (float Fallen, int Cell)[] keys = [.. order.Select(cell => (-heights[cell], cell))];
        Array.Sort(keys, order);
        int rows = heights.Length / columns;
        int[] parent = new int[heights.Length];
        int[] summit = new int[heights.Length];
        Array.Fill(parent, -1);
        List<Summit> found = [];
        foreach (int cell in order)
        {
            parent[cell] = cell;
            summit[cell] = cell;
            (int row, int column) = (cell / columns, cell % columns);
            for (int r = Math.Max(0, row - 1); r <= Math.Min(rows - 1, row + 1); r++)
            {
                for (int c = Math.Max(0, column - 1); c <= Math.Min(columns - 1, column + 1); c++)
                {
                    int beside = (r * columns) + c;
                    if (parent[beside] >= 0)
                    {
                        Join(cell, beside);
                    }
                }
            }
        }

        double depth = heights[order[0]] - heights[order[^1]];
        if (depth >= leastMetres)
        {
            found.Add(new(order[0], depth));
        }

        return [.. found.OrderByDescending(one => one.ProminenceMetres).ThenBy(one => one.Cell)];

        void Join(int saddle, int beside)
        {
            int one = Root(parent, saddle);
            int other = Root(parent, beside);
            if (one == other)
            {
                return;
            }

            (int higher, int lower) = IsHigher(summit[one], summit[other]) ? (one, other) : (other, one);
            double prominence = heights[summit[lower]] - heights[saddle];
            if (prominence >= leastMetres)
            {
                found.Add(new(summit[lower], prominence));
            }

            parent[lower] = higher;
        }

        bool IsHigher(int one, int other) => heights[one] > heights[other] || (heights[one] == heights[other] && one < other);
    }

    private static int Root(int[] parent, int cell)
    {
        while (parent[cell] != cell)
        {
            parent[cell] = parent[parent[cell]];
            cell = parent[cell];
        }

        return cell;
    }
}
