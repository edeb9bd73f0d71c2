namespace Mastwright.Storage.Tests.Agreement;

/// <summary>The power of the signal alone, from what a receiver reports.</summary>
internal static class ReceivedPower
{
    /// <summary>The wanted signal's power in dBm: the reported level holds the noise as well.</summary>
    /// <param name="levelDbm">Level that the receiver reports, in dBm.</param>
    /// <param name="snrDb">Ratio of signal to noise that it reports, in dB.</param>
    /// <remarks>S = level − 10·log10(1 + 10^(−SNR/10)), by definition where level is signal plus noise.</remarks>
    internal static double SignalDbm(double levelDbm, double snrDb) => levelDbm - (10 * Math.Log10(1 + Math.Pow(10, -snrDb / 10)));

    /// <summary>Standard deviation of values around their own mean, in their unit.</summary>
    internal static double Deviation(IReadOnlyCollection<double> values)
    {
        double mean = values.Average();
        return Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1));
    }
}
