using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Mastwright.Records.Import;

/// <summary>The values of one array of a JSON text, one after the other, in memory that holds a value and no more.</summary>
internal sealed class JsonArrayReader
{
    /// <summary>The most bytes of one value.</summary>
    internal const int Most = 1 << 20;

    private readonly TextReader text;
    private readonly Encoder encoder = Encoding.UTF8.GetEncoder();
    private readonly char[] characters = new char[1 << 14];
    private byte[] bytes = new byte[1 << 16];
    private JsonReaderState state = new(new JsonReaderOptions { MaxDepth = 64 });
    private int end;
    private bool atEnd;
    private long line;

    private JsonArrayReader(TextReader text, long linesBefore)
    {
        this.text = text;
        line = linesBefore + 1;
    }

    /// <summary>Hands over each value of the array, as text with the line that it begins in.</summary>
    /// <param name="file">The file's name, for messages.</param>
    /// <param name="text">The text.</param>
    /// <param name="linesBefore">How many empty lines of it were read already.</param>
    /// <param name="within">The place of the array, of names alone; null for the text's own value.</param>
    /// <param name="take">Told the line and the text of each value.</param>
    /// <param name="cancellation">Stops between two values.</param>
    /// <exception cref="MappingException">There is no such array.</exception>
    /// <exception cref="SourceBrokenException">The text is not JSON from some place on, or a value is longer than <see cref="Most"/>.</exception>
    internal static void Read(string file, TextReader text, long linesBefore, JsonPlace? within, Action<long, string> take, CancellationToken cancellation)
    {
        JsonArrayReader reader = new(text, linesBefore);
        try
        {
            reader.Find(file, within);
            while (reader.Next(out string? value, out long line))
            {
                cancellation.ThrowIfCancellationRequested();
                take(line, value!);
            }
        }
        catch (JsonException fault)
        {
            throw new SourceBrokenException(string.Create(CultureInfo.InvariantCulture, $"from line {reader.line} on it is not JSON, or it breaks off"), fault);
        }
    }

    /// <summary>Goes to the inside of the array.</summary>
    private void Find(string file, JsonPlace? within)
    {
        IReadOnlyList<JsonStep> steps = within?.Steps ?? [];
        int entered = 0;
        bool wanted = true;
        while (Token(out JsonTokenType token, out int depth, out string? name))
        {
            if (wanted && token == JsonTokenType.StartArray && entered == steps.Count)
            {
                return;
            }

            if (wanted && token == JsonTokenType.StartObject && entered < steps.Count)
            {
                entered++;
            }

            wanted = token == JsonTokenType.PropertyName && depth == entered && entered > 0 && string.Equals(name, steps[entered - 1].Name, StringComparison.Ordinal);
        }

        throw new MappingException($"{file}: there is no array where the mapping has 'within'");
    }

    private bool Token(out JsonTokenType token, out int depth, out string? name)
    {
        while (true)
        {
            Utf8JsonReader reader = new(bytes.AsSpan(0, end), atEnd, state);
            if (reader.Read())
            {
                (token, depth) = (reader.TokenType, reader.CurrentDepth);
                name = token == JsonTokenType.PropertyName ? reader.GetString() : null;
                Consume(reader);
                return true;
            }

            if (atEnd)
            {
                (token, depth, name) = (default, 0, null);
                return false;
            }

            Fill();
        }
    }

    private bool Next(out string? value, out long at)
    {
        while (true)
        {
            Utf8JsonReader reader = new(bytes.AsSpan(0, end), atEnd, state);
            if (reader.Read())
            {
                int from = (int)reader.TokenStartIndex;
                if (reader.TokenType == JsonTokenType.EndArray)
                {
                    (value, at) = (null, line);
                    return false;
                }

                if (reader.TrySkip())
                {
                    value = Encoding.UTF8.GetString(bytes, from, (int)reader.BytesConsumed - from);
                    at = line + bytes.AsSpan(0, from).Count((byte)'\n');
                    Consume(reader);
                    return true;
                }
            }

            if (atEnd)
            {
                throw new JsonException();
            }

            Fill();
        }
    }

    private void Consume(Utf8JsonReader reader)
    {
        int consumed = (int)reader.BytesConsumed;
        state = reader.CurrentState;
        line += bytes.AsSpan(0, consumed).Count((byte)'\n');
        bytes.AsSpan(consumed, end - consumed).CopyTo(bytes);
        end -= consumed;
    }

    private void Fill()
    {
        if (end > Most)
        {
            throw new SourceBrokenException(string.Create(CultureInfo.InvariantCulture, $"the value that begins in line {line} has more than {Most} bytes"));
        }

        int read = text.Read(characters);
        atEnd = read == 0;
        int needed = Encoding.UTF8.GetMaxByteCount(read);
        if (bytes.Length - end < needed)
        {
            Array.Resize(ref bytes, Math.Max(bytes.Length * 2, end + needed));
        }

        end += encoder.GetBytes(characters.AsSpan(0, read), bytes.AsSpan(end), atEnd);
    }
}
