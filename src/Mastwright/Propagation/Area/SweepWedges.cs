namespace Mastwright.Propagation.Area;

/// <summary>Gives every cell of a square grid to the radial whose bearing is nearest to its own, each cell exactly once.</summary>
/// <remarks>
/// A quarter of the circle is cut at the half-way bearings between radials; the other quarters are the same turned. Within 45° of an axis the
/// cells of a wedge are listed column by column along that axis. A cut has one tangent, used by both its neighbours, and its
/// cotangent is the tangent of the mirrored cut, so no cell falls between two wedges.
/// </remarks>
internal sealed class SweepWedges
{
    private readonly int radials;
    private readonly int reach;
    private readonly long mostSquare;
    private readonly double[] cuts;

    /// <summary>Prepares the cuts.</summary>
    /// <param name="radials">Number of radials, a multiple of 8.</param>
    /// <param name="reach">Cells on each side of the middle.</param>
    /// <param name="radius">Farthest cell, counted in cells.</param>
    internal SweepWedges(int radials, int reach, double radius)
    {
        this.radials = radials;
        this.reach = reach;
        mostSquare = (long)(radius * radius);
        int quarter = radials / 4;
        cuts = new double[quarter + 1];
        for (int i = 0; i <= quarter; i++)
        {
            cuts[i] = Math.Tan((i - 0.5) * 2 * Math.PI / radials);
        }

        cuts[0] = -cuts[1];
    }

    /// <summary>Room that the cells of one radial need at most.</summary>
    internal int MostCells => (int)Math.Ceiling((reach * (2 + (reach * 2 * Math.PI / radials * 2))) + 16);

    /// <summary>Sine and cosine of a radial's bearing, counted from east to north in quarters of the circle; exact along the axes.</summary>
    internal (double East, double North) Direction(int radial)
    {
        int quarter = radials / 4;
        (double sin, double cos) = Math.SinCos(radial % quarter * 2 * Math.PI / radials);
        return Turned(radial / quarter, cos, sin);
    }

    /// <summary>Lists the cells of a radial, nearest first, as east and north of the middle.</summary>
    /// <returns>Their number.</returns>
    internal int Cells(int radial, Span<(int East, int North)> cells)
    {
        int quarter = radials / 4;
        int turn = radial / quarter;
        int r = radial % quarter;
        int count = 0;
        if (r <= quarter / 2)
        {
            for (int a = 1; a <= reach; a++)
            {
                int last = Math.Min(Below(a * cuts[r + 1]), reach);
                for (int b = Math.Max((int)Math.Ceiling(a * cuts[r]), -reach); b <= last; b++)
                {
                    Add(cells, ref count, turn, a, b);
                }
            }
        }
        else
        {
            for (int b = 1; b <= reach; b++)
            {
                int last = Math.Min((int)Math.Floor(b * cuts[quarter - r + 1]), reach);
                for (int a = (int)Math.Floor(b * cuts[quarter - r]) + 1; a <= last; a++)
                {
                    Add(cells, ref count, turn, a, b);
                }
            }
        }

        return count;
    }

    private void Add(Span<(int East, int North)> cells, ref int count, int turn, int a, int b)
    {
        long square = Square(a, b);
        if (square > mostSquare)
        {
            return;
        }

        (int East, int North) cell = Turned(turn, a, b);
        int at = count++;
        for (; at > 0 && Square(cells[at - 1].East, cells[at - 1].North) > square; at--)
        {
            cells[at] = cells[at - 1];
        }

        cells[at] = cell;
    }

    /// <summary>The largest whole number below a value.</summary>
    private static int Below(double value) => (int)Math.Ceiling(value) - 1;

    private static long Square(int a, int b) => ((long)a * a) + ((long)b * b);

    private static (double East, double North) Turned(int quarters, double a, double b) => quarters switch
    {
        0 => (a, b),
        1 => (-b, a),
        2 => (-a, -b),
        _ => (b, -a),
    };

    private static (int East, int North) Turned(int quarters, int a, int b) => quarters switch
    {
        0 => (a, b),
        1 => (-b, a),
        2 => (-a, -b),
        _ => (b, -a),
    };
}
