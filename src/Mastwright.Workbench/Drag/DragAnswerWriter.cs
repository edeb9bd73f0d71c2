using System.Buffers;
using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Runtime.InteropServices;
using System.Text.Encodings.Web;
using System.Text.Json;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Reach;
using Mastwright.Plans;
using Mastwright.Propagation;
using Mastwright.Reports.Documents;

namespace Mastwright.Workbench.Drag;

/// <summary>
/// The answer to a step of a drag as bytes, all little endian: the length of the header in four bytes, the header as JSON in UTF-8 (shape
/// "drag", version 1) filled with spaces to a multiple of four, then the values of the reach as 32-bit floats, row by row from the north; NaN
/// where there is none.
/// </summary>
internal static class DragAnswerWriter
{
    /// <summary>The type of the answer's content.</summary>
    internal const string ContentType = "application/vnd.mastwright.drag";

    private static readonly JsonWriterOptions Form = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    internal static byte[] Write(DragAnswer answer)
    {
        ReadOnlySpan<float> values = answer.Values.Span;
        ArrayBufferWriter<byte> header = new();
        using (Utf8JsonWriter writer = new(header, Form))
        {
            Header(writer, answer);
        }

        int padded = (header.WrittenCount + 3) / 4 * 4;
        byte[] bytes = new byte[sizeof(int) + padded + (values.Length * sizeof(float))];
        BinaryPrimitives.WriteInt32LittleEndian(bytes, padded);
        header.WrittenSpan.CopyTo(bytes.AsSpan(sizeof(int)));
        bytes.AsSpan(sizeof(int) + header.WrittenCount, padded - header.WrittenCount).Fill((byte)' ');
        Span<byte> raster = bytes.AsSpan(sizeof(int) + padded);
        if (BitConverter.IsLittleEndian)
        {
            MemoryMarshal.AsBytes(values).CopyTo(raster);
        }
        else
        {
            for (int i = 0; i < values.Length; i++)
            {
                BinaryPrimitives.WriteSingleLittleEndian(raster[(i * sizeof(float))..], values[i]);
            }
        }

        return bytes;
    }

    private static void Header(Utf8JsonWriter writer, DragAnswer answer)
    {
        writer.WriteStartObject();
        writer.WriteString("shape", "drag");
        writer.WriteNumber("version", 1);
        writer.WriteString("station", answer.Station.Subject);
        writer.WriteString("name", answer.Station.Name);
        writer.Number("latitude", answer.Station.Position.Point.LatitudeDegrees);
        writer.Number("longitude", answer.Station.Position.Point.LongitudeDegrees);
        writer.Number("height-metres", answer.HeightMetres);
        writer.WriteStartArray("links");
        foreach (LinkReport link in answer.Links)
        {
            Link(writer, link, answer.Station.Key);
        }

        writer.WriteEndArray();
        Path(writer, answer.Path);
        writer.Ledger("ledger", (answer.IsBack ? answer.Path?.Back : answer.Path?.Out)?.Budget);
        Reach(writer, answer);
        writer.Strings("problems", answer.Problems);
        writer.WriteEndObject();
    }

    /// <summary>A link as seen from the station: "out" is its way to the other.</summary>
    private static void Link(Utf8JsonWriter writer, LinkReport link, string own)
    {
        bool isFirst = link.From.Key == own;
        LinkStation far = isFirst ? link.To : link.From;
        writer.WriteStartObject();
        writer.WriteString("key", far.Key);
        writer.WriteString("name", far.Name);
        writer.Number("latitude", far.Position.Point.LatitudeDegrees);
        writer.Number("longitude", far.Position.Point.LongitudeDegrees);
        writer.Number("distance-metres", Math.Round(link.Segment.DistanceMetres));
        writer.WriteString("verdict", JsonDocumentWriter.Word(link.Finding.Verdict));
        writer.Estimate("out-margin-db", (isFirst ? link.Out : link.Back).MarginDb);
        writer.Estimate("back-margin-db", (isFirst ? link.Back : link.Out).MarginDb);
        writer.Estimate("margin-db", link.Weaker.MarginDb);
        writer.WriteEndObject();
    }

