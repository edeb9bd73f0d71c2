using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Mastwright.Records.Import;

/// <summary>
/// The place of one value in JSON: a singular query of RFC 9535, clause 2.3.5.1 (names and indexes alone), from the row's value ($) or from the
/// reception inside it that is being read (@).
/// </summary>
internal sealed class JsonPlace
{
    private JsonPlace(bool fromEach, IReadOnlyList<JsonStep> steps)
    {
        FromEach = fromEach;
        Steps = steps;
    }

    /// <summary>Whether it begins at one of several receptions of a value.</summary>
    internal bool FromEach { get; }

    internal IReadOnlyList<JsonStep> Steps { get; }

    /// <summary>Reads a place; null where the text is none.</summary>
    internal static JsonPlace? Parse(string text)
    {
        if (text.Length == 0 || text[0] is not ('$' or '@'))
        {
            return null;
        }

        List<JsonStep> steps = [];
        int at = 1;
        while (at < text.Length)
        {
            if (text[at] == '.' ? !TryName(text, ref at, steps) : !TryBracket(text, ref at, steps))
            {
                return null;
            }
        }

        return new(text[0] == '@', steps);
    }

    /// <summary>The value at this place, or null where there is none.</summary>
    internal JsonElement? Find(JsonElement root)
    {
        JsonElement value = root;
        foreach (JsonStep step in Steps)
        {
            if (step.Name is { } name)
            {
                if (value.ValueKind != JsonValueKind.Object || !value.TryGetProperty(name, out value))
                {
                    return null;
                }
            }
            else if (value.ValueKind == JsonValueKind.Array)
            {
                int index = step.Index < 0 ? value.GetArrayLength() + step.Index : step.Index;
                if (index < 0 || index >= value.GetArrayLength())
                {
                    return null;
                }

                value = value[index];
            }
            else
            {
                return null;
            }
        }

        return value;
    }

    private static bool TryName(string text, ref int at, List<JsonStep> steps)
    {
        int from = ++at;
        while (at < text.Length && (char.IsAsciiLetterOrDigit(text[at]) || text[at] is '_' or > '\u007F'))
        {
            at++;
        }

        steps.Add(new(text[from..at], 0));
        return at > from && !char.IsAsciiDigit(text[from]);
    }

    private static bool TryBracket(string text, ref int at, List<JsonStep> steps)
    {
        if (text[at] != '[' || at + 2 >= text.Length)
        {
            return false;
        }

        char quote = text[at + 1];
        if (quote is not ('\'' or '"'))
        {
            int end = text.IndexOf(']', at);
            bool good = end > 0 && int.TryParse(text.AsSpan(at + 1, end - at - 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int index) && Add(new(null, index));
            at = end + 1;
            return good;
        }

        StringBuilder name = new();
        for (at += 2; at < text.Length && text[at] != quote; at++)
        {
            at += text[at] == '\\' && at + 1 < text.Length ? 1 : 0;
            name.Append(text[at]);
        }

        if (at + 1 >= text.Length || text[at + 1] != ']')
        {
            return false;
        }

        at += 2;
        return Add(new(name.ToString(), 0));

        bool Add(JsonStep step)
        {
            steps.Add(step);
            return true;
        }
    }
}

/// <summary>One step of a place: into a member by its name, or into an array by its index (from its end where it is negative).</summary>
internal readonly record struct JsonStep(string? Name, int Index);
