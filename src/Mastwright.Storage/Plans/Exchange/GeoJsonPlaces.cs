using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Mastwright.Geodesy;

namespace Mastwright.Storage.Plans.Exchange;

/// <summary>GeoJSON (RFC 7946): a feature with a point is a place.</summary>
internal static class GeoJsonPlaces
{
    internal static void Read(byte[] bytes, List<ExchangedPlace> places, List<string> left)
    {
        ReadOnlyMemory<byte> json = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsMemory(3) : bytes;
        using JsonDocument document = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = 64 });
        int others = 0;
        switch (Type(document.RootElement))
        {
            case "FeatureCollection" when document.RootElement.TryGetProperty("features", out JsonElement features) && features.ValueKind == JsonValueKind.Array:
                foreach (JsonElement feature in features.EnumerateArray())
                {
                    others += Feature(feature, places) ? 0 : 1;
                }

                break;
            case "Feature":
                others += Feature(document.RootElement, places) ? 0 : 1;
                break;
            case "Point":
                places.Add(new() { Position = new(Point(document.RootElement, out double? elevation), 0), ElevationMetres = elevation });
                break;
            default:
                throw new PlaceFaultException(0, "This is not GeoJSON with features.", "", "a FeatureCollection, a Feature or a Point");
        }

        if (others > 0)
        {
            left.Add(string.Create(CultureInfo.InvariantCulture, $"{others} features are no points (lines, areas) and were left."));
        }
    }

    internal static string Write(ImmutableArray<ExchangedPlace> places)
    {
        ArrayBufferWriter<byte> buffer = new();
        using (Utf8JsonWriter writer = new(buffer, new JsonWriterOptions { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            writer.WriteStartObject();
            writer.WriteString("type", "FeatureCollection");
            writer.WriteStartArray("features");
            foreach (ExchangedPlace place in places)
            {
                Feature(writer, place);
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.WrittenSpan) + "\n";
    }

    private static void Feature(Utf8JsonWriter writer, ExchangedPlace place)
    {
        writer.WriteStartObject();
        writer.WriteString("type", "Feature");
        writer.WriteString("id", place.Key);
        writer.WriteStartObject("geometry");
        writer.WriteString("type", "Point");
        writer.WriteStartArray("coordinates");
        writer.WriteNumberValue(PlaceNumbers.Exact(place.Position.Point.LongitudeDegrees));
        writer.WriteNumberValue(PlaceNumbers.Exact(place.Position.Point.LatitudeDegrees));
        if (place.ElevationMetres is { } elevation)
        {
            writer.WriteNumberValue(PlaceNumbers.Exact(elevation));
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
        writer.WriteStartObject("properties");
        writer.WriteString("name", place.Name);
        writer.WriteString("key", place.Key);
        writer.WriteString("kind", place.IsNeighbour == true ? "neighbour" : "site");
        writer.WritePropertyName("radius");
        writer.WriteNumberValue(PlaceNumbers.Exact(place.Position.RadiusMetres));
        if (place.Remark.Length > 0)
        {
            writer.WriteString("description", place.Remark);
        }

        writer.WriteEndObject();
        writer.WriteEndObject();
    }

    private static bool Feature(JsonElement feature, List<ExchangedPlace> places)
    {
        if (Type(feature) != "Feature" || !feature.TryGetProperty("geometry", out JsonElement geometry) || Type(geometry) != "Point")
        {
            return false;
        }

        GeoPoint point = Point(geometry, out double? elevation);
        string name = "";
        string key = "";
        string kind = "";
        double radius = 0;
        List<string> remarks = [];
        if (feature.TryGetProperty("properties", out JsonElement properties) && properties.ValueKind == JsonValueKind.Object)
        {
            foreach (JsonProperty property in properties.EnumerateObject())
            {
                string text = property.Value.ValueKind == JsonValueKind.Null ? "" : property.Value.ToString();
                switch (property.Name)
                {
                    case "name":
                        name = text;
                        break;
                    case "key":
                        key = text;
                        break;
                    case "kind" when PlaceFile.Kind(text) is not null:
                        kind = text;
                        break;
                    case "radius" when property.Value.ValueKind == JsonValueKind.Number:
                        radius = PlaceNumbers.Metres(0, text, 0) ?? 0;
                        break;
                    case "description":
                        remarks.Add(text);
                        break;
                    default:
                        if (text.Length > 0)
                        {
                            remarks.Add($"{property.Name}: {text}");
                        }

                        break;
                }
            }
        }

        places.Add(new()
        {
            Name = name,
            Key = key,
            IsNeighbour = PlaceFile.Kind(kind),
            Position = new(point, radius),
            ElevationMetres = elevation,
            Remark = string.Join("\n", remarks.Where(remark => remark.Length > 0)),
        });
        return true;
    }

    private static GeoPoint Point(JsonElement geometry, out double? elevation)
    {
        elevation = null;
        if (!geometry.TryGetProperty("coordinates", out JsonElement coordinates) || coordinates.ValueKind != JsonValueKind.Array || coordinates.GetArrayLength() < 2)
        {
            throw new PlaceFaultException(0, "A point has no coordinates.", geometry.ToString(), "[longitude, latitude]");
        }

        JsonElement[] numbers = [.. coordinates.EnumerateArray()];
        elevation = numbers.Length > 2 ? PlaceNumbers.Metres(0, numbers[2].ToString(), -12_000) : null;
        return PlaceNumbers.Point(0, numbers[1].ToString(), numbers[0].ToString());
    }

    private static string Type(JsonElement element) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty("type", out JsonElement type) && type.ValueKind == JsonValueKind.String ? type.GetString()! : "";
}
