using System.Globalization;

namespace Mastwright.Station.Radio;

/// <summary>Surroundings by the man-made noise that ITU-R P.372 gives them.</summary>
public enum NoiseEnvironment
{
    /// <summary>City, shops and offices.</summary>
    City,

    /// <summary>Houses.</summary>
    Residential,

    /// <summary>Country.</summary>
    Rural,

    /// <summary>Country far from anything electrical.</summary>
    QuietRural,
}

/// <summary>Noise that comes in by the antenna, as a figure in dB above kT0B at the terminals of a lossless antenna.</summary>
/// <remarks>
/// Source: Rec. ITU-R P.372, man-made noise, Fam = c − d·log10(f in MHz), constants from memory. The curves are for 0.3 to 250 MHz;
/// above that the Recommendation gives no figure and neither does this: at 433, 868 or 915 MHz noise has to be measured.
/// Error: the medians spread by 5 to 10 dB over time and place.
/// </remarks>
public static class ExternalNoise
{
    /// <summary>Lowest frequency in hertz of the curves.</summary>
    public const double LowestHz = 0.3e6;

    /// <summary>Highest frequency in hertz of the curves.</summary>
    public const double HighestHz = 250e6;

    /// <summary>Highest frequency in hertz of the quiet rural curve, from memory: it is drawn to 30 MHz only.</summary>
    public const double HighestQuietRuralHz = 30e6;

    /// <summary>Median man-made noise figure in dB above kT0B; null outside the Recommendation's frequency range.</summary>
    public static double? ManMadeFigureDb(NoiseEnvironment environment, double frequencyHz)
    {
        if (!IsInRange(frequencyHz) || (environment == NoiseEnvironment.QuietRural && frequencyHz > HighestQuietRuralHz))
        {
            return null;
        }

        (double c, double d) = environment switch
        {
            NoiseEnvironment.City => (76.8, 27.7),
            NoiseEnvironment.Residential => (72.5, 27.7),
            NoiseEnvironment.Rural => (67.2, 27.7),
            NoiseEnvironment.QuietRural => (53.6, 28.6),
            _ => throw new ArgumentOutOfRangeException(nameof(environment), environment, "Unknown surroundings."),
        };
        return c - (d * Math.Log10(frequencyHz / 1e6));
    }

    /// <summary>Noise figure in dB of a receiving system with external noise: f = fa + fsys − 1, added in power.</summary>
    /// <param name="systemNoiseFigureDb">Noise figure of feed and receiver at the antenna's terminals, in dB.</param>
    /// <param name="externalFigureDb">External noise in dB above kT0B; 0 is an antenna that sees 290 K.</param>
    /// <remarks>Source: Rec. ITU-R P.372, combination of noise factors, for feed and receiver at 290 K.</remarks>
    public static double CombinedFigureDb(double systemNoiseFigureDb, double externalFigureDb) =>
        10 * Math.Log10(Math.Pow(10, externalFigureDb / 10) + Math.Pow(10, systemNoiseFigureDb / 10) - 1);

    internal static bool IsInRange(double frequencyHz) => frequencyHz >= LowestHz && frequencyHz <= HighestHz;

    internal static string Word(NoiseEnvironment environment) => environment switch
    {
        NoiseEnvironment.City => "city",
        NoiseEnvironment.Residential => "residential",
        NoiseEnvironment.Rural => "rural",
        _ => "quiet rural",
    };

    internal static string RangeText { get; } = string.Create(
        CultureInfo.InvariantCulture, $"ITU-R P.372 gives man-made noise from {LowestHz / 1e6:0.#} to {HighestHz / 1e6:0} MHz only");
}
