using System.Globalization;
using nietras.SeparatedValues;

namespace Mastwright.Records.Import;

/// <summary>One field of a mapping, tied to the columns of one file.</summary>
internal sealed class FieldReader
{
    private readonly double perUnit;
    private readonly string? text;

    private FieldReader(string name, int column, string? text, double perUnit)
    {
        Name = name;
        Column = column;
        this.text = text;
        this.perUnit = perUnit;
    }

    /// <summary>The field's name in messages.</summary>
    internal string Name { get; }

    /// <summary>The column from 0; below 0 for a text that is the same in every record.</summary>
    internal int Column { get; }

    /// <summary>Ties a field to its column.</summary>
    /// <exception cref="MappingException">The file has no such column, or has it twice.</exception>
    internal static FieldReader? Of(string name, FieldText? field, string[] header, string file)
    {
        if (field is null)
        {
            return null;
        }

        double factor = field.Unit switch { "kHz" => 1e3, "MHz" => 1e6, "GHz" => 1e9, _ => 1 };
        if (field.Column is not { } wanted)
        {
            return new(name, -1, field.Text, factor);
        }

        int column = Array.IndexOf(header, wanted);
        return column >= 0 && Array.LastIndexOf(header, wanted) == column
            ? new(name, column, null, factor)
            : throw new MappingException($"{file}:1: {(column < 0 ? "there is no column" : "there are several columns")} '{wanted}', where the mapping has {name}; the columns are {string.Join(", ", header.Select(one => $"'{one}'"))}");
    }

    /// <summary>The cell's text without quotes and blanks around it; empty where it has none.</summary>
    internal ReadOnlySpan<char> Text(SepReader.Row row) => Column < 0 ? text : Cell(row[Column].Span);

    /// <summary>The value in base units; null where the cell is empty.</summary>
    internal bool TryNumber(SepReader.Row row, out double? value)
    {
        ReadOnlySpan<char> cell = Text(row);
        value = null;
        if (cell.IsEmpty)
        {
            return true;
        }

        bool good = double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number);
        value = good ? number * perUnit : null;
        return good;
    }

    /// <summary>The whole number; null where the cell is empty.</summary>
    internal bool TryWhole(SepReader.Row row, out int? value)
    {
        ReadOnlySpan<char> cell = Text(row);
        value = null;
        if (cell.IsEmpty)
        {
            return true;
        }

        bool good = int.TryParse(cell, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number);
        value = good ? number : null;
        return good;
    }

    internal static ReadOnlySpan<char> Cell(ReadOnlySpan<char> cell)
    {
        ReadOnlySpan<char> bare = cell.Trim();
        return bare.Length >= 2 && bare[0] == '"' && bare[^1] == '"' ? bare[1..^1].ToString().Replace("\"\"", "\"", StringComparison.Ordinal) : bare;
    }
}
