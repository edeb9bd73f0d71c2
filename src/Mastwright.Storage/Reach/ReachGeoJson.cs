using System.Buffers;
using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Mastwright.Geodesy;
using Mastwright.Network.Reach;

namespace Mastwright.Storage.Reach;

/// <summary>Writes places and areas of a reach map as GeoJSON (RFC 7946): longitude and latitude on WGS 84, outer lines counter-clockwise, areas cut at the antimeridian.</summary>
public static class ReachGeoJson
{
    private const int Decimals = 7;

    private static readonly JsonWriterOptions Form = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The contours of the map of one station: one multi-polygon a class, holding all with at least its margin, and the station as a point.</summary>
    /// <param name="contours">The contours.</param>
    /// <param name="map">The map they are of.</param>
    /// <param name="properties">What each of them tells besides its own numbers, by name.</param>
    public static string Write(ImmutableArray<ReachContour> contours, ReachMap map, IReadOnlyDictionary<string, string> properties)
    {
        ArgumentNullException.ThrowIfNull(map);
        return Write(
        [
            new() { Place = map.Field.Input.Station },
            .. contours.Select(contour => new ReachFeature
            {
                Patches = contour.Patches,
                Numbers = [new("margin-from-db", contour.FromDb), new("area-square-metres", Math.Round(contour.AreaSquareMetres))],
            }),
        ], properties);
    }

    /// <summary>The text of a file.</summary>
    /// <param name="features">Places and areas.</param>
    /// <param name="properties">What each of them tells besides its own, by name.</param>
    public static string Write(IEnumerable<ReachFeature> features, IReadOnlyDictionary<string, string> properties)
    {
        ArgumentNullException.ThrowIfNull(features);
        ArgumentNullException.ThrowIfNull(properties);
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter writer = new(buffer, Form))
        {
            writer.WriteStartObject();
            writer.WriteString("type", "FeatureCollection");
            writer.WriteStartArray("features");
            foreach (ReachFeature feature in features)
            {
                Feature(writer, feature, properties);
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Feature(Utf8JsonWriter writer, ReachFeature feature, IReadOnlyDictionary<string, string> properties)
    {
        writer.WriteStartObject();
        writer.WriteString("type", "Feature");
        writer.WriteStartObject("properties");
        foreach ((string name, string value) in properties.OrderBy(pair => pair.Key, StringComparer.Ordinal).Concat(feature.Words))
        {
            writer.WriteString(name, value);
        }

        foreach ((string name, double value) in feature.Numbers)
        {
            writer.WriteNumber(name, value);
        }

        writer.WriteEndObject();
        writer.WriteStartObject("geometry");
        if (feature.Place is { } place)
        {
            writer.WriteString("type", "Point");
            writer.WritePropertyName("coordinates");
            Position(writer, place.LongitudeDegrees, place.LatitudeDegrees);
        }
        else
        {
            writer.WriteString("type", "MultiPolygon");
            writer.WriteStartArray("coordinates");
            foreach (List<List<(double X, double Y)>> polygon in feature.Patches.SelectMany(AntimeridianCut.Polygons))
            {
                writer.WriteStartArray();
                polygon.ForEach(ring => Ring(writer, ring));
                writer.WriteEndArray();
            }

            writer.WriteEndArray();
        }

        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static void Ring(Utf8JsonWriter writer, List<(double X, double Y)> ring)
    {
        writer.WriteStartArray();
        foreach ((double longitude, double latitude) in ring.Append(ring[0]))
        {
            Position(writer, longitude, latitude);
        }

        writer.WriteEndArray();
    }

    /// <summary>A position: longitude, latitude, in degrees.</summary>
    internal static void Position(Utf8JsonWriter writer, double longitudeDegrees, double latitudeDegrees)
    {
        writer.WriteStartArray();
        writer.WriteNumberValue(Math.Round(longitudeDegrees, Decimals));
        writer.WriteNumberValue(Math.Round(latitudeDegrees, Decimals));
        writer.WriteEndArray();
    }
}

/// <summary>A place or an area of a GeoJSON file, with what it tells.</summary>
public sealed record ReachFeature
{
    /// <summary>The place; null for an area.</summary>
    public GeoPoint? Place { get; init; }

    /// <summary>The area; empty for a place.</summary>
    public ImmutableArray<ReachPatch> Patches { get; init; } = [];

    /// <summary>Words that it tells, by name.</summary>
    public ImmutableArray<KeyValuePair<string, string>> Words { get; init; } = [];

    /// <summary>Numbers that it tells, by name.</summary>
    public ImmutableArray<KeyValuePair<string, double>> Numbers { get; init; } = [];
}
