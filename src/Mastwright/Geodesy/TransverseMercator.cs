namespace Mastwright.Geodesy;

/// <summary>The transverse Mercator projection of WGS 84 about a meridian: Krüger's series to the sixth order in n.</summary>
/// <remarks>
/// Source: C. F. F. Karney, "Transverse Mercator with an accuracy of a few nanometers", Journal of Geodesy 85 (2011) 475–485,
/// equations (7) to (11), (14), (19) to (21), (35) and (36), after L. Krüger (1912).
/// </remarks>
internal static class TransverseMercator
{
    private const double N = Wgs84.ThirdFlattening;
    private const double NSquared = N * N;

    /// <summary>Radius of the sphere that has the length of the meridian ellipse, in metres (equation 14).</summary>
    private const double RectifyingRadiusMetres =
        Wgs84.EquatorialRadiusMetres / (1 + N) * (1 + (NSquared * ((1 / 4.0) + (NSquared * ((1 / 64.0) + (NSquared / 256))))));

    /// <summary>Stands for the cosine at a pole, which is zero: less than the rounding of an angle.</summary>
    private const double LeastCosine = 6e-17;

    private static readonly double Eccentricity = Math.Sqrt(Wgs84.EccentricitySquared);

    /// <summary>Equation (35).</summary>
    private static readonly double[] Alpha =
    [
        N * ((1 / 2.0) + (N * ((-2 / 3.0) + (N * ((5 / 16.0) + (N * ((41 / 180.0) + (N * ((-127 / 288.0) + (N * (7891 / 37800.0))))))))))),
        NSquared * ((13 / 48.0) + (N * ((-3 / 5.0) + (N * ((557 / 1440.0) + (N * ((281 / 630.0) + (N * (-1983433 / 1935360.0))))))))),
        NSquared * N * ((61 / 240.0) + (N * ((-103 / 140.0) + (N * ((15061 / 26880.0) + (N * (167603 / 181440.0))))))),
        NSquared * NSquared * ((49561 / 161280.0) + (N * ((-179 / 168.0) + (N * (6601661 / 7257600.0))))),
        NSquared * NSquared * N * ((34729 / 80640.0) + (N * (-3418889 / 1995840.0))),
        NSquared * NSquared * NSquared * (212378941 / 319334400.0),
    ];

    /// <summary>Equation (36), with the sign with which it is added.</summary>
    private static readonly double[] MinusBeta =
    [
        -N * ((1 / 2.0) + (N * ((-2 / 3.0) + (N * ((37 / 96.0) + (N * ((-1 / 360.0) + (N * ((-81 / 512.0) + (N * (96199 / 604800.0))))))))))),
        -NSquared * ((1 / 48.0) + (N * ((1 / 15.0) + (N * ((-437 / 1440.0) + (N * ((46 / 105.0) + (N * (-1118711 / 3870720.0))))))))),
        -NSquared * N * ((17 / 480.0) + (N * ((-37 / 840.0) + (N * ((-209 / 4480.0) + (N * (5569 / 90720.0))))))),
        -NSquared * NSquared * ((4397 / 161280.0) + (N * ((-11 / 504.0) + (N * (-830251 / 7257600.0))))),
        -NSquared * NSquared * N * ((4583 / 161280.0) + (N * (-108847 / 3991680.0))),
        -NSquared * NSquared * NSquared * (20648693 / 638668800.0),
    ];

    /// <summary>Metres east of the meridian and north of the equator, at scale 1 on the meridian.</summary>
    internal static (double EastMetres, double NorthMetres) Forward(double latitudeDegrees, double longitudeFromMeridianDegrees)
    {
        (double sinLambda, double cosLambda) = Degrees.SinCos(longitudeFromMeridianDegrees);
        (double sinPhi, double cosPhi) = Degrees.SinCos(latitudeDegrees);
        double tauPrime = ConformalTangent(sinPhi / Math.Max(LeastCosine, Math.Abs(cosPhi)));
        double xi = Math.Atan2(tauPrime, cosLambda);
        double eta = Math.Asinh(sinLambda / Math.Sqrt((tauPrime * tauPrime) + (cosLambda * cosLambda)));
        (xi, eta) = Corrected(Alpha, xi, eta);
        return (RectifyingRadiusMetres * eta, RectifyingRadiusMetres * xi);
    }

