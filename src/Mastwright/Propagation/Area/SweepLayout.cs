namespace Mastwright.Propagation.Area;

/// <summary>Which cells of a sweep's square are in memory, and where: all of them, or those of a sector.</summary>
/// <remarks>
/// The place of a cell is always row · pitch + column + origin. Of a sector each row holds a run of columns; the pitch is the least at
/// which the runs of two rows do not overlap, so a narrow sector takes about twice its own area, however it lies, and reading it costs
/// what reading the whole square costs. Cells that are not held must not be asked for: their place may be another's.
/// </remarks>
internal sealed class SweepLayout
{
    private readonly (int First, int Last)[]? held;

    private SweepLayout(int reach, int pitch, int origin, int length, (int First, int Last)[]? rows)
    {
        Reach = reach;
        Side = (2 * reach) + 1;
        Pitch = pitch;
        Origin = origin;
        Length = length;
        Middle = (reach * pitch) + reach + origin;
        held = rows;
    }

    /// <summary>Cells on each side of the station's own.</summary>
    internal int Reach { get; }

    /// <summary>Columns, and rows, of the square.</summary>
    internal int Side { get; }

    /// <summary>From a cell to the one south of it.</summary>
    internal int Pitch { get; }

    /// <summary>Place that the north-western cell of the square has or would have.</summary>
    internal int Origin { get; }

    /// <summary>Number of places.</summary>
    internal int Length { get; }

    /// <summary>Whether every cell is held.</summary>
    internal bool IsWhole => held is null;

    /// <summary>Place of the station's own cell, which is always held.</summary>
    internal int Middle { get; }

    /// <summary>First and last place whose neighbours to the east, south and south-east are places, too.</summary>
    internal (int First, int Last) WithNeighbours => (Math.Max(0, -Pitch), Length - 2 - Math.Max(0, Pitch));

    /// <summary>The whole square, row by row.</summary>
    internal static SweepLayout Whole(int reach)
    {
        int side = (2 * reach) + 1;
        return new(reach, side, 0, checked(side * side), null);
    }

    /// <summary>A sector with its point at the station.</summary>
    /// <param name="reach">Cells on each side of the station's own.</param>
    /// <param name="fromTurns">Where it begins, counted from east to north in turns.</param>
    /// <param name="toTurns">Where it ends; at most an eighth further, and a little.</param>
    /// <param name="margin">Cells held all around it.</param>
    /// <param name="leastLength">Least number of places, so that the arrays of one sector fit the next.</param>
    internal static SweepLayout Sector(int reach, double fromTurns, double toTurns, int margin, int leastLength = 0)
    {
        (int First, int Last)[] rows = Rows(reach, Corners(reach, fromTurns, toTurns), margin);
        int top = Array.FindIndex(rows, row => row.First <= row.Last);
        int bottom = Array.FindLastIndex(rows, row => row.First <= row.Last);

        // The runs of rows in order from the north, or in order from the south: whichever takes less.
        int southwards = int.MinValue;
        int northwards = int.MinValue;
        for (int row = top; row < bottom; row++)
        {
            southwards = Math.Max(southwards, rows[row].Last - rows[row + 1].First + 1);
            northwards = Math.Max(northwards, rows[row + 1].Last - rows[row].First + 1);
        }

        long LengthAt(int pitch) => Math.Abs(((long)(bottom - top) * pitch) + rows[bottom].First - rows[top].First) + Math.Max(Width(rows[top]), Width(rows[bottom]));
        int pitch = LengthAt(southwards) <= LengthAt(-northwards) ? southwards : -northwards;
        int lowest = int.MaxValue;
        int highest = int.MinValue;
        for (int row = top; row <= bottom; row++)
        {
            lowest = Math.Min(lowest, checked((row * pitch) + rows[row].First));
            highest = Math.Max(highest, checked((row * pitch) + rows[row].Last));
        }

        return new(reach, pitch, -lowest, Math.Max(highest - lowest + 1, leastLength), rows);
    }

    /// <summary>Place of a cell counted from the north-western one.</summary>
    internal int Index(int column, int row) => (row * Pitch) + column + Origin;

    /// <summary>Place of a cell counted from the station's own.</summary>
    internal int At(int east, int north) => Middle + east - (north * Pitch);

    /// <summary>First and last column held of a row; the last is before the first where there is none.</summary>
    internal (int First, int Last) Row(int row) => held is null ? (0, Side - 1) : held[row];

    private static int Width((int First, int Last) row) => row.Last - row.First + 1;

    /// <summary>Station, both ends of the arc, and the two corners outside it: columns and rows.</summary>
    private static (double X, double Y)[] Corners(int reach, double fromTurns, double toTurns)
    {
        double half = Math.PI * (toTurns - fromTurns);
        double outer = reach / Math.Cos(half / 2);
        (double X, double Y) On(double turns, double radius) => (reach + (radius * Math.Cos(2 * Math.PI * turns)), reach - (radius * Math.Sin(2 * Math.PI * turns)));
        double quarter = (toTurns - fromTurns) / 4;
        return [(reach, reach), On(fromTurns, reach), On(fromTurns + quarter, outer), On(toTurns - quarter, outer), On(toTurns, reach)];
    }

    private static (int First, int Last)[] Rows(int reach, (double X, double Y)[] corners, int margin)
    {
        int side = (2 * reach) + 1;
        (int First, int Last)[] rows = new (int, int)[side];
        for (int row = 0; row < side; row++)
        {
            double low = double.PositiveInfinity;
            double high = double.NegativeInfinity;
            for (int i = 0; i < corners.Length; i++)
            {
                (double X, double Y) a = corners[i];
                (double X, double Y) b = corners[(i + 1) % corners.Length];
                (a, b) = a.Y <= b.Y ? (a, b) : (b, a);
                if (b.Y < row - margin || a.Y > row + margin)
                {
                    continue;
                }

                // The part of the edge between the row's own margins.
                double slope = b.Y > a.Y ? (b.X - a.X) / (b.Y - a.Y) : 0;
                double x1 = a.Y < row - margin ? a.X + (slope * (row - margin - a.Y)) : a.X;
                double x2 = b.Y > row + margin ? a.X + (slope * (row + margin - a.Y)) : b.X;
                low = Math.Min(low, Math.Min(x1, x2));
                high = Math.Max(high, Math.Max(x1, x2));
            }

            rows[row] = double.IsInfinity(low)
                ? (0, -1)
                : ((int)Math.Clamp(Math.Floor(low) - margin, 0, side - 1), (int)Math.Clamp(Math.Ceiling(high) + margin, 0, side - 1));
        }

        return rows;
    }
}
