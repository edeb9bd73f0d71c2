namespace Mastwright.Geodesy;

/// <summary>Trigonometry in degrees that is exact at the multiples of 90°, where geodesics turn from one case to another.</summary>
internal static class Degrees
{
    internal const double PerRadian = 180 / Math.PI;

    /// <summary>Sine and cosine of an angle of at most some turns.</summary>
    internal static (double Sin, double Cos) SinCos(double degrees)
    {
        double quarter = Math.Round(degrees / 90);
        (double sin, double cos) = Math.SinCos((degrees - (90 * quarter)) / PerRadian);
        return ((int)quarter & 3) switch
        {
            0 => (sin, cos),
            1 => (cos, 0 - sin),
            2 => (0 - sin, 0 - cos),
            _ => (0 - cos, sin),
        };
    }

    /// <summary>Angle of the vector (x, y) in degrees, from -180 to 180; exact for vectors along an axis.</summary>
    internal static double Atan2(double y, double x)
    {
        if (Math.Abs(y) > Math.Abs(x))
        {
            return y < 0 ? -90 + (Math.Atan2(x, -y) * PerRadian) : 90 - (Math.Atan2(x, y) * PerRadian);
        }

        if (x < 0)
        {
            double fromHalfTurn = Math.Atan2(Math.Abs(y), -x) * PerRadian;
            return y < 0 ? fromHalfTurn - 180 : 180 - fromHalfTurn;
        }

        return Math.Atan2(y, x) * PerRadian;
    }

    /// <summary>The direction of the vector (east, north), clockwise from north: 0 or more, under 360.</summary>
    internal static double Bearing(double east, double north)
    {
        double bearing = Atan2(east, north);
        return bearing < 0 ? WrapBelow360(bearing + 360) : bearing + 0.0;
    }

    /// <summary>An angle brought into [-180, 180).</summary>
    internal static double Wrap(double degrees)
    {
        if (degrees is >= -180 and < 180)
        {
            return degrees;
        }

        double wrapped = Math.IEEERemainder(degrees, 360);
        return wrapped >= 180 ? -180 : wrapped;
    }

    /// <summary>The way east from one longitude to another, in [-180, 180]; exact for neighbours across the antimeridian.</summary>
    internal static double LongitudeDifference(double fromDegrees, double toDegrees)
    {
        double difference = toDegrees - fromDegrees;
        return difference switch
        {
            > 180 => (toDegrees - 180) - (fromDegrees + 180),
            < -180 => (toDegrees + 180) - (fromDegrees - 180),
            _ => difference,
        };
    }

    /// <summary>A small angle rounded to 2⁻⁵⁷ degrees, under a picometre on the ground: so no product of small sines vanishes.</summary>
    internal static double Coarsened(double degrees)
    {
        const double Small = 1 / 16.0;
        double size = Math.Abs(degrees);
        double rounded = size < Small ? Small - (Small - size) : size;
        return degrees < 0 ? -rounded : rounded;
    }

    /// <summary>A tiny negative angle plus 360 rounds to 360, which is 0.</summary>
    private static double WrapBelow360(double degrees) => degrees >= 360 ? 0 : degrees;
}
