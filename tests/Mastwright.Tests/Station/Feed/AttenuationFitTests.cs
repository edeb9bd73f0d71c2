using System.Collections.Immutable;
using Mastwright.Station.Feed;

namespace Mastwright.Tests.Station.Feed;

public sealed class AttenuationFitTests
{
    /// <summary>Published nominal attenuation in dB/100 m at 50, 150, 450 and 850 MHz: a two-way radio training guide, appendix H, page 73.</summary>
    private static readonly double[] GuideMegahertz = [50, 150, 450, 850];

    /// <summary>k1 and k2 of an independent least-squares solution (a numerical library) through the same points, and the value at 868 MHz.</summary>
    public static TheoryData<double[], double, double, double> Guide => new()
    {
        { [4.9, 8.9, 16.3, 24.7], 0.62142, 0.007597, 24.90 },
        { [0.8, 1.4, 2.6, 3.7], 0.10756, 0.000671, 3.75 },
        { [1.6, 2.8, 5.2, 6.8], 0.23611, 0, 6.956 },
        { [10.8, 20.0, 38.5, 58.2], 1.36272, 0.021654, 58.94 },
    };

    [Theory, MemberData(nameof(Guide))]
    public void Fit_equals_an_independent_least_squares_solution(double[] db, double k1, double k2, double at868)
    {
        AttenuationFit fit = AttenuationFit.Fit(Points(GuideMegahertz, db));

        Assert.Equal(k1, fit.K1, 1e-5);
        Assert.Equal(k2, fit.K2, 1e-6);
        Assert.Equal(at868, fit.DbPer100Metres(868e6), 0.005);
        Assert.InRange(fit.WorstResidual, 0, AttenuationFit.AllowedResidual);
    }

    /// <summary>The RG-8 foam row of the guide: plain least squares gives a negative k2 and, without it, misses 50 MHz by 7 %; relative residuals keep all to 5 %.</summary>
    [Fact]
    public void A_line_that_plain_least_squares_misses_is_fitted_by_relative_residuals()
    {
        AttenuationFit fit = AttenuationFit.Fit(Points(GuideMegahertz, [3.9, 7.2, 13.0, 17.0]));

        Assert.True(fit.IsRelative);
        Assert.True(fit.K2 >= 0);
        Assert.InRange(fit.WorstResidual, 0, AttenuationFit.AllowedResidual);
        Assert.Equal(17.37, fit.DbPer100Metres(868e6), 0.4);
    }

    /// <summary>The guide prints 35.5 dB/100 m beside 11.75 dB/100 ft (38.5 dB/100 m) for RG-58 at 450 MHz: the fit must not swallow the misprint.</summary>
    [Fact]
    public void A_misprinted_point_shows_as_a_residual_above_5_percent() =>
        Assert.True(AttenuationFit.Fit(Points(GuideMegahertz, [10.8, 20.0, 35.5, 58.2])).WorstResidual > AttenuationFit.AllowedResidual);

    /// <summary>
    /// Low-loss foam classes by their published constants (0.320900/0.000330, 0.242080/0.000330, 0.122290/0.000260, 0.075550/0.000260
    /// dB per 100 ft, from memory): the fit gets the constants back from six tabulated points.
    /// </summary>
    [Theory]
    [InlineData(0.320900, 0.000330)]
    [InlineData(0.242080, 0.000330)]
    [InlineData(0.122290, 0.000260)]
    [InlineData(0.075550, 0.000260)]
    public void Fit_returns_the_constants_that_made_the_points(double k1Feet, double k2Feet)
    {
        double[] megahertz = [100, 400, 450, 868, 915, 1000];
        double k1 = k1Feet / 0.3048;
        double k2 = k2Feet / 0.3048;

        AttenuationFit fit = AttenuationFit.Fit(Points(megahertz, [.. megahertz.Select(f => (k1 * Math.Sqrt(f)) + (k2 * f))]));

        Assert.Equal(k1, fit.K1, 1e-9);
        Assert.Equal(k2, fit.K2, 1e-9);
    }

    /// <summary>Skin part √(1 + 0.00393·ΔT): 30 K warmer is a factor of 1.0573, and 2.80 dB become 2.960 dB (worked by hand).</summary>
    [Fact]
    public void Warmer_copper_loses_more_in_its_skin()
    {
        AttenuationFit skinOnly = AttenuationFit.Fit(Points([100, 400], [10, 20]));

        Assert.Equal(1.0573, skinOnly.DbPer100Metres(400e6, 30) / skinOnly.DbPer100Metres(400e6), 1e-4);
        Assert.Equal(2.960, 2.80 * skinOnly.DbPer100Metres(400e6, 30) / 20, 0.001);
    }

    [Fact]
    public void Attenuation_never_falls_with_frequency() =>
        Gen.Select(Gen.Double[0.5, 60].Array[4], Gen.Double[1e6, 3e9], Gen.Double[1, 2]).Sample((db, frequency, factor) =>
        {
            AttenuationFit fit = AttenuationFit.Fit(Points(GuideMegahertz, db));
            return fit.K1 >= 0 && fit.K2 >= 0 && fit.DbPer100Metres(frequency * factor) >= fit.DbPer100Metres(frequency);
        });

    [Fact]
    public void Points_at_one_frequency_are_refused() =>
        Assert.Throws<ArgumentException>(() => AttenuationFit.Fit(Points([100, 100], [1, 2])));

    internal static ImmutableArray<AttenuationPoint> Points(double[] megahertz, double[] db) =>
        [.. megahertz.Zip(db, (f, a) => new AttenuationPoint(f * 1e6, a))];
}
