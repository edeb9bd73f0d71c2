using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>Traces the edge of where a grid of values is at least some level: marching squares.</summary>
/// <remarks>
/// Outside the grid, and where there is no value, everything is below the level, so every ring is closed. A ring is walked with the region on
/// its left: outer rings run counter-clockwise, holes clockwise. Where two corners of a square that lie across from each other are inside, they
/// are kept apart, so rings never touch.
/// </remarks>
internal sealed class RingTracer
{
    private const int Top = 0;
    private const int Right = 1;
    private const int Bottom = 2;
    private const int Left = 3;

    /// <summary>From edge to edge of a square by which of its corners are inside: north-west 8, north-east 4, south-east 2, south-west 1.</summary>
    private static readonly (int From, int To)[][] Walks =
    [
        [], [(Bottom, Left)], [(Right, Bottom)], [(Right, Left)],
        [(Top, Right)], [(Top, Right), (Bottom, Left)], [(Top, Bottom)], [(Top, Left)],
        [(Left, Top)], [(Bottom, Top)], [(Left, Top), (Right, Bottom)], [(Right, Top)],
        [(Left, Right)], [(Bottom, Right)], [(Left, Bottom)], [],
    ];

    private readonly GridFrame frame;
    private readonly float[] values;
    private readonly double level;
    private readonly Dictionary<(int Column, int Row, bool IsAcross), (int Column, int Row, bool IsAcross)> next = [];

    private RingTracer(GridFrame frame, float[] values, double level)
    {
        this.frame = frame;
        this.values = values;
        this.level = level;
    }

    /// <summary>The rings, in metres east and north of the grid's zone; the last point is not the first again.</summary>
    internal static List<List<(double X, double Y)>> Trace(GridFrame frame, float[] values, double level)
    {
        RingTracer tracer = new(frame, values, level);
        for (int row = -1; row < frame.Rows; row++)
        {
            for (int column = -1; column < frame.Columns; column++)
            {
                tracer.Square(column, row);
            }
        }

        return tracer.Rings();
    }

    private void Square(int column, int row)
    {
        int corners = (IsInside(column, row) ? 8 : 0) | (IsInside(column + 1, row) ? 4 : 0) | (IsInside(column + 1, row + 1) ? 2 : 0) | (IsInside(column, row + 1) ? 1 : 0);
        foreach ((int from, int to) in Walks[corners])
        {
            next.Add(Edge(column, row, from), Edge(column, row, to));
        }
    }

    /// <summary>An edge by the sample it starts at: across to the east, or down to the south.</summary>
    private static (int Column, int Row, bool IsAcross) Edge(int column, int row, int side) => side switch
    {
        Top => (column, row, true),
        Bottom => (column, row + 1, true),
        Left => (column, row, false),
        _ => (column + 1, row, false),
    };

    private List<List<(double X, double Y)>> Rings()
    {
        List<List<(double X, double Y)>> rings = [];
        HashSet<(int Column, int Row, bool IsAcross)> seen = [];
        foreach ((int Column, int Row, bool IsAcross) start in next.Keys)
        {
            if (!seen.Add(start))
            {
                continue;
            }

            List<(double X, double Y)> ring = [Crossing(start)];
            for ((int Column, int Row, bool IsAcross) at = next[start]; at != start; at = next[at])
            {
                seen.Add(at);
                ring.Add(Crossing(at));
            }

            rings.Add(ring);
        }

        return rings;
    }

    /// <summary>Where the level is passed on an edge: in proportion between two values, half-way to where there is none.</summary>
    private (double X, double Y) Crossing((int Column, int Row, bool IsAcross) edge)
    {
        double here = ValueAt(edge.Column, edge.Row);
        double there = edge.IsAcross ? ValueAt(edge.Column + 1, edge.Row) : ValueAt(edge.Column, edge.Row + 1);
        double share = (level - here) / (there - here);

        // Not on a sample itself, where rings would touch.
        share = double.IsFinite(share) ? Math.Clamp(share, 0.01, 0.99) : 0.5;
        return (
            frame.OriginX + ((edge.Column + (edge.IsAcross ? share : 0)) * frame.StepX),
            frame.OriginY - ((edge.Row + (edge.IsAcross ? 0 : share)) * frame.StepY));
    }

    private bool IsInside(int column, int row) => ValueAt(column, row) >= level;

    private double ValueAt(int column, int row) =>
        (uint)column < (uint)frame.Columns && (uint)row < (uint)frame.Rows ? values[(row * frame.Columns) + column] : double.NaN;
}
