using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;

namespace Mastwright.Station.Radio;

/// <summary>Time on air of one packet.</summary>
/// <remarks>
/// <para>Chirp spread spectrum, spreading factors 7 to 12: modem data sheet, clause 4.1.1.7 (time on air); the low-data-rate
/// rule is clause 4.1.1.6. Spreading factors 5 and 6: the newer modem family's own form (its data sheet, clause 6.1.4; from memory).</para>
/// <para>Frequency-shift keying: preamble, sync word, length byte, payload and two checksum bytes at the bit rate.</para>
/// <para>Error: none; the formula is exact for a modem that follows it.</para>
/// </remarks>
public static class Airtime
{
    /// <summary>The symbol duration in seconds above which the low-data-rate rule is mandatory (modem data sheet, clause 4.1.1.6).</summary>
    public const double LowDataRateSymbolSeconds = 0.016;

    /// <summary>The time on air of a packet of <see cref="ModemSetting.PayloadBytes"/>.</summary>
    /// <exception cref="ArgumentException">The setting is not valid; ask <see cref="ModemSettingCheck.TryValidate"/> first.</exception>
    public static AirtimeResult Compute(ModemSetting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        if (!ModemSettingCheck.TryValidate(setting, out string problem))
        {
            throw new ArgumentException(problem, nameof(setting));
        }

        return setting.Modulation == Modulation.ChirpSpreadSpectrum ? ChirpSpreadSpectrum(setting) : FrequencyShiftKeying(setting);
    }

    /// <summary>Duration of a symbol of chirp spread spectrum in seconds: 2^SF / BW.</summary>
    public static double SymbolSeconds(int spreadingFactor, double bandwidthHz) => (1 << spreadingFactor) / bandwidthHz;

    /// <summary>Whether the low-data-rate rule is in force for a setting; false for frequency-shift keying.</summary>
    public static bool IsLowDataRateOptimised(ModemSetting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        return setting.Modulation == Modulation.ChirpSpreadSpectrum
            && SymbolSeconds(setting.SpreadingFactor, setting.BandwidthHz) > LowDataRateSymbolSeconds;
    }

    private static AirtimeResult ChirpSpreadSpectrum(ModemSetting setting)
    {
        int sf = setting.SpreadingFactor;
        double symbol = SymbolSeconds(sf, setting.BandwidthHz);
        bool lowDataRate = IsLowDataRateOptimised(setting);
        bool newerForm = sf < 7;

        // Spreading factors 5 and 6 synchronise over two symbols more, and their first block holds eight bits fewer.
        double preamble = setting.PreambleLength + (newerForm ? 6.25 : 4.25);
        int bits = (8 * setting.PayloadBytes) - (4 * sf) + (newerForm ? 0 : 8)
            + (setting.Checksum ? 16 : 0) + (setting.ExplicitHeader ? 20 : 0);
        int bitsPerBlock = 4 * (sf - (lowDataRate ? 2 : 0));
        int blocks = bits <= 0 ? 0 : (bits + bitsPerBlock - 1) / bitsPerBlock;
        int payload = 8 + (blocks * setting.CodingRateDenominator);
        double rate = sf * (4.0 / setting.CodingRateDenominator) * setting.BandwidthHz / (1 << sf);
        string source = newerForm ? "newer modem data sheet, clause 6.1.4, from memory" : "modem data sheet, clause 4.1.1.7";

        return Result(setting, symbol, preamble, payload, rate, lowDataRate, source, "symbols", []);
    }

    private static AirtimeResult FrequencyShiftKeying(ModemSetting setting)
    {
        double preamble = setting.PreambleLength + StationDefaults.SyncWordBits;
        int bits = 8 * ((setting.ExplicitHeader ? 1 : 0) + setting.PayloadBytes + (setting.Checksum ? 2 : 0));
        return Result(setting, 1 / setting.BitRate, preamble, bits, setting.BitRate, lowDataRate: false,
            "bits divided by bit rate", "bits", [StationDefaults.SyncWord()]);
    }

    private static AirtimeResult Result(
        ModemSetting setting, double symbol, double preamble, int payload, double rate, bool lowDataRate,
        string source, string unit, ImmutableArray<Assumption> assumptions)
    {
        double preambleSeconds = preamble * symbol;
        double payloadSeconds = payload * symbol;
        double total = preambleSeconds + payloadSeconds;
        Ledger ledger = Ledger.SummingTo(total, "time on air", "s",
        [
            new("preamble", "preamble and synchronisation", preambleSeconds, source, Count(preamble, unit)),
            new("payload", "header, payload and checksum", payloadSeconds, source, Count(payload, unit)),
        ]);
        return new()
        {
            SymbolSeconds = symbol,
            PreambleSymbols = preamble,
            PreambleSeconds = preambleSeconds,
            PayloadSymbols = payload,
            PayloadSeconds = payloadSeconds,
            TotalSeconds = total,
            LowDataRateOptimised = lowDataRate,
            BitRate = rate,
            EffectiveBitRate = 8 * setting.PayloadBytes / total,
            Ledger = ledger,
            Assumptions = assumptions,
        };
    }

    private static string Count(double number, string unit) => string.Create(CultureInfo.InvariantCulture, $"{number:0.##} {unit}");
}
