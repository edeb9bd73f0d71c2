using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Mastwright.Propagation.Area;

/// <summary>8 single-precision numbers at once.</summary>
internal readonly struct Lanes256(Vector256<float> values) : ILanes<Lanes256>
{
    private readonly Vector256<float> v = values;

    public static int Count => Vector256<float>.Count;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 operator +(Lanes256 left, Lanes256 right) => new(left.v + right.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 operator -(Lanes256 left, Lanes256 right) => new(left.v - right.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 operator *(Lanes256 left, Lanes256 right) => new(left.v * right.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 operator /(Lanes256 left, Lanes256 right) => new(left.v / right.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 All(float value) => new(Vector256.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Load(ref float first, int index) => new(Vector256.LoadUnsafe(ref first, (nuint)index));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Lanes256 values, ref float first, int index) => values.v.StoreUnsafe(ref first, (nuint)index);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 MultiplyAdd(Lanes256 a, Lanes256 b, Lanes256 c) => new(Vector256.MultiplyAddEstimate(a.v, b.v, c.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Max(Lanes256 left, Lanes256 right) => new(Vector256.MaxNative(left.v, right.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Min(Lanes256 left, Lanes256 right) => new(Vector256.MinNative(left.v, right.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Sqrt(Lanes256 value) => new(Vector256.Sqrt(value.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Abs(Lanes256 value) => new(Vector256.Abs(value.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Less(Lanes256 left, Lanes256 right) => new(Vector256.LessThan(left.v, right.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Select(Lanes256 mask, Lanes256 value, Lanes256 other) => new(Vector256.ConditionalSelect(mask.v, value.v, other.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Split(Lanes256 value, out Lanes256 mantissa)
    {
        Vector256<int> shifted = value.v.AsInt32() - Vector256.Create(FastMath.RootHalfBits);
        mantissa = new(((Vector256.Create(FastMath.MantissaBits) & shifted) + Vector256.Create(FastMath.RootHalfBits)).AsSingle());
        return new(Vector256.ConvertToSingle(Vector256.ShiftRightArithmetic(shifted, 23)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 Scale(Lanes256 value, Lanes256 exponent) =>
        new((value.v.AsInt32() + Vector256.ShiftLeft(Vector256.ConvertToInt32Native(exponent.v), 23)).AsSingle());

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes256 WithSign(Lanes256 magnitude, Lanes256 sign) => new(Vector256.CopySign(magnitude.v, sign.v));
}
