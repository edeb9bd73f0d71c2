using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Station.Radio;

/// <summary>Whether two modems stay near enough in frequency to hear each other over their temperatures.</summary>
/// <remarks>
/// <para>Both errors and both drifts are added: the worst case. Chirp spread spectrum bears a fraction of its bandwidth (catalogue
/// row; a quarter, from memory). The figure is for finding the packet; nobody's figure was at hand for a stricter one under the low-data-rate rule.</para>
/// <para>During one packet a chirp modem bears much less: BW/(3·2^SF), sixteen times that under the low-data-rate rule
/// (newer modem data sheet, from memory). It is shown beside the finding, since how fast a box warms is not known.</para>
/// <para>Frequency-shift keying: half of what the receiver's bandwidth leaves beyond the signal's, taken as twice the bit rate
/// (Carson's rule at a modulation index of 1, which is assumed).</para>
/// </remarks>
public static class FrequencyError
{
    /// <summary>Share of the tolerance above which the error is called tight. Common practice.</summary>
    private const double TightShare = 0.75;

    /// <summary>Worst difference in hertz between two carriers; null when a figure of either end is missing.</summary>
    public static double? WorstOffsetHz(double frequencyHz, RadioUnit one, RadioUnit other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        double? ppm = one.FrequencyErrorPartsPerMillion + one.FrequencyDriftPartsPerMillion
            + other.FrequencyErrorPartsPerMillion + other.FrequencyDriftPartsPerMillion;
        return ppm * 1e-6 * frequencyHz;
    }

    /// <summary>Offset in hertz that the modem bears; null when the catalogue does not say.</summary>
    public static double? ToleranceHz(ModemSetting setting, StationCatalogue catalogue)
    {
        ArgumentNullException.ThrowIfNull(setting);
        ArgumentNullException.ThrowIfNull(catalogue);
        return setting.Modulation == Modulation.FrequencyShiftKeying
            ? Math.Max(0, (setting.BandwidthHz - (2 * setting.BitRate)) / 2)
            : catalogue.Modem(setting.Modulation)?.FrequencyToleranceFraction * setting.BandwidthHz;
    }

    /// <summary>Drift in hertz that a chirp modem bears during one packet; null for frequency-shift keying.</summary>
    public static double? PacketDriftHz(ModemSetting setting)
    {
        ArgumentNullException.ThrowIfNull(setting);
        if (setting.Modulation != Modulation.ChirpSpreadSpectrum)
        {
            return null;
        }

        double still = setting.BandwidthHz / (3 * (1 << setting.SpreadingFactor));
        return Airtime.IsLowDataRateOptimised(setting) ? 16 * still : still;
    }

    /// <summary>The judgement on a pair of radios.</summary>
    /// <param name="setting">The modem setting that both use.</param>
    /// <param name="one">The radio at one end.</param>
    /// <param name="other">The radio at the other end.</param>
    /// <param name="catalogue">Where the tolerance comes from.</param>
    /// <param name="subject">The link that is judged.</param>
    public static Finding Judge(ModemSetting setting, RadioUnit one, RadioUnit other, StationCatalogue catalogue, string subject)
    {
        ArgumentNullException.ThrowIfNull(setting);
        double? offset = WorstOffsetHz(setting.FrequencyHz, one, other);
        double? tolerance = ToleranceHz(setting, catalogue);
        return new()
        {
            Code = "frequency-error",
            Subject = subject,
            Verdict = Judge(offset, tolerance),
            Quantity = "frequency difference of both ends",
            Unit = "Hz",
            Value = offset is { } known ? Estimate.Exactly(known) : null,
            Limit = tolerance,
            Margin = tolerance - offset,
            Source = setting.Modulation == Modulation.FrequencyShiftKeying
                ? "receiver bandwidth less twice the bit rate"
                : catalogue.Modem(setting.Modulation)?.Source ?? "",
            Details = FindingDetails.Of(
                ("offset", offset is null ? "an unknown amount" : Hertz(offset)),
                ("tolerance", Hertz(tolerance)),
                ("packet-drift", Hertz(PacketDriftHz(setting))),
                ("missing", Missing(one, other, tolerance))),
        };
    }

    private static Verdict Judge(double? offset, double? tolerance)
    {
        if (offset is not { } value || tolerance is not { } limit)
        {
            return Verdict.Unknown;
        }

        if (value > limit)
        {
            return Verdict.Fails;
        }

        return value > TightShare * limit ? Verdict.Tight : Verdict.Ok;
    }

    private static string Missing(RadioUnit one, RadioUnit other, double? tolerance)
    {
        List<string> missing = [];
        if (one.FrequencyErrorPartsPerMillion is null || other.FrequencyErrorPartsPerMillion is null)
        {
            missing.Add("frequency error");
        }

        if (one.FrequencyDriftPartsPerMillion is null || other.FrequencyDriftPartsPerMillion is null)
        {
            missing.Add("drift over temperature");
        }

        if (tolerance is null)
        {
            missing.Add("what the modem bears");
        }

        return missing.Count == 0 ? "" : $" Not known: {string.Join(", ", missing)}.";
    }

    private static string Hertz(double? hertz) => hertz is { } value
        ? (value >= 1000 ? FormattableString.Invariant($"{value / 1000:0.0} kHz") : FormattableString.Invariant($"{value:0} Hz"))
        : "unknown";
}
