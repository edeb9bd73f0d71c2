using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Radio;

/// <summary>Whether a modem setting is one that a modem can be given.</summary>
public static class ModemSettingCheck
{
    /// <summary>People write 7.8 kHz for 7.8125 kHz: a bandwidth this near, as a fraction, is the offered one.</summary>
    private const double BandwidthRounding = 0.005;

    /// <summary>Checks a setting that came from outside.</summary>
    /// <param name="setting">The setting as it was read.</param>
    /// <param name="problem">What is wrong and what would be right; empty when nothing is.</param>
    /// <returns>Whether the setting can be calculated with.</returns>
    public static bool TryValidate(ModemSetting setting, out string problem)
    {
        ArgumentNullException.ThrowIfNull(setting);
        problem = Common(setting)
            ?? (setting.Modulation == Modulation.ChirpSpreadSpectrum ? Chirp(setting) : Shift(setting))
            ?? "";
        return problem.Length == 0;
    }

    /// <summary>A finding when no modem of the catalogue can be set to the bandwidth; null when one can, or the catalogue does not say.</summary>
    /// <param name="setting">A valid setting.</param>
    /// <param name="catalogue">The modems.</param>
    /// <param name="subject">Where in the plan the setting stands.</param>
    public static Finding? BandwidthIsOffered(ModemSetting setting, StationCatalogue catalogue, string subject)
    {
        ArgumentNullException.ThrowIfNull(setting);
        ArgumentNullException.ThrowIfNull(catalogue);
        double[] offered = [.. catalogue.Modems.Where(row => row.Modulation == setting.Modulation).SelectMany(row => row.BandwidthsHz).Order()];
        if (offered.Length == 0 || offered.Any(bandwidth => Math.Abs(setting.BandwidthHz - bandwidth) <= BandwidthRounding * bandwidth))
        {
            return null;
        }

        return new()
        {
            Code = "modem-bandwidth-unusual",
            Subject = subject,
            Verdict = Verdict.Unknown,
            Quantity = "bandwidth",
            Unit = "Hz",
            Value = Estimate.Exactly(setting.BandwidthHz),
            Source = "catalogue",
            Details = FindingDetails.Of(
                ("bandwidth", Text($"{setting.BandwidthHz / 1000:0.###} kHz")),
                ("known", string.Join(", ", offered.Select(bandwidth => Text($"{bandwidth / 1000:0.##}"))) + " kHz")),
        };
    }

    private static string? Common(ModemSetting setting)
    {
        if (!(setting.FrequencyHz > 0 && double.IsFinite(setting.FrequencyHz)))
        {
            return Text($"the frequency is {setting.FrequencyHz} Hz; it must be greater than zero");
        }

        if (!(setting.BandwidthHz >= 1000 && setting.BandwidthHz <= 2_000_000))
        {
            return Text($"the bandwidth is {setting.BandwidthHz / 1000} kHz; it must lie between 1 kHz and 2000 kHz");
        }

        if (setting.BandwidthHz >= setting.FrequencyHz)
        {
            return "the bandwidth is as large as the frequency; it must be a small part of it";
        }

        return setting.PayloadBytes is < 0 or > 255
            ? Text($"the payload is {setting.PayloadBytes} bytes; a packet holds 0 to 255")
            : null;
    }

    private static string? Chirp(ModemSetting setting)
    {
        if (setting.SpreadingFactor is < 5 or > 12)
        {
            return Text($"the spreading factor is {setting.SpreadingFactor}; it must be a whole number from 5 to 12");
        }

        if (setting.CodingRateDenominator is < 5 or > 8)
        {
            return Text($"the coding rate is 4/{setting.CodingRateDenominator}; it must be 4/5, 4/6, 4/7 or 4/8");
        }

        return setting.PreambleLength is < 6 or > 65535
            ? Text($"the preamble is {setting.PreambleLength} symbols; it must be 6 to 65535")
            : null;
    }

    private static string? Shift(ModemSetting setting)
    {
        if (!(setting.BitRate > 0 && double.IsFinite(setting.BitRate)))
        {
            return Text($"the bit rate is {setting.BitRate} bit/s; frequency-shift keying needs one greater than zero");
        }

        if (setting.BitRate > setting.BandwidthHz)
        {
            return Text($"the bit rate {setting.BitRate} bit/s is more than the receiver bandwidth {setting.BandwidthHz / 1000} kHz passes; give a bandwidth above the bit rate");
        }

        return setting.PreambleLength is < 8 or > 524280
            ? Text($"the preamble is {setting.PreambleLength} bits; frequency-shift keying takes 8 to 524280")
            : null;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
