using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class FreeSpaceTests
{
    /// <summary>20 log10(4πd/λ) of Rec. ITU-R P.525 with c = 299 792 458 m/s, worked out to four decimals by hand calculator.</summary>
    [Theory]
    [InlineData(433.92, 1, 85.1960)]
    [InlineData(868, 1, 91.2182)]
    [InlineData(868, 10, 111.2182)]
    [InlineData(868.1, 25, 119.1780)]
    [InlineData(915, 10, 111.6762)]
    [InlineData(920, 5, 105.7029)]
    public void Loss_is_that_of_the_formula(double megahertz, double kilometres, double decibels) =>
        Assert.Equal(decibels, FreeSpace.LossDb(kilometres * 1000, megahertz * 1e6), 5e-5);

    [Fact]
    public void The_practical_form_printed_in_the_recommendation_is_within_0_05_dB() =>
        Assert.InRange(FreeSpace.LossDb(1000, 1e6) - 32.4, 0.047, 0.049);

    /// <summary>Published validation set of Rec. ITU-R P.1812, case b2iseac_rural_land_10km at 50 %: Lb 120.4908523 dB, Ep 58.4510057.</summary>
    [Fact]
    public void Field_strength_and_loss_convert_as_published()
    {
        Assert.Equal(58.4510057, FreeSpace.FieldStrengthDbMicrovoltPerMetre(120.4908523, 95.3e6), 1e-6);
        Assert.Equal(120.4908523, FreeSpace.LossFromFieldStrengthDb(58.4510057, 95.3e6), 1e-6);
    }

    [Theory]
    [InlineData(0, 1e6)]
    [InlineData(-1, 1e6)]
    [InlineData(double.NaN, 1e6)]
    [InlineData(1, 0)]
    [InlineData(1, double.PositiveInfinity)]
    public void What_the_formula_cannot_take_is_refused(double metres, double hertz) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => FreeSpace.LossDb(metres, hertz));

    [Fact]
    public void Twice_the_distance_costs_6_dB() =>
        Gen.Select(Gen.Double[1, 1e6], Gen.Double[3e7, 6e9]).Sample((metres, hertz) =>
            Math.Abs(FreeSpace.LossDb(2 * metres, hertz) - FreeSpace.LossDb(metres, hertz) - 6.020599913279624) < 1e-9);
}
