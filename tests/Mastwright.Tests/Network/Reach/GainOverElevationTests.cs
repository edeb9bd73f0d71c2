using Mastwright.Network.Reach;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Tests.Network.Reach;

public sealed class GainOverElevationTests
{
    [Theory]
    [InlineData(PatternKind.CollinearArray, null)]
    [InlineData(PatternKind.CollinearArray, 20.0)]
    [InlineData(PatternKind.AverageSideLobes, null)]
    public void It_is_within_a_thousandth_of_a_decibel_of_the_pattern(PatternKind kind, double? nullFillDb)
    {
        AntennaPattern pattern = AntennaPattern.Of(
            new() { Height = new(Estimate.Exactly(5), HeightAbove.Ground), GainDbi = Estimate.Exactly(8), Pattern = kind, Elements = 6, SpacingWavelengths = 0.8, NullFillDb = nullFillDb },
            869.525e6,
            "p");
        GainOverElevation table = new(pattern);

        Assert.True(pattern.IsAlikeAllRound);
        for (double elevation = -90; elevation <= 90; elevation += 0.0037)
        {
            double expected = pattern.RelativeDb(elevation);
            Assert.Equal(expected, table.RelativeDb(elevation), 1e-3);
        }
    }

    [Fact]
    public void A_null_of_the_formula_stays_one()
    {
        // Two halves a wavelength apart are opposite at 30°, whatever each of them is.
        AntennaPattern pattern = AntennaPattern.Of(
            new() { Height = new(Estimate.Exactly(5), HeightAbove.Ground), GainDbi = Estimate.Exactly(5), Pattern = PatternKind.CollinearArray, Elements = 2, SpacingWavelengths = 1 },
            869.525e6,
            "p");
        Assert.True(new GainOverElevation(pattern).RelativeDb(30) < -100);
    }
}
