namespace Mastwright.Geodesy;

/// <summary>The curve that the geodesics from one place wrap round at the place opposite.</summary>
/// <remarks>Source: C. F. F. Karney, "Algorithms for geodesics", Journal of Geodesy 87 (2013), section 5.</remarks>
internal static class Astroid
{
    /// <summary>The positive root of κ⁴ + 2κ³ - (x² + y² - 1)κ² - 2y²κ - y² = 0 (equation 55).</summary>
    internal static double Root(double x, double y)
    {
        double p = x * x;
        double q = y * y;
        double r = (p + q - 1) / 6;
        if (q == 0 && r <= 0)
        {
            return 0;
        }

        double s = p * q / 4;
        double cube = r * r * r;
        double discriminant = s * (s + (2 * cube));
        double u = r;
        if (discriminant >= 0)
        {
            double sum = s + cube;
            double t = Math.Cbrt(sum + (sum < 0 ? -Math.Sqrt(discriminant) : Math.Sqrt(discriminant)));
            u += t + (t == 0 ? 0 : r * r / t);
        }
        else
        {
            u += 2 * r * Math.Cos(Math.Atan2(Math.Sqrt(-discriminant), -(s + cube)) / 3);
        }

        double v = Math.Sqrt((u * u) + q);
        double uv = u < 0 ? q / (v - u) : u + v;
        double w = (uv - q) / (2 * v);
        return uv / (Math.Sqrt(uv + (w * w)) + w);
    }
}
