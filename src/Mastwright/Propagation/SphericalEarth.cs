namespace Mastwright.Propagation;

/// <summary>Diffraction over a smooth round Earth.</summary>
/// <remarks>
/// Source: Rec. ITU-R P.526 section 3.2 and Rec. ITU-R P.1812 sections 4.3.2 and 4.3.3; equation (27) is the result: first term of the
/// residue series, and the interpolation for paths within the horizon. Confirmed by the published results of P.1812.
/// </remarks>
public static class SphericalEarth
{
    /// <summary>The loss that the round Earth adds to free space, in dB, zero or more.</summary>
    /// <param name="distanceMetres">Path length in metres, above zero.</param>
    /// <param name="transmitterHeightMetres">Height of one antenna above the smooth Earth, in metres, above zero.</param>
    /// <param name="receiverHeightMetres">Height of the other antenna above the smooth Earth, in metres, above zero.</param>
    /// <param name="effectiveRadiusMetres">Effective radius of the Earth in metres, above zero.</param>
    /// <param name="frequencyHz">Frequency in Hz; P.526 gives the method for 10 MHz and above.</param>
    /// <param name="polarisation">Polarisation of the wave.</param>
    /// <param name="seaFraction">Share of the path over sea, 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double LossDb(
        double distanceMetres,
        double transmitterHeightMetres,
        double receiverHeightMetres,
        double effectiveRadiusMetres,
        double frequencyHz,
        WavePolarisation polarisation,
        double seaFraction = 0)
    {
        SurfaceWave surface = new(Domain.Positive(frequencyHz, nameof(frequencyHz)) * 1e-9, polarisation, Domain.Within(seaFraction, 0, 1, nameof(seaFraction)));
        return LossDb(
            Domain.Positive(distanceMetres, nameof(distanceMetres)) / 1000,
            Domain.Positive(transmitterHeightMetres, nameof(transmitterHeightMetres)),
            Domain.Positive(receiverHeightMetres, nameof(receiverHeightMetres)),
            Domain.Positive(effectiveRadiusMetres, nameof(effectiveRadiusMetres)) / 1000,
            surface);
    }

    /// <summary>The same in the units of the Recommendation: km, m, km.</summary>
    internal static double LossDb(double d, double h1, double h2, double ae, in SurfaceWave surface)
    {
        double rootHeights = Math.Sqrt(h1) + Math.Sqrt(h2);
        double horizon = Math.Sqrt(2 * ae * 0.001) * rootHeights;
        if (d >= horizon)
        {
            return surface.FirstTermDb(d, h1, h2, ae);
        }

        double c = (h1 - h2) / (h1 + h2);
        double m = 250 * d * d / (ae * (h1 + h2));
        double b = 2 * Math.Sqrt((m + 1) / (3 * m))
            * Math.Cos((Math.PI / 3) + (Math.Acos(Math.Clamp(1.5 * c * Math.Sqrt(3 * m / Cube(m + 1)), -1, 1)) / 3));
        double d1 = d / 2 * (1 + b);
        double d2 = d - d1;
        double clearance = (((h1 - (500 * d1 * d1 / ae)) * d2) + ((h2 - (500 * d2 * d2 / ae)) * d1)) / d;
        double needed = 17.456 * Math.Sqrt(d1 * d2 * surface.WavelengthMetres / d);
        if (clearance > needed)
        {
            return 0;
        }

        double ratio = d / rootHeights;
        double grazing = surface.FirstTermDb(d, h1, h2, 500 * ratio * ratio); // the radius at which this path just meets the horizon
        return grazing < 0 ? 0 : (1 - (clearance / needed)) * grazing; // equation (27)
    }

    private static double Cube(double x) => x * x * x;
}
