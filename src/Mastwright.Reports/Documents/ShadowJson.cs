using Mastwright.Network.Shadow;
using Mastwright.Plans;

namespace Mastwright.Reports.Documents;

/// <summary>A shadow as a JSON document of shape "shadow", version 1.</summary>
internal static class ShadowJson
{
    internal static string Write(string plan, ShadowReport report) => JsonDocumentWriter.Write("shadow", 1, writer =>
    {
        writer.WriteString("plan", plan);
        writer.WriteString("station", report.Setup.Station.Subject);
        writer.WriteString("receiver", report.Setup.Receiver.Key);
        writer.Number("radius-metres", report.Shadow.Map.Field.Input.RadiusMetres);
        writer.Number("cell-metres", report.Shadow.Map.Field.Input.CellMetres);
        writer.WriteNumber("hop-limit", report.HopLimit);
        writer.WriteStartArray("parts");
        foreach (ShadowPart part in report.Parts)
        {
            writer.WriteStartObject();
            writer.WriteString("cause", ShadowExamination.Code(part.Cause));
            writer.WriteNumber("cells", part.Cells);
            writer.Number("area-square-metres", part.AreaSquareMetres);
            writer.WriteStartArray("opened-square-metres-by-hops");
            foreach (double area in part.ByHops)
            {
                writer.WriteNumberValue(area);
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("relays");
        foreach ((LinkStation station, int hops) in report.Relays)
        {
            writer.WriteStartObject();
            writer.WriteString("station", station.Subject);
            writer.WriteNumber("hops", hops);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("ridge");
        foreach (RidgePoint point in report.Ridge)
        {
            writer.WriteStartObject();
            writer.Number("bearing-degrees", point.BearingDegrees);
            writer.Number("distance-metres", point.DistanceMetres);
            writer.Number("latitude-degrees", point.Place.LatitudeDegrees);
            writer.Number("longitude-degrees", point.Place.LongitudeDegrees);
            writer.Number("ground-metres", point.GroundMetres);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.Ledger("ledger", report.Areas);
        writer.Findings("findings", report.Findings);
        writer.Assumptions("assumptions", report.Assumptions);
    });
}
