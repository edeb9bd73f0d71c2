using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Mastwright.Geodesy;
using Mastwright.Network.Links;
using Mastwright.Storage.Reach;

namespace Mastwright.Storage.Network;

/// <summary>Writes stations and the links between them as GeoJSON (RFC 7946): a point a station, a line a link, cut at the antimeridian.</summary>
public static class LinksGeoJson
{
    private static readonly JsonWriterOptions Form = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of a file.</summary>
    /// <param name="matrix">The links.</param>
    /// <param name="all">Whether links that fall short, or are unknown, are written as well.</param>
    public static string Write(LinkMatrix matrix, bool all)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter writer = new(buffer, Form))
        {
            writer.WriteStartObject();
            writer.WriteString("type", "FeatureCollection");
            writer.WriteStartArray("features");
            foreach (MatrixStation station in matrix.Stations)
            {
                writer.WriteStartObject();
                writer.WriteString("type", "Feature");
                writer.WriteStartObject("properties");
                writer.WriteString("station", station.Subject);
                writer.WriteString("name", station.Name);
                writer.WriteEndObject();
                writer.WriteStartObject("geometry");
                writer.WriteString("type", "Point");
                writer.WritePropertyName("coordinates");
                ReachGeoJson.Position(writer, station.Place.LongitudeDegrees, station.Place.LatitudeDegrees);
                writer.WriteEndObject();
                writer.WriteEndObject();
            }

            foreach (LinkPair pair in matrix.Pairs)
            {
                if (all || pair.Out.MarginDb is { Median: >= 0 } || pair.Back.MarginDb is { Median: >= 0 })
                {
                    Link(writer, matrix, pair);
                }
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Link(Utf8JsonWriter writer, LinkMatrix matrix, LinkPair pair)
    {
        writer.WriteStartObject();
        writer.WriteString("type", "Feature");
        writer.WriteStartObject("properties");
        writer.WriteString("from", matrix.Stations[pair.From].Subject);
        writer.WriteString("to", matrix.Stations[pair.To].Subject);
        writer.WriteNumber("distance-metres", Math.Round(pair.DistanceMetres, 1));
        writer.WriteString("verdict", pair.Verdict.ToString().ToLowerInvariant());
        Number(writer, "margin-out-db", pair.Out.MarginDb?.Median);
        Number(writer, "margin-back-db", pair.Back.MarginDb?.Median);
        Number(writer, "works-out", pair.Out.Odds?.Works);
        Number(writer, "works-back", pair.Back.Odds?.Works);
        writer.WriteEndObject();
        writer.WriteStartObject("geometry");
        Line(writer, matrix.Stations[pair.From].Place, matrix.Stations[pair.To].Place);
        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    /// <summary>A line between two places, cut at the antimeridian: type and coordinates.</summary>
    internal static void Line(Utf8JsonWriter writer, GeoPoint from, GeoPoint to)
    {
        double turn = to.LongitudeDegrees - from.LongitudeDegrees;
        bool isCut = Math.Abs(turn) > 180;
        writer.WriteString("type", isCut ? "MultiLineString" : "LineString");
        writer.WriteStartArray("coordinates");
        if (!isCut)
        {
            ReachGeoJson.Position(writer, from.LongitudeDegrees, from.LatitudeDegrees);
            ReachGeoJson.Position(writer, to.LongitudeDegrees, to.LatitudeDegrees);
        }
        else
        {
            double edge = from.LongitudeDegrees > 0 ? 180 : -180;
            double share = (edge - from.LongitudeDegrees) / (turn - (360 * Math.Sign(turn)));
            double latitude = from.LatitudeDegrees + (share * (to.LatitudeDegrees - from.LatitudeDegrees));
            writer.WriteStartArray();
            ReachGeoJson.Position(writer, from.LongitudeDegrees, from.LatitudeDegrees);
            ReachGeoJson.Position(writer, edge, latitude);
            writer.WriteEndArray();
            writer.WriteStartArray();
            ReachGeoJson.Position(writer, -edge, latitude);
            ReachGeoJson.Position(writer, to.LongitudeDegrees, to.LatitudeDegrees);
            writer.WriteEndArray();
        }

        writer.WriteEndArray();
    }

    private static void Number(Utf8JsonWriter writer, string name, double? value)
    {
        if (value is { } number)
        {
            writer.WriteNumber(name, Math.Round(number, 4));
        }
        else
        {
            writer.WriteNull(name);
        }
    }
}
