using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Mastwright.Records.Import;

/// <summary>What no field of a mapping has taken of a row, as one JSON object.</summary>
internal sealed class OtherFields
{
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly ArrayBufferWriter<byte> buffer = new();

    /// <summary>The object; null where there is nothing.</summary>
    internal string? Of<TRow>(TRow row)
        where TRow : ISourceRow, allows ref struct
    {
        if (!row.HasOthers)
        {
            return null;
        }

        buffer.ResetWrittenCount();
        using Utf8JsonWriter writer = new(buffer, Plain);
        writer.WriteStartObject();
        row.WriteOthers(writer);
        writer.WriteEndObject();
        writer.Flush();
        return buffer.WrittenCount == 2 ? null : Encoding.UTF8.GetString(buffer.WrittenSpan);
    }
}
