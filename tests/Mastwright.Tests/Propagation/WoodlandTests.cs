using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class WoodlandTests
{
    /// <summary>Am = A1 f^α, coefficients of Rec. ITU-R P.833 from memory, worked out to two decimals.</summary>
    [Theory]
    [InlineData(868, WoodlandKind.TropicalPark, 29.18)]
    [InlineData(868, WoodlandKind.MixedWestern, 21.10)]
    [InlineData(915, WoodlandKind.TropicalPark, 30.36)]
    [InlineData(915, WoodlandKind.MixedWestern, 21.58)]
    [InlineData(433, WoodlandKind.MixedWestern, 15.65)]
    public void Largest_loss_of_a_kind(double megahertz, WoodlandKind kind, double decibels) =>
        Assert.Equal(decibels, Woodland.LargestDb(megahertz * 1e6, kind), 0.0051);

    [Fact]
    public void Loss_starts_with_the_specific_attenuation_and_ends_at_the_largest()
    {
        Assert.Equal(0, Woodland.LossDb(0, 0.4, 20));
        Assert.Equal(0.4 * 0.01, Woodland.LossDb(0.01, 0.4, 20), 1e-5);
        Assert.Equal(20, Woodland.LossDb(1000, 0.4, 20), 1e-6);
    }

    /// <summary>The modified exponential decay model (Weissberger, 1982), from memory: 12.746 dB at 50 m and 19.160 dB at 100 m, 868 MHz.</summary>
    [Theory]
    [InlineData(50, 12.746)]
    [InlineData(100, 19.160)]
    public void The_default_is_within_2_dB_of_an_independent_model(double metres, double decibels) =>
        Assert.Equal(decibels, Woodland.LossDb(metres, 868e6, WoodlandKind.MixedWestern), 2.0);

    [Fact]
    public void Loss_never_falls_with_depth_nor_exceeds_the_largest() =>
        Gen.Select(Gen.Double[0, 2000], Gen.Double[0, 500], Gen.Double[1e8, 2.2e9]).Sample((depth, more, hertz) =>
            Woodland.LossDb(depth + more, hertz, WoodlandKind.MixedNorthern) >= Woodland.LossDb(depth, hertz, WoodlandKind.MixedNorthern)
            && Woodland.LossDb(depth + more, hertz, WoodlandKind.MixedNorthern) <= Woodland.LargestDb(hertz, WoodlandKind.MixedNorthern));

    [Fact]
    public void Frequencies_without_measurements_are_told()
    {
        Assert.True(Woodland.Covers(868e6, WoodlandKind.MixedNorthern));
        Assert.False(Woodland.Covers(868e6, WoodlandKind.MixedWestern));
    }
}
