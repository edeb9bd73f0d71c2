using System.Text.Json;

namespace Mastwright.Records.Import;

/// <summary>JSON: a value a line, or the values of an array.</summary>
internal static class JsonSource
{
    internal static readonly JsonDocumentOptions Options = new() { MaxDepth = 64 };

    internal static void Read(string file, TextReader text, RecordMapping mapping, RowTaking taking, CancellationToken cancellation)
    {
        JsonPlaces places = new(mapping);
        taking.Tie(places, file);
        long linesBefore = 0;
        while (text.Peek() is ' ' or '\t' or '\r' or '\n')
        {
            linesBefore += text.Read() == '\n' ? 1 : 0;
        }

        if (mapping.Within is not null || text.Peek() == '[')
        {
            JsonArrayReader.Read(file, text, linesBefore, mapping.Within, (line, json) => Take(json, line, places, taking), cancellation);
        }
        else
        {
            Lines(new(text, linesBefore), places, taking, cancellation);
        }

        taking.NeverMet(places.NeverMet);
    }

    private static void Lines(BoundedLines lines, JsonPlaces places, RowTaking taking, CancellationToken cancellation)
    {
        while (lines.TryRead(out ReadOnlySpan<char> line))
        {
            cancellation.ThrowIfCancellationRequested();
            if (!line.Trim().IsEmpty)
            {
                Take(line.ToString(), lines.Line, places, taking);
            }
        }
    }

    private static void Take(string json, long line, JsonPlaces places, RowTaking taking)
    {
        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(json, Options);
        }
        catch (JsonException)
        {
            taking.Reject(line, json.Contains("NaN", StringComparison.Ordinal) || json.Contains("Infinity", StringComparison.Ordinal)
                ? "the row is not JSON, which knows neither NaN nor Infinity as a number"
                : "the row is not JSON, or only a part of it", json);
            return;
        }

        using (document)
        {
            JsonElement value = document.RootElement;
            if (value.ValueKind != JsonValueKind.Object)
            {
                taking.Reject(line, "the row is not a JSON object", json);
            }
            else if (places.Each is not { } each)
            {
                taking.Take(new JsonRow(places, value, null, json, line));
            }
            else if (each.Find(value) is { ValueKind: JsonValueKind.Array } several)
            {
                foreach (JsonElement one in several.EnumerateArray())
                {
                    taking.Take(new JsonRow(places, value, one, json, line));
                }
            }
            else
            {
                taking.Reject(line, "the row has no array where the mapping has 'each'", json);
            }
        }
    }
}

/// <summary>A value of JSON, or one of several receptions in it.</summary>
internal readonly struct JsonRow : ISourceRow
{
    private readonly JsonPlaces places;
    private readonly JsonElement value;
    private readonly JsonElement? each;
    private readonly string json;
    private readonly string[] cells;

    internal JsonRow(JsonPlaces places, JsonElement value, JsonElement? each, string json, long line)
    {
        this.places = places;
        this.value = value;
        this.each = each;
        this.json = json;
        Line = line;
        cells = places.Cells(value, each);
    }

    /// <inheritdoc/>
    public long Line { get; }

    /// <inheritdoc/>
    public ReadOnlySpan<char> Whole => json;

    /// <inheritdoc/>
    public bool HasOthers => true;

    /// <inheritdoc/>
    public ReadOnlySpan<char> Cell(int place) => cells[place];

    /// <inheritdoc/>
    public void WriteOthers(Utf8JsonWriter writer)
    {
        places.OfRow.WriteMembers(writer, value);
        if (each is { ValueKind: JsonValueKind.Object } one)
        {
            // The whole array is taken by 'each'; of it this reception's own rest is kept, under a name that says what it is.
            writer.WriteStartObject("each");
            places.OfEach.WriteMembers(writer, one);
            writer.WriteEndObject();
        }
    }
}
