using System.Text.Json;
using Mastwright.Ground;
using Mastwright.Plans;
using Mastwright.Propagation;
using Mastwright.Reports.Paths;

namespace Mastwright.Reports.Documents;

/// <summary>One link as a JSON document of shape "path", version 1.</summary>
internal static class PathJson
{
    internal static string Write(Assessment assessment, LinkReport link, MastHeights heights) => JsonDocumentWriter.Write("path", 1, writer =>
    {
        CheckJson.Link(writer, link);
        writer.Estimate("from-height-metres", link.Path.FromHeightMetres);
        writer.Estimate("to-height-metres", link.Path.ToHeightMetres);
        Clearance(writer, "clearance", link.Path.Clearance);
        Clearance(writer, "clearance-low-k", link.Path.ClearanceLowK);
        Heights(writer, "from-mast", heights.From);
        Heights(writer, "to-mast", heights.To);
        writer.Number("low-k", assessment.Settings.LowKFactor);
        writer.P1812("p1812", link.Path.Out?.P1812Result);
        writer.P1812("p1812-back", link.Path.Back?.P1812Result);
        Profile(writer, link);
        writer.Findings("findings", [link.Finding, .. link.Findings, .. assessment.FindingsBeside(link)]);
        writer.Assumptions("assumptions", assessment.AssumptionsOf(link));
    });

    private static void Heights(Utf8JsonWriter writer, string name, EndHeights heights)
    {
        writer.WriteStartObject(name);
        writer.Number("for-margin-metres", heights.ForMarginMetres);
        writer.Number("for-clearance-metres", heights.ForClearanceMetres);
        writer.Number("for-clearance-low-k-metres", heights.ForClearanceLowKMetres);
        writer.WriteEndObject();
    }

    private static void Clearance(Utf8JsonWriter writer, string name, ClearanceAnalysis? clearance)
    {
        if (clearance is null)
        {
            writer.WriteNull(name);
            return;
        }

        writer.WriteStartObject(name);
        writer.Number("k", clearance.KFactor);
        writer.Number("from-elevation-degrees", clearance.TransmitterElevationDegrees);
        writer.Number("to-elevation-degrees", clearance.ReceiverElevationDegrees);
        writer.WriteBoolean("line-of-sight", clearance.IsLineOfSight);
        writer.WriteStartArray("obstructions");
        foreach (Obstruction obstruction in clearance.Obstructions)
        {
            writer.WriteStartObject();
            writer.Number("from-metres", clearance.Points[obstruction.FirstPoint].DistanceMetres);
            writer.Number("to-metres", clearance.Points[obstruction.LastPoint].DistanceMetres);
            writer.Number("worst-metres", obstruction.Worst.DistanceMetres);
            writer.Number("clearance-metres", obstruction.Worst.ClearanceMetres);
            writer.Number("clearance-radii", obstruction.Worst.ClearanceRadii);
            writer.Number("edge-loss-db", obstruction.EdgeLossDb);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Profile(Utf8JsonWriter writer, LinkReport link)
    {
        if (link.Path.Terrain is not { } terrain)
        {
            writer.WriteNull("profile");
            return;
        }

        ProfileJson.Points(
            writer,
            terrain,
            link.Path.Profile is { } profile ? profile.HeightsMetres : terrain.HeightsMetres,
            link.Path.Profile is { } cover ? cover.CoverMetres : terrain.CoverHeightsMetres);
    }
}
