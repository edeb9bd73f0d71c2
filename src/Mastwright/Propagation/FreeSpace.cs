namespace Mastwright.Propagation;

/// <summary>Loss between two isotropic antennas with nothing in the way.</summary>
/// <remarks>
/// Source: Rec. ITU-R P.525, basic transmission loss 20 log10(4πd/λ), with the exact speed of light. The form printed there for
/// practical units, 32.4 + 20 log10 f + 20 log10 d, is 0.048 dB lower; Rec. ITU-R P.1812 equation (8) uses that constant
/// (<see cref="P1812"/> does too, because its published results do).
/// </remarks>
public static class FreeSpace
{
    /// <summary>Speed of light in vacuum, in metres per second (exact, SI).</summary>
    public const double SpeedOfLightMetresPerSecond = 299_792_458;

    /// <summary>Length of a wave in air, taken as in vacuum, in metres.</summary>
    /// <param name="frequencyHz">Frequency in Hz, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The frequency is zero, negative, infinite or NaN.</exception>
    public static double WavelengthMetres(double frequencyHz) =>
        SpeedOfLightMetresPerSecond / Domain.Positive(frequencyHz, nameof(frequencyHz));

    /// <summary>The free-space basic transmission loss in dB.</summary>
    /// <param name="distanceMetres">Distance between the antennas in metres, above zero; in the far field to be meaningful.</param>
    /// <param name="frequencyHz">Frequency in Hz, above zero.</param>
    /// <returns>The loss in dB; below zero only within a twelfth of a wavelength, where the formula has no meaning.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is zero, negative, infinite or NaN.</exception>
    public static double LossDb(double distanceMetres, double frequencyHz) =>
        20 * Math.Log10(4 * Math.PI * Domain.Positive(distanceMetres, nameof(distanceMetres)) / WavelengthMetres(frequencyHz));

    /// <summary>Field strength in dB(µV/m) at the far end of a path, for 1 kW effective radiated power.</summary>
    /// <param name="lossDb">Basic transmission loss of the path in dB.</param>
    /// <param name="frequencyHz">Frequency in Hz, above zero.</param>
    /// <remarks>Source: Rec. ITU-R P.1812 equation (70): 199.36 + 20 log10 f(GHz) − L.</remarks>
    public static double FieldStrengthDbMicrovoltPerMetre(double lossDb, double frequencyHz) =>
        199.36 + (20 * Math.Log10(Domain.Positive(frequencyHz, nameof(frequencyHz)) * 1e-9)) - lossDb;

    /// <summary>The basic transmission loss in dB that goes with a field strength in dB(µV/m) for 1 kW effective radiated power.</summary>
    public static double LossFromFieldStrengthDb(double fieldStrengthDbMicrovoltPerMetre, double frequencyHz) =>
        199.36 + (20 * Math.Log10(Domain.Positive(frequencyHz, nameof(frequencyHz)) * 1e-9)) - fieldStrengthDbMicrovoltPerMetre;
}
