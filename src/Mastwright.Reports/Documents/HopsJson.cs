using Mastwright.Network.Graph;
using Mastwright.Network.Links;
using Mastwright.Plans;

namespace Mastwright.Reports.Documents;

/// <summary>How stations are reached from one as a JSON document of shape "hops", version 1.</summary>
internal static class HopsJson
{
    internal static string Write(HopReport report) => JsonDocumentWriter.Write("hops", 1, writer =>
    {
        LinkMatrix matrix = report.Links.Matrix;
        string Subject(int station) => matrix.Stations[station].Subject;
        writer.WriteString("plan", report.Links.Plan.Name);
        writer.WriteString("from", Subject(report.From));
        writer.WriteNumber("hop-limit", report.Settings.HopLimit);
        writer.WriteNumber("worlds", report.Settings.Worlds);
        writer.WriteNumber("packets", report.Settings.Packets);
        writer.WriteNumber("seed", report.Settings.Seed);
        writer.WriteStartArray("stations");
        foreach (StationHops station in report.Stations)
        {
            writer.WriteStartObject();
            writer.WriteString("to", Subject(station.Flooded.Station));
            writer.WriteString("name", matrix.Stations[station.Flooded.Station].Name);
            writer.Number("fewest-hops", station.FewestHops < 0 ? null : station.FewestHops);
            writer.Number("reached", station.Flooded.Confidence);
            writer.Number("reached-half-range", station.Flooded.HalfRange(report.Settings.Worlds));
            writer.Number("delivers-if-reached", station.Flooded.DeliversIfReached);
            writer.Number("typical-hops", station.Flooded.Confidence == 0 ? null : station.Flooded.TypicalHops);
            writer.WriteStartArray("reached-by-hops");
            foreach (double share in station.Flooded.ByHops)
            {
                writer.WriteNumberValue(share);
            }

            writer.WriteEndArray();
            writer.Strings("route", station.Route?.Stations.Select(Subject) ?? []);
            writer.Number("route-works", station.RouteWorks);
            writer.Number("route-delivers", station.RouteDelivers);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("relays-alone");
        foreach (CutStation cut in report.WeakPoints.Stations.Where(cut => cut.Station != report.From))
        {
            writer.WriteStartObject();
            writer.WriteString("station", Subject(cut.Station));
            writer.Strings("lost", cut.Lost.Select(Subject));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("links-alone");
        foreach (CutLink cut in report.WeakPoints.Links)
        {
            writer.WriteStartObject();
            writer.WriteString("near", Subject(cut.Near));
            writer.WriteString("far", Subject(cut.Far));
            writer.Strings("lost", cut.Lost.Select(Subject));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("conditions");
        foreach (HopCondition condition in report.Conditions)
        {
            writer.WriteStartObject();
            writer.Number("time-percent", condition.TimePercent);
            writer.Strings("heard", condition.Heard.Select(Subject));
            writer.Strings("reached", condition.Reached.Select(Subject));
            writer.WriteNumber("links", condition.Links);
            writer.WriteNumber("usual-links", condition.UsualLinks);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.Findings("findings", report.Findings);
        writer.Assumptions("assumptions", report.Assumptions);
    });
}