    private static void Path(Utf8JsonWriter writer, LinkReport? link)
    {
        if (link is null)
        {
            writer.WriteNull("path");
            return;
        }

        writer.WriteStartObject("path");
        writer.WriteString("from", link.From.Name);
        writer.WriteString("to", link.To.Name);
        writer.WriteString("to-key", link.To.Key);
        writer.WriteString("verdict", JsonDocumentWriter.Word(link.Finding.Verdict));
        writer.WriteString("text", FindingSentences.Text(link.Finding));
        writer.Estimate("out-margin-db", link.Out.MarginDb);
        writer.Estimate("back-margin-db", link.Back.MarginDb);
        writer.Number("distance-metres", link.Segment.DistanceMetres);
        writer.Number("from-height-metres", link.Path.FromHeightMetres?.Median);
        writer.Number("to-height-metres", link.Path.ToHeightMetres?.Median);
        writer.Number("k", link.Path.Clearance?.KFactor);
        ImmutableArray<ClearancePoint> points = link.Path.Clearance?.Points ?? [];
        Numbers(writer, "distances-metres", points, point => point.DistanceMetres);
        Numbers(writer, "ground-metres", points, point => point.GroundMetres);
        Numbers(writer, "surface-metres", points, point => point.SurfaceMetres);
        Numbers(writer, "ray-metres", points, point => point.RayMetres);
        Numbers(writer, "fresnel-metres", points, point => point.FresnelRadiusMetres);
        writer.WriteStartArray("sea");
        foreach (Zone zone in points.IsEmpty ? [] : link.Path.Terrain!.Zones)
        {
            writer.WriteNumberValue(zone == Zone.Sea ? 1 : 0);
        }

        writer.WriteEndArray();
        writer.WriteStartArray("obstructions");
        foreach (Obstruction obstruction in link.Path.Clearance?.Obstructions ?? [])
        {
            writer.WriteStartObject();
            writer.Number("distance-metres", Math.Round(obstruction.Worst.DistanceMetres));
            writer.Number("clearance-metres", Math.Round(obstruction.Worst.ClearanceMetres, 1));
            writer.Number("clearance-radii", Math.Round(obstruction.Worst.ClearanceRadii, 2));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Numbers(Utf8JsonWriter writer, string name, ImmutableArray<ClearancePoint> points, Func<ClearancePoint, double> number)
    {
        writer.WriteStartArray(name);
        foreach (ClearancePoint point in points)
        {
            // A picture shows no tenth of a metre, let alone less.
            writer.WriteNumberValue(Math.Round(number(point), 2));
        }

        writer.WriteEndArray();
    }

    private static void Reach(Utf8JsonWriter writer, DragAnswer answer)
    {
        if (answer is not { Reach: { } report, ReachOptions: { } options })
        {
            writer.WriteNull("reach");
            return;
        }

        GridFrame grid = report.Map.Field.Frame;
        ReachScale scale = ReachScale.For(options.IsDark ? Theme.Dark : Theme.Light);
        ReachLegend legend = ReachLegend.Of(report, options);
        writer.WriteStartObject("reach");
        writer.WriteString("layer", options.Layer);
        writer.WriteString("direction", Mastwright.Reports.Reach.ReachReport.Word(options.Direction));
        writer.WriteString("receiver", report.Setup.Receiver.Name);
        writer.WriteString("title", legend.Title);
        writer.WriteString("unit", legend.Unit);
        writer.WriteString("below", legend.Below);
        writer.Number("scale", legend.Scale);
        writer.WriteStartArray("classes");
        for (int i = 0; i < legend.Edges.Length; i++)
        {
            writer.WriteStartObject();
            writer.Number("from", legend.Edges[i]);
            writer.WriteString("ink", Hex(scale.Of(i)));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteString("hatch", Hex(scale.Hatch));
        writer.Number("radius-metres", options.Area.RadiusMetres);
        writer.Number("cell-metres", grid.StepX);
        writer.Number("sweep-step-metres", report.Map.Field.SweepStepMetres);
        writer.WriteBoolean("quick", options.LeastStepMetres > 0);
        writer.WriteNumber("columns", grid.Columns);
        writer.WriteNumber("rows", grid.Rows);
        writer.WriteStartObject("grid");
        writer.WriteNumber("utm-zone", grid.UtmZone);
        writer.WriteBoolean("north", grid.IsNorth);
        writer.Number("first-east-metres", grid.OriginX);
        writer.Number("first-north-metres", grid.OriginY);
        writer.WriteEndObject();
        writer.WriteStartArray("corners");
        foreach ((double column, double row) in (ReadOnlySpan<(double, double)>)[(-0.5, -0.5), (grid.Columns - 0.5, -0.5), (grid.Columns - 0.5, grid.Rows - 0.5), (-0.5, grid.Rows - 0.5)])
        {
            UniversalTransverseMercator.Reverse(
                grid.OriginX + (column * grid.StepX), grid.OriginY - (row * grid.StepY), grid.UtmZone, grid.IsNorth, out double latitude, out double longitude);
            writer.WriteStartArray();
            writer.WriteNumberValue(Math.Round(longitude, 7));
            writer.WriteNumberValue(Math.Round(latitude, 7));
            writer.WriteEndArray();
        }

        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static string Hex(Ink ink) => $"#{ink.Red:x2}{ink.Green:x2}{ink.Blue:x2}";
}
