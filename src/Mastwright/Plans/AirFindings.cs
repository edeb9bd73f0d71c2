using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Air;
using Mastwright.Network.Links;
using Mastwright.Quantities;

namespace Mastwright.Plans;

/// <summary>What is to be said of a day on the channel.</summary>
internal static class AirFindings
{
    /// <summary>Share of the wanted deliveries from which a channel does. Our convention.</summary>
    internal const double WantedShare = 0.9;

    /// <summary>Share below which it does not. Our convention.</summary>
    internal const double LeastShare = 0.7;

    /// <summary>Load at which pure ALOHA delivers most (N. Abramson, AFIPS 37, 1970).</summary>
    internal const double MostBusyShare = 0.5;

    /// <summary>Growth of the traffic that a channel should bear. Our convention.</summary>
    internal const double WantedGrowth = 4;

    internal static IEnumerable<Finding> Of(AirReport report)
    {
        LinkMatrix matrix = report.Links.Matrix;
        AirResult result = report.Result;
        if (result.Wanted == 0)
        {
            yield return new() { Code = "air-nothing", Subject = "links", Verdict = Verdict.Unknown, Source = "plan" };
            yield break;
        }

        double share = Math.Min(1, result.DeliveredShare);
        yield return new()
        {
            Code = "air-delivery",
            Subject = "links",
            Verdict = Judge(share, WantedShare, LeastShare),
            Quantity = "delivered share",
            Value = Estimate.Exactly(share),
            Limit = WantedShare,
            Margin = share - WantedShare,
            Source = "simulation; 90 % wanted, our convention",
            Details = FindingDetails.Of(
                ("share", LinkOdds.Percent(share)),
                ("limit", report.Settings.HopLimit == 1 ? "one hop" : Text($"{report.Settings.HopLimit} hops")),
                ("overlap", LinkOdds.Percent((double)result.LostToOverlap / Math.Max(1, result.Strong))),
                ("sending", LinkOdds.Percent((double)result.LostToSending / Math.Max(1, result.Strong)))),
        };

        int busiest = Enumerable.Range(0, result.Stations.Length).MaxBy(station => result.Stations[station].BusySeconds);
        double busy = result.Stations[busiest].BusySeconds / result.DurationSeconds;
        yield return new()
        {
            Code = "air-busy",
            Subject = matrix.Stations[busiest].Subject,
            Verdict = busy >= MostBusyShare ? Verdict.Fails : busy >= MostBusyShare / 2 ? Verdict.Tight : Verdict.Ok,
            Quantity = "busy share",
            Value = Estimate.Exactly(busy),
            Limit = MostBusyShare,
            Margin = MostBusyShare - busy,
            Source = "Abramson, AFIPS 37, 1970: pure ALOHA delivers most at half a load",
            Details = FindingDetails.Of(("name", matrix.Stations[busiest].Name), ("busy", LinkOdds.Percent(busy))),
        };

        for (int station = 0; station < result.Stations.Length; station++)
        {
            if (result.Stations[station] is { Stalled: > 0 } stalled)
            {
                yield return Stalls(report, station, stalled);
            }
        }

        if (report.Growth is [.., var last] && report.Growth.Length > 0)
        {
            yield return Growth(report, last);
        }
    }

    private static Finding Stalls(AirReport report, int station, AirStation stalled) => new()
    {
        Code = "air-limit",
        Subject = report.Links.Matrix.Stations[station].Subject,
        Verdict = stalled.Dropped > 0 ? Verdict.Fails : Verdict.Tight,
        Quantity = "packets dropped",
        Value = Estimate.Exactly(stalled.Dropped),
        Limit = 0,
        Margin = -stalled.Dropped,
        Source = "simulation",
        Details = FindingDetails.Of(
            ("name", report.Links.Matrix.Stations[station].Name),
            ("limit", Text($"{100 * report.Settings.DutyShare:0.###} %")),
            ("times", stalled.Stalled == 1 ? "once" : Text($"{stalled.Stalled} times")),
            ("minutes", Text($"{stalled.StalledSeconds / 60:0.#} minutes")),
            ("dropped", stalled.Dropped == 0 ? "none is dropped" : Text($"{stalled.Dropped} are dropped"))),
    };

    private static Finding Growth(AirReport report, AirGrowth last)
    {
        bool collapses = last.DeliveredShare < AirExamination.CollapseShare;
        AirRemedy? best = report.Remedies.FirstOrDefault(remedy => remedy.DeliveredShare > last.DeliveredShare);
        return new()
        {
            Code = "air-growth",
            Subject = "links",
            Verdict = !collapses || last.Factor > WantedGrowth ? Verdict.Ok : last.Factor > 1 ? Verdict.Tight : Verdict.Fails,
            Quantity = "growth",
            Value = Estimate.Exactly(last.Factor),
            Limit = WantedGrowth,
            Margin = last.Factor - WantedGrowth,
            Source = "simulation; four times the traffic, our convention",
            Details = FindingDetails.Of(
                ("says", collapses
                    ? Text($"At {last.Factor:0} times the traffic less than half of what is wanted arrives ({LinkOdds.Percent(last.DeliveredShare)})")
                    : Text($"At {last.Factor:0} times the traffic {LinkOdds.Percent(Math.Min(1, last.DeliveredShare))} of what is wanted still arrives")),
                ("help", !collapses ? "" : best is null ? "; none of the rules that were tried helps" : Text($"; of the rules that were tried {best.Text} helps most ({LinkOdds.Percent(best.DeliveredShare)})"))),
        };
    }

    private static Verdict Judge(double share, double wanted, double least) => share >= wanted ? Verdict.Ok : share >= least ? Verdict.Tight : Verdict.Fails;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
