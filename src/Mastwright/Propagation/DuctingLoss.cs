namespace Mastwright.Propagation;

/// <summary>Loss by ducting and layer reflection.</summary>
/// <remarks>Source: Rec. ITU-R P.1812 section 4.5, equations (46) to (56). Units of the Recommendation: km, m, mrad, GHz.</remarks>
internal static class DuctingLoss
{
    /// <summary>The antennas' part of the loss Af, equation (47).</summary>
    internal static double FixedCouplingDb(
        double f, double dlt, double dlr, double thetaT, double thetaR, double dct, double dcr, double hts, double hrs, double seaFraction)
    {
        double lowFrequency = f < 0.5 ? 45.375 - (137 * f) + (92.5 * f * f) : 0; // (47a)
        return 102.45 + (20 * Math.Log10(f)) + (20 * Math.Log10(dlt + dlr)) + lowFrequency
            + SiteShielding(f, dlt, thetaT) + SiteShielding(f, dlr, thetaR)
            + OverSeaCoupling(dct, dlt, hts, seaFraction) + OverSeaCoupling(dcr, dlr, hrs, seaFraction);
    }

    /// <summary>The loss that grows with angle and time, γ·θ′ + A(p), equation (50).</summary>
    internal static double AngleAndTimeDb(
        double f, double d, double dlt, double dlr, double thetaT, double thetaR, double ae, double p, double ductTimePercent)
    {
        double gamma = 5e-5 * ae * Math.Cbrt(f); // (51)
        double theta = (1000 * d / ae) + Math.Min(thetaT, 0.1 * dlt) + Math.Min(thetaR, 0.1 * dlr); // (52)
        double logBeta = Math.Log10(ductTimePercent);
        double exponent = 1.076 / Math.Pow(2.0058 - logBeta, 1.012)
            * Math.Exp(-(9.51 - (4.8 * logBeta) + (0.198 * logBeta * logBeta)) * 1e-6 * Math.Pow(d, 1.13)); // (53a)
        double ratio = p / ductTimePercent;
        return (gamma * theta) - 12 + ((1.2 + (3.7e-3 * d)) * Math.Log10(ratio)) + (12 * Math.Pow(ratio, exponent)); // (53)
    }

    /// <summary>The share of time β, in percent: β0 corrected for the geometry and the roughness of the path, equation (54).</summary>
    internal static double DuctTimePercent(
        double beta0, double tau, double d, double dlt, double dlr, double ae, double hte, double hre, double roughness)
    {
        double alpha = Math.Max(-3.4, -0.6 - (3.5e-9 * Math.Pow(d, 3.1) * tau)); // (55a)
        double roots = Math.Sqrt(hte) + Math.Sqrt(hre);
        double geometry = Math.Min(1, Math.Pow(500 * d * d / (ae * roots * roots), alpha)); // (55)
        double rough = roughness <= 10
            ? 1
            : Math.Exp(-4.6e-5 * (roughness - 10) * (43 + (6 * Math.Min(d - dlt - dlr, 40)))); // (56)
        return beta0 * geometry * rough;
    }

    private static double SiteShielding(double f, double horizonDistance, double horizonAngle)
    {
        double excess = horizonAngle - (0.1 * horizonDistance); // (48a)
        return excess > 0
            ? (20 * Math.Log10(1 + (0.361 * excess * Math.Sqrt(f * horizonDistance)))) + (0.264 * excess * Math.Cbrt(f)) // (48)
            : 0;
    }

    private static double OverSeaCoupling(double toCoast, double horizonDistance, double antennaHeight, double seaFraction) =>
        seaFraction >= 0.75 && toCoast <= horizonDistance && toCoast <= 5
            ? -3 * Math.Exp(-0.25 * toCoast * toCoast) * (1 + Math.Tanh(0.07 * (50 - antennaHeight))) // (49)
            : 0;
}
