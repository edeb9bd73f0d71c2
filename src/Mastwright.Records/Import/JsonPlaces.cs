using System.Text.Json;

namespace Mastwright.Records.Import;

/// <summary>The places that the fields of a mapping have in the values of one source.</summary>
internal sealed class JsonPlaces : SourcePlaces
{
    private readonly List<(string Text, string Field, JsonPlace Place, bool Met)> all = [];

    internal JsonPlaces(RecordMapping mapping)
    {
        Each = mapping.Each;
        if (Each is not null)
        {
            OfRow.Add(Each);
        }
    }

    /// <summary>What is taken of the row's value, and of one reception inside it.</summary>
    internal JsonTaken OfRow { get; } = new();

    internal JsonTaken OfEach { get; } = new();

    /// <summary>The places that no row had, with the field that each is of.</summary>
    internal IEnumerable<string> NeverMet => all.Where(one => !one.Met).Select(one => $"{one.Field} ({one.Text})");

    /// <inheritdoc/>
    internal override int Of(string field, FieldText wanted)
    {
        int known = all.FindIndex(one => string.Equals(one.Text, wanted.Path, StringComparison.Ordinal));
        if (known >= 0)
        {
            return known;
        }

        JsonPlace place = JsonPlace.Parse(wanted.Path!)!;
        (place.FromEach ? OfEach : OfRow).Add(place);
        all.Add((wanted.Path!, field, place, false));
        return all.Count - 1;
    }

    /// <summary>The texts at all places of one row.</summary>
    internal string[] Cells(JsonElement value, JsonElement? each)
    {
        string[] cells = new string[all.Count];
        for (int place = 0; place < cells.Length; place++)
        {
            JsonElement? found = all[place].Place.FromEach ? each is { } one ? all[place].Place.Find(one) : null : all[place].Place.Find(value);
            if (found is { } there)
            {
                all[place] = all[place] with { Met = true };
                cells[place] = Text(there);
            }
            else
            {
                cells[place] = "";
            }
        }

        return cells;
    }

    /// <summary>Where in a value the receptions are, or null where the value is one.</summary>
    internal JsonPlace? Each { get; }

    private static string Text(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.String => value.GetString()!.Trim(),
        JsonValueKind.Null or JsonValueKind.Undefined => "",
        _ => value.GetRawText(),
    };
}

/// <summary>What the fields of a mapping have taken out of a value, as a tree; the rest of the value is kept.</summary>
internal sealed class JsonTaken
{
    private readonly Dictionary<JsonStep, JsonTaken> below = [];
    private bool taken;

    /// <summary>Marks a place as taken.</summary>
    internal void Add(JsonPlace place)
    {
        JsonTaken at = this;
        foreach (JsonStep step in place.Steps)
        {
            if (!at.below.TryGetValue(step, out JsonTaken? next))
            {
                at.below.Add(step, next = new());
            }

            at = next;
        }

        at.taken = true;
    }

    /// <summary>Writes the members of an object that are not taken.</summary>
    internal void WriteMembers(Utf8JsonWriter writer, JsonElement value)
    {
        foreach (JsonProperty member in value.EnumerateObject())
        {
            JsonTaken? part = below.GetValueOrDefault(new(member.Name, 0));
            if (part is null)
            {
                member.WriteTo(writer);
            }
            else if (!part.taken && part.HasRest(member.Value))
            {
                writer.WritePropertyName(member.Name);
                part.Write(writer, member.Value);
            }
        }
    }

    /// <summary>Whether a value has anything that is not taken.</summary>
    private bool HasRest(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => value.EnumerateObject().Any(member => below.GetValueOrDefault(new(member.Name, 0)) is not { } part || (!part.taken && part.HasRest(member.Value))),
        JsonValueKind.Array => Items(value).Any(),
        _ => true,
    };

    private void Write(Utf8JsonWriter writer, JsonElement value)
    {
        switch (value.ValueKind)
        {
            case JsonValueKind.Object:
                writer.WriteStartObject();
                WriteMembers(writer, value);
                writer.WriteEndObject();
                break;
            case JsonValueKind.Array:
                writer.WriteStartArray();
                foreach ((JsonElement item, JsonTaken? part) in Items(value))
                {
                    if (part is null)
                    {
                        item.WriteTo(writer);
                    }
                    else
                    {
                        part.Write(writer, item);
                    }
                }

                writer.WriteEndArray();
                break;
            default:
                value.WriteTo(writer);
                break;
        }
    }

    private IEnumerable<(JsonElement Item, JsonTaken? Part)> Items(JsonElement array)
    {
        int length = array.GetArrayLength();
        foreach ((int index, JsonElement item) in array.EnumerateArray().Index())
        {
            JsonTaken? part = below.GetValueOrDefault(new(null, index)) ?? below.GetValueOrDefault(new(null, index - length));
            if (part is null || (!part.taken && part.HasRest(item)))
            {
                yield return (item, part);
            }
        }
    }
}