    /// <summary>The way back from <see cref="Forward"/>.</summary>
    internal static (double LatitudeDegrees, double LongitudeFromMeridianDegrees) Reverse(double eastMetres, double northMetres)
    {
        (double xi, double eta) = Corrected(MinusBeta, northMetres / RectifyingRadiusMetres, eastMetres / RectifyingRadiusMetres);
        (double sinXi, double cosXi) = Math.SinCos(xi);
        double sinhEta = Math.Sinh(eta);
        double tau = GeographicTangent(sinXi / Math.Max(LeastCosine, Math.Sqrt((sinhEta * sinhEta) + (cosXi * cosXi))));
        return (Math.Atan(tau) * Degrees.PerRadian, Degrees.Atan2(sinhEta, cosXi));
    }

    /// <summary>Tangent of the conformal latitude from that of the geographic one (equations 7 to 9).</summary>
    private static double ConformalTangent(double tau)
    {
        double secant = Math.Sqrt(1 + (tau * tau));
        double sigma = Math.Sinh(Eccentricity * Math.Atanh(Eccentricity * tau / secant));
        return (tau * Math.Sqrt(1 + (sigma * sigma))) - (sigma * secant);
    }

    /// <summary>Newton's method on the above (equations 19 to 21); two rounds reach the last bit, five are a bound.</summary>
    private static double GeographicTangent(double tauPrime)
    {
        double tau = tauPrime / (1 - Wgs84.EccentricitySquared);
        for (int round = 0; round < 5; round++)
        {
            double trial = ConformalTangent(tau);
            double step = (tauPrime - trial) / Math.Sqrt(1 + (trial * trial))
                * (1 + ((1 - Wgs84.EccentricitySquared) * tau * tau))
                / ((1 - Wgs84.EccentricitySquared) * Math.Sqrt(1 + (tau * tau)));
            tau += step;
            if (!(Math.Abs(step) > 1e-15 * Math.Max(1, Math.Abs(tau))))
            {
                break;
            }
        }

        return tau;
    }

    /// <summary>ζ + Σ c(j) sin(2jζ) for ζ = ξ + iη (equation 11 in one complex sum), by Clenshaw's recurrence.</summary>
    private static (double Xi, double Eta) Corrected(double[] coefficients, double xi, double eta)
    {
        (double sin, double cos) = Math.SinCos(2 * xi);

        // From one exponential: what the difference loses is scaled by the first coefficient, 1/1200, to under a picometre.
        double growth = Math.Exp(2 * eta);
        double sinh = (growth - (1 / growth)) / 2;
        double cosh = (growth + (1 / growth)) / 2;
        double factorReal = 2 * cos * cosh;
        double factorImaginary = -2 * sin * sinh;
        (double real, double imaginary, double laterReal, double laterImaginary) = (0, 0, 0, 0);
        for (int term = coefficients.Length - 1; term >= 0; term--)
        {
            double nextReal = (factorReal * real) - (factorImaginary * imaginary) - laterReal + coefficients[term];
            double nextImaginary = (factorReal * imaginary) + (factorImaginary * real) - laterImaginary;
            (laterReal, laterImaginary, real, imaginary) = (real, imaginary, nextReal, nextImaginary);
        }

        double sineReal = sin * cosh;
        double sineImaginary = cos * sinh;
        return (
            xi + (sineReal * real) - (sineImaginary * imaginary),
            eta + (sineReal * imaginary) + (sineImaginary * real));
    }
}
