using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Mastwright.Geodesy;
using Mastwright.Network.Relays;
using Mastwright.Plans;
using Mastwright.Storage.Reach;

namespace Mastwright.Storage.Network;

/// <summary>Writes a relay search as GeoJSON (RFC 7946): a point a relay of the choice and a candidate of the ranking, a line a link that a relay hangs on.</summary>
public static class RelayGeoJson
{
    private static readonly JsonWriterOptions Form = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of a file.</summary>
    public static string Write(RelayReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter writer = new(buffer, Form))
        {
            writer.WriteStartObject();
            writer.WriteString("type", "FeatureCollection");
            writer.WriteStartArray("features");
            for (int i = 0; i < report.Chosen.Length; i++)
            {
                Relay(writer, report, i);
            }

            foreach (ChosenRelay relay in report.Chosen)
            {
                foreach (LinkReport parent in relay.Parents)
                {
                    Link(writer, parent);
                }
            }

            foreach (RankedRelay ranked in report.Ranking.Where(one => report.Chosen.All(relay => relay.Candidate != one.Candidate)))
            {
                Begin(writer, ranked.Candidate, "ranked");
                Number(writer, "alone", ranked.Alone);
                writer.WriteString("unit", report.Unit);
                End(writer, ranked.Candidate.Place);
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Relay(Utf8JsonWriter writer, RelayReport report, int at)
    {
        ChosenRelay relay = report.Chosen[at];
        Begin(writer, relay.Candidate, "relay");
        writer.WriteNumber("rank", at + 1);
        Number(writer, "gain", relay.Gain);
        Number(writer, "alone", relay.Alone);
        writer.WriteString("unit", report.Unit);
        writer.WriteString("power", relay.Candidate.Power.Length > 0 ? relay.Candidate.Power : "unknown");
        writer.WriteString("access", relay.Candidate.Access.Length > 0 ? relay.Candidate.Access : "unknown");
        End(writer, relay.Candidate.Place);
    }

    private static void Begin(Utf8JsonWriter writer, RelayCandidate candidate, string what)
    {
        writer.WriteStartObject();
        writer.WriteString("type", "Feature");
        writer.WriteStartObject("properties");
        writer.WriteString("what", what);
        writer.WriteString("key", candidate.Key);
        writer.WriteString("name", candidate.Name);
        Number(writer, "mast-metres", candidate.MastMetres);
    }

    private static void End(Utf8JsonWriter writer, GeoPoint place)
    {
        writer.WriteEndObject();
        writer.WriteStartObject("geometry");
        writer.WriteString("type", "Point");
        writer.WritePropertyName("coordinates");
        ReachGeoJson.Position(writer, place.LongitudeDegrees, place.LatitudeDegrees);
        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static void Link(Utf8JsonWriter writer, LinkReport link)
    {
        writer.WriteStartObject();
        writer.WriteString("type", "Feature");
        writer.WriteStartObject("properties");
        writer.WriteString("what", "link");
        writer.WriteString("from", link.From.Subject);
        writer.WriteString("to", link.To.Subject);
        Number(writer, "distance-metres", link.Segment.DistanceMetres);
        Number(writer, "margin-out-db", link.Out.MarginDb!.Value.Median);
        Number(writer, "margin-back-db", link.Back.MarginDb!.Value.Median);
        writer.WriteEndObject();
        writer.WriteStartObject("geometry");
        LinksGeoJson.Line(writer, link.From.Position.Point, link.To.Position.Point);
        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static void Number(Utf8JsonWriter writer, string name, double value) => writer.WriteNumber(name, Math.Round(value, 4));
}
