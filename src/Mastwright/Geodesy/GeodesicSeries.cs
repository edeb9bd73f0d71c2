using System.Diagnostics;

namespace Mastwright.Geodesy;

/// <summary>The series of the geodesic problem on the WGS 84 ellipsoid, to the sixth order in ε.</summary>
/// <remarks>
/// Source: C. F. F. Karney, "Algorithms for geodesics", Journal of Geodesy 87 (2013) 43–55, equations (15), (17), (18),
/// (21), (24), (25), (42) and (43). ε is the expansion parameter of equation (16). On this ellipsoid |ε| is under 0.0017,
/// so what the sixth order leaves out is under a nanometre.
/// </remarks>
internal static class GeodesicSeries
{
    /// <summary>Terms of each Fourier series; the one of the longitude (C3) has one fewer and ends in a zero.</summary>
    internal const int Terms = 6;

    private const double N = Wgs84.ThirdFlattening;

    /// <summary>The sum over l of c(l) sin(2 l x), by Clenshaw's recurrence.</summary>
    internal static double SineSum(ReadOnlySpan<double> coefficients, double sinX, double cosX)
    {
        Debug.Assert(coefficients.Length == Terms, "Six terms.");
        double twiceCos2X = 2 * (cosX - sinX) * (cosX + sinX);
        double later = 0;
        double last = coefficients[5];
        for (int term = 4; term >= 0; term--)
        {
            (last, later) = ((twiceCos2X * last) - later + coefficients[term], last);
        }

        return 2 * sinX * cosX * last;
    }

    /// <summary>ε of equation (16), from k² = e'² cos²α0.</summary>
    internal static double Epsilon(double kSquared) => kSquared / ((2 * (1 + Math.Sqrt(1 + kSquared))) + kSquared);

    /// <summary>Equation (17): the mean of the distance integral.</summary>
    internal static double A1(double e)
    {
        double e2 = e * e;
        return (1 + (e2 * ((1 / 4.0) + (e2 * ((1 / 64.0) + (e2 / 256)))))) / (1 - e);
    }

    /// <summary>Equation (18): the ripple of the distance integral.</summary>
    internal static void C1(double e, Span<double> c)
    {
        double e2 = e * e;
        double power = e;
        c[0] = power * ((-1 / 2.0) + (e2 * ((3 / 16.0) - (e2 / 32))));
        power *= e;
        c[1] = power * ((-1 / 16.0) + (e2 * ((1 / 32.0) - (e2 * (9 / 2048.0)))));
        power *= e;
        c[2] = power * ((-1 / 48.0) + (e2 * (3 / 256.0)));
        power *= e;
        c[3] = power * ((-5 / 512.0) + (e2 * (3 / 512.0)));
        power *= e;
        c[4] = power * (-7 / 1280.0);
        power *= e;
        c[5] = power * (-7 / 2048.0);
    }

    /// <summary>Equation (21): the ripple of the distance integral, turned round.</summary>
    internal static void C1Reverted(double e, Span<double> c)
    {
        double e2 = e * e;
        double power = e;
        c[0] = power * ((1 / 2.0) + (e2 * ((-9 / 32.0) + (e2 * (205 / 1536.0)))));
        power *= e;
        c[1] = power * ((5 / 16.0) + (e2 * ((-37 / 96.0) + (e2 * (1335 / 4096.0)))));
        power *= e;
        c[2] = power * ((29 / 96.0) + (e2 * (-75 / 128.0)));
        power *= e;
        c[3] = power * ((539 / 1536.0) + (e2 * (-2391 / 2560.0)));
        power *= e;
        c[4] = power * (3467 / 7680.0);
        power *= e;
        c[5] = power * (38081 / 61440.0);
    }

    /// <summary>Equation (42): the mean of the second integral of the reduced length.</summary>
    internal static double A2(double e)
    {
        double e2 = e * e;
        return (1 + (e2 * ((1 / 4.0) + (e2 * ((9 / 64.0) + (e2 * (25 / 256.0))))))) * (1 - e);
    }

    /// <summary>Equation (43): the ripple of the second integral of the reduced length.</summary>
    internal static void C2(double e, Span<double> c)
    {
        double e2 = e * e;
        double power = e;
        c[0] = power * ((1 / 2.0) + (e2 * ((1 / 16.0) + (e2 / 32))));
        power *= e;
        c[1] = power * ((3 / 16.0) + (e2 * ((1 / 32.0) + (e2 * (35 / 2048.0)))));
        power *= e;
        c[2] = power * ((5 / 48.0) + (e2 * (5 / 256.0)));
        power *= e;
        c[3] = power * ((35 / 512.0) + (e2 * (7 / 512.0)));
        power *= e;
        c[4] = power * (63 / 1280.0);
        power *= e;
        c[5] = power * (77 / 2048.0);
    }

    /// <summary>Equation (24): the mean of the longitude integral.</summary>
    internal static double A3(double e) =>
        1 - (e * (((1 - N) / 2)
            + (e * ((1 / 4.0) + (N / 8) - (N * N * 3 / 8)
            + (e * ((1 / 16.0) + (N * 3 / 16) + (N * N / 16)
            + (e * ((3 / 64.0) + (N / 32)
            + (e * (3 / 128.0))))))))));

    /// <summary>Equation (25): the ripple of the longitude integral.</summary>
    internal static void C3(double e, Span<double> c)
    {
        double power = e;
        c[0] = power * (((1 - N) / 4)
            + (e * (((1 - (N * N)) / 8)
            + (e * (((3 + (3 * N) - (N * N)) / 64)
            + (e * (((5 + (2 * N)) / 128)
            + (e * 3 / 128))))))));
        power *= e;
        c[1] = power * (((2 - (3 * N) + (N * N)) / 32)
            + (e * (((3 - (2 * N) - (3 * N * N)) / 64)
            + (e * (((3 + N) / 128)
            + (e * 5 / 256))))));
        power *= e;
        c[2] = power * (((5 - (9 * N) + (5 * N * N)) / 192)
            + (e * (((9 - (10 * N)) / 384)
            + (e * 7 / 512))));
        power *= e;
        c[3] = power * (((7 - (14 * N)) / 512) + (e * 7 / 512));
        power *= e;
        c[4] = power * (21 / 2560.0);
        c[5] = 0;
    }
}
