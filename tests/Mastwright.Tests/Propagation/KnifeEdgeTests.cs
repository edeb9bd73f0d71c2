using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

public sealed class KnifeEdgeTests
{
    /// <summary>Fresnel integrals C(v) and S(v): Abramowitz and Stegun, Handbook of Mathematical Functions, table 7.7.</summary>
    public static TheoryData<double, double, double> FresnelTable => new()
    {
        { 0.0, 0, 0 },
        { 0.5, 0.4923442, 0.0647324 },
        { 1.0, 0.7798934, 0.4382591 },
        { 1.5, 0.4452612, 0.6975050 },
        { 2.0, 0.4882534, 0.3434157 },
        { 3.0, 0.6057208, 0.4963130 },
    };

    [Theory, MemberData(nameof(FresnelTable))]
    public void Loss_is_within_0_11_dB_of_the_exact_integral(double v, double c, double s)
    {
        Assert.Equal(Exact(c, s), KnifeEdge.LossDb(v), 0.11);
        if (v is > 0 and <= 0.5)
        {
            Assert.Equal(Exact(-c, -s), KnifeEdge.LossDb(-v), 0.11);
        }
    }

    [Fact]
    public void The_integral_itself_by_quadrature_keeps_the_stated_error()
    {
        for (double v = -0.7; v <= 3; v += 0.05)
        {
            (double c, double s) = Fresnel(v);
            Assert.Equal(Exact(c, s), KnifeEdge.LossDb(v), 0.11);
        }
    }

    /// <summary>J(v) of Rec. ITU-R P.526, single knife edge, worked out from the printed closed form.</summary>
    [Theory]
    [InlineData(-0.7, 0.5361)]
    [InlineData(0, 6.0329)]
    [InlineData(1, 13.9257)]
    [InlineData(2.4, 20.5393)]
    [InlineData(10, 32.8554)]
    public void Closed_form_has_the_printed_values(double v, double decibels) => Assert.Equal(decibels, KnifeEdge.LossDb(v), 5e-5);

    /// <summary>v and J for ridges on real paths, worked out from the printed formulae.</summary>
    [Theory]
    [InlineData(868, 10, 5, 5, 0.48128, 10.1363)]
    [InlineData(868, -10, 5, 5, -0.48128, 2.0993)]
    [InlineData(868, 20, 3, 7, 1.05023, 14.2460)]
    [InlineData(915, 10, 5, 5, 0.49413, 10.2405)]
    [InlineData(433.92, 10, 5, 5, 0.34028, 8.9675)]
    public void Parameter_follows_the_geometry(double megahertz, double rise, double km1, double km2, double v, double decibels)
    {
        double found = KnifeEdge.Parameter(rise, km1 * 1000, km2 * 1000, megahertz * 1e6);
        Assert.Equal(v, found, 1e-5);
        Assert.Equal(decibels, KnifeEdge.LossDb(found), 1e-4);
    }

    /// <summary>First Fresnel radius, exact form of Rec. ITU-R P.526 section 2.1; the printed practical form is 0.45 % higher.</summary>
    [Theory]
    [InlineData(868, 5, 5, 29.3846)]
    [InlineData(868, 1, 9, 17.6308)]
    [InlineData(868, 12.5, 12.5, 46.4612)]
    [InlineData(915, 5, 5, 28.6200)]
    [InlineData(433.92, 5, 5, 41.5600)]
    public void Fresnel_radius_is_that_of_the_formula(double megahertz, double km1, double km2, double metres)
    {
        double found = KnifeEdge.FresnelRadiusMetres(km1 * 1000, km2 * 1000, megahertz * 1e6);
        Assert.Equal(metres, found, 5e-5);
        Assert.Equal(1.0045, 550 * Math.Sqrt(km1 * km2 / ((km1 + km2) * megahertz)) / found, 1e-4);
    }

    [Fact]
    public void Loss_never_falls_as_the_ridge_rises() =>
        Gen.Select(Gen.Double[-3, 10], Gen.Double[0, 5]).Sample((v, rise) => KnifeEdge.LossDb(v + rise) >= KnifeEdge.LossDb(v) - 1e-12);

    [Fact]
    public void An_edge_one_radius_below_the_ray_has_v_of_minus_root_two() =>
        Assert.Equal(-Math.Sqrt(2), KnifeEdge.Parameter(-KnifeEdge.FresnelRadiusMetres(2000, 5000, 868e6), 2000, 5000, 868e6), 1e-12);

    [Fact]
    public void Not_a_number_stays_one() => Assert.True(double.IsNaN(KnifeEdge.LossDb(double.NaN)));

    private static double Exact(double c, double s) => -20 * Math.Log10(Math.Sqrt(((1 - c - s) * (1 - c - s)) + ((c - s) * (c - s))) / 2);

    private static (double C, double S) Fresnel(double v)
    {
        const int Steps = 2000;
        double c = 0;
        double s = 0;
        double step = v / Steps;
        for (int i = 0; i < Steps; i++)
        {
            double t = (i + 0.5) * step;
            (double sin, double cos) = Math.SinCos(Math.PI / 2 * t * t);
            c += cos * step;
            s += sin * step;
        }

        return (c, s);
    }
}
