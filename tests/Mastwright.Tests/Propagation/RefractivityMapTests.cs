using Mastwright.Geodesy;
using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class RefractivityMapTests
{
    /// <summary>A map whose value is a function of latitude and of longitude from 0 to 360.</summary>
    internal static RefractivityMap Map(Func<double, double, double> valueAt)
    {
        double[] values = new double[RefractivityMap.Rows * RefractivityMap.Columns];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = valueAt(90 - (i / RefractivityMap.Columns * RefractivityMap.StepDegrees), i % RefractivityMap.Columns * RefractivityMap.StepDegrees);
        }

        return RefractivityMap.FromValues(values);
    }

    /// <summary>Between the corners of a cell a bilinear surface is met exactly, whatever the place: a + b·φ + c·λ + d·φ·λ.</summary>
    [Fact]
    public void Values_between_grid_points_lie_on_the_bilinear_surface() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 179.999]).Sample((latitude, longitude) =>
        {
            RefractivityMap map = Map((north, east) => 45 + (0.1 * north) + (0.02 * east) + (0.0005 * north * east));
            double east = longitude < 0 ? longitude + 360 : longitude;
            Assert.Equal(45 + (0.1 * latitude) + (0.02 * east) + (0.0005 * latitude * east), map.At(new(latitude, longitude)), 1e-9);
        }, iter: 200);

    /// <summary>Grid points have their own value: the corners of the layout, the prime meridian and the antimeridian among them.</summary>
    [Theory]
    [InlineData(90, 0, 0)]
    [InlineData(-90, 0, 120 * 241)]
    [InlineData(46.5, -18, (29 * 241) + 228)]
    [InlineData(0, -180, (60 * 241) + 120)]
    [InlineData(0, 180, (60 * 241) + 120)]
    [InlineData(-1.5, 178.5, (61 * 241) + 119)]
    [InlineData(90, -1.5, 239)]
    public void A_grid_point_has_its_own_value(double latitude, double longitude, int index) =>
        Assert.Equal(index, RefractivityMap.FromValues([.. Enumerable.Range(0, 121 * 241).Select(i => (double)i)]).At(new(latitude, longitude)), 1e-6);

    [Fact]
    public void The_map_goes_on_across_the_prime_meridian_and_the_antimeridian()
    {
        // A wave around the Earth: the last column equals the first, as in the published layout.
        RefractivityMap map = Map((_, east) => 50 + (10 * Math.Cos(double.DegreesToRadians(east))));

        foreach (double seam in (double[])[0, 180])
        {
            Assert.Equal(map.At(new(46, seam - 1e-7)), map.At(new(46, seam + 1e-7)), 1e-6);
        }

        Assert.Equal(map.At(new(46, -0.75)), map.At(new(46, 0.75)), 1e-9);
    }

    [Fact]
    public void A_map_of_another_size_or_with_holes_is_refused()
    {
        Assert.Throws<ArgumentException>(() => RefractivityMap.FromValues(new double[121 * 240]));
        double[] holed = new double[121 * 241];
        holed[17] = double.NaN;
        Assert.Throws<ArgumentException>(() => RefractivityMap.FromValues(holed));
    }
}
