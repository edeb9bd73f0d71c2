using System.Globalization;
using Mastwright.Findings;

namespace Mastwright.Station.Radio;

/// <summary>The least level at a receiver's connector that is still read.</summary>
/// <remarks>
/// Source: −174 + 10·log10(BW) + NF + SNR limit, the sensitivity formula of the modem data sheets and design guides.
/// Error: up to 1.5 dB from printed sensitivity tables, 2.5 dB at 500 kHz (measured in SensitivityTests); −174 rounds kT0 at 290 K by 0.025 dB.
/// </remarks>
public static class Sensitivity
{
    /// <summary>The sensitivity in dBm.</summary>
    /// <param name="bandwidthHz">Bandwidth in hertz, greater than zero.</param>
    /// <param name="noiseFigureDb">Noise figure in dB, zero or more.</param>
    /// <param name="snrLimitDb">Demodulation limit in dB.</param>
    public static double Dbm(double bandwidthHz, double noiseFigureDb, double snrLimitDb) =>
        StationDefaults.ThermalNoiseDbmPerHertz + (10 * Math.Log10(bandwidthHz)) + noiseFigureDb + snrLimitDb;

    /// <summary>The same as a ledger in dBm.</summary>
    public static Ledger Compute(double bandwidthHz, double noiseFigureDb, string noiseFigureSource, DemodulationLimit limit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        return Ledger.SummingTo(Dbm(bandwidthHz, noiseFigureDb, limit.SnrDb), "sensitivity at the receiver's connector", "dBm",
        [
            ThermalLine,
            BandwidthLine(bandwidthHz),
            new("noise-figure", "receiver noise figure", noiseFigureDb, noiseFigureSource),
            LimitLine(limit),
        ]);
    }

    internal static LedgerLine ThermalLine { get; } = new(
        "thermal-noise", "thermal noise in 1 Hz", StationDefaults.ThermalNoiseDbmPerHertz, "kT0 at 290 K, rounded as in modem data sheets");

    internal static LedgerLine BandwidthLine(double bandwidthHz) => new(
        "bandwidth", "bandwidth", 10 * Math.Log10(bandwidthHz), "modem setting",
        string.Create(CultureInfo.InvariantCulture, $"10·log10 of {bandwidthHz / 1000:0.###} kHz in hertz"));

    internal static LedgerLine LimitLine(DemodulationLimit limit) => new(
        "snr-limit", "signal-to-noise ratio that the demodulator needs", limit.SnrDb, limit.Source, limit.Note);
}
