namespace Mastwright.Propagation;

/// <summary>Kind of a building, by how its walls and windows let waves through.</summary>
public enum BuildingKind
{
    /// <summary>Traditional: no metallised glass, no foil-backed panels.</summary>
    Traditional,

    /// <summary>Thermally efficient: metallised glass, foil-backed panels.</summary>
    ThermallyEfficient,
}

/// <summary>Extra loss of an antenna inside a building.</summary>
/// <remarks>Source: Rec. ITU-R P.2109, equations and table of coefficients from memory (high confidence; no copy was at hand).</remarks>
public static class BuildingEntry
{
    /// <summary>Lowest frequency of the model, in Hz.</summary>
    public const double LowestFrequencyHz = 80e6;

    /// <summary>Highest frequency of the model, in Hz.</summary>
    public const double HighestFrequencyHz = 100e9;

    /// <summary>The loss not exceeded in a share of buildings and of places within them, in dB.</summary>
    /// <param name="frequencyHz">Frequency in Hz, 80 MHz to 100 GHz.</param>
    /// <param name="kind">Kind of building.</param>
    /// <param name="percent">The share, in percent, between 0 and 100 (both excluded).</param>
    /// <param name="elevationDegrees">Elevation of the path at the wall, −90 to 90°; its sign does not matter.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double LossDb(double frequencyHz, BuildingKind kind, double percent = 50, double elevationDegrees = 0)
    {
        double f = Domain.Within(frequencyHz, LowestFrequencyHz, HighestFrequencyHz, nameof(frequencyHz)) * 1e-9;
        Domain.Within(elevationDegrees, -90, 90, nameof(elevationDegrees));
        if (percent is not (> 0 and < 100))
        {
            throw new ArgumentOutOfRangeException(nameof(percent), percent, "A percentage between 0 and 100 is needed.");
        }

        (double r, double s, double t, double u, double v, double w, double x, double y, double z) = kind == BuildingKind.Traditional
            ? (12.64, 3.72, 0.96, 9.6, 2.0, 9.1, -3.0, 4.5, -2.0)
            : (28.19, -3.00, 8.48, 13.5, 3.8, 27.8, -2.9, 9.4, -2.1);
        double logF = Math.Log10(f);
        double median = r + (s * logF) + (t * logF * logF) + (0.212 * Math.Abs(elevationDegrees));
        double deviations = -InverseNormal.Of(percent / 100);
        double a = (deviations * (u + (v * logF))) + median;
        double b = (deviations * (y + (z * logF))) + w + (x * logF);
        return 10 * Math.Log10(Math.Pow(10, 0.1 * a) + Math.Pow(10, 0.1 * b) + Math.Pow(10, -0.3));
    }
}
