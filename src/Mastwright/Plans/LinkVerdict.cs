using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Links;

namespace Mastwright.Plans;

/// <summary>The judgement on a link from its two directions.</summary>
internal static class LinkVerdict
{
    /// <summary>The direction that decides: the worse verdict (fails, unknown, tight, ok), then the smaller margin.</summary>
    internal static LinkDirection Weaker(LinkDirection one, LinkDirection other)
    {
        int order = LinkPair.Order(one.Verdict).CompareTo(LinkPair.Order(other.Verdict));
        if (order != 0)
        {
            return order < 0 ? one : other;
        }

        return (one.MarginDb?.Median ?? double.NegativeInfinity) <= (other.MarginDb?.Median ?? double.NegativeInfinity) ? one : other;
    }

    internal static Finding Judge(LinkStation from, LinkStation to, LinkDirection outward, LinkDirection back, LinkPath path, PathSettings settings)
    {
        LinkDirection weaker = Weaker(outward, back);
        string subject = $"{from.Subject} ~ {to.Subject}";
        if (weaker.MarginDb is not { } margin)
        {
            return new()
            {
                Code = "link-unknown",
                Subject = subject,
                Verdict = Verdict.Unknown,
                Quantity = "margin",
                Unit = "dB",
                Limit = 0,
                Source = "plan",
                Details = FindingDetails.Of(
                    ("from", weaker.From.Name),
                    ("to", weaker.To.Name),
                    ("missing", Few([.. weaker.Missing.Concat((weaker == outward ? back : outward).Missing).Distinct(StringComparer.Ordinal)]))),
            };
        }

        string code = weaker.Verdict == Verdict.Unknown ? "link-range" : "link-margin";
        return new()
        {
            Code = code,
            Subject = subject,
            Verdict = weaker.Verdict,
            Quantity = "margin",
            Unit = "dB",
            Value = margin,
            Limit = 0,
            Margin = margin.Median,
            Confidence = weaker.Odds?.Works,
            Source = FormattableString.Invariant($"{path.Out?.Method ?? "path loss"}; wanted margin {settings.Wanted.MarginDb:0.#} dB"),
            Details = FindingDetails.Of(
                ("from", weaker.From.Name),
                ("to", weaker.To.Name),
                ("margin", Text($"{margin.Median:0.0} dB")),
                ("low", Text($"{margin.Low:0.0} dB")),
                ("high", Text($"{margin.High:0.0} dB")),
                ("wanted", Text($"{settings.Wanted.MarginDb:0.#} dB")),
                ("says", Says(weaker, margin.Median, settings)),
                ("vaguest", weaker.Vaguest),
                ("odds", weaker.Odds?.ToString() ?? ""),
                ("why", LinkReasons.Why(weaker, path)),
                ("advice", LinkReasons.Advice(weaker, path, settings))),
        };
    }

    private static string Says(LinkDirection direction, double marginDb, PathSettings settings) => direction.Verdict switch
    {
        Verdict.Fails => Text($"{direction.From.Name} falls {-marginDb:0.0} dB short at {direction.To.Name}"),
        Verdict.Tight => Text($"{direction.From.Name} is heard at {direction.To.Name} with only {marginDb:0.0} dB to spare of the {settings.Wanted.MarginDb:0.#} dB wanted"),
        _ => Text($"{direction.From.Name} is heard at {direction.To.Name} with {marginDb:0.0} dB to spare"),
    };

    private static string Few(ImmutableArray<string> missing) => missing.Length switch
    {
        0 => "an input",
        <= 3 => string.Join("; ", missing),
        _ => string.Join("; ", missing.Take(3)) + string.Create(CultureInfo.InvariantCulture, $"; and {missing.Length - 3} more"),
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
