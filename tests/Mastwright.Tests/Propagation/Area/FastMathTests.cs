using System.Runtime.InteropServices;
using Mastwright.Propagation.Area;

namespace Mastwright.Tests.Propagation.Area;

public sealed class FastMathTests
{
    [Fact]
    public void Logarithm_is_within_4e_7()
    {
        foreach (float x in Between(1e-30f, 1e30f))
        {
            double expected = Math.Log2(x);
            Assert.InRange(Of(FastMath.Log2, x) - expected, -4e-7 * Math.Max(1, Math.Abs(expected) / 2), 4e-7 * Math.Max(1, Math.Abs(expected) / 2));
        }
    }

    [Fact]
    public void Power_is_within_3e_7_of_itself_and_never_no_number()
    {
        for (float x = -126; x <= 126; x += 0.0137f)
        {
            Assert.Equal(1, Of(FastMath.Exp2, x) / Math.Pow(2, x), 3e-7);
        }

        Assert.True(float.IsFinite(Of(FastMath.Exp2, 1e30f)));
        Assert.InRange(Of(FastMath.Exp2, -1e30f), 0, 1e-37f);
    }

    [Fact]
    public void Angles_are_within_3e_7()
    {
        foreach (float x in Between(1e-9f, 1e9f))
        {
            Assert.Equal(Math.Atan(x), Of(FastMath.Atan, x), 3e-7 * Math.Min(1, x));
            Assert.Equal(-Math.Atan(x), Of(FastMath.Atan, -x), 3e-7 * Math.Min(1, x));
        }

        for (float x = -1; x <= 1; x += 0.00037f)
        {
            Assert.Equal(Math.Sin(Math.Asin(x) / 3), Of(FastMath.SineOfThird, x), 3e-7);
        }
    }

    private static IEnumerable<float> Between(float low, float high)
    {
        for (float x = low; x < high; x *= 1.00731f)
        {
            yield return x;
        }
    }

    private static float Of(Func<Lanes128, Lanes128> function, float x)
    {
        float[] values = [x, x, x, x];
        ref float first = ref MemoryMarshal.GetArrayDataReference(values);
        Lanes128.Store(function(Lanes128.Load(ref first, 0)), ref first, 0);
        Assert.Equal(values[0], values[3]);
        return values[0];
    }
}
