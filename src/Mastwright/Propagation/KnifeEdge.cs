namespace Mastwright.Propagation;

/// <summary>Diffraction over one sharp ridge.</summary>
/// <remarks>
/// Source: Rec. ITU-R P.526, single knife-edge obstacle: parameter v and the closed form J(v). The published results of P.1812,
/// which use J(v), confirm the closed form; the edition of P.526 in force (16) was not read.
/// </remarks>
public static class KnifeEdge
{
    /// <summary>Below this v the closed form is taken as no loss at all.</summary>
    private const double ClearPath = -0.78;

    /// <summary>The extra loss that one knife edge adds to free space.</summary>
    /// <param name="v">Fresnel–Kirchhoff parameter, dimensionless: positive when the ridge stands above the line of sight.</param>
    /// <returns>The loss in dB, zero or more. NaN in, NaN out.</returns>
    /// <remarks>
    /// Closed form J(v) = 6.9 + 20 log10(sqrt((v − 0.1)² + 1) + v − 0.1). Error: within 0.11 dB of the exact Fresnel integral for
    /// −0.7 ≤ v ≤ 3 (measured in KnifeEdgeTests).
    /// </remarks>
    public static double LossDb(double v)
    {
        if (v <= ClearPath)
        {
            return 0;
        }

        double shifted = v - 0.1;
        return 6.9 + (20 * Math.Log10(Math.Sqrt((shifted * shifted) + 1) + shifted));
    }

    /// <summary>Parameter v of a ridge.</summary>
    /// <param name="heightMetres">Height of the ridge above the straight line between the antennas, in metres; below it negative.</param>
    /// <param name="fromOneEndMetres">Distance from one antenna to the ridge, in metres, above zero.</param>
    /// <param name="fromOtherEndMetres">Distance from the other antenna to the ridge, in metres, above zero.</param>
    /// <param name="frequencyHz">Frequency in Hz, above zero.</param>
    /// <remarks>v = h sqrt((2/λ)(1/d1 + 1/d2)).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">A distance or the frequency is not above zero.</exception>
    public static double Parameter(double heightMetres, double fromOneEndMetres, double fromOtherEndMetres, double frequencyHz) =>
        heightMetres * Math.Sqrt(
            2 / FreeSpace.WavelengthMetres(frequencyHz)
            * ((1 / Domain.Positive(fromOneEndMetres, nameof(fromOneEndMetres))) + (1 / Domain.Positive(fromOtherEndMetres, nameof(fromOtherEndMetres)))));

    /// <summary>Radius of the n-th Fresnel zone at a point of a path, in metres.</summary>
    /// <param name="fromOneEndMetres">Distance from one antenna, in metres, zero or more.</param>
    /// <param name="fromOtherEndMetres">Distance from the other antenna, in metres, zero or more.</param>
    /// <param name="frequencyHz">Frequency in Hz, above zero.</param>
    /// <param name="zone">Number n of the zone, 1 or more.</param>
    /// <remarks>Source: Rec. ITU-R P.526 section 2.1, R = sqrt(nλ d1 d2/(d1 + d2)).</remarks>
    public static double FresnelRadiusMetres(double fromOneEndMetres, double fromOtherEndMetres, double frequencyHz, int zone = 1)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(zone, 1);
        double length = Domain.ZeroOrMore(fromOneEndMetres, nameof(fromOneEndMetres)) + Domain.ZeroOrMore(fromOtherEndMetres, nameof(fromOtherEndMetres));
        return length > 0 ? Math.Sqrt(zone * FreeSpace.WavelengthMetres(frequencyHz) * fromOneEndMetres * fromOtherEndMetres / length) : 0;
    }
}
