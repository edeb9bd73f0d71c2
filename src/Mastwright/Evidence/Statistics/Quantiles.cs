using Mastwright.Quantities;

namespace Mastwright.Evidence.Statistics;

/// <summary>Values that the standard normal and Student's distribution stay below with a probability.</summary>
public static class Quantiles
{
    private const int MostSteps = 200;

    /// <summary>The value that a standard normal draw stays below with probability <paramref name="p"/>.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The probability is 0, 1 or outside.</exception>
    /// <remarks>By bisection of <see cref="NormalDistribution.Cumulative"/>, to the last bits.</remarks>
    public static double Normal(double p) => Invert(p, NormalDistribution.Cumulative);

    /// <summary>The value that a draw of Student's distribution stays below with probability <paramref name="p"/>.</summary>
    /// <param name="p">Above 0 and below 1.</param>
    /// <param name="degrees">Degrees of freedom, above 0; need not be whole.</param>
    /// <exception cref="ArgumentOutOfRangeException">The probability is 0, 1 or outside, or the degrees are not above 0.</exception>
    public static double Student(double p, double degrees)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(degrees);
        return Invert(p, value => StudentDistribution.Cumulative(value, degrees));
    }

    private static double Invert(double p, Func<double, double> cumulative)
    {
        if (!(p > 0 && p < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(p), p, "A probability above 0 and below 1 is needed.");
        }

        double low = -1;
        double high = 1;
        while (cumulative(low) > p && low > -1e12)
        {
            low *= 2;
        }

        while (cumulative(high) < p && high < 1e12)
        {
            high *= 2;
        }

        for (int step = 0; step < MostSteps; step++)
        {
            double middle = low + ((high - low) / 2);
            if (middle == low || middle == high)
            {
                break;
            }

            if (cumulative(middle) < p)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return high;
    }
}
