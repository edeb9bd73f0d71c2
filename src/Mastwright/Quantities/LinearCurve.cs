using System.Collections.Immutable;

namespace Mastwright.Quantities;

/// <summary>A curve through points, straight between them and level beyond its ends.</summary>
/// <remarks>Immutable, so safe from many threads.</remarks>
public sealed class LinearCurve
{
    private readonly ImmutableArray<CurvePoint> points;

    /// <summary>Makes a curve.</summary>
    /// <param name="points">One point or more; of points with the same place the last one counts.</param>
    /// <exception cref="ArgumentException">There is no point, or one is not a number.</exception>
    public LinearCurve(IEnumerable<CurvePoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        this.points = [.. points.GroupBy(point => point.X).Select(group => group.Last()).OrderBy(point => point.X)];
        if (this.points.IsEmpty || this.points.Any(point => !double.IsFinite(point.X) || !double.IsFinite(point.Y)))
        {
            throw new ArgumentException("A curve has one point or more, each of two finite numbers.", nameof(points));
        }
    }

    /// <summary>The points by rising place.</summary>
    public ImmutableArray<CurvePoint> Points => points;

    /// <summary>The same value everywhere.</summary>
    public static LinearCurve Level(double value) => new([new(0, value)]);

    /// <summary>The value at a place; NaN in, NaN out.</summary>
    public double At(double x)
    {
        if (double.IsNaN(x))
        {
            return x;
        }

        if (x <= points[0].X)
        {
            return points[0].Y;
        }

        for (int i = 1; i < points.Length; i++)
        {
            if (x <= points[i].X)
            {
                double share = (x - points[i - 1].X) / (points[i].X - points[i - 1].X);
                return points[i - 1].Y + (share * (points[i].Y - points[i - 1].Y));
            }
        }

        return points[^1].Y;
    }
}

/// <summary>A point of a curve.</summary>
/// <param name="X">Its place.</param>
/// <param name="Y">The value there.</param>
public sealed record CurvePoint(double X, double Y);
