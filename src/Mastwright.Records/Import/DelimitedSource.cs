using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using nietras.SeparatedValues;

namespace Mastwright.Records.Import;

/// <summary>Delimited text whose first row names the columns.</summary>
internal static class DelimitedSource
{
    internal static void Read(string file, TextReader text, RecordMapping mapping, RowTaking taking, CancellationToken cancellation)
    {
        using SepReader reader = Sep.New(mapping.Separator)
            .Reader(options => options with { HasHeader = false, DisableColCountCheck = true, CultureInfo = CultureInfo.InvariantCulture })
            .From(text);
        DelimitedPlaces? places = null;
        foreach (SepReader.Row row in reader)
        {
            cancellation.ThrowIfCancellationRequested();
            if (row.Span.Trim().IsEmpty)
            {
                continue;
            }

            if (places is null)
            {
                places = new(file, row);
                taking.Tie(places, file);
            }
            else if (row.ColCount != places.Header.Length)
            {
                taking.Reject(row.LineNumberFrom, $"the row has not the {places.Header.Length} cells of the header", row.Span);
            }
            else
            {
                taking.Take(new DelimitedRow(row, places));
            }
        }

        if (places is null)
        {
            throw new MappingException($"{file}: there is no row in it; the first names the columns");
        }
    }

    /// <summary>The text of a cell without quotes and blanks around it.</summary>
    internal static ReadOnlySpan<char> Bare(ReadOnlySpan<char> cell)
    {
        ReadOnlySpan<char> bare = cell.Trim();
        return bare.Length >= 2 && bare[0] == '"' && bare[^1] == '"' ? bare[1..^1].ToString().Replace("\"\"", "\"", StringComparison.Ordinal) : bare;
    }
}

/// <summary>The columns of one file.</summary>
internal sealed class DelimitedPlaces : SourcePlaces
{
    private readonly string file;
    private readonly HashSet<int> taken = [];
    private (int Column, JsonEncodedText Name)[]? others;

    internal DelimitedPlaces(string file, SepReader.Row first)
    {
        this.file = file;
        Header = new string[first.ColCount];
        for (int column = 0; column < Header.Length; column++)
        {
            Header[column] = DelimitedSource.Bare(first[column].Span).ToString();
        }
    }

    internal string[] Header { get; }

    /// <summary>The columns that no field has taken; asked for only once all are tied.</summary>
    internal ReadOnlySpan<(int Column, JsonEncodedText Name)> Others => others ??=
        [.. Header.Index().Where(column => !taken.Contains(column.Index)).Select(column => (column.Index, JsonEncodedText.Encode(column.Item, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)))];

    /// <inheritdoc/>
    internal override int Of(string field, FieldText wanted)
    {
        string name = wanted.Column!;
        int column = Array.IndexOf(Header, name);
        if (column < 0 || Array.LastIndexOf(Header, name) != column)
        {
            throw new MappingException($"{file}:1: {(column < 0 ? "there is no column" : "there are several columns")} '{name}', where the mapping has {field}; the columns are {string.Join(", ", Header.Select(one => $"'{one}'"))}");
        }

        taken.Add(column);
        return column;
    }
}

/// <summary>A row of delimited text.</summary>
internal readonly ref struct DelimitedRow(SepReader.Row row, DelimitedPlaces places) : ISourceRow
{
    private readonly SepReader.Row row = row;

    /// <inheritdoc/>
    public long Line => row.LineNumberFrom;

    /// <inheritdoc/>
    public ReadOnlySpan<char> Whole => row.Span;

    /// <inheritdoc/>
    public bool HasOthers => !places.Others.IsEmpty;

    /// <inheritdoc/>
    public ReadOnlySpan<char> Cell(int place) => DelimitedSource.Bare(row[place].Span);

    /// <inheritdoc/>
    public void WriteOthers(Utf8JsonWriter writer)
    {
        foreach ((int column, JsonEncodedText name) in places.Others)
        {
            ReadOnlySpan<char> cell = Cell(column);
            if (!cell.IsEmpty)
            {
                writer.WriteString(name, cell);
            }
        }
    }
}
