using System.Text.Json;

namespace Mastwright.Records.Import;

/// <summary>One row of a source, whatever its form: what its fields hold as text.</summary>
internal interface ISourceRow
{
    /// <summary>The row's first line in its file, from 1.</summary>
    long Line { get; }

    /// <summary>The row as it is written.</summary>
    ReadOnlySpan<char> Whole { get; }

    /// <summary>Whether the row may hold something that no field of the mapping has taken.</summary>
    bool HasOthers { get; }

    /// <summary>The text of a place that <see cref="SourcePlaces"/> has given out; empty where there is none.</summary>
    ReadOnlySpan<char> Cell(int place);

    /// <summary>Writes what no field of the mapping has taken, as members of a JSON object that is open.</summary>
    void WriteOthers(Utf8JsonWriter writer);
}

/// <summary>Gives each field of a mapping its place in the rows of one source.</summary>
internal abstract class SourcePlaces
{
    /// <summary>The number under which a row gives this field's text.</summary>
    /// <exception cref="MappingException">The source has no such place.</exception>
    internal abstract int Of(string field, FieldText wanted);
}
