using System.Globalization;

namespace Mastwright.Records.Import;

/// <summary>One field of a mapping, tied to its place in the rows of one source.</summary>
internal sealed class FieldReader
{
    private readonly double perUnit;
    private readonly string? text;
    private readonly int place;

    private FieldReader(string name, int place, string? text, double perUnit)
    {
        Name = name;
        this.place = place;
        this.text = text;
        this.perUnit = perUnit;
    }

    /// <summary>The field's name in messages.</summary>
    internal string Name { get; }

    /// <summary>Ties a field to its place; null where the mapping has no such field.</summary>
    /// <exception cref="MappingException">The source has no such place, or has it twice.</exception>
    internal static FieldReader? Of(string name, FieldText? field, SourcePlaces places) => field is null
        ? null
        : field.Text is { } same ? new(name, -1, same, FieldUnits.PerUnit(field.Unit)) : new(name, places.Of(name, field), null, FieldUnits.PerUnit(field.Unit));

    /// <summary>The field's text; empty where the row has none.</summary>
    internal ReadOnlySpan<char> Text<TRow>(TRow row)
        where TRow : ISourceRow, allows ref struct => place < 0 ? text : row.Cell(place);

    /// <summary>The value in base units, or null where the row has none; the first fault is told as a reason.</summary>
    internal double? Number<TRow>(TRow row, ref string reason)
        where TRow : ISourceRow, allows ref struct
    {
        ReadOnlySpan<char> cell = Text(row);
        if (cell.IsEmpty)
        {
            return null;
        }

        if (double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number))
        {
            return number * perUnit;
        }

        reason = reason.Length > 0 ? reason : $"{Name} is not a finite number";
        return null;
    }

    /// <summary>The whole number, or null where the row has none; the first fault is told as a reason.</summary>
    internal int? Whole<TRow>(TRow row, ref string reason)
        where TRow : ISourceRow, allows ref struct
    {
        ReadOnlySpan<char> cell = Text(row);
        if (cell.IsEmpty)
        {
            return null;
        }

        if (int.TryParse(cell, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int number))
        {
            return number;
        }

        reason = reason.Length > 0 ? reason : $"{Name} is not a whole number";
        return null;
    }
}
