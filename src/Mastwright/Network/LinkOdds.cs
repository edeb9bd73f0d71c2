using System.Globalization;
using Mastwright.Quantities;

namespace Mastwright.Network;

/// <summary>What two spreads make of a margin: whether the link works, and what it delivers if it does.</summary>
/// <param name="Works">Probability that the link works: that its typical packet, the one at median fading, is above the limit.</param>
/// <param name="DeliversIfItWorks">Mean share of packets above the limit over the cases in which the link works.</param>
/// <remarks>
/// The two are kept apart because they are lived differently: a link that does not work never works, whatever is resent; a link
/// that works loses a packet now and then. The default value is a link that never works.
/// </remarks>
public readonly record struct LinkOdds(double Works, double DeliversIfItWorks)
{
    /// <summary>Works out both probabilities.</summary>
    /// <param name="marginDb">Median margin in dB.</param>
    /// <param name="unknownDb">Standard deviation in dB of what is not known about the link: one draw a link. Zero or more.</param>
    /// <param name="fadingDb">Standard deviation in dB of what varies from packet to packet. Zero or more.</param>
    /// <remarks>
    /// With unknown part U and fading F, both normal: Works = P(m + U ≥ 0); DeliversIfItWorks = P(m + U + F ≥ 0 | m + U ≥ 0).
    /// What is lost though the link works is integrated by Simpson's rule (error below 1e-9, tested against the closed case m = 0).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A standard deviation is negative, or a number is not finite.</exception>
    public static LinkOdds From(double marginDb, double unknownDb, double fadingDb)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(unknownDb);
        ArgumentOutOfRangeException.ThrowIfNegative(fadingDb);
        if (!double.IsFinite(marginDb) || !double.IsFinite(unknownDb) || !double.IsFinite(fadingDb))
        {
            throw new ArgumentOutOfRangeException(nameof(marginDb), "Margin and spreads are finite numbers.");
        }

        if (unknownDb == 0)
        {
            return marginDb >= 0 ? new(1, Delivered(marginDb, fadingDb)) : default;
        }

        double works = NormalDistribution.Cumulative(marginDb / unknownDb);
        if (fadingDb == 0)
        {
            return new(works, 1);
        }

        return works < 1e-12 ? new(works, 0) : new(works, Math.Clamp(1 - (LostThoughItWorks(marginDb, unknownDb, fadingDb) / works), 0, 1));
    }

    /// <summary>Both probabilities in percent, in the invariant culture.</summary>
    public override string ToString() => $"works with {Percent(Works)} confidence; if it works, delivers {Percent(DeliversIfItWorks)}";

    /// <summary>A probability as whole percent that never claims certainty: "over 99 %", "under 1 %".</summary>
    /// <param name="probability">Between 0 and 1.</param>
    public static string Percent(double probability) => probability switch
    {
        > 0.995 => "over 99 %",
        < 0.005 => "under 1 %",
        _ => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0} %"),
    };

    /// <summary>The same where there is little room: ">99 %", "&lt;1 %"; "?" when unknown.</summary>
    /// <param name="probability">Between 0 and 1; null when unknown.</param>
    public static string ShortPercent(double? probability) => probability switch
    {
        null => "?",
        > 0.995 => ">99 %",
        < 0.005 => "<1 %",
        _ => string.Create(CultureInfo.InvariantCulture, $"{100 * probability:0} %"),
    };

    private static double Delivered(double marginDb, double fadingDb)
    {
        if (fadingDb == 0)
        {
            return marginDb >= 0 ? 1 : 0;
        }

        return NormalDistribution.Cumulative(marginDb / fadingDb);
    }

    /// <summary>Probability that the link works and a packet is lost all the same.</summary>
    private static double LostThoughItWorks(double marginDb, double unknownDb, double fadingDb)
    {
        // x = m + U is the margin of the typical packet: from where the link just works to where either spread has run out.
        double from = Math.Max(0, marginDb - (9 * unknownDb));
        double to = Math.Max(from, Math.Min(9 * fadingDb, Math.Max(marginDb, 0) + (9 * unknownDb)));
        const int Steps = 800;
        double width = (to - from) / Steps;
        double sum = 0;
        for (int i = 0; i <= Steps; i++)
        {
            double x = from + (i * width);
            double inner = i % 2 == 1 ? 4 : 2;
            double weight = i is 0 or Steps ? 1 : inner;
            sum += weight * NormalDistribution.Density((x - marginDb) / unknownDb) * NormalDistribution.Cumulative(-x / fadingDb);
        }

        return sum * width / (3 * unknownDb);
    }
}
