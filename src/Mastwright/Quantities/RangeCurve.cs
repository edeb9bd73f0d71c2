namespace Mastwright.Quantities;

/// <summary>A curve whose value is known within a range: three curves, low, median and high.</summary>
/// <param name="Low">The least.</param>
/// <param name="Median">The likeliest.</param>
/// <param name="High">The most.</param>
public sealed record RangeCurve(LinearCurve Low, LinearCurve Median, LinearCurve High)
{
    /// <summary>The range at a place.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The three curves cross there.</exception>
    public Estimate At(double x) => Estimate.Of(Low.At(x), Median.At(x), High.At(x));
}
