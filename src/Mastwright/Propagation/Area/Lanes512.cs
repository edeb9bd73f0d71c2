using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Mastwright.Propagation.Area;

/// <summary>16 single-precision numbers at once.</summary>
internal readonly struct Lanes512(Vector512<float> values) : ILanes<Lanes512>
{
    private readonly Vector512<float> v = values;

    public static int Count => Vector512<float>.Count;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 operator +(Lanes512 left, Lanes512 right) => new(left.v + right.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 operator -(Lanes512 left, Lanes512 right) => new(left.v - right.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 operator *(Lanes512 left, Lanes512 right) => new(left.v * right.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 operator /(Lanes512 left, Lanes512 right) => new(left.v / right.v);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 All(float value) => new(Vector512.Create(value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Load(ref float first, int index) => new(Vector512.LoadUnsafe(ref first, (nuint)index));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Store(Lanes512 values, ref float first, int index) => values.v.StoreUnsafe(ref first, (nuint)index);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 MultiplyAdd(Lanes512 a, Lanes512 b, Lanes512 c) => new(Vector512.MultiplyAddEstimate(a.v, b.v, c.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Max(Lanes512 left, Lanes512 right) => new(Vector512.MaxNative(left.v, right.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Min(Lanes512 left, Lanes512 right) => new(Vector512.MinNative(left.v, right.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Sqrt(Lanes512 value) => new(Vector512.Sqrt(value.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Abs(Lanes512 value) => new(Vector512.Abs(value.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Less(Lanes512 left, Lanes512 right) => new(Vector512.LessThan(left.v, right.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Select(Lanes512 mask, Lanes512 value, Lanes512 other) => new(Vector512.ConditionalSelect(mask.v, value.v, other.v));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Split(Lanes512 value, out Lanes512 mantissa)
    {
        Vector512<int> shifted = value.v.AsInt32() - Vector512.Create(FastMath.RootHalfBits);
        mantissa = new(((Vector512.Create(FastMath.MantissaBits) & shifted) + Vector512.Create(FastMath.RootHalfBits)).AsSingle());
        return new(Vector512.ConvertToSingle(Vector512.ShiftRightArithmetic(shifted, 23)));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 Scale(Lanes512 value, Lanes512 exponent) =>
        new((value.v.AsInt32() + Vector512.ShiftLeft(Vector512.ConvertToInt32Native(exponent.v), 23)).AsSingle());

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Lanes512 WithSign(Lanes512 magnitude, Lanes512 sign) => new(Vector512.CopySign(magnitude.v, sign.v));
}
