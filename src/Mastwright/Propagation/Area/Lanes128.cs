using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Mastwright.Propagation.Area;

/// <summary>4 single-precision numbers at once.</summary>
internal readonly struct Lanes128(Vector128<float> values) : ILanes<Lanes128>
{
    private readonly Vector128<float> v = values;

    public static int Count => Vector128<float>.Count;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 operator +(Lanes128 left, Lanes128 right) => new(left.v + right.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 operator -(Lanes128 left, Lanes128 right) => new(left.v - right.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 operator *(Lanes128 left, Lanes128 right) => new(left.v * right.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 operator /(Lanes128 left, Lanes128 right) => new(left.v / right.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 All(float value) => new(Vector128.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 Load(ref float first, int index) => new(Vector128.LoadUnsafe(ref first, (nuint)index));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Lanes128 values, ref float first, int index) => values.v.StoreUnsafe(ref first, (nuint)index);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 MultiplyAdd(Lanes128 a, Lanes128 b, Lanes128 c) => new(Vector128.MultiplyAddEstimate(a.v, b.v, c.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 Max(Lanes128 left, Lanes128 right) => new(Vector128.MaxNative(left.v, right.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 Min(Lanes128 left, Lanes128 right) => new(Vector128.MinNative(left.v, right.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 Sqrt(Lanes128 value) => new(Vector128.Sqrt(value.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 Abs(Lanes128 value) => new(Vector128.Abs(value.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 Less(Lanes128 left, Lanes128 right) => new(Vector128.LessThan(left.v, right.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 Select(Lanes128 mask, Lanes128 value, Lanes128 other) => new(Vector128.ConditionalSelect(mask.v, value.v, other.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 Split(Lanes128 value, out Lanes128 mantissa)
    {
        Vector128<int> shifted = value.v.AsInt32() - Vector128.Create(FastMath.RootHalfBits);
        mantissa = new(((Vector128.Create(FastMath.MantissaBits) & shifted) + Vector128.Create(FastMath.RootHalfBits)).AsSingle());
        return new(Vector128.ConvertToSingle(Vector128.ShiftRightArithmetic(shifted, 23)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 Scale(Lanes128 value, Lanes128 exponent) =>
        new((value.v.AsInt32() + Vector128.ShiftLeft(Vector128.ConvertToInt32Native(exponent.v), 23)).AsSingle());

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes128 WithSign(Lanes128 magnitude, Lanes128 sign) => new(Vector128.CopySign(magnitude.v, sign.v));
}
