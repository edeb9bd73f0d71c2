using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Links;

namespace Mastwright.Plans;

/// <summary>What is to be said of a matrix: stations that nobody hears, links that work one way, pairs of which nothing is known.</summary>
internal static class MatrixFindings
{
    private const int FewNames = 4;

    internal static IEnumerable<Finding> Of(LinkMatrix matrix)
    {
        for (int i = 0; i < matrix.Stations.Length && matrix.Stations.Length > 1; i++)
        {
            if (Alone(matrix, i) is { } alone)
            {
                yield return alone;
            }
        }

        foreach (LinkPair pair in matrix.Pairs.ToArray().Where(pair => pair.IsOneWay))
        {
            yield return OneWay(matrix, pair);
        }

        if (Unknown(matrix) is { } unknown)
        {
            yield return unknown;
        }
    }

    private static Finding? Alone(LinkMatrix matrix, int station)
    {
        LinkPair[] own = [.. Enumerable.Range(0, matrix.Stations.Length).Where(other => other != station).Select(other => matrix.Pair(station, other))];
        if (own.Any(pair => pair.LeastMarginDb is null or >= 0))
        {
            return null;
        }

        LinkPair best = own.MaxBy(pair => pair.LeastMarginDb)!;
        MatrixStation other = matrix.Stations[best.From == station ? best.To : best.From];
        return new()
        {
            Code = "station-alone",
            Subject = matrix.Stations[station].Subject,
            Verdict = Verdict.Fails,
            Quantity = "margin",
            Unit = "dB",
            Value = Quantities.Estimate.Exactly(best.LeastMarginDb!.Value),
            Limit = 0,
            Margin = best.LeastMarginDb,
            Confidence = best.WorksBothWays,
            Source = "ITU-R P.1812 and the plan",
            Details = FindingDetails.Of(
                ("name", matrix.Stations[station].Name),
                ("nearest", other.Name),
                ("short", Text($"{-best.LeastMarginDb.Value:0.0} dB")),
                ("works", LinkOdds.Percent(best.WorksBothWays ?? 0))),
        };
    }

    private static Finding OneWay(LinkMatrix matrix, LinkPair pair)
    {
        bool outHeard = pair.Out.MarginDb!.Value.Median >= 0;
        (int heard, int deaf) = outHeard ? (pair.From, pair.To) : (pair.To, pair.From);
        LinkOneWay good = outHeard ? pair.Out : pair.Back;
        LinkOneWay bad = outHeard ? pair.Back : pair.Out;
        return new()
        {
            Code = "link-one-way",
            Subject = $"{matrix.Stations[pair.From].Subject} ~ {matrix.Stations[pair.To].Subject}",
            Verdict = Verdict.Tight,
            Quantity = "margin",
            Unit = "dB",
            Value = bad.MarginDb,
            Limit = 0,
            Margin = bad.MarginDb!.Value.Median,
            Confidence = bad.Odds?.Works,
            Source = "ITU-R P.1812 and the plan",
            Details = FindingDetails.Of(
                ("from", matrix.Stations[heard].Name),
                ("to", matrix.Stations[deaf].Name),
                ("margin", Text($"{good.MarginDb!.Value.Median:0.0} dB")),
                ("short", Text($"{-bad.MarginDb!.Value.Median:0.0} dB"))),
        };
    }

    private static Finding? Unknown(LinkMatrix matrix)
    {
        LinkPair[] unknown = [.. matrix.Pairs.ToArray().Where(pair => pair.LeastMarginDb is null)];
        if (unknown.Length == 0)
        {
            return null;
        }

        string[] missing = [.. unknown.SelectMany(pair => pair.Out.Missing.Concat(pair.Back.Missing)).GroupBy(one => one, StringComparer.Ordinal).OrderByDescending(group => group.Count()).Select(group => group.Key)];
        return new()
        {
            Code = "links-unknown",
            Subject = "links",
            Verdict = Verdict.Unknown,
            Source = "plan",
            Details = FindingDetails.Of(
                ("count", Text($"{unknown.Length}")),
                ("all", Text($"{matrix.Pairs.Length}")),
                ("missing", string.Join("; ", missing.Take(FewNames)) + (missing.Length > FewNames ? Text($"; and {missing.Length - FewNames} more") : ""))),
        };
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
