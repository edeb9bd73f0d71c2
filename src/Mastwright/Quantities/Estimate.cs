using System.Globalization;

namespace Mastwright.Quantities;

/// <summary>A number known within a range: what it is at least, most likely, and at most.</summary>
/// <remarks>
/// A value given without a precision has the three equal. "5 ± 1" has 4, 5, 6; "0…6" has 0, 3, 6.
/// The default value is exactly zero.
/// </remarks>
public readonly record struct Estimate
{
    private Estimate(double low, double median, double high)
    {
        Low = low;
        Median = median;
        High = high;
    }

    /// <summary>The least it may be, in the unit of the quantity.</summary>
    public double Low { get; }

    /// <summary>The value to calculate with when one number is needed.</summary>
    public double Median { get; }

    /// <summary>The most it may be.</summary>
    public double High { get; }

    /// <summary>Whether the three are one number.</summary>
    public bool IsExact => Low == High;

    /// <summary>Half of the range.</summary>
    public double HalfRange => (High - Low) / 2;

    /// <summary>A number without a range.</summary>
    public static Estimate Exactly(double value) => new(value, value, value);

    /// <summary>A number and how far off it may be either way (zero or more).</summary>
    public static Estimate PlusMinus(double value, double halfRange)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(halfRange);
        return new(value - halfRange, value, value + halfRange);
    }

    /// <summary>A range, with its middle as the median.</summary>
    public static Estimate Between(double low, double high) => Of(low, (low + high) / 2, high);

    /// <summary>The three numbers.</summary>
    /// <exception cref="ArgumentOutOfRangeException">They are not in rising order.</exception>
    public static Estimate Of(double low, double median, double high)
    {
        if (!(low <= median && median <= high))
        {
            throw new ArgumentOutOfRangeException(nameof(median), "An estimate's low, median and high must rise.");
        }

        return new(low, median, high);
    }

    /// <summary>The range after a rising (or falling) change of each of its numbers.</summary>
    public Estimate Map(Func<double, double> change)
    {
        ArgumentNullException.ThrowIfNull(change);
        double a = change(Low);
        double b = change(High);
        return Of(Math.Min(a, b), change(Median), Math.Max(a, b));
    }

    /// <summary>The sum of two numbers that may be off independently: the ranges add.</summary>
    public static Estimate operator +(Estimate left, Estimate right) =>
        new(left.Low + right.Low, left.Median + right.Median, left.High + right.High);

    /// <summary>The difference of two numbers that may be off independently: the ranges add.</summary>
    public static Estimate operator -(Estimate left, Estimate right) =>
        new(left.Low - right.High, left.Median - right.Median, left.High - right.Low);

    /// <summary>The text form in the invariant culture: "5", or "5 (4…6)".</summary>
    public override string ToString() => IsExact
        ? string.Create(CultureInfo.InvariantCulture, $"{Median:0.###}")
        : string.Create(CultureInfo.InvariantCulture, $"{Median:0.###} ({Low:0.###}…{High:0.###})");
}
