using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>A closed line in degrees; its last place is not the first again.</summary>
/// <param name="Places">Its places: counter-clockwise for an outer line, clockwise for a hole.</param>
public sealed record ReachRing(ImmutableArray<GeoPoint> Places);

/// <summary>One stretch of land or sea with a margin of at least a level.</summary>
/// <param name="Outer">Its outer line.</param>
/// <param name="Holes">What is cut out of it.</param>
public sealed record ReachPatch(ReachRing Outer, ImmutableArray<ReachRing> Holes);

/// <summary>All that has a margin of at least a level, as lines that a map program can fill.</summary>
/// <param name="FromDb">The level in dB.</param>
/// <param name="AreaSquareMetres">Area within the lines, in square metres of the grid.</param>
/// <param name="Patches">The stretches.</param>
public sealed record ReachContour(double FromDb, double AreaSquareMetres, ImmutableArray<ReachPatch> Patches)
{
    /// <summary>Lines are simplified to this share of a cell's side, or less where they would cross.</summary>
    public const double ToleranceCells = 0.25;

    private const int Attempts = 3;

    /// <summary>Lines as near as this are told apart no more once they are in degrees.</summary>
    private const double ClearanceMetres = 1e-3;

    /// <summary>One contour for each edge of a class, the lowest first.</summary>
    public static ImmutableArray<ReachContour> Of(ReachMap map, ReachDirection direction)
    {
        ArgumentNullException.ThrowIfNull(map);
        float[] margins = map.MarginsDb(direction);
        return [.. ReachClasses.Edges(map.Budget.Wanted.MarginDb).Select(level => Around(map.Field.Frame, margins, level))];
    }

    /// <summary>The contour of any values on a grid.</summary>
    /// <param name="frame">The grid.</param>
    /// <param name="values">A value a cell, row by row; NaN where there is none.</param>
    /// <param name="level">The level that all within the lines has at least.</param>
    public static ReachContour Around(GridFrame frame, float[] values, double level)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(values);
        List<(List<(double X, double Y)> Points, double Area)> rings =
        [
            .. Simplified(RingTracer.Trace(frame, values, level), frame.StepX).Select(ring => (ring, Area(ring))),
        ];

        // The smallest outer ring around a hole is the one it is cut out of.
        List<(List<(double X, double Y)> Points, double Area)> outers = [.. rings.Where(ring => ring.Area > 0).OrderBy(ring => ring.Area)];
        ILookup<int, List<(double X, double Y)>> holes = rings.Where(ring => ring.Area < 0)
            .ToLookup(hole => outers.FindIndex(outer => outer.Area > -hole.Area && Holds(outer.Points, hole.Points[0])), hole => hole.Points);
        return new(
            level,
            rings.Sum(ring => ring.Area),
            [.. outers.Select((outer, i) => new ReachPatch(InDegrees(frame, outer.Points), [.. holes[i].Select(hole => InDegrees(frame, hole))])).Reverse()]);
    }

    /// <summary>Lines that would cross once simplified are simplified less, at last not at all: as traced no two touch.</summary>
    private static List<List<(double X, double Y)>> Simplified(List<List<(double X, double Y)>> traced, double cellMetres)
    {
        double[] tolerances = [.. traced.Select(_ => ToleranceCells * cellMetres)];
        List<List<(double X, double Y)>> simple = [.. traced.Select((ring, i) => RingSimplifier.Simplify(ring, tolerances[i]))];
        for (int attempt = 0; RingCrossings.Find(simple, 2 * cellMetres, ClearanceMetres) is { Count: > 0 } crossing; attempt++)
        {
            bool isLeft = false;
            foreach (int ring in crossing)
            {
                isLeft |= tolerances[ring] > 0;
                tolerances[ring] = attempt < Attempts ? tolerances[ring] / 2 : 0;
                simple[ring] = tolerances[ring] > 0 ? RingSimplifier.Simplify(traced[ring], tolerances[ring]) : traced[ring];
            }

            if (!isLeft)
            {
                break;
            }
        }

        return simple;
    }

    private static ReachRing InDegrees(GridFrame frame, List<(double X, double Y)> ring) => new(
    [
        .. ring.Select(point =>
        {
            UniversalTransverseMercator.Reverse(point.X, point.Y, frame.UtmZone, frame.IsNorth, out double latitude, out double longitude);
            return new GeoPoint(latitude, longitude);
        }),
    ]);

    private static double Area(List<(double X, double Y)> ring)
    {
        double twice = 0;
        (double x0, double y0) = ring[0];
        for (int i = 0; i < ring.Count; i++)
        {
            (double x1, double y1) = ring[i];
            (double x2, double y2) = ring[(i + 1) % ring.Count];
            twice += ((x1 - x0) * (y2 - y0)) - ((x2 - x0) * (y1 - y0));
        }

        return twice / 2;
    }

    /// <summary>Whether a ring goes around a point (even-odd rule).</summary>
    public static bool Holds(IReadOnlyList<(double X, double Y)> ring, (double X, double Y) point)
    {
        ArgumentNullException.ThrowIfNull(ring);
        bool inside = false;
        for (int i = 0, j = ring.Count - 1; i < ring.Count; j = i++)
        {
            if ((ring[i].Y > point.Y) != (ring[j].Y > point.Y)
                && point.X < ((ring[j].X - ring[i].X) * (point.Y - ring[i].Y) / (ring[j].Y - ring[i].Y)) + ring[i].X)
            {
                inside = !inside;
            }
        }

        return inside;
    }
}
