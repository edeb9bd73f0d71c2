using System.Text;
using System.Text.Json;

namespace Mastwright.Records.Import.Proposals;

/// <summary>Finds the rows in a JSON document and the places in them.</summary>
internal static class JsonDocumentLook
{
    private const int MostDepth = 6;

    /// <summary>Hands over the first values of an array of a text, which may break off.</summary>
    internal static void Values(string text, string? within, int most, Action<string> take)
    {
        using CancellationTokenSource enough = new();
        int taken = 0;
        try
        {
            JsonArrayReader.Read("", new StringReader(text), 0, within is null ? null : JsonPlace.Parse(within), Take, enough.Token);
        }
        catch (Exception fault) when (fault is SourceBrokenException or OperationCanceledException or MappingException)
        {
            // Only the beginning was looked at.
        }

        void Take(long line, string value)
        {
            take(value);
            if (++taken == most)
            {
                enough.Cancel();
            }
        }
    }

    /// <summary>The place of the first array of objects in a document; null where there is none.</summary>
    internal static string? Array(string text)
    {
        Utf8JsonReader reader = new(Encoding.UTF8.GetBytes(text), isFinalBlock: false, default);
        List<string> names = [];
        JsonTokenType before = JsonTokenType.None;
        try
        {
            while (reader.Read())
            {
                if (reader.TokenType == JsonTokenType.PropertyName)
                {
                    names.RemoveRange(Math.Min(reader.CurrentDepth - 1, names.Count), names.Count - Math.Min(reader.CurrentDepth - 1, names.Count));
                    names.Add(reader.GetString()!);
                }

                if (reader.TokenType == JsonTokenType.StartObject && before == JsonTokenType.StartArray && names.Count == reader.CurrentDepth - 1)
                {
                    return "$" + string.Concat(names.Select(Step));
                }

                before = reader.TokenType;
            }
        }
        catch (JsonException)
        {
            // Nothing can be found behind a fault.
        }

        return null;
    }

    /// <summary>Whether a value holds a time outside of its arrays: then it is a row itself, and no document with rows inside.</summary>
    internal static bool HasTime(JsonElement value) => Seen([value], null).Fields.Any(field => field.Place[0] == '$' && TimeGuess.Of(field) is not null);

    internal static SeenFile Seen(IReadOnlyList<JsonElement> rows, string? within)
    {
        Dictionary<string, (string Name, List<string> Samples)> places = new(StringComparer.Ordinal);
        string? each = null;
        foreach (JsonElement row in rows)
        {
            Walk(row, "$", "", 0, (place, name, value) =>
            {
                if (!places.TryGetValue(place, out (string Name, List<string> Samples) known))
                {
                    places.Add(place, known = (name, []));
                }

                known.Samples.Add(value);
            }, ref each);
        }

        return new(SourceForm.Json, ',', null, within, each, [.. places.Select(place => SeenField.Of(place.Key, place.Value.Name, place.Value.Samples))]);
    }

    private static void Walk(JsonElement value, string place, string name, int depth, Action<string, string, string> see, ref string? each)
    {
        if (depth > MostDepth)
        {
            return;
        }

        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                foreach (JsonProperty member in value.EnumerateObject())
                {
                    Walk(member.Value, place + Step(member.Name), member.Name, depth + 1, see, ref each);
                }

                break;
            case JsonValueKind.Array when value.GetArrayLength() > 0 && value[0].ValueKind == JsonValueKind.Object && place[0] == '$' && (each is null || each == place):
                each = place;
                foreach (JsonElement one in value.EnumerateArray())
                {
                    Walk(one, "@", name, depth + 1, see, ref each);
                }

                break;
            case JsonValueKind.Array or JsonValueKind.Null:
                break;
            default:
                see(place, name, value.ValueKind == JsonValueKind.String ? value.GetString()! : value.GetRawText());
                break;
        }
    }

    private static string Step(string name) => name.Length > 0 && !char.IsAsciiDigit(name[0]) && name.All(sign => char.IsAsciiLetterOrDigit(sign) || sign == '_')
        ? "." + name
        : $"['{name.Replace("\\", @"\\", StringComparison.Ordinal).Replace("'", @"\'", StringComparison.Ordinal)}']";
}
