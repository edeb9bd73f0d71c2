using Mastwright.Station.Antenna;

namespace Mastwright.Station.Exposure;

/// <summary>Power density in front of an antenna and the distance at which it falls to a limit.</summary>
/// <remarks>
/// <para>Source: far-field formula S = EIRP / (4·π·r²), FCC OET Bulletin 65 (1997), section 2, and its factor of 2.56 for a ground that
/// reflects with a coefficient of 0.6: (1 + 0.6)².</para>
/// <para>Range: the far field, from 2·D²/λ on. Nearer it is no more than a guide, and within λ/(2·π) it says nothing.</para>
/// </remarks>
public static class ExposureDistance
{
    /// <summary>The most that a reflecting ground adds to the power density (OET 65: field 1.6 times).</summary>
    public const double ReflectionFactor = 2.56;

    /// <summary>The distance in metres that is kept from an antenna whatever the formula says.</summary>
    public const double LeastMetres = 0.2;

    /// <summary>Power density in W/m² at a distance in the main beam.</summary>
    /// <param name="eirpWatts">EIRP in watts: zero or more.</param>
    /// <param name="distanceMetres">Distance in metres, greater than zero.</param>
    /// <param name="factor">1, or <see cref="ReflectionFactor"/>.</param>
    public static double DensityWattsPerSquareMetre(double eirpWatts, double distanceMetres, double factor = 1) =>
        factor * eirpWatts / (4 * Math.PI * distanceMetres * distanceMetres);

    /// <summary>Distance in metres in the main beam at which the density is that of a limit.</summary>
    /// <param name="eirpWatts">EIRP in watts: zero or more.</param>
    /// <param name="limitWattsPerSquareMetre">The limit in W/m², greater than zero.</param>
    /// <param name="factor">1, or <see cref="ReflectionFactor"/>.</param>
    public static double Metres(double eirpWatts, double limitWattsPerSquareMetre, double factor = 1)
    {
        if (!(limitWattsPerSquareMetre > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(limitWattsPerSquareMetre), "A limit is greater than zero.");
        }

        return Math.Sqrt(factor * eirpWatts / (4 * Math.PI * limitWattsPerSquareMetre));
    }

    /// <summary>Distance in metres up to which the field does not yet radiate freely: λ/(2·π).</summary>
    /// <param name="frequencyHz">Frequency in hertz, greater than zero.</param>
    public static double ReactiveMetres(double frequencyHz) => AntennaFindings.SpeedOfLight / frequencyHz / (2 * Math.PI);

    /// <summary>Distance in metres at which the far field begins: 2·D²/λ.</summary>
    /// <param name="lengthMetres">Length D of the radiating part in metres: zero or more.</param>
    /// <param name="frequencyHz">Frequency in hertz, greater than zero.</param>
    public static double FarFieldMetres(double lengthMetres, double frequencyHz) =>
        2 * lengthMetres * lengthMetres * frequencyHz / AntennaFindings.SpeedOfLight;
}
