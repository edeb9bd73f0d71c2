using Mastwright.Ground;

namespace Mastwright.Propagation;

/// <summary>Basic transmission loss of one path by Rec. ITU-R P.1812, with every intermediate.</summary>
/// <remarks>
/// <para>
/// The equations are those that the published validation set of the Recommendation confirms (editions 6 and 7, and the set says 8). The text
/// of edition 8 was not read, so conformity to it is not claimed. Equation numbers that the set does not print are from memory.
/// </para>
/// <para>Not reciprocal: the correction for a receiver at sea, and the choice among points equally near the ray, look at one end.</para>
/// </remarks>
public static class P1812
{
    /// <summary>Wavelength in metres as the Recommendation has it: 0.2998 / f(GHz).</summary>
    /// <param name="frequencyHz">Frequency in Hz, above zero.</param>
    public static double WavelengthMetres(double frequencyHz) => 0.2998 / (Domain.Positive(frequencyHz, nameof(frequencyHz)) * 1e-9);

    /// <summary>The basic transmission loss Lb alone, in dB. Allocates nothing.</summary>
    /// <inheritdoc cref="Evaluate" path="/exception"/>
    public static double LossDb(PathProfile profile, P1812Input input) => Evaluate(profile, input).LbDb;

    /// <summary>The loss not exceeded for the input's share of time and places, with all intermediates. Allocates nothing.</summary>
    /// <param name="profile">The path, transmitter first; used as given.</param>
    /// <param name="input">Radio and climate.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time percentage is above 50: the Recommendation has no fading below the median.</exception>
    public static P1812Result Evaluate(PathProfile profile, P1812Input input)
    {
        ArgumentNullException.ThrowIfNull(profile);
        ArgumentNullException.ThrowIfNull(input);
        double p = input.TimePercent;
        if (p > 50)
        {
            throw new ArgumentOutOfRangeException(nameof(input), p, "ITU-R P.1812 gives enhancements only: the time percentage is 50 or less.");
        }

        ReadOnlySpan<double> x = profile.DistancesMetres;
        ReadOnlySpan<double> ground = profile.HeightsMetres;
        double f = input.FrequencyHz * 1e-9;
        double hts = ground[0] + input.TransmitterHeightMetres;
        double hrs = ground[^1] + input.ReceiverHeightMetres;
        double medianRadius = EffectiveEarth.FromGradient(input.RefractivityGradient);
        const double DuctingRadius = EffectiveEarth.DuctingFactor * EffectiveEarth.MeanRadiusMetres;
        double ae = medianRadius / 1000;

        // The path: attachment 1 of the Recommendation.
        ProfileReading path = ProfileReading.Take(profile, hts, hrs, medianRadius, DuctingRadius, input.AddCover);
        double length = path.Length;
        double d = length / 1000;
        double fall = length / (2 * medianRadius);
        double thetaT = 1000 * Math.Atan(path.IsLineOfSight ? path.LineSlope - fall : path.HorizonFromTransmitter); // (76) to (78)
        double thetaR = 1000 * Math.Atan(path.IsLineOfSight ? -path.LineSlope - fall : path.HorizonFromReceiver); // (79) to (81)
        double dlt = x[path.TransmitterHorizonPoint] / 1000;
        double dlr = (length - x[path.ReceiverHorizonPoint]) / 1000;
        double theta = (1000 * d / ae) + thetaT + thetaR; // (82)
        SmoothEarthFit fit = SmoothEarthFit.Of(profile, in path);
        double roughness = fit.RoughnessMetres(x, ground, path.TransmitterHorizonPoint, path.ReceiverHorizonPoint); // (93)
        double hte = input.TransmitterHeightMetres + ground[0] - fit.TransmitterMetres; // (92a)
        double hre = input.ReceiverHeightMetres + ground[^1] - fit.ReceiverMetres; // (92b)

        // Time: section 3.6.
        RadioClimate climate = RadioClimate.Of(profile);
        double tau = climate.Tau;
        double beta0 = climate.DuctingPercent(input.PathCentreLatitudeDegrees, tau);
        double fi = p <= beta0 ? 1 : InverseNormal.Of(p / 100) / InverseNormal.Of(beta0 / 100); // (40)

        // At 50 % the loss is the median's (section 4.3.5, from memory), which fi only misses by the error of the approximation: 1e-9.
        double weight = p < 50 ? fi : 0;

        // Line of sight: section 4.2.
        double slant = Math.Sqrt((d * d) + ((hts - hrs) * 1e-3 * ((hts - hrs) * 1e-3)));
        double logF = Math.Log10(f);
        double lbfs = 92.4 + (20 * logF) + (20 * Math.Log10(slant)); // (8)
        double multipath = 2.6 * (1 - Math.Exp(-0.1 * (dlt + dlr)));
        double lb0p = lbfs + (multipath * Math.Log10(p / 50)); // (10)
        double lb0b = lbfs + (multipath * Math.Log10(beta0 / 50)); // (11)

        // Diffraction: section 4.3.
        SurfaceWave surface = new(f, input.Polarisation, climate.SeaFraction);
        double overSmoothT = hts - fit.DiffractionTransmitterMetres; // (37a)
        double overSmoothR = hrs - fit.DiffractionReceiverMetres; // (37b)
        DiffractionTerms median = DiffractionTerms.Of(path.Median, x, path.LineSlope, overSmoothT, overSmoothR, medianRadius, surface);
        DiffractionTerms ducting = DiffractionTerms.Of(path.Ducting, x, path.LineSlope, overSmoothT, overSmoothR, DuctingRadius, surface);
        double ld50 = median.LossDb;
        double ldb = ducting.LossDb;
        double ldp = ld50 + ((ldb - ld50) * weight); // (41)
        double lbd50 = lbfs + ld50; // (42)
        double lbd = lb0p + ldp; // (43)

        // Tropospheric scatter: section 4.4.
        double halfLog = Math.Log10(f / 2);
        double lbs = 190.1 + (25 * logF) - (2.5 * halfLog * halfLog) + (20 * Math.Log10(d)) + (0.573 * theta)
            - (0.15 * input.SurfaceRefractivity) - (10.125 * Math.Pow(Math.Log10(50 / p), 0.7)); // (44)

        // Ducting and layer reflection: section 4.5.
        double dct = (input.DistanceToCoastTransmitterMetres ?? DefaultToCoast(profile.Zones[0])) / 1000;
        double dcr = (input.DistanceToCoastReceiverMetres ?? DefaultToCoast(profile.Zones[^1])) / 1000;
        double beta = DuctingLoss.DuctTimePercent(beta0, tau, d, dlt, dlr, ae, hte, hre, roughness);
        double lba = DuctingLoss.FixedCouplingDb(f, dlt, dlr, thetaT, thetaR, dct, dcr, hts, hrs, climate.SeaFraction)
            + DuctingLoss.AngleAndTimeDb(f, d, dlt, dlr, thetaT, thetaR, ae, p, beta); // (46)

        // Combination: section 4.6.
        double fj = 1 - (0.5 * (1 + Math.Tanh(2.4 * (theta - 0.3) / 0.3))); // (57)
        double fk = 1 - (0.5 * (1 + Math.Tanh(1.5 * (d - 20) / 20))); // (58)
        double overLand = (1 - climate.SeaFraction) * ldp;
        double lminb0p = p < beta0 ? lb0p + overLand : lbd50 + ((lb0b + overLand - lbd50) * weight); // (59)
        double lminbap = SoftMaximum(lba, lb0p, 2.5); // (60)
        double lbda = lminbap > lbd ? lbd : lminbap + ((lbd - lminbap) * fk); // (61)
        double lbam = lbda + ((lminb0p - lbda) * fj); // (62)
        double lbc = -SoftMaximum(-lbs, -lbam, 5 / Math.Log(10)); // (63)

        // Places: sections 4.7 and 4.9.
        double location = profile.Zones[^1] == Zone.Sea ? 0 : LocationVariability.LossDb(input.LocationPercent, input.LocationSigmaDb);
        double lb = Math.Max(lb0p, lbc + location); // (69)

        return new()
        {
            DKm = d,
            DltKm = dlt,
            DlrKm = dlr,
            ThetaTMrad = thetaT,
            ThetaRMrad = thetaR,
            ThetaMrad = theta,
            HtsMetres = hts,
            HrsMetres = hrs,
            SeaFraction = climate.SeaFraction,
            DtmKm = climate.LongestLandMetres / 1000,
            DlmKm = climate.LongestInlandMetres / 1000,
            PhiDegrees = input.PathCentreLatitudeDegrees,
            Beta0Percent = beta0,
            AeKm = ae,
            SmoothHstMetres = fit.UncappedTransmitterMetres,
            SmoothHsrMetres = fit.UncappedReceiverMetres,
            HstMetres = fit.TransmitterMetres,
            HsrMetres = fit.ReceiverMetres,
            HstdMetres = fit.DiffractionTransmitterMetres,
            HsrdMetres = fit.DiffractionReceiverMetres,
            HtcMetres = overSmoothT,
            HrcMetres = overSmoothR,
            HteMetres = hte,
            HreMetres = hre,
            HmMetres = roughness,
            Fi = fi,
            Fj = fj,
            Fk = fk,
            LbfsDb = lbfs,
            Lb0pDb = lb0p,
            Lb0bDb = lb0b,
            LbullaDb = ducting.ActualDb,
            LbullsDb = ducting.SmoothDb,
            LdsphDb = ducting.SphereDb,
            Lbulla50Db = median.ActualDb,
            Lbulls50Db = median.SmoothDb,
            Ldsph50Db = median.SphereDb,
            Ld50Db = ld50,
            LdbDb = ldb,
            LdpDb = ldp,
            Lbd50Db = lbd50,
            LbdDb = lbd,
            Lminb0pDb = lminb0p,
            LbaDb = lba,
            LminbapDb = lminbap,
            LbdaDb = lbda,
            LbamDb = lbam,
            LbsDb = lbs,
            LbcDb = lbc,
            LlocDb = location,
            LbDb = lb,
            EpDbMicrovoltPerMetre = 199.36 + (20 * logF) - lb,
            DctKm = dct,
            DcrKm = dcr,
            BetaPercent = beta,
            IsLineOfSight = path.IsLineOfSight,
        };
    }

    private static double DefaultToCoast(Zone zone) => zone == Zone.Sea ? 0 : 500_000;

    /// <summary>scale · ln(e^(a/scale) + e^(b/scale)), without overflow however large the arguments.</summary>
    internal static double SoftMaximum(double a, double b, double scale)
    {
        double larger = Math.Max(a, b);
        return larger + (scale * Math.Log(1 + Math.Exp(-Math.Abs(a - b) / scale)));
    }
}
