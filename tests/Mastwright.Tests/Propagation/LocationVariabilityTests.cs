using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class LocationVariabilityTests
{
    /// <summary>(0.52 + 0.024 f) wa^0.28 of Rec. ITU-R P.1812 section 4.7, worked out to four decimals.</summary>
    [Theory]
    [InlineData(868, 100, 1.9636)]
    [InlineData(868, 50, 1.6172)]
    [InlineData(868, 500, 3.0816)]
    [InlineData(915, 100, 1.9677)]
    [InlineData(433, 100, 1.9257)]
    [InlineData(2000, 100, 2.0623)]
    public void Deviation_below_the_cover(double megahertz, double square, double decibels) =>
        Assert.Equal(decibels, LocationVariability.SigmaDb(megahertz * 1e6, square, 2, 10), 5e-5);

    [Theory]
    [InlineData(10, 1)]
    [InlineData(15, 0.5)]
    [InlineData(20, 0)]
    [InlineData(300, 0)]
    public void Deviation_vanishes_ten_metres_above_the_cover(double height, double share) =>
        Assert.Equal(share * LocationVariability.SigmaDb(868e6, 100, 0, 10), LocationVariability.SigmaDb(868e6, 100, height, 10), 1e-12);

    /// <summary>Quantiles of the normal distribution: Abramowitz and Stegun, table 26.5; the approximation's stated error is 0.00054.</summary>
    [Theory]
    [InlineData(1, -2.326348)]
    [InlineData(5, -1.644854)]
    [InlineData(50, 0)]
    [InlineData(90, 1.281552)]
    [InlineData(99, 2.326348)]
    public void Loss_at_a_share_of_places_follows_the_normal_distribution(double percent, double deviations) =>
        Assert.Equal(deviations, LocationVariability.LossDb(percent, 1), 0.00054);

    [Theory]
    [InlineData(0)]
    [InlineData(100)]
    [InlineData(double.NaN)]
    public void Shares_that_have_no_quantile_are_refused(double percent) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => LocationVariability.LossDb(percent, 1));
}
