using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class EffectiveEarthTests
{
    /// <summary>The first is printed in every published result of Rec. ITU-R P.1812; the others follow from its equation (6).</summary>
    [Theory]
    [InlineData(45, 8930.776786, 1e-6)]
    [InlineData(39, 8476.7, 0.05)]
    [InlineData(40, 8549.1, 0.05)]
    [InlineData(30, 7876.0, 0.05)]
    public void Radius_follows_from_the_gradient(double gradient, double kilometres, double tolerance) =>
        Assert.Equal(kilometres, EffectiveEarth.FromGradient(gradient) / 1000, tolerance);

    [Fact]
    public void Factor_of_ducting_time_gives_19_113_km() => Assert.Equal(19_113_000, EffectiveEarth.FromFactor(EffectiveEarth.DuctingFactor));

    [Theory]
    [InlineData(10, 1.472)]
    [InlineData(25, 9.197)]
    [InlineData(50, 36.788)]
    public void Bulge_at_the_middle_for_four_thirds(double kilometres, double metres) =>
        Assert.Equal(metres, EffectiveEarth.BulgeMetres(kilometres * 500, kilometres * 500, EffectiveEarth.FromFactor(4.0 / 3)), 5e-4);

    [Fact]
    public void Gradient_and_factor_are_inverse() =>
        Gen.Double[-200, 150].Sample(gradient => Math.Abs(EffectiveEarth.GradientFromFactor(EffectiveEarth.FactorFromGradient(gradient)) - gradient) < 1e-9);

    [Theory]
    [InlineData(157)]
    [InlineData(300)]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    public void A_gradient_that_bends_rays_as_much_as_the_Earth_is_refused(double gradient) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EffectiveEarth.FromGradient(gradient));
}
