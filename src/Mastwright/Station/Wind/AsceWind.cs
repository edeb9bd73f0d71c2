namespace Mastwright.Station.Wind;

/// <summary>Velocity pressure of ASCE/SEI 7-16, clause 26.10, in SI units; the constants are from memory.</summary>
public static class AsceWind
{
    /// <summary>Half the density of the air, in the pressure of a speed in m/s (26.10-1.si).</summary>
    public const double PressureConstant = 0.613;

    /// <summary>Height in metres (15 ft) below which the exposure coefficient is that at it.</summary>
    public const double LeastHeightMetres = 4.57;

    /// <summary>Velocity pressure exposure coefficient Kz (Table 26.10-1, note 1).</summary>
    /// <param name="exposure">The exposure category.</param>
    /// <param name="heightMetres">Height above the ground in metres, zero or more.</param>
    public static double ExposureCoefficient(ExposureRow exposure, double heightMetres)
    {
        ArgumentNullException.ThrowIfNull(exposure);
        return 2.01 * Math.Pow(Math.Max(heightMetres, LeastHeightMetres) / exposure.GradientHeightMetres, 2 / exposure.Exponent);
    }

    /// <summary>Velocity pressure in pascals.</summary>
    /// <param name="exposureCoefficient">Kz.</param>
    /// <param name="topographicFactor">Kzt.</param>
    /// <param name="directionalityFactor">Kd.</param>
    /// <param name="elevationFactor">Ke.</param>
    /// <param name="gustMetresPerSecond">Ultimate three-second gust in m/s.</param>
    public static double PressurePa(
        double exposureCoefficient, double topographicFactor, double directionalityFactor, double elevationFactor, double gustMetresPerSecond) =>
        PressureConstant * exposureCoefficient * topographicFactor * directionalityFactor * elevationFactor * gustMetresPerSecond * gustMetresPerSecond;
}
