namespace Mastwright.Propagation.Area;

/// <summary>Several single-precision numbers worked on at once. One closed form is written against this and compiled for each width.</summary>
/// <typeparam name="T">The width.</typeparam>
internal interface ILanes<T>
    where T : struct, ILanes<T>
{
    /// <summary>Numbers at once.</summary>
    static abstract int Count { get; }

    static abstract T operator +(T left, T right);

    static abstract T operator -(T left, T right);

    static abstract T operator *(T left, T right);

    static abstract T operator /(T left, T right);

    /// <summary>The same number in all lanes.</summary>
    static abstract T All(float value);

    static abstract T Load(ref float first, int index);

    static abstract void Store(T values, ref float first, int index);

    /// <summary>a·b + c, rounded once where the processor can.</summary>
    static abstract T MultiplyAdd(T a, T b, T c);

    static abstract T Max(T left, T right);

    static abstract T Min(T left, T right);

    static abstract T Sqrt(T value);

    static abstract T Abs(T value);

    /// <summary>All bits where left is less than right, none elsewhere.</summary>
    static abstract T Less(T left, T right);

    /// <summary>One value where the mask is set, the other elsewhere.</summary>
    static abstract T Select(T mask, T value, T other);

    /// <summary>Splits a positive number into 2^exponent · mantissa, the mantissa from √½ to √2.</summary>
    static abstract T Split(T value, out T mantissa);

    /// <summary>2 to the power of a whole number from −126 to 127, times a value.</summary>
    static abstract T Scale(T value, T exponent);

    /// <summary>The magnitude of one with the sign of another.</summary>
    static abstract T WithSign(T magnitude, T sign);
}
