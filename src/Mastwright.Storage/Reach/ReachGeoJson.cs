using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Mastwright.Geodesy;
using Mastwright.Network.Reach;

namespace Mastwright.Storage.Reach;

/// <summary>Writes the contours of a reach map as GeoJSON (RFC 7946): longitude and latitude on WGS 84, outer lines counter-clockwise.</summary>
public static class ReachGeoJson
{
    private const int Decimals = 7;

    private static readonly JsonWriterOptions Form = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The text of the file: one multi-polygon a class, holding all with at least its margin, and the station as a point.</summary>
    /// <param name="contours">The contours.</param>
    /// <param name="map">The map they are of.</param>
    /// <param name="properties">What each of them tells besides its own numbers, by name.</param>
    /// <remarks>Longitudes run on past 180° where the map does, so that no shape is torn; RFC 7946 section 3.1.9 would have it cut there.</remarks>
    public static string Write(ImmutableArray<ReachContour> contours, ReachMap map, IReadOnlyDictionary<string, string> properties)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(properties);
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter writer = new(buffer, Form))
        {
            GeoPoint station = map.Field.Input.Station;
            writer.WriteStartObject();
            writer.WriteString("type", "FeatureCollection");
            writer.WriteStartArray("features");
            Feature(writer, properties, null, () =>
            {
                writer.WriteString("type", "Point");
                writer.WritePropertyName("coordinates");
                Place(writer, station, station);
            });
            foreach (ReachContour contour in contours)
            {
                Feature(writer, properties, contour, () =>
                {
                    writer.WriteString("type", "MultiPolygon");
                    writer.WriteStartArray("coordinates");
                    foreach (ReachPatch patch in contour.Patches)
                    {
                        writer.WriteStartArray();
                        Ring(writer, patch.Outer, station);
                        foreach (ReachRing hole in patch.Holes)
                        {
                            Ring(writer, hole, station);
                        }

                        writer.WriteEndArray();
                    }

                    writer.WriteEndArray();
                });
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Feature(Utf8JsonWriter writer, IReadOnlyDictionary<string, string> properties, ReachContour? contour, Action geometry)
    {
        writer.WriteStartObject();
        writer.WriteString("type", "Feature");
        writer.WriteStartObject("properties");
        foreach ((string name, string value) in properties.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            writer.WriteString(name, value);
        }

        if (contour is not null)
        {
            writer.WriteNumber("margin-from-db", contour.FromDb);
            writer.WriteNumber("area-square-metres", Math.Round(contour.AreaSquareMetres));
        }

        writer.WriteEndObject();
        writer.WriteStartObject("geometry");
        geometry();
        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static void Ring(Utf8JsonWriter writer, ReachRing ring, GeoPoint station)
    {
        writer.WriteStartArray();
        foreach (GeoPoint place in ring.Places)
        {
            Place(writer, place, station);
        }

        Place(writer, ring.Places[0], station);
        writer.WriteEndArray();
    }

    private static void Place(Utf8JsonWriter writer, GeoPoint place, GeoPoint station)
    {
        double turns = Math.Round((station.LongitudeDegrees - place.LongitudeDegrees) / 360);
        writer.WriteStartArray();
        writer.WriteNumberValue(Math.Round(place.LongitudeDegrees + (360 * turns), Decimals));
        writer.WriteNumberValue(Math.Round(place.LatitudeDegrees, Decimals));
        writer.WriteEndArray();
    }
}
