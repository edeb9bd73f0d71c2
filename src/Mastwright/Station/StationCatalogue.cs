using System.Collections.Frozen;
using System.Collections.Immutable;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Earthing;
using Mastwright.Station.Feed;
using Mastwright.Station.Mast;
using Mastwright.Station.Radio;
using Mastwright.Station.Rules;
using Mastwright.Station.Supply;

namespace Mastwright.Station;

/// <summary>The catalogue of line types, feed parts and modems that a budget looks values up in.</summary>
/// <remarks>Immutable, so safe from many threads. A later row of the same key replaces an earlier one: a user's file overrides.</remarks>
public sealed class StationCatalogue
{
    private readonly FrozenDictionary<string, LineTypeRow> _lines;
    private readonly FrozenDictionary<string, PartLossRow> _parts;
    private readonly FrozenDictionary<string, ModemRow> _modems;

    /// <summary>Makes a catalogue from rows; of rows with the same key the last one counts.</summary>
    public StationCatalogue(IEnumerable<LineTypeRow> lineTypes, IEnumerable<PartLossRow> parts, IEnumerable<ModemRow> modems)
    {
        ArgumentNullException.ThrowIfNull(lineTypes);
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(modems);
        LineTypes = LastOfEach(lineTypes, row => row.Key);
        Parts = LastOfEach(parts, row => row.Key);
        Modems = LastOfEach(modems, row => row.Key);
        _lines = LineTypes.ToFrozenDictionary(row => row.Key, StringComparer.OrdinalIgnoreCase);
        _parts = Parts.ToFrozenDictionary(row => row.Key, StringComparer.OrdinalIgnoreCase);
        _modems = Modems.ToFrozenDictionary(row => row.Key, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>A catalogue without rows.</summary>
    public static StationCatalogue Empty { get; } = new([], [], []);

    /// <summary>The line types by rising key.</summary>
    public ImmutableArray<LineTypeRow> LineTypes { get; }

    /// <summary>The losses of feed parts by rising key.</summary>
    public ImmutableArray<PartLossRow> Parts { get; }

    /// <summary>The rows of law.</summary>
    public RuleBook Law { get; init; } = RuleBook.Empty;

    /// <summary>The modems by rising key.</summary>
    public ImmutableArray<ModemRow> Modems { get; }

    /// <summary>The rows of the supply.</summary>
    public SupplyCatalogue Supply { get; init; } = SupplyCatalogue.Empty;
    /// <summary>Tubes, grades, terrain and ice: what the mast and the wind on it look up.</summary>
    public StructureCatalogue Structure { get; init; } = StructureCatalogue.Empty;

    /// <summary>Lightning classes, conductors and soils: what earthing looks up.</summary>
    public EarthingCatalogue Earthing { get; init; } = EarthingCatalogue.Empty;

    /// <summary>Materials, colours, places, metals: what a box looks up.</summary>
    public BoxCatalogue Box { get; init; } = BoxCatalogue.Empty;

    /// <summary>The line type of a key, in any case; null when there is none.</summary>
    public LineTypeRow? LineType(string key) => _lines.GetValueOrDefault(key);

    /// <summary>The loss of a kind of part; null when there is none.</summary>
    public PartLossRow? Part(LossyPartKind kind) => _parts.GetValueOrDefault(PartLossRow.KeyOf(kind));

    /// <summary>The loss of the part of a key; null when there is none.</summary>
    public PartLossRow? Part(string key) => _parts.GetValueOrDefault(key);

    /// <summary>The row that the demodulation limits of a modulation come from: the first by key; null when there is none.</summary>
    public ModemRow? Modem(Modulation modulation) => Modems.FirstOrDefault(row => row.Modulation == modulation);

    /// <summary>The modem of a key; null when there is none.</summary>
    public ModemRow? Modem(string key) => _modems.GetValueOrDefault(key);

    /// <summary>This catalogue with another's rows added; a row of the same key replaces.</summary>
    public StationCatalogue Overlay(StationCatalogue other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new([.. LineTypes, .. other.LineTypes], [.. Parts, .. other.Parts], [.. Modems, .. other.Modems])
        {
            Law = Law.Overlay(other.Law),
            Supply = Supply.Overlay(other.Supply),
            Structure = Structure.Overlay(other.Structure),
            Earthing = Earthing.Overlay(other.Earthing),
            Box = Box.Overlay(other.Box),
        };
    }

    internal static ImmutableArray<T> LastOfEach<T>(IEnumerable<T> rows, Func<T, string> key) =>
    [
        .. rows.GroupBy(key, StringComparer.OrdinalIgnoreCase)
            .Select(group => group.Last())
            .OrderBy(key, StringComparer.OrdinalIgnoreCase),
    ];
}
