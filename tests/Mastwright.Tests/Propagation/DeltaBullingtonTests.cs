using Mastwright.Propagation;

namespace Mastwright.Tests.Propagation;

/// <summary>The model against a slow form that follows the printed equations point by point, in km.</summary>
public sealed class DeltaBullingtonTests
{
    [Fact]
    public void Fast_form_equals_the_printed_equations() =>
        Gen.Select(TestProfiles.Any, Gen.Double[1, 300], Gen.Double[1, 300], Gen.Double[3e7, 6e9], Gen.Double[6e6, 3e7])
            .Sample((profile, transmitter, receiver, hertz, radius) =>
            {
                DiffractionTerms fast = DeltaBullington.Evaluate(profile, transmitter, receiver, hertz, radius);
                (double actual, double smooth, double htc, double hrc) = Slow(profile, transmitter, receiver, hertz, radius / 1000);
                double sphere = SphericalEarth.LossDb(
                    profile.LengthMetres, htc, hrc, radius, hertz, WavePolarisation.Vertical, RadioClimate.Of(profile).SeaFraction);
                Assert.Equal(actual, fast.ActualDb, 1e-8);
                Assert.Equal(smooth, fast.SmoothDb, 1e-8);
                Assert.Equal(sphere, fast.SphereDb, 1e-7);
                Assert.Equal(actual + Math.Max(sphere - smooth, 0), fast.LossDb, 1e-7);
            });

    [Fact]
    public void A_clear_short_path_costs_nothing() =>
        Assert.Equal(0, DeltaBullington.Evaluate(TestProfiles.Flat(1000, 21), 30, 30, 868e6, 8.5e6).LossDb);

    [Fact]
    public void A_lone_sharp_ridge_costs_its_knife_edge_and_the_bullington_term()
    {
        PathProfile profile = TestProfiles.Ridge(10_000, 3000, 120);
        double bulge = EffectiveEarth.BulgeMetres(3000, 7000, 8.5e6);
        double edge = KnifeEdge.LossDb(KnifeEdge.Parameter(120 + bulge - 20, 3000, 7000, 868e6));
        double bullington = edge + ((1 - Math.Exp(-edge / 6)) * (10 + 0.2));
        Assert.Equal(bullington, DeltaBullington.Evaluate(profile, 20, 20, 868e6, 8.5e6).ActualDb, 1e-3);
    }

    [Fact]
    public void A_point_exactly_on_the_ray_is_a_touching_edge()
    {
        // A huge radius leaves no bulge; the ridge meets the ray at the middle.
        double loss = DeltaBullington.Evaluate(TestProfiles.Ridge(1000, 500, 16), 16, 16, 868e6, 1e300).ActualDb;
        Assert.Equal(6.0329 + ((1 - Math.Exp(-6.0329 / 6)) * 10.02), loss, 1e-3);
    }

    [Fact]
    public void Cover_counts_between_the_ends_only()
    {
        PathProfile bare = TestProfiles.Flat(2000, 11);
        double[] cover = new double[11];
        cover[0] = 40;
        cover[^1] = 40;
        PathProfile ends = PathProfile.FromSamples(bare.DistancesMetres, bare.HeightsMetres, cover, bare.Zones);
        cover[5] = 40;
        PathProfile middle = PathProfile.FromSamples(bare.DistancesMetres, bare.HeightsMetres, cover, bare.Zones);
        double without = DeltaBullington.Evaluate(bare, 10, 10, 868e6, 8.5e6).LossDb;
        Assert.Equal(without, DeltaBullington.Evaluate(ends, 10, 10, 868e6, 8.5e6).LossDb);
        Assert.True(DeltaBullington.Evaluate(middle, 10, 10, 868e6, 8.5e6).LossDb > without + 10);
        Assert.Equal(without, DeltaBullington.Evaluate(middle, 10, 10, 868e6, 8.5e6, addCover: false).LossDb);
    }

    private static (double Actual, double Smooth, double Htc, double Hrc) Slow(
        PathProfile profile, double transmitter, double receiver, double hertz, double ae)
    {
        double[] d = [.. profile.DistancesMetres.ToArray().Select(x => x / 1000)];
        double[] h = profile.HeightsMetres.ToArray();
        double[] g = [.. h.Select((height, i) => height + (i > 0 && i < h.Length - 1 ? profile.CoverMetres[i] : 0))];
        double hts = h[0] + transmitter;
        double hrs = h[^1] + receiver;
        double dtot = d[^1];
        double v1 = 0;
        double v2 = 0;
        for (int i = 1; i < d.Length; i++)
        {
            v1 += (d[i] - d[i - 1]) * (h[i] + h[i - 1]);
            v2 += (d[i] - d[i - 1]) * ((h[i] * ((2 * d[i]) + d[i - 1])) + (h[i - 1] * (d[i] + (2 * d[i - 1]))));
        }

        double hst = ((2 * v1 * dtot) - v2) / (dtot * dtot);
        double hsr = (v2 - (v1 * dtot)) / (dtot * dtot);
        double[] hob = [.. Enumerable.Range(1, d.Length - 2).Select(i => h[i] - (((hts * (dtot - d[i])) + (hrs * d[i])) / dtot))];
        if (hob.Max() > 0)
        {
            double at = hob.Select((height, i) => height / d[i + 1]).Max();
            double ar = hob.Select((height, i) => height / (dtot - d[i + 1])).Max();
            hst -= hob.Max() * at / (at + ar);
            hsr -= hob.Max() * ar / (at + ar);
        }

        double htc = hts - Math.Min(hst, h[0]);
        double hrc = hrs - Math.Min(hsr, h[^1]);
        double wavelength = 0.2998 / (hertz * 1e-9);
        return (SlowBullington(d, g, hts, hrs, ae, wavelength), SlowBullington(d, new double[d.Length], htc, hrc, ae, wavelength), htc, hrc);
    }

    private static double SlowBullington(double[] d, double[] g, double hts, double hrs, double ae, double wavelength)
    {
        double dtot = d[^1];
        double str = (hrs - hts) / dtot;
        int[] inside = [.. Enumerable.Range(1, d.Length - 2)];
        double stim = inside.Max(i => (g[i] + (500 / ae * d[i] * (dtot - d[i])) - hts) / d[i]);
        double v;
        if (stim < str)
        {
            v = inside.Max(i => (g[i] + (500 / ae * d[i] * (dtot - d[i])) - (((hts * (dtot - d[i])) + (hrs * d[i])) / dtot))
                * Math.Sqrt(0.002 * dtot / (wavelength * d[i] * (dtot - d[i]))));
        }
        else
        {
            double srim = inside.Max(i => (g[i] + (500 / ae * d[i] * (dtot - d[i])) - hrs) / (dtot - d[i]));
            double db = (hrs - hts + (srim * dtot)) / (stim + srim);
            v = (hts + (stim * db) - (((hts * (dtot - db)) + (hrs * db)) / dtot)) * Math.Sqrt(0.002 * dtot / (wavelength * db * (dtot - db)));
        }

        double luc = KnifeEdge.LossDb(v);
        return luc + ((1 - Math.Exp(-luc / 6)) * (10 + (0.02 * dtot)));
    }
}
