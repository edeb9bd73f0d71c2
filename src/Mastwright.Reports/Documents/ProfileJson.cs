using System.Text.Json;
using Mastwright.Ground;

namespace Mastwright.Reports.Documents;

/// <summary>The ground between two places as a JSON document of shape "profile", version 1.</summary>
internal static class ProfileJson
{
    internal static string Write(TerrainProfile terrain) => JsonDocumentWriter.Write("profile", 1, writer =>
    {
        writer.Number("distance-metres", terrain.LengthMetres);
        writer.Number("bearing-degrees", terrain.Segment.InitialBearingDegrees);
        writer.WriteBoolean("complete", terrain.IsComplete);
        writer.Strings("gaps", terrain.Gaps.Select(gap => gap.ToString()));
        Points(writer, terrain, terrain.HeightsMetres, terrain.CoverHeightsMetres);
    });

    /// <summary>The points of a profile, as the property "profile" of an object that is open.</summary>
    /// <param name="writer">Where to.</param>
    /// <param name="terrain">The ground.</param>
    /// <param name="heightsMetres">A height for each of its points.</param>
    /// <param name="coverMetres">A height of the cover for each of its points.</param>
    internal static void Points(Utf8JsonWriter writer, TerrainProfile terrain, ReadOnlySpan<double> heightsMetres, ReadOnlySpan<double> coverMetres)
    {
        writer.WriteStartArray("profile");
        for (int i = 0; i < terrain.Count; i++)
        {
            writer.WriteStartObject();
            writer.Number("distance-metres", terrain.DistanceMetres(i));
            writer.Number("height-metres", heightsMetres[i]);
            writer.Number("cover-metres", coverMetres[i]);
            writer.WriteNumber("cover-code", terrain.CoverCodes[i]);
            writer.WriteString("zone", double.IsNaN(terrain.HeightsMetres[i]) ? null : terrain.Zones[i] switch { Zone.Sea => "sea", Zone.Coast => "coast", _ => "inland" });
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }
}
