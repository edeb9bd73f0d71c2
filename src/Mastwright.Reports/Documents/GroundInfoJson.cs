using System.Collections.Immutable;
using Mastwright.Ground;
using Mastwright.Storage.Ground;

namespace Mastwright.Reports.Documents;

/// <summary>A plan's ground files as a JSON document of shape "ground-info", version 1.</summary>
internal static class GroundInfoJson
{
    internal static string Write(string folder, ImmutableArray<GroundFileInfo> files, ImmutableArray<GroundTile> missing) =>
        JsonDocumentWriter.Write("ground-info", 1, writer =>
        {
            writer.WriteStartArray("files");
            foreach (GroundFileInfo file in files)
            {
                writer.WriteStartObject();
                writer.WriteString("source", file.SourceName);
                writer.WriteString("file", Path.GetRelativePath(folder, file.FilePath));
                writer.WriteString("format", file.Format);
                writer.Number("columns", file.Frame.Columns);
                writer.Number("rows", file.Frame.Rows);
                writer.Number("resolution-metres", file.Frame.ResolutionMetres);
                writer.Number("south", file.Bounds.SouthDegrees);
                writer.Number("west", file.Bounds.WestDegrees);
                writer.Number("north", file.Bounds.NorthDegrees);
                writer.Number("east", file.Bounds.EastDegrees);
                writer.WriteBoolean("is-cover", file.IsCover);
                writer.WriteString("kind", file.Kind switch { HeightKind.BareEarth => "bare-earth", HeightKind.Surface => "surface", _ => "unknown" });
                writer.WriteString("datum", file.Datum);
                writer.Number("lowest", file.Lowest);
                writer.Number("highest", file.Highest);
                writer.Number("empty-percent", file.VoidPercent);
                writer.WriteString("sha256", file.Sha256);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.Strings("missing-tiles", missing.Select(tile => tile.Name));
        });
}
