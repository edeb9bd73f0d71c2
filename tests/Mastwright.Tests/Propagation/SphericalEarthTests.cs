using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class SphericalEarthTests
{
    /// <summary>Worked out by an independent script from the equations of Rec. ITU-R P.526 section 3.2, radius 8 500 km, vertical.</summary>
    [Theory]
    [InlineData(868, 30, 10, 10, 28.1154, 28.1293)]
    [InlineData(868, 50, 30, 10, 32.8771, 32.8776)]
    [InlineData(868, 20, 30, 10, 9.1609, 9.1734)]
    [InlineData(868, 15, 10, 10, 14.8678, 14.8876)]
    [InlineData(868, 10, 30, 30, 0, 0)]
    [InlineData(915, 40, 20, 20, 22.6359, 22.6442)]
    [InlineData(433.9, 40, 20, 20, 25.2632, 25.3021)]
    public void Loss_over_land_and_over_sea(double megahertz, double kilometres, double h1, double h2, double land, double sea)
    {
        Assert.Equal(land, SphericalEarth.LossDb(kilometres * 1000, h1, h2, 8.5e6, megahertz * 1e6, WavePolarisation.Vertical), 1e-4);
        Assert.Equal(sea, SphericalEarth.LossDb(kilometres * 1000, h1, h2, 8.5e6, megahertz * 1e6, WavePolarisation.Vertical, 1), 1e-4);
    }

    [Fact]
    public void Loss_is_the_same_both_ways_and_never_negative() =>
        Gen.Select(Gen.Double[500, 300_000], Gen.Double[1, 1000], Gen.Double[1, 1000], Gen.Double[3e7, 6e9], Gen.Double[0, 1])
            .Sample((metres, h1, h2, hertz, sea) =>
            {
                double there = SphericalEarth.LossDb(metres, h1, h2, 8.5e6, hertz, WavePolarisation.Horizontal, sea);
                double back = SphericalEarth.LossDb(metres, h2, h1, 8.5e6, hertz, WavePolarisation.Horizontal, sea);
                return there >= 0 && Math.Abs(there - back) < 1e-6;
            });
}
