namespace Mastwright.Evidence.Statistics;

/// <summary>The one step in a series that explains most of it.</summary>
/// <param name="After">The last place before the step, from 0.</param>
/// <param name="MeanBefore">Mean up to and with that place.</param>
/// <param name="MeanAfter">Mean of the rest.</param>
/// <param name="F">The variance that the step explains over what is left a value: (S₁ − S₂)/(S₂/(n − 2)); infinite where nothing is left.</param>
public sealed record ChangePoint(int After, double MeanBefore, double MeanAfter, double F)
{
    /// <summary>How far the step goes.</summary>
    public double Step => MeanAfter - MeanBefore;

    /// <summary>Finds the step by least squares; null for fewer than twice the shortest part, or for a series that does not vary.</summary>
    /// <param name="values">The series; NaN is left out.</param>
    /// <param name="shortest">Values that each side has at the least, one or more.</param>
    public static ChangePoint? Find(ReadOnlySpan<double> values, int shortest)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(shortest);
        int count = 0;
        double sum = 0;
        double squares = 0;
        foreach (double value in values)
        {
            if (!double.IsNaN(value))
            {
                count++;
                sum += value;
                squares += value * value;
            }
        }

        double whole = squares - (sum * sum / Math.Max(1, count));
        if (count < 2 * shortest || whole <= 0)
        {
            return null;
        }

        ChangePoint? best = null;
        double most = double.NegativeInfinity;
        int seen = 0;
        double left = 0;
        for (int i = 0; i < values.Length; i++)
        {
            if (double.IsNaN(values[i]))
            {
                continue;
            }

            seen++;
            left += values[i];
            int rest = count - seen;
            if (seen < shortest || rest < shortest)
            {
                continue;
            }

            double before = left / seen;
            double after = (sum - left) / rest;
            double explained = (after - before) * (after - before) * seen * rest / count;
            if (explained > most)
            {
                most = explained;
                double remaining = whole - explained;
                best = new(i, before, after, remaining <= 0 || count < 3 ? double.PositiveInfinity : explained / (remaining / (count - 2)));
            }
        }

        return best;
    }
}
