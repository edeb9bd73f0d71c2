using System.Text.Json;
using System.Text.RegularExpressions;

namespace Mastwright.Records.Import.Proposals;

/// <summary>Finds out what form a file has and what its rows hold, from its beginning.</summary>
internal static partial class FileLook
{
    private const int MostRows = 50;

    private static readonly char[] Separators = [',', ';', '\t', '|'];

    /// <summary>Looks at the beginning of a text; null where nothing can be made of it.</summary>
    internal static SeenFile? At(string text)
    {
        string[] lines = [.. text.Split('\n').Select(line => line.TrimEnd('\r')).Where(line => line.Trim().Length > 0).Take(MostRows)];
        if (lines.Length == 0)
        {
            return null;
        }

        return text.TrimStart()[0] is '{' or '[' && Json(text.TrimStart(), lines) is { } json ? json : Delimited(lines) ?? Lines(lines);
    }

    private static SeenFile? Json(string text, string[] lines)
    {
        List<JsonDocument> rows = [];
        string? within = null;
        if (text[0] == '{' && Parsed(lines[0]) is { } first && (lines.Length > 1 || JsonDocumentLook.HasTime(first.RootElement)))
        {
            rows.Add(first);
            rows.AddRange(lines.Skip(1).Select(Parsed).OfType<JsonDocument>());
        }
        else
        {
            within = text[0] == '[' ? null : JsonDocumentLook.Array(text);
            if (text[0] == '[' || within is not null)
            {
                JsonDocumentLook.Values(text, within, MostRows, value => rows.Add(JsonDocument.Parse(value, JsonSource.Options)));
            }
        }

        try
        {
            return rows.Count == 0 ? null : JsonDocumentLook.Seen([.. rows.Select(row => row.RootElement).Where(row => row.ValueKind == JsonValueKind.Object)], within);
        }
        finally
        {
            rows.ForEach(row => row.Dispose());
        }
    }

    private static JsonDocument? Parsed(string line)
    {
        try
        {
            return JsonDocument.Parse(line, JsonSource.Options);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>The separator that every row has as often as the first; of several the one that it has most often.</summary>
    private static SeenFile? Delimited(string[] lines)
    {
        char[] candidates = [.. Separators
            .Where(sign => lines[0].Contains(sign, StringComparison.Ordinal) && lines.Skip(1).Count(line => Cells(line, sign).Count == Cells(lines[0], sign).Count) * 5 >= (lines.Length - 1) * 4)
            .OrderByDescending(sign => Cells(lines[0], sign).Count)];
        if (candidates.Length == 0 || lines.Length < 2 || Cells(lines[0], candidates[0]).Any(cell => double.TryParse(cell, System.Globalization.CultureInfo.InvariantCulture, out _)))
        {
            // A first row that holds numbers names no columns.
            return null;
        }

        char separator = candidates[0];
        List<string> header = Cells(lines[0], separator);
        List<List<string>> rows = [.. lines.Skip(1).Select(line => Cells(line, separator)).Where(row => row.Count == header.Count)];
        return new(SourceForm.Delimited, separator, null, null, null, [.. header.Select((name, column) => SeenField.Of(name, name, rows.Select(row => row[column])))]);
    }

    private static List<string> Cells(string line, char separator)
    {
        List<string> cells = [];
        int from = 0;
        bool quoted = false;
        for (int at = 0; at <= line.Length; at++)
        {
            if (at == line.Length || (line[at] == separator && !quoted))
            {
                cells.Add(DelimitedSource.Bare(line.AsSpan(from, at - from)).ToString());
                from = at + 1;
            }
            else if (line[at] == '"')
            {
                quoted = !quoted;
            }
        }

        return cells;
    }

    /// <summary>A pattern of a time and of all that is written as name=value or name: value, in the order of the first line that has most of them.</summary>
    private static SeenFile? Lines(string[] lines)
    {
        string model = lines.MaxBy(line => Pairs().Count(line))!;
        List<string> names = [];
        string pattern = Times().IsMatch(model) ? @"(?<time>\d{4}-\d\d-\d\d[T ]\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)?)" : "";
        int from = Times().Match(model) is { Success: true } time ? time.Index + time.Length : 0;
        foreach (Match pair in Pairs().Matches(model, from))
        {
            string group = NoName().Replace(pair.Groups["name"].Value, "_");
            if (!names.Contains(group, StringComparer.Ordinal) && group is not "time")
            {
                names.Add(group);
                pattern += $@".*?\b{Regex.Escape(pair.Groups["name"].Value)}\s*[=:]\s*(?<{group}>[^\s,;]+)";
            }
        }

        if (names.Count == 0 || pattern.Length == 0)
        {
            return null;
        }

        Regex made = new(pattern, RegexOptions.NonBacktracking | RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant);
        Match[] found = [.. lines.Select(line => made.Match(line)).Where(match => match.Success)];
        return new(SourceForm.Lines, ',', pattern, null, null, [.. made.GetGroupNames().Skip(1).Select(group => SeenField.Of(group, group, found.Select(match => match.Groups[group].Value)))]);
    }

    [GeneratedRegex(@"(?<name>[A-Za-z_][A-Za-z0-9_-]*)\s*[=:]\s*(?<value>[^\s,;]+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Pairs();

    [GeneratedRegex(@"\d{4}-\d\d-\d\d[T ]\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Times();

    [GeneratedRegex("[^A-Za-z0-9_]", RegexOptions.None, 1000)]
    private static partial Regex NoName();
}
