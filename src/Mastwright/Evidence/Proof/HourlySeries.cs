namespace Mastwright.Evidence.Proof;

/// <summary>Sums of a quantity hour by hour, with how many values made each sum.</summary>
/// <param name="Sums">A sum an hour.</param>
/// <param name="Counts">How many values an hour.</param>
/// <param name="FirstHour">The first hour, counted from 1970.</param>
public readonly record struct HourlySeries(ReadOnlyMemory<double> Sums, ReadOnlyMemory<int> Counts, long FirstHour)
{
    /// <summary>Days of 24 hours from the first hour on.</summary>
    public int Days => (Sums.Length + 23) / 24;

    /// <summary>The hour of the day (UTC) of a place in the series.</summary>
    public int HourOfDay(int place) => (int)((FirstHour + place) % 24);
}

/// <summary>A difference between two periods, and what each day of them adds to its uncertainty.</summary>
/// <param name="Shift">After less before, in the unit of the quantity.</param>
/// <param name="BeforeScores">How far each day pulls the mean of the period before away from itself; they sum to zero.</param>
/// <param name="AfterScores">The same of the period after.</param>
/// <param name="BeforeDays">Days before that have a value.</param>
/// <param name="AfterDays">Days after that have a value.</param>
public sealed record DayScores(double Shift, double[] BeforeScores, double[] AfterScores, int BeforeDays, int AfterDays)
{
    /// <summary>The same without the slope that the last days of the period before have: an old fit-out that failed more each day.</summary>
    /// <remarks>That the fit-out failed is part of what it was, and no chance; left in, its slope would widen the interval as weather does.</remarks>
    /// <param name="days">How many days the slope lasts.</param>
    internal DayScores WithoutSlope(int days)
    {
        int count = BeforeScores.Length;
        double[] slope = [.. Enumerable.Range(0, count).Select(day => Math.Max(0.0, day - (count - days) + 0.5))];
        double mean = slope.Average();
        double product = slope.Select((value, day) => (value - mean) * BeforeScores[day]).Sum();
        double square = slope.Sum(value => (value - mean) * (value - mean));
        return square == 0 ? this : this with { BeforeScores = [.. BeforeScores.Select((score, day) => score - (product / square * (slope[day] - mean)))] };
    }
}

/// <summary>Compares two periods hour of the day by hour of the day, so that a daily cycle seen in part makes no difference.</summary>
public static class SameHours
{
    private const int DayHours = 24;

    /// <summary>The difference; null where no hour of the day has values in both periods.</summary>
    /// <param name="before">The period before.</param>
    /// <param name="after">The period after.</param>
    /// <remarks>
    /// The unit is the mean of an hour, whatever the number of packets in it. Each hour of the day is compared with itself; the differences are
    /// weighted by nb·na/(nb + na), nb and na being the days on which that hour has a value.
    /// </remarks>
    public static DayScores? Compare(HourlySeries before, HourlySeries after)
    {
        Span<double> meanBefore = stackalloc double[DayHours];
        Span<double> meanAfter = stackalloc double[DayHours];
        Span<int> countBefore = stackalloc int[DayHours];
        Span<int> countAfter = stackalloc int[DayHours];
        Means(before, meanBefore, countBefore);
        Means(after, meanAfter, countAfter);
        Span<double> weights = stackalloc double[DayHours];
        double total = 0;
        for (int hour = 0; hour < DayHours; hour++)
        {
            weights[hour] = countBefore[hour] == 0 || countAfter[hour] == 0 ? 0 : (double)countBefore[hour] * countAfter[hour] / (countBefore[hour] + countAfter[hour]);
            total += weights[hour];
        }

        if (total == 0)
        {
            return null;
        }

        double shift = 0;
        for (int hour = 0; hour < DayHours; hour++)
        {
            weights[hour] /= total;
            shift += weights[hour] == 0 ? 0 : weights[hour] * (meanAfter[hour] - meanBefore[hour]);
        }

        double[] scoresBefore = Scores(before, meanBefore, countBefore, weights, out int daysBefore);
        double[] scoresAfter = Scores(after, meanAfter, countAfter, weights, out int daysAfter);
        return new(shift, scoresBefore, scoresAfter, daysBefore, daysAfter);
    }

    private static void Means(HourlySeries series, Span<double> means, Span<int> counts)
    {
        ReadOnlySpan<double> sums = series.Sums.Span;
        ReadOnlySpan<int> values = series.Counts.Span;
        for (int i = 0; i < sums.Length; i++)
        {
            if (values[i] > 0)
            {
                int hour = series.HourOfDay(i);
                counts[hour]++;
                means[hour] += ((sums[i] / values[i]) - means[hour]) / counts[hour];
            }
        }
    }

    private static double[] Scores(HourlySeries series, ReadOnlySpan<double> means, ReadOnlySpan<int> counts, ReadOnlySpan<double> weights, out int days)
    {
        ReadOnlySpan<double> sums = series.Sums.Span;
        ReadOnlySpan<int> values = series.Counts.Span;
        double[] scores = new double[series.Days];
        days = 0;
        for (int day = 0; day < scores.Length; day++)
        {
            bool any = false;
            for (int i = day * DayHours; i < Math.Min((day + 1) * DayHours, sums.Length); i++)
            {
                int hour = series.HourOfDay(i);
                if (values[i] > 0 && weights[hour] > 0)
                {
                    any = true;
                    scores[day] += weights[hour] * ((sums[i] / values[i]) - means[hour]) / counts[hour];
                }
            }

            days += any ? 1 : 0;
        }

        return scores;
    }
}
