using System.Text.Encodings.Web;
using System.Text.Json;
using Mastwright.Evidence;
using Mastwright.Records.Store;

namespace Mastwright.Records.Export;

/// <summary>
/// GeoJSON: each record is a feature, a line from the station that sent it last to the one that heard it. Where only one of them has a place it is
/// a point, and without any its geometry is null (RFC 7946, clause 3.2).
/// </summary>
internal sealed class GeoJsonWriter : ExportWriter
{
    private readonly Utf8JsonWriter writer;
    private readonly Func<string, long, StationPlace?> places;

    internal GeoJsonWriter(Stream stream, Func<string, long, StationPlace?> places)
    {
        this.places = places;
        writer = new(stream, new JsonWriterOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });
        writer.WriteStartObject();
        writer.WriteString("type", "FeatureCollection");
        writer.WriteStartArray("features");
    }

    /// <inheritdoc/>
    public override void Dispose() => writer.Dispose();

    internal override void Write(IReadOnlyList<StoredRecord> records)
    {
        foreach (StoredRecord record in records)
        {
            writer.WriteStartObject();
            writer.WriteString("type", "Feature");
            writer.WriteNumber("id", record.Ingest);
            writer.WriteStartObject("properties");
            foreach ((string name, Func<StoredRecord, object?> value) in Columns)
            {
                Property(name, value(record));
            }

            writer.WriteEndObject();
            Geometry(Place(record.Record.LastSender, record.Record), Place(record.Record.Receiver, record.Record));
            writer.WriteEndObject();
        }

        writer.Flush();
    }

    internal override void End()
    {
        writer.WriteEndArray();
        writer.WriteEndObject();
        writer.Flush();
    }

    private StationPlace? Place(string? address, ReceptionRecord record) => address is null ? null : places(address, record.TimeMicroseconds);

    private void Property(string name, object? value)
    {
        switch (value)
        {
            case null: writer.WriteNull(name); break;
            case bool truth: writer.WriteBoolean(name, truth); break;
            case double number: writer.WriteNumber(name, number); break;
            case long number: writer.WriteNumber(name, number); break;
            case int number: writer.WriteNumber(name, number); break;
            case string text when name is "other_fields":
                // It is JSON itself.
                writer.WritePropertyName(name);
                writer.WriteRawValue(text);
                break;
            default: writer.WriteString(name, Text(value)); break;
        }
    }

    private void Geometry(StationPlace? from, StationPlace? to)
    {
        if ((from ?? to) is not { } one)
        {
            writer.WriteNull("geometry");
            return;
        }

        writer.WriteStartObject("geometry");
        if (from is { } start && to is { } end && start != end)
        {
            Line(start, end);
        }
        else
        {
            writer.WriteString("type", "Point");
            writer.WritePropertyName("coordinates");
            Position(one.LongitudeDegrees, one.LatitudeDegrees);
        }

        writer.WriteEndObject();
    }

    /// <summary>A line; one that crosses the antimeridian is cut there in two (RFC 7946, clause 3.1.9).</summary>
    private void Line(StationPlace start, StationPlace end)
    {
        double east = end.LongitudeDegrees - start.LongitudeDegrees;
        bool crosses = Math.Abs(east) > 180;
        writer.WriteString("type", crosses ? "MultiLineString" : "LineString");
        writer.WriteStartArray("coordinates");
        if (crosses)
        {
            double edge = Math.CopySign(180, start.LongitudeDegrees);
            double whole = east - Math.CopySign(360, east);
            double latitude = start.LatitudeDegrees + ((end.LatitudeDegrees - start.LatitudeDegrees) * (edge - start.LongitudeDegrees) / whole);
            writer.WriteStartArray();
            Position(start.LongitudeDegrees, start.LatitudeDegrees);
            Position(edge, latitude);
            writer.WriteEndArray();
            writer.WriteStartArray();
            Position(-edge, latitude);
            Position(end.LongitudeDegrees, end.LatitudeDegrees);
            writer.WriteEndArray();
        }
        else
        {
            Position(start.LongitudeDegrees, start.LatitudeDegrees);
            Position(end.LongitudeDegrees, end.LatitudeDegrees);
        }

        writer.WriteEndArray();
    }

    private void Position(double longitude, double latitude)
    {
        writer.WriteStartArray();
        writer.WriteNumberValue(Math.Round(longitude, 7));
        writer.WriteNumberValue(Math.Round(latitude, 7));
        writer.WriteEndArray();
    }
}
