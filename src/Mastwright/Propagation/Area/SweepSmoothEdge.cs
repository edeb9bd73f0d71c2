namespace Mastwright.Propagation.Area;

/// <summary>Bullington's edge over the smooth Earth at the points of a sweep's path, without a look at each: <see cref="SmoothBullington"/> in closed form.</summary>
/// <remarks>
/// Each slope has its maximum at sqrt(h·2a) from its end. The clearance in Fresnel radii is least where the cubic of P.526 section 3.2
/// (m b³ − (m + 1) b + c = 0) puts the least clearance: writing x = d(1 + b)/2 and setting the derivative of clearance/sqrt(x(d − x)) to
/// zero gives the same cubic. The points on either side of those places are tried.
/// </remarks>
internal static class SweepSmoothEdge
{
    internal static double LossDb(ref readonly SweepCell cell, double step, double radius, double wavelength)
    {
        double length = cell.Length;
        double c = 0.5 / radius;
        double atT = cell.OverSmoothStation;
        double atR = cell.OverSmoothCell;
        double line = (atR - atT) / length;
        (double near, double far) = Around(in cell, step, Math.Sqrt(atT / c));
        double slopeT = Math.Max((c * (length - near)) - (atT / near), (c * (length - far)) - (atT / far));
        (near, far) = Around(in cell, step, length - Math.Sqrt(atR / c));
        double slopeR = Math.Max((c * near) - (atR / (length - near)), (c * far) - (atR / (length - far)));
        double key = double.NegativeInfinity;
        if (slopeT < line)
        {
            (near, far) = Around(in cell, step, LeastClearance(length, atT, atR, radius));
            key = Math.Max(Key(near, length, atT, line, c), Key(far, length, atT, line, c));
        }

        return new BullingtonReading(slopeT, slopeR, key).LossDb(length, line, wavelength);
    }

    private static double Key(double x, double length, double atT, double line, double c)
    {
        double product = x * (length - x);
        double above = (c * product) - atT - (line * x);
        return above * Math.Abs(above) / product;
    }

    private static double LeastClearance(double length, double h1, double h2, double radius)
    {
        double c = (h1 - h2) / (h1 + h2);
        double m = length * length / (4 * radius * (h1 + h2));
        double argument = Math.Clamp(1.5 * c * Math.Sqrt(3 * m / ((m + 1) * (m + 1) * (m + 1))), -1, 1);
        double b = 2 * Math.Sqrt((m + 1) / (3 * m)) * Math.Cos((Math.PI / 3) + (Math.Acos(argument) / 3));
        return length / 2 * (1 + b);
    }

    /// <summary>The points of the path before and behind a place; one of the two outermost twice where the place is beyond it.</summary>
    private static (double Near, double Far) Around(ref readonly SweepCell cell, double step, double place)
    {
        double last = cell.Points * step;
        if (place <= last)
        {
            double behind = Math.Max(Math.Ceiling(place / step), 1) * step;
            return (Math.Max(behind - step, step), behind);
        }

        // Among the cell's own points, counted from the cell.
        double before = Math.Clamp(Math.Floor((cell.Length - place) / step), 1, OwnPoints.Count);
        double far = cell.Length - (before * step);
        return (Math.Max(far - step, last), far);
    }
}
