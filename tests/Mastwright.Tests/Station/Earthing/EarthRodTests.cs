using CsCheck;
using Mastwright.Station.Earthing;

namespace Mastwright.Tests.Station.Earthing;

/// <summary>ρ/(2πL)·(ln(8L/d) − 1), a form printed by public earthing handbooks; the figures were worked out from it by an independent script.</summary>
public sealed class EarthRodTests
{
    [Theory]
    [InlineData(100, 3, 16, 33.493)]
    [InlineData(100, 2.4, 16, 40.386)]
    [InlineData(100, 1.5, 16, 59.631)]
    [InlineData(100, 1.2, 12.5, 74.853)]
    [InlineData(500, 3, 16, 167.463)]
    [InlineData(1000, 3, 14.3, 340.886)]
    public void One_rod_has_the_resistance_of_the_formula(double soil, double length, double diameter, double ohms) =>
        Assert.Equal(ohms, EarthRod.Ohms(soil, length, diameter / 1000), 2e-3);

    [Theory]
    [InlineData(2, 19.399)]
    [InlineData(3, 14.100)]
    public void Rods_three_metres_apart_have_the_resistance_of_the_british_form(int count, double ohms) =>
        Assert.Equal(ohms, EarthRod.InParallelOhms(EarthRod.Ohms(100, 3, 0.016), count, 3, 100), 2e-3);

    [Fact]
    public void More_or_longer_rods_never_resist_more() =>
        Gen.Select(Gen.Double[1, 2000], Gen.Double[0.6, 6], Gen.Double[0, 4], Gen.Int[1, 9]).Sample((soil, length, longer, count) =>
        {
            double one = EarthRod.Ohms(soil, length, 0.016);
            return EarthRod.Ohms(soil, length + longer, 0.016) <= one + 1e-9
                && EarthRod.InParallelOhms(one, count + 1, length * 1.5, soil) <= EarthRod.InParallelOhms(one, count, length * 1.5, soil) + 1e-9;
        });

    [Theory]
    [InlineData(0, 1.5, 0.016)]
    [InlineData(-100, 1.5, 0.016)]
    [InlineData(100, 0, 0.016)]
    [InlineData(100, 1.5, 2)]
    public void Impossible_rods_are_refused(double soil, double length, double diameter) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => EarthRod.Ohms(soil, length, diameter));
}
