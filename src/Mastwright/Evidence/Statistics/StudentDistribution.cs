namespace Mastwright.Evidence.Statistics;

/// <summary>Student's t distribution.</summary>
public static class StudentDistribution
{
    private const int MostTerms = 10_000;

    /// <summary>Probability that a draw is at most <paramref name="t"/>.</summary>
    /// <param name="t">Any number.</param>
    /// <param name="degrees">Degrees of freedom, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The degrees are not above 0.</exception>
    /// <remarks>Source: NIST Digital Library of Mathematical Functions, 8.17.22 (continued fraction of the incomplete beta function).</remarks>
    public static double Cumulative(double t, double degrees)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(degrees);
        double tail = IncompleteBeta(degrees / (degrees + (t * t)), degrees / 2, 0.5) / 2;
        return t > 0 ? 1 - tail : tail;
    }

    /// <summary>The regularised incomplete beta function I_x(a, b).</summary>
    private static double IncompleteBeta(double x, double a, double b)
    {
        if (x <= 0 || x >= 1)
        {
            return x <= 0 ? 0 : 1;
        }

        // The fraction converges fast below (a + 1)/(a + b + 2); above, the symmetric form does (8.17.4).
        return x < (a + 1) / (a + b + 2) ? Front(x, a, b) * Fraction(x, a, b) : 1 - (Front(1 - x, b, a) * Fraction(1 - x, b, a));
    }

    private static double Front(double x, double a, double b) =>
        Math.Exp((a * Math.Log(x)) + (b * Math.Log(1 - x)) + LogGamma(a + b) - LogGamma(a) - LogGamma(b)) / a;

    /// <summary>8.17.22 by Lentz's method.</summary>
    private static double Fraction(double x, double a, double b)
    {
        const double tiny = 1e-300;
        double c = 1;
        double d = 1 / NotZero(1 - ((a + b) * x / (a + 1)), tiny);
        double value = d;
        for (int m = 1; m < MostTerms; m++)
        {
            double even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            d = 1 / NotZero(1 + (even * d), tiny);
            c = NotZero(1 + (even / c), tiny);
            value *= d * c;
            double odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            d = 1 / NotZero(1 + (odd * d), tiny);
            c = NotZero(1 + (odd / c), tiny);
            value *= d * c;
            if (Math.Abs((d * c) - 1) < 1e-15)
            {
                break;
            }
        }

        return value;
    }

    private static double NotZero(double value, double tiny) => Math.Abs(value) < tiny ? tiny : value;

    /// <summary>Logarithm of the gamma function of a number above 0 (DLMF 5.11.1, after raising the argument by 5.5.1).</summary>
    internal static double LogGamma(double x)
    {
        double shift = 0;
        while (x < 15)
        {
            shift -= Math.Log(x);
            x++;
        }

        double inverse = 1 / (x * x);
        double series = (1.0 / 12) - (inverse * ((1.0 / 360) - (inverse * ((1.0 / 1260) - (inverse * ((1.0 / 1680) - (inverse / 1188)))))));
        return shift + ((x - 0.5) * Math.Log(x)) - x + (Math.Log(2 * Math.PI) / 2) + (series / x);
    }
}
