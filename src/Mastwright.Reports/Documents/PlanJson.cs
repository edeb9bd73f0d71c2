using System.Collections.Immutable;
using System.Text.Json;
using Mastwright.Geodesy;
using Mastwright.Plans;
using Mastwright.Reports.Sessions;

namespace Mastwright.Reports.Documents;

/// <summary>What a plan holds as a JSON document of shape "plan", version 1: stations, fit-outs and ground, nothing worked out.</summary>
internal static class PlanJson
{
    /// <summary>Writes the document.</summary>
    /// <param name="file">Name of the plan's file.</param>
    /// <param name="number">Counts the readings of the file by who reads it again on a change.</param>
    /// <param name="session">The plan; null when it cannot be used.</param>
    /// <param name="problems">Why it cannot be used; empty when it can.</param>
    /// <param name="notes">What is no error but worth a look.</param>
    internal static string Write(string file, int number, PlanSession? session, ImmutableArray<string> problems, ImmutableArray<string> notes) =>
        JsonDocumentWriter.Write("plan", 1, writer =>
        {
            writer.WriteString("file", file);
            writer.WriteNumber("reading", number);
            writer.WriteString("plan", session?.Plan.Name);
            writer.WriteString("region", session?.Plan.Region);
            writer.Number("frequency-hertz", session?.Plan.Modem.FrequencyHz);
            writer.WriteString("ground-hash", session?.GroundHash);
            writer.WriteNumber("ground-files", session?.Ground.FileCount ?? 0);
            writer.Number("ground-resolution-metres", session?.Ground.FinestMetres);
            Bounds(writer, session);
            writer.WriteStartArray("sites");
            foreach (Site site in session?.Plan.Sites ?? [])
            {
                writer.WriteStartObject();
                writer.WriteString("key", site.Key);
                writer.WriteString("name", site.Name);
                Place(writer, site.Position);
                writer.WriteString("in-use", site.InUse.Length == 0 ? null : site.InUse);
                writer.WriteStartArray("fit-outs");
                foreach (FitOut fitOut in site.FitOuts)
                {
                    writer.WriteStartObject();
                    writer.WriteString("key", fitOut.Key);
                    writer.WriteString("name", fitOut.Name);
                    writer.WriteEndObject();
                }

                writer.WriteEndArray();
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteStartArray("neighbours");
            foreach (Neighbour neighbour in session?.Plan.Neighbours ?? [])
            {
                writer.WriteStartObject();
                writer.WriteString("key", neighbour.Key);
                writer.WriteString("name", neighbour.Name);
                Place(writer, neighbour.Position);
                writer.WriteBoolean("own", neighbour.Own);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.Strings("problems", problems);
            writer.Strings("notes", notes);
        });

    private static void Place(Utf8JsonWriter writer, LocatedPoint position)
    {
        writer.Number("latitude", position.Point.LatitudeDegrees);
        writer.Number("longitude", position.Point.LongitudeDegrees);
        writer.Number("radius-metres", position.RadiusMetres);
    }

    /// <summary>The area of the stations; where there are none, that of the ground.</summary>
    private static void Bounds(Utf8JsonWriter writer, PlanSession? session)
    {
        GeoBounds? bounds = session is null ? null : PlanArea.Of(session.Plan) ?? OfGround(session);
        if (bounds is null)
        {
            writer.WriteNull("bounds");
            return;
        }

        writer.WriteStartObject("bounds");
        writer.Number("south", bounds.SouthDegrees);
        writer.Number("west", bounds.WestDegrees);
        writer.Number("north", bounds.NorthDegrees);
        writer.Number("east", bounds.EastDegrees);
        writer.WriteEndObject();
    }

    private static GeoBounds? OfGround(PlanSession session)
    {
        GeoBounds[] files = [.. session.Ground.HeightBounds];
        return files.Length == 0
            ? null
            : GeoBounds.Of([.. files.SelectMany(one => new GeoPoint[] { new(one.SouthDegrees, one.WestDegrees), new(one.NorthDegrees, one.EastDegrees) })]);
    }
}
