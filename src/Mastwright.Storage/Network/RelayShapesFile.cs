using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Mastwright.Geodesy;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Network;

/// <summary>Areas and lines of a GeoJSON file (RFC 7946): where relays must not stand, and tracks that they shall be near.</summary>
public sealed record RelayShapes
{
    /// <summary>Areas: each a list of rings, the first the outline, the others holes.</summary>
    public ImmutableArray<ImmutableArray<ImmutableArray<GeoPoint>>> Areas { get; init; } = [];

    /// <summary>Lines.</summary>
    public ImmutableArray<ImmutableArray<GeoPoint>> Lines { get; init; } = [];

    /// <summary>Reads a file. Never throws for what it holds.</summary>
    /// <param name="path">The file, at most 16 MiB.</param>
    /// <param name="problem">What is wrong; empty when nothing is.</param>
    /// <returns>The shapes; null when something is wrong.</returns>
    public static RelayShapes? Read(string path, out string problem)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        byte[]? bytes = PlanSource.ReadBounded(path, Path.GetFullPath(path), out PlanProblem? unread);
        problem = unread?.ToString() ?? "";
        return bytes is null ? null : Parse(path, bytes, out problem);
    }

    internal static RelayShapes? Parse(string name, byte[] bytes, out string problem)
    {
        try
        {
            ReadOnlyMemory<byte> json = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsMemory(3) : bytes;
            using JsonDocument document = JsonDocument.Parse(json, new JsonDocumentOptions { MaxDepth = 64 });
            Collector found = new();
            found.Take(document.RootElement);
            problem = found.Problem.Length > 0 ? $"{name}: {found.Problem}" : "";
            return problem.Length > 0 ? null : new() { Areas = [.. found.Areas], Lines = [.. found.Lines] };
        }
        catch (JsonException fault)
        {
            problem = string.Create(CultureInfo.InvariantCulture, $"{name}:{(fault.LineNumber ?? 0) + 1}: this is not well-formed JSON; wanted GeoJSON text");
            return null;
        }
    }

    private sealed class Collector
    {
        internal List<ImmutableArray<ImmutableArray<GeoPoint>>> Areas { get; } = [];

        internal List<ImmutableArray<GeoPoint>> Lines { get; } = [];

        internal string Problem { get; private set; } = "";

        internal void Take(JsonElement element)
        {
            switch (Type(element))
            {
                case "FeatureCollection":
                    Each(element, "features", Take);
                    break;
                case "GeometryCollection":
                    Each(element, "geometries", Take);
                    break;
                case "Feature" when element.TryGetProperty("geometry", out JsonElement geometry):
                    if (geometry.ValueKind != JsonValueKind.Null)
                    {
                        Take(geometry);
                    }

                    break;
                case "Polygon":
                    Each(element, "coordinates", null, Area);
                    break;
                case "MultiPolygon":
                    Each(element, "coordinates", Area);
                    break;
                case "LineString":
                    Each(element, "coordinates", null, line => Lines.Add(Points(line)));
                    break;
                case "MultiLineString":
                    Each(element, "coordinates", line => Lines.Add(Points(line)));
                    break;
                case "Point" or "MultiPoint":
                    break;
                default:
                    Problem = "this is not GeoJSON; wanted a FeatureCollection, a Feature or a geometry";
                    break;
            }
        }

        private static string Type(JsonElement element) =>
            element.ValueKind == JsonValueKind.Object && element.TryGetProperty("type", out JsonElement type) && type.ValueKind == JsonValueKind.String ? type.GetString()! : "";

        private void Area(JsonElement rings)
        {
            List<ImmutableArray<GeoPoint>> area = [];
            foreach (JsonElement ring in Elements(rings, "an area is a list of rings"))
            {
                area.Add(Points(ring));
            }

            Areas.Add([.. area]);
        }

        private ImmutableArray<GeoPoint> Points(JsonElement list)
        {
            ImmutableArray<GeoPoint>.Builder points = ImmutableArray.CreateBuilder<GeoPoint>();
            foreach (JsonElement point in Elements(list, "a line or ring is a list of points"))
            {
                if (point.ValueKind == JsonValueKind.Array && point.GetArrayLength() >= 2
                    && point[0].ValueKind == JsonValueKind.Number && point[1].ValueKind == JsonValueKind.Number
                    && point[0].TryGetDouble(out double longitude) && point[1].TryGetDouble(out double latitude)
                    && longitude is >= -360 and <= 360 && latitude is >= -90 and <= 90)
                {
                    points.Add(new(latitude, longitude - (360 * Math.Round(longitude / 360))));
                }
                else
                {
                    string text = point.GetRawText();
                    Problem = $"'{(text.Length > 40 ? text[..40] + "…" : text)}' is no point; wanted [longitude, latitude] in degrees";
                    return [];
                }
            }

            return points.ToImmutable();
        }

        private void Each(JsonElement element, string member, Action<JsonElement>? each, Action<JsonElement>? whole = null)
        {
            if (!element.TryGetProperty(member, out JsonElement list))
            {
                Problem = $"a {Type(element)} has no '{member}'";
                return;
            }

            if (whole is not null)
            {
                whole(list);
                return;
            }

            foreach (JsonElement one in Elements(list, $"'{member}' is a list"))
            {
                each!(one);
            }
        }

        private IEnumerable<JsonElement> Elements(JsonElement list, string wanted)
        {
            if (list.ValueKind == JsonValueKind.Array)
            {
                return list.EnumerateArray();
            }

            Problem = wanted;
            return [];
        }
    }
}
