using System.Text.Json;
using System.Text.RegularExpressions;

namespace Mastwright.Records.Import;

/// <summary>Lines of plain text, taken apart by the named groups of one pattern.</summary>
internal static class PatternSource
{
    internal static void Read(string file, TextReader text, RecordMapping mapping, RowTaking taking, CancellationToken cancellation)
    {
        PatternPlaces places = new(file, mapping.Pattern!);
        taking.Tie(places, file);
        BoundedLines lines = new(text);
        while (lines.TryRead(out ReadOnlySpan<char> line))
        {
            cancellation.ThrowIfCancellationRequested();
            if (line.Trim().IsEmpty)
            {
                continue;
            }

            string whole = line.ToString();
            Match match = mapping.Pattern!.Match(whole);
            if (match.Success)
            {
                taking.Take(new PatternRow(match, places, whole, lines.Line));
            }
            else
            {
                taking.Reject(lines.Line, "the line does not fit the pattern", line);
            }
        }
    }
}

/// <summary>The named groups of a pattern.</summary>
internal sealed class PatternPlaces : SourcePlaces
{
    private readonly string file;
    private readonly Regex pattern;
    private readonly List<int> others;

    internal PatternPlaces(string file, Regex pattern)
    {
        this.file = file;
        this.pattern = pattern;
        others = [.. pattern.GetGroupNumbers().Where(number => number > 0)];
    }

    internal IReadOnlyList<int> Others => others;

    internal string Name(int group) => pattern.GroupNameFromNumber(group);

    /// <inheritdoc/>
    internal override int Of(string field, FieldText wanted)
    {
        int group = pattern.GroupNumberFromName(wanted.Group!);
        if (group <= 0)
        {
            throw new MappingException($"{file}: the pattern has no group '{wanted.Group}', where the mapping has {field}; its groups are {string.Join(", ", pattern.GetGroupNames().Skip(1).Select(one => $"'{one}'"))}");
        }

        others.Remove(group);
        return group;
    }
}

/// <summary>A line that fits the pattern.</summary>
internal readonly struct PatternRow(Match match, PatternPlaces places, string whole, long line) : ISourceRow
{
    /// <inheritdoc/>
    public long Line => line;

    /// <inheritdoc/>
    public ReadOnlySpan<char> Whole => whole;

    /// <inheritdoc/>
    public bool HasOthers => places.Others.Count > 0 || match.Length < whole.Length;

    /// <inheritdoc/>
    public ReadOnlySpan<char> Cell(int place) => match.Groups[place].ValueSpan.Trim();

    /// <inheritdoc/>
    public void WriteOthers(Utf8JsonWriter writer)
    {
        foreach (int group in places.Others)
        {
            if (match.Groups[group] is { Success: true } found)
            {
                writer.WriteString(places.Name(group), found.ValueSpan);
            }
        }

        Keep(writer, "text-before", whole.AsSpan(0, match.Index));
        Keep(writer, "text-after", whole.AsSpan(match.Index + match.Length));
    }

    /// <summary>What stands around the part of the line that the pattern takes.</summary>
    private static void Keep(Utf8JsonWriter writer, string name, ReadOnlySpan<char> text)
    {
        if (text.Trim() is { IsEmpty: false } said)
        {
            writer.WriteString(name, said);
        }
    }
}
