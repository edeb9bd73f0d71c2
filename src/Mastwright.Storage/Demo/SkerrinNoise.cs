namespace Mastwright.Storage.Demo;

/// <summary>Smooth random fields that come out the same on every machine.</summary>
/// <remarks>
/// Gradients are picked by an integer hash, and only + − × ÷ and comparisons follow: IEEE 754 fixes the bits of each of these, and the
/// runtime neither fuses nor reorders them. No sine, power or exponential is used, as their last bits belong to the machine.
/// </remarks>
internal static class SkerrinNoise
{
    private static readonly double[] GradientX = [1, 0.96, 0.8, 0.6, 0.28, 0, -0.28, -0.6, -0.8, -0.96, -1, -0.96, -0.8, -0.6, -0.28, 0, 0.28, 0.6, 0.8, 0.96, 0.8, -0.6, 0.6, -0.8, 0.96, -0.28, -0.96, 0.28, 1, -1, 0, 0];
    private static readonly double[] GradientY = [0, 0.28, 0.6, 0.8, 0.96, 1, 0.96, 0.8, 0.6, 0.28, 0, -0.28, -0.6, -0.8, -0.96, -1, -0.96, -0.8, -0.6, -0.28, 0.6, 0.8, -0.8, -0.6, 0.28, -0.96, -0.28, 0.96, 0, 0, 1, -1];

    /// <summary>Gradient noise of one scale, within about -1 to 1, zero at whole numbers.</summary>
    public static double At(double x, double y, int field)
    {
        double floorX = Math.Floor(x);
        double floorY = Math.Floor(y);
        int column = (int)floorX;
        int row = (int)floorY;
        double dx = x - floorX;
        double dy = y - floorY;
        double acrossX = Fade(dx);
        double acrossY = Fade(dy);
        double low = Between(Slope(column, row, field, dx, dy), Slope(column + 1, row, field, dx - 1, dy), acrossX);
        double high = Between(Slope(column, row + 1, field, dx, dy - 1), Slope(column + 1, row + 1, field, dx - 1, dy - 1), acrossX);
        return 1.5 * Between(low, high, acrossY);
    }

    /// <summary>A sum of scales, each half as long and <paramref name="gain"/> as high as the one before: within about -1 to 1.</summary>
    public static double Sum(double x, double y, int field, int scales, double gain = 0.5)
    {
        double sum = 0;
        double height = 1;
        double total = 0;
        for (int scale = 0; scale < scales; scale++)
        {
            sum += height * At(x, y, field + scale);
            total += height;
            height *= gain;

            // Turned by the 3-4-5 triangle, so that the lattices of the scales do not line up.
            double turned = ((0.8 * x) - (0.6 * y)) * 2;
            y = (((0.6 * x) + (0.8 * y)) * 2) + 7.3;
            x = turned + 3.7;
        }

        return sum / total;
    }

    /// <summary>0 below <paramref name="from"/>, 1 above <paramref name="to"/>, and a smooth rise between.</summary>
    public static double Rise(double from, double to, double value)
    {
        double t = (value - from) / (to - from);
        return t <= 0 ? 0 : t >= 1 ? 1 : t * t * (3 - (2 * t));
    }

    private static double Between(double from, double to, double share) => from + (share * (to - from));

    private static double Fade(double t) => t * t * t * ((t * ((t * 6) - 15)) + 10);

    private static double Slope(int column, int row, int field, double dx, double dy)
    {
        unchecked
        {
            uint hash = ((uint)column * 0x8da6b343u) ^ ((uint)row * 0xd8163841u) ^ ((uint)field * 0xcb1ab31fu);
            hash ^= hash >> 15;
            hash *= 0x2c1b3c6du;
            hash ^= hash >> 12;
            hash *= 0x297a2d39u;
            hash ^= hash >> 15;
            int pick = (int)(hash & 31);
            return (GradientX[pick] * dx) + (GradientY[pick] * dy);
        }
    }
}
