using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Station.Radio;

namespace Mastwright.Station.Rules;

/// <summary>The conditions of a row of law besides its power and its time on the air: bandwidth, hopping, listening first.</summary>
public static class RuleConditions
{
    /// <summary>Share of a limit above which an assumed bandwidth says nothing. Common practice.</summary>
    private const double NearShare = 0.9;

    /// <summary>Share of a packet's time from which a dwell counts as the whole packet: the plan's own rounding.</summary>
    private const double RoundedShare = 0.99;

    /// <summary>Every condition that the row sets, judged.</summary>
    /// <param name="rule">The row.</param>
    /// <param name="modem">The modem setting.</param>
    /// <param name="band">The band that the station takes.</param>
    /// <param name="packetSeconds">Time on air of one packet in seconds.</param>
    public static ImmutableArray<RuleCondition> Judge(RadioRule rule, ModemSetting modem, OccupiedBand band, double packetSeconds)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(modem);
        ArgumentNullException.ThrowIfNull(band);
        ImmutableArray<RuleCondition>.Builder conditions = ImmutableArray.CreateBuilder<RuleCondition>();
        AddWidth(conditions, rule, modem, band);
        if (rule.Access is RuleAccess.Hopping or RuleAccess.Hybrid)
        {
            AddHopping(conditions, rule, modem, band, packetSeconds);
        }

        if (rule.PoliteRequired)
        {
            conditions.Add(Polite(modem.Emission.Polite, packetSeconds));
        }

        if (rule.Asks.Length > 0)
        {
            conditions.Add(new("asks", Verdict.Unknown, $"asks for {rule.Asks}, of which the plan does not tell"));
        }

