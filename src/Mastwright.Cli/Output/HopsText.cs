using System.Globalization;
using System.Text;
using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Graph;
using Mastwright.Network.Links;
using Mastwright.Plans;

namespace Mastwright.Cli.Output;

/// <summary>How the stations are reached from one of them, on the terminal, 80 columns wide.</summary>
internal static class HopsText
{
    private const int NameWidth = 24;

    internal static void Write(HopReport report, string? picture)
    {
        LinkMatrix matrix = report.Links.Matrix;
        StringBuilder text = new();
        text.Wrapped(
            string.Create(CultureInfo.InvariantCulture, $"{report.Links.Plan.Name}: from {matrix.Stations[report.From].Name} over at most {report.Settings.HopLimit} hops; {report.Settings.Worlds} worlds of {report.Settings.Packets} packets, seed {report.Settings.Seed}"), 0);
        text.AppendLine();
        text.Line($"  {"",-NameWidth} {"hops",4} | {"flooded",14} | {"best route",24}");
        text.Line($"  {"to",-NameWidth} {"",4} | {"reached",8} {"gets",5} | {"works",6} {"gets",5}  over");
        foreach (StationHops station in report.Stations.OrderByDescending(one => one.Flooded.Confidence).ThenBy(one => one.FewestHops))
        {
            string name = LinksText.Fit(matrix.Stations[station.Flooded.Station].Name, NameWidth);
            string hops = station.FewestHops < 0 ? "–" : station.FewestHops.ToString(CultureInfo.InvariantCulture);
            string route = station.Route is { } way
                ? string.Create(CultureInfo.InvariantCulture, $"{LinkOdds.ShortPercent(station.RouteWorks),6} {LinkOdds.ShortPercent(station.RouteDelivers),5}  {Over(matrix, way)}")
                : $"{"",6} {"",5}  no route";
            text.Line($"  {name,-NameWidth} {hops,4} | {LinkOdds.ShortPercent(station.Flooded.Confidence),8} {(station.Flooded.Confidence == 0 ? "" : LinkOdds.ShortPercent(station.Flooded.DeliversIfReached)),5} | {route}");
        }

        text.AppendLine();
        text.Wrapped("hops: fewest over links heard both ways at the best guess. reached: share of the worlds in which the typical packet gets there. gets: share of packets that arrive if so. works: confidence that every link of the most probable route works.", 0);
        Weak(text, report);
        foreach (Finding finding in report.Findings.Where(finding => finding.Code == "hops-enhanced"))
        {
            text.AppendLine();
            text.Wrapped(FindingSentences.Text(finding), 0);
        }

        text.Findings(report.Findings.Where(finding => finding.Code is not ("relay-alone" or "relay-link-alone")));
        text.Assumed(report.Assumptions);
        text.Wrapped("Collisions on the channel are not part of this: 'air' simulates them.", 0);
        text.Wrapped(CheckText.Promise, 0);
        if (picture is not null)
        {
            text.Line($"Written: {picture}");
        }

        Console.Out.Write(text.ToString());
    }

    private static void Weak(StringBuilder text, HopReport report)
    {
        Finding[] weak = [.. report.Findings.Where(finding => finding.Code is "relay-alone" or "relay-link-alone")];
        if (weak.Length == 0)
        {
            return;
        }

        text.AppendLine();
        text.AppendLine("What others hang on, the greatest loss first");
        foreach (Finding finding in weak.OrderBy(finding => finding.Margin))
        {
            text.Wrapped($"{VerdictText.Word(finding.Verdict)}  {FindingSentences.Text(finding)} {FindingSentences.Advice(finding)}", 2);
        }
    }

    private static string Over(LinkMatrix matrix, StationRoute route)
    {
        string names = string.Join(", ", route.Stations.Skip(1).SkipLast(1).Select(one => matrix.Stations[one].Name));
        return names.Length == 0 ? "directly" : LinksText.Fit(names, 80 - NameWidth - 42);
    }
}
