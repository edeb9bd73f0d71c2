using System.Globalization;

namespace Mastwright.Station.Radio;

/// <summary>A demodulation limit and where it comes from.</summary>
/// <param name="SnrDb">Signal-to-noise ratio in the modem's bandwidth, in dB: negative when the signal may lie below the noise.</param>
/// <param name="Source">Document and clause, plan or catalogue.</param>
/// <param name="Note">How it came about; empty when it was a table value.</param>
public sealed record DemodulationLimit(double SnrDb, string Source, string Note);

/// <summary>The signal-to-noise ratio below which a packet is no longer read.</summary>
/// <remarks>
/// Chirp spread spectrum: a table by spreading factor. Bandwidth does not change the ratio (it enters through the noise). The
/// published figures are for coding rate 4/5; stronger coding gains some tenths of a decibel to about 1 dB against bursts, which is
/// not counted. Frequency-shift keying: theory of non-coherent detection, Pb = ½·exp(−Eb/2N0), and the row's implementation loss.
/// </remarks>
public static class Demodulation
{
    /// <summary>The limit of a setting: the radio's own figure, else the catalogue's; null when neither has it.</summary>
    public static DemodulationLimit? SnrLimit(ModemSetting setting, RadioUnit? radio, StationCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(setting);
        ArgumentNullException.ThrowIfNull(catalogue);
        if (setting.Modulation == Modulation.FrequencyShiftKeying)
        {
            return FrequencyShiftKeying(setting, catalogue.Modem(setting.Modulation));
        }

        if (radio is not null && radio.SnrLimitDb.TryGetValue(setting.SpreadingFactor, out double own))
        {
            return new(own, "plan", "");
        }

        ModemRow? row = catalogue.Modem(setting.Modulation);
        return row is not null && row.SnrLimitDb.TryGetValue(setting.SpreadingFactor, out double limit)
            ? new(limit, row.SnrLimitSource.GetValueOrDefault(setting.SpreadingFactor, row.Source), "")
            : null;
    }

    /// <summary>Energy per bit over noise density, in dB, at which non-coherent binary frequency-shift keying has a bit error rate.</summary>
    /// <param name="bitErrorRate">Wanted bit error rate: greater than 0 and less than 0.5.</param>
    /// <remarks>Source: theory of non-coherent orthogonal detection, Pb = ½·exp(−Eb/2N0) (any textbook of digital communication). 10.94 dB at 0.1 %.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The rate is outside its range.</exception>
    public static double ShiftKeyingEnergyPerBitDb(double bitErrorRate)
    {
        if (!(bitErrorRate > 0 && bitErrorRate < 0.5))
        {
            throw new ArgumentOutOfRangeException(nameof(bitErrorRate), "A bit error rate lies between 0 and 0.5.");
        }

        return 10 * Math.Log10(2 * Math.Log(1 / (2 * bitErrorRate)));
    }

    /// <summary>The bit error rate at which a share of packets is lost, when bit errors are independent and any one of them loses the packet.</summary>
    /// <param name="packetErrorRate">Share of packets lost: greater than 0 and less than 1.</param>
    /// <param name="bits">Bits in a packet: one or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double BitErrorRateFor(double packetErrorRate, int bits)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bits, 1);
        if (!(packetErrorRate > 0 && packetErrorRate < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(packetErrorRate), "A packet error rate lies between 0 and 1.");
        }

        return -Math.Exp(Math.Log(1 - packetErrorRate) / bits) + 1;
    }

    private static DemodulationLimit? FrequencyShiftKeying(ModemSetting setting, ModemRow? row)
    {
        if (row?.BitErrorRate is not { } target)
        {
            return null;
        }

        double energy = ShiftKeyingEnergyPerBitDb(target);
        double widthDb = 10 * Math.Log10(setting.BitRate / setting.BandwidthHz);
        return new(energy + row.ImplementationLossDb + widthDb, row.Source, string.Create(CultureInfo.InvariantCulture,
            $"Eb/N0 {energy:0.00} dB at a bit error rate of {target:0.####}, implementation {row.ImplementationLossDb:0.#} dB, bit rate over bandwidth {widthDb:0.00} dB"));
    }
}
