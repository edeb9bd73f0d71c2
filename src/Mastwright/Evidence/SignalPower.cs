namespace Mastwright.Evidence;

/// <summary>The power of the wanted signal alone, out of the level and the signal-to-noise ratio that a receiver reports.</summary>
/// <remarks>
/// A receiver measures everything inside its channel: below the noise its level stays at the noise floor, however weak the signal becomes.
/// With the signal S and the noise N in milliwatts, level = S + N and SNR = S/N, hence S = level / (1 + N/S).
/// Arithmetic from the two definitions; held by the conducted measurement named in SignalPowerTests.
/// </remarks>
public static class SignalPower
{
    /// <summary>
    /// The signal-to-noise ratio in dB from which the receiver's own report stops following the signal (common practice, +5 dB), where the
    /// data do not tell it.
    /// </summary>
    public const double DefaultSaturationSnrDb = 5;

    /// <summary>The signal power in dBm.</summary>
    /// <param name="levelDbm">The reported level in dBm, signal and noise together.</param>
    /// <param name="snrDb">The reported signal-to-noise ratio in dB; may be negative.</param>
    /// <returns>level − 10 log10(1 + 10^(−SNR/10)), at most the level. NaN in, NaN out.</returns>
    public static double Dbm(double levelDbm, double snrDb)
    {
        // Far below the noise the power of ten would overflow; there the sum is the ratio itself to the last bit.
        double excessDb = snrDb < -200 ? -snrDb : 10 * Math.Log10(1 + Math.Pow(10, -snrDb / 10));
        return levelDbm - excessDb;
    }

    /// <summary>The noise floor in dBm, or null where the ratio is at or above saturation and so says nothing about the noise.</summary>
    /// <param name="signalPowerDbm">The signal power in dBm, as <see cref="Dbm"/> gives it.</param>
    /// <param name="snrDb">The reported signal-to-noise ratio in dB.</param>
    /// <param name="saturationSnrDb">The ratio in dB from which the receiver's report is no longer used for the noise.</param>
    public static double? NoiseFloorDbm(double signalPowerDbm, double snrDb, double saturationSnrDb = DefaultSaturationSnrDb) =>
        snrDb < saturationSnrDb ? signalPowerDbm - snrDb : null;
}
