using System.Globalization;

namespace Mastwright.Quantities;

/// <summary>A ratio of two powers, in decibels. The default value is 0 dB: no change.</summary>
/// <param name="Value">Ten times the decimal logarithm of the ratio, in dB.</param>
public readonly record struct Decibels(double Value)
{
    /// <summary>The two ratios multiplied.</summary>
    public static Decibels operator +(Decibels left, Decibels right) => new(left.Value + right.Value);

    /// <summary>The left ratio divided by the right.</summary>
    public static Decibels operator -(Decibels left, Decibels right) => new(left.Value - right.Value);

    /// <summary>The inverse ratio.</summary>
    public static Decibels operator -(Decibels ratio) => new(-ratio.Value);

    /// <summary>The text form in the invariant culture, as "3.01 dB".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Value:0.##} dB");
}
