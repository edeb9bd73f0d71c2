using Mastwright.Quantities;

namespace Mastwright.Tests.Quantities;

public sealed class LinearCurveTests
{
    private static readonly LinearCurve Curve = new([new(10, 4), new(0, 2), new(20, 0)]);

    [Theory]
    [InlineData(-5, 2)]
    [InlineData(0, 2)]
    [InlineData(5, 3)]
    [InlineData(10, 4)]
    [InlineData(15, 2)]
    [InlineData(30, 0)]
    public void It_runs_straight_between_its_points_and_level_beyond(double x, double y) => Assert.Equal(y, Curve.At(x), 1e-12);

    [Fact]
    public void A_place_that_is_no_number_has_no_value() => Assert.True(double.IsNaN(Curve.At(double.NaN)));

    [Fact]
    public void A_curve_without_points_or_with_a_point_nowhere_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new LinearCurve([]));
        Assert.Throws<ArgumentException>(() => new LinearCurve([new(0, double.NaN)]));
    }
}
