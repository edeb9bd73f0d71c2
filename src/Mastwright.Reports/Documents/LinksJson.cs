using System.Text.Json;
using Mastwright.Network.Links;
using Mastwright.Plans;

namespace Mastwright.Reports.Documents;

/// <summary>The links between all stations as a JSON document of shape "links", version 1.</summary>
internal static class LinksJson
{
    internal static string Write(MatrixReport report) => JsonDocumentWriter.Write("links", 1, writer =>
    {
        writer.WriteString("plan", report.Plan.Name);
        writer.Number("frequency-hertz", report.Settings.FrequencyHz);
        writer.Number("time-percent", report.Settings.TimePercent);
        writer.Number("wanted-margin-db", report.Settings.Wanted.MarginDb);
        writer.Stations(report.Matrix);
        writer.WriteStartArray("links");
        foreach (LinkPair pair in report.Matrix.Pairs)
        {
            writer.WriteStartObject();
            writer.WriteString("from", report.Matrix.Stations[pair.From].Subject);
            writer.WriteString("to", report.Matrix.Stations[pair.To].Subject);
            writer.Number("distance-metres", pair.DistanceMetres);
            writer.Number("bearing-degrees", pair.BearingDegrees);
            writer.WriteString("verdict", JsonDocumentWriter.Word(pair.Verdict));
            Way(writer, "out", pair.Out);
            Way(writer, "back", pair.Back);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.Findings("findings", report.Findings);
        writer.Assumptions("assumptions", report.Assumptions);
    });

    /// <summary>The stations of a matrix, as a list of objects.</summary>
    internal static void Stations(this Utf8JsonWriter writer, LinkMatrix matrix)
    {
        writer.WriteStartArray("stations");
        foreach (MatrixStation station in matrix.Stations)
        {
            writer.WriteStartObject();
            writer.WriteString("subject", station.Subject);
            writer.WriteString("name", station.Name);
            writer.Number("latitude-degrees", station.Place.LatitudeDegrees);
            writer.Number("longitude-degrees", station.Place.LongitudeDegrees);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void Way(Utf8JsonWriter writer, string name, LinkOneWay way)
    {
        writer.WriteStartObject(name);
        writer.WriteString("verdict", JsonDocumentWriter.Word(way.Verdict));
        writer.Estimate("margin-db", way.MarginDb);
        writer.Estimate("level-dbm", way.LevelDbm);
        writer.Number("works", way.Odds?.Works);
        writer.Number("delivers-if-it-works", way.Odds?.DeliversIfItWorks);
        writer.Strings("missing", way.Missing);
        writer.WriteEndObject();
    }
}
