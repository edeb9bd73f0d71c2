namespace Mastwright.Propagation;

/// <summary>The approximation of the inverse complementary normal distribution that ITU-R P.1812 prescribes.</summary>
internal static class InverseNormal
{
    /// <summary>Number of standard deviations exceeded with a probability.</summary>
    /// <param name="x">Probability, 0.000001 to 0.999999.</param>
    /// <remarks>
    /// Source: Rec. ITU-R P.1812, attachment with the approximation to the inverse complementary cumulative normal distribution. Error
    /// below 0.00054 (stated there). It does not vanish exactly at x = 0.5 (4e-10); the published results show that.
    /// </remarks>
    internal static double Of(double x) => x <= 0.5 ? Upper(x) : -Upper(1 - x);

    private static double Upper(double x)
    {
        double t = Math.Sqrt(-2 * Math.Log(x));
        return t - (((((0.010328 * t) + 0.802853) * t) + 2.515516698) / ((((((0.001308 * t) + 0.189269) * t) + 1.432788) * t) + 1));
    }
}
