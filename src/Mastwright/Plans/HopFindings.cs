using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Graph;
using Mastwright.Network.Links;

namespace Mastwright.Plans;

/// <summary>What is to be said of how stations are reached over others.</summary>
internal static class HopFindings
{
    /// <summary>Confidence from which a station counts as reached. Our convention.</summary>
    internal const double WantedConfidence = 0.9;

    /// <summary>Confidence below which it counts as not reached. Our convention.</summary>
    internal const double LeastConfidence = 0.5;

    private const int FewNames = 5;

    internal static IEnumerable<Finding> Of(HopReport report)
    {
        LinkMatrix matrix = report.Links.Matrix;
        foreach (StationHops station in report.Stations)
        {
            yield return Reached(report, station);
        }

        foreach (CutStation cut in report.WeakPoints.Stations.Where(cut => cut.Station != report.From))
        {
            yield return Weak("relay-alone", matrix, report.From, matrix.Stations[cut.Station].Subject, cut.Lost, ("name", matrix.Stations[cut.Station].Name));
        }

        foreach (CutLink cut in report.WeakPoints.Links.Where(cut => cut.Lost.Length > 1))
        {
            yield return Weak(
                "relay-link-alone",
                matrix,
                report.From,
                $"{matrix.Stations[cut.Near].Subject} ~ {matrix.Stations[cut.Far].Subject}",
                cut.Lost,
                ("one", matrix.Stations[cut.Near].Name),
                ("other", matrix.Stations[cut.Far].Name));
        }

        foreach (HopCondition condition in report.Conditions.Where(one => one.Heard.Length + one.Reached.Length > 0))
        {
            yield return new()
            {
                Code = "hops-enhanced",
                Subject = matrix.Stations[report.From].Subject,
                Verdict = Verdict.Ok,
                Source = "ITU-R P.1812, time percentage",
                Details = FindingDetails.Of(
                    ("from", matrix.Stations[report.From].Name),
                    ("percent", Text($"{condition.TimePercent:0.##} %")),
                    ("heard", Names(matrix, condition.Heard)),
                    ("reached", Names(matrix, condition.Reached)),
                    ("links", Text($"{condition.Links}")),
                    ("usual", Text($"{condition.UsualLinks}"))),
            };
        }
    }

    private static Finding Reached(HopReport report, StationHops station)
    {
        LinkMatrix matrix = report.Links.Matrix;
        double confidence = station.Flooded.Confidence;
        Verdict judged = confidence >= WantedConfidence ? Verdict.Ok : confidence >= LeastConfidence ? Verdict.Tight : Verdict.Fails;
        bool isUnknown = Enumerable.Range(0, matrix.Stations.Length).Where(other => other != station.Flooded.Station).All(other => matrix.Pair(other, station.Flooded.Station).LeastMarginDb is null);
        return new()
        {
            Code = "hops-reach",
            Subject = $"{matrix.Stations[report.From].Subject} ~ {matrix.Stations[station.Flooded.Station].Subject}",
            Verdict = isUnknown ? Verdict.Unknown : judged,
            Quantity = "confidence",
            Value = Quantities.Estimate.Exactly(confidence),
            Limit = WantedConfidence,
            Margin = confidence - WantedConfidence,
            Confidence = confidence,
            Source = "trial worlds over ITU-R P.1812; wanted confidence 90 %, our convention",
            Details = FindingDetails.Of(
                ("from", matrix.Stations[report.From].Name),
                ("name", matrix.Stations[station.Flooded.Station].Name),
                ("limit", report.Settings.HopLimit == 1 ? "1 hop" : Text($"{report.Settings.HopLimit} hops")),
                ("says", Says(matrix, station, isUnknown))),
        };
    }

    private static string Says(LinkMatrix matrix, StationHops station, bool isUnknown)
    {
        if (isUnknown)
        {
            return "nothing is known of any of its links";
        }

        if (station.Flooded.Confidence == 0)
        {
            return "not in any of the worlds that were tried" + Far(station);
        }

        string way = station.Route is { Stations.Length: > 2 } route
            ? $", most probably over {string.Join(", ", route.Stations.Skip(1).SkipLast(1).Select(one => matrix.Stations[one].Name))}"
            : "";
        return Text($"with {LinkOdds.Percent(station.Flooded.Confidence)} confidence{way}; then {LinkOdds.Percent(station.Flooded.DeliversIfReached)} of the packets arrive") + Far(station);
    }

    private static string Far(StationHops station) => station.Flooded.Confidence >= LeastConfidence ? "" : station.FewestHops switch
    {
        < 0 => "; at the best guess no chain of links leads there",
        1 => "",
        _ => Text($"; at the best guess it takes {station.FewestHops} hops"),
    };

    private static Finding Weak(string code, LinkMatrix matrix, int from, string subject, ImmutableArray<int> lost, params ReadOnlySpan<(string, string)> details) => new()
    {
        Code = code,
        Subject = subject,
        Verdict = Verdict.Tight,
        Quantity = "stations lost",
        Value = Quantities.Estimate.Exactly(lost.Length),
        Limit = 0,
        Margin = -lost.Length,
        Source = "links heard both ways at the best guess",
        Details = FindingDetails.Of([.. details, ("from", matrix.Stations[from].Name), ("lost", Names(matrix, lost)), ("count", lost.Length == 1 ? "1 station" : Text($"{lost.Length} stations"))]),
    };

    private static string Names(LinkMatrix matrix, ImmutableArray<int> stations) => stations.Length == 0
        ? "nobody"
        : string.Join(", ", stations.Take(FewNames).Select(one => matrix.Stations[one].Name)) + (stations.Length > FewNames ? Text($" and {stations.Length - FewNames} more") : "");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
