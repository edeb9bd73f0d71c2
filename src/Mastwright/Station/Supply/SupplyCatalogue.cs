using System.Collections.Immutable;
using Mastwright.Station.HoldUp;

namespace Mastwright.Station.Supply;

/// <summary>The catalogue rows of the supply: cables, classes of power over data cable, converters, loads and cells.</summary>
/// <remarks>Immutable, so safe from many threads. A later row of the same key replaces an earlier one.</remarks>
public sealed record SupplyCatalogue
{
    /// <summary>A catalogue without rows.</summary>
    public static SupplyCatalogue Empty { get; } = new();

    /// <summary>Cables.</summary>
    public ImmutableArray<CableRow> Cables { get; init; } = [];

    /// <summary>Classes of power over data cable.</summary>
    public ImmutableArray<PowerClassRow> Classes { get; init; } = [];

    /// <summary>Kinds of converter.</summary>
    public ImmutableArray<ConverterRow> Converters { get; init; } = [];

    /// <summary>Boards and radios.</summary>
    public ImmutableArray<LoadRow> Loads { get; init; } = [];

    /// <summary>Battery cells.</summary>
    public ImmutableArray<CellRow> Cells { get; init; } = [];

    /// <summary>The cable of a key; null when there is none.</summary>
    public CableRow? Cable(string key) => Cables.LastOrDefault(row => Is(row.Key, key));

    /// <summary>The class of a key; null when there is none.</summary>
    public PowerClassRow? Class(string key) => Classes.LastOrDefault(row => Is(row.Key, key));

    /// <summary>The converter of a key; null when there is none.</summary>
    public ConverterRow? Converter(string key) => Converters.LastOrDefault(row => Is(row.Key, key));

    /// <summary>The load of a key; null when there is none.</summary>
    public LoadRow? Load(string key) => Loads.LastOrDefault(row => Is(row.Key, key));

    /// <summary>The cell of a key; null when there is none.</summary>
    public CellRow? Cell(string key) => Cells.LastOrDefault(row => Is(row.Key, key));

    /// <summary>This catalogue with another's rows added; a row of the same key replaces.</summary>
    public SupplyCatalogue Overlay(SupplyCatalogue other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new()
        {
            Cables = Last([.. Cables, .. other.Cables], row => row.Key),
            Classes = Last([.. Classes, .. other.Classes], row => row.Key),
            Converters = Last([.. Converters, .. other.Converters], row => row.Key),
            Loads = Last([.. Loads, .. other.Loads], row => row.Key),
            Cells = Last([.. Cells, .. other.Cells], row => row.Key),
        };
    }

    private static bool Is(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);

    private static ImmutableArray<T> Last<T>(ImmutableArray<T> rows, Func<T, string> key) => StationCatalogue.LastOfEach(rows, key);
}
