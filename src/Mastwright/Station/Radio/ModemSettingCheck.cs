using System.Collections.Immutable;
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
        ImmutableArray<ModemSettingProblem> problems = Problems(setting);
        problem = problems.IsEmpty ? "" : problems[0].Text;
        return problems.IsEmpty;
    }

    /// <summary>Everything that is wrong with a setting that came from outside; empty when it can be calculated with.</summary>
    /// <param name="setting">The setting as it was read.</param>
    public static ImmutableArray<ModemSettingProblem> Problems(ModemSetting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        ImmutableArray<ModemSettingProblem>.Builder problems = ImmutableArray.CreateBuilder<ModemSettingProblem>();
        Common(setting, problems);
        if (setting.Modulation == Modulation.ChirpSpreadSpectrum)
        {
            Chirp(setting, problems);
        }
        else
        {
            Shift(setting, problems);
        }

        return problems.DrainToImmutable();
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

    private static void Common(ModemSetting setting, ImmutableArray<ModemSettingProblem>.Builder problems)
    {
        if (!(setting.FrequencyHz > 0 && double.IsFinite(setting.FrequencyHz)))
        {
            Add(nameof(setting.FrequencyHz), $"the frequency is {setting.FrequencyHz} Hz; it must be greater than zero");
        }

        if (!(setting.BandwidthHz >= 1000 && setting.BandwidthHz <= 2_000_000))
        {
            Add(nameof(setting.BandwidthHz), $"the bandwidth is {setting.BandwidthHz / 1000} kHz; it must lie between 1 kHz and 2000 kHz");
        }
        else if (setting.BandwidthHz >= setting.FrequencyHz)
        {
            Add(nameof(setting.BandwidthHz), $"the bandwidth is as large as the frequency; it must be a small part of it");
        }

        if (setting.PayloadBytes is < 0 or > 255)
        {
            Add(nameof(setting.PayloadBytes), $"the payload is {setting.PayloadBytes} bytes; a packet holds 0 to 255");
        }

        void Add(string property, FormattableString text) => problems.Add(new(property, Text(text)));
    }

    private static void Chirp(ModemSetting setting, ImmutableArray<ModemSettingProblem>.Builder problems)
    {
        if (setting.SpreadingFactor is < 5 or > 12)
        {
            Add(nameof(setting.SpreadingFactor), $"the spreading factor is {setting.SpreadingFactor}; it must be a whole number from 5 to 12");
        }

        if (setting.CodingRateDenominator is < 5 or > 8)
        {
            Add(nameof(setting.CodingRateDenominator), $"the coding rate is 4/{setting.CodingRateDenominator}; it must be 4/5, 4/6, 4/7 or 4/8");
        }

        if (setting.PreambleLength is < 6 or > 65535)
        {
            Add(nameof(setting.PreambleLength), $"the preamble is {setting.PreambleLength} symbols; it must be 6 to 65535");
        }

        void Add(string property, FormattableString text) => problems.Add(new(property, Text(text)));
    }

    private static void Shift(ModemSetting setting, ImmutableArray<ModemSettingProblem>.Builder problems)
    {
        if (!(setting.BitRate > 0 && double.IsFinite(setting.BitRate)))
        {
            Add(nameof(setting.BitRate), $"the bit rate is {setting.BitRate} bit/s; frequency-shift keying needs one greater than zero");
        }
        else if (setting.BitRate > setting.BandwidthHz)
        {
            Add(nameof(setting.BitRate), $"the bit rate {setting.BitRate} bit/s is more than the receiver bandwidth {setting.BandwidthHz / 1000} kHz passes; give a bandwidth above the bit rate");
        }

        if (setting.PreambleLength is < 8 or > 524280)
        {
            Add(nameof(setting.PreambleLength), $"the preamble is {setting.PreambleLength} bits; frequency-shift keying takes 8 to 524280");
        }

        void Add(string property, FormattableString text) => problems.Add(new(property, Text(text)));
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>One thing that is wrong with a modem setting.</summary>
/// <param name="Property">The property of <see cref="ModemSetting"/> that it is about.</param>
/// <param name="Text">What is wrong and what would be right.</param>
public readonly record struct ModemSettingProblem(string Property, string Text);