        return conditions.DrainToImmutable();
    }

    private static RuleCondition Polite(bool polite, double packetSeconds)
    {
        if (!polite)
        {
            return new("polite-access", Verdict.Fails, "asks for listening before talking, and the plan does not say that the radio does (modem/polite-access)");
        }

        return packetSeconds > PoliteAccess.LongestSeconds
            ? new("polite-access", Verdict.Fails, string.Create(CultureInfo.InvariantCulture, $"allows {PoliteAccess.LongestSeconds:0.#} s in one go to those who listen first, and a packet takes {packetSeconds:0.000} s"))
            : new("polite-access", Verdict.Ok, "asks for listening before talking, which the plan says the radio does");
    }

    private static void AddWidth(ImmutableArray<RuleCondition>.Builder conditions, RadioRule rule, ModemSetting modem, OccupiedBand band)
    {
        if (rule.MostOccupiedHz is { } most)
        {
            Verdict verdict = Most(band, rule, most);
            conditions.Add(new(
                "occupied-bandwidth",
                verdict,
                verdict == Verdict.Unknown
                    ? $"allows a bandwidth of {Kilohertz(most)} at 20 dB, and whether the signal keeps it is not known: its {Kilohertz(band.WidthHz)} are assumed, and that near the limit only a measurement tells (modem/occupied-bandwidth)"
                    : $"allows an occupied bandwidth of {Kilohertz(most)}, and the signal has {Kilohertz(band.WidthHz)}"));
        }

        if (rule.LeastOccupiedHz is { } least)
        {
            conditions.Add(new(
                "least-occupied-bandwidth",
                band.WidthHz >= least ? Verdict.Ok : Verdict.Fails,
                string.Create(CultureInfo.InvariantCulture, $"is for an occupied bandwidth of {Kilohertz(least)} or more, and the signal has {Kilohertz(band.WidthHz)}")));
        }

        if (rule.LeastSixDecibelHz is { } six)
        {
            conditions.Add(SixDecibel(six, modem));
        }
    }

    /// <summary>Hopping rows count the width at 20 dB, which is more than the modem's own: near the limit only a measurement tells.</summary>
    private static Verdict Most(OccupiedBand band, RadioRule rule, double most)
    {
        if (band.WidthHz > most)
        {
            return Verdict.Fails;
        }

        return rule.Access == RuleAccess.Hopping && band.WidthAssumed && band.WidthHz > NearShare * most ? Verdict.Unknown : Verdict.Ok;
    }

    /// <summary>Nobody's nominal bandwidth is the one at 6 dB: only a measured one proves it, but one far below cannot have it.</summary>
    private static RuleCondition SixDecibel(double least, ModemSetting modem)
    {
        if (modem.Emission.SixDecibelHz is { } measured)
        {
            return new(
                "six-decibel-bandwidth",
                measured >= least ? Verdict.Ok : Verdict.Fails,
                $"asks for {Kilohertz(least)} of bandwidth at 6 dB, and the signal has {Kilohertz(measured)} as measured");
        }

        return modem.BandwidthHz < least
            ? new("six-decibel-bandwidth", Verdict.Fails, $"asks for {Kilohertz(least)} of bandwidth at 6 dB, and the signal is {Kilohertz(modem.BandwidthHz)} wide")
            : new("six-decibel-bandwidth", Verdict.Unknown, $"asks for {Kilohertz(least)} of bandwidth at 6 dB, which nobody measured (modem/six-decibel-bandwidth)");
    }

    private static void AddHopping(ImmutableArray<RuleCondition>.Builder conditions, RadioRule rule, ModemSetting modem, OccupiedBand band, double packetSeconds)
    {
        if (modem.Emission.Hopping is not { } hopping)
        {
            string asked = rule.LeastChannels is { } number ? string.Create(CultureInfo.InvariantCulture, $"hopping over {number} frequencies or more") : "hopping";
            conditions.Add(new("hopping", Verdict.Fails, $"asks for {asked}, and the radio stays on one"));
            return;
        }

        if (rule.LeastChannels is { } least)
        {
            conditions.Add(new(
                "hopping-channels",
                hopping.Channels >= least ? Verdict.Ok : Verdict.Fails,
                string.Create(CultureInfo.InvariantCulture, $"asks for {least} hopping frequencies or more, and the radio uses {hopping.Channels}")));
        }

        if (rule.LeastSpacingHz is { } spacing)
        {
            double wanted = Math.Max(spacing, band.WidthHz);
            double has = (hopping.HighestHz - hopping.LowestHz) / (hopping.Channels - 1);

            // The thousandth lets a spacing through that the plan's own rounding of the carriers made a little less.
            conditions.Add(new(
                "hop-spacing",
                has >= 0.999 * wanted ? Verdict.Ok : Verdict.Fails,
                $"asks for {Kilohertz(wanted)} between hopping frequencies, and these are {Kilohertz(has)} apart on average"));
        }

        if (rule.MostDwellSeconds is { } most)
        {
            conditions.Add(Dwell(most, rule.DwellPeriodSeconds ?? (hopping.Channels * most), hopping, packetSeconds));
        }
    }

    /// <summary>A radio that hops between packets stays on one frequency for a whole packet, whatever dwell the plan gives.</summary>
    private static RuleCondition Dwell(double most, double period, HoppingSetting hopping, double packetSeconds)
    {
        string asks = string.Create(CultureInfo.InvariantCulture, $"allows {most:0.###} s on one frequency in any {period:0.##} s, and ");
        string packet = string.Create(CultureInfo.InvariantCulture, $"one packet takes {packetSeconds:0.000} s");
        if (hopping.DwellSeconds is not { } dwell)
        {
            return hopping.WithinPacket
                ? new("hop-dwell", Verdict.Unknown, asks + "how long the radio, which changes frequency within a packet, stays on one nobody said (modem/hopping/dwell)")
                : new("hop-dwell", packetSeconds > most ? Verdict.Fails : Verdict.Unknown, $"{asks}{packet}; how many fall on one frequency nobody said (modem/hopping/dwell)");
        }

        string given = string.Create(CultureInfo.InvariantCulture, $"the plan gives {dwell:0.###} s");
        if (dwell > most)
        {
            return new("hop-dwell", Verdict.Fails, asks + given);
        }

        return !hopping.WithinPacket && (packetSeconds > most || dwell < RoundedShare * packetSeconds)
            ? new("hop-dwell", Verdict.Unknown, $"{asks}{given}, but {packet}, and a radio that hops between packets stays that long (modem/hopping/within-packet)")
            : new("hop-dwell", Verdict.Ok, asks + given);
    }

    private static string Kilohertz(double hertz) => string.Create(CultureInfo.InvariantCulture, $"{hertz / 1e3:0.###} kHz");
}
