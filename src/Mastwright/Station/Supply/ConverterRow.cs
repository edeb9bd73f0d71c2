using Mastwright.Quantities;

namespace Mastwright.Station.Supply;

/// <summary>A catalogue row: a kind of converter with its efficiency over its load.</summary>
/// <param name="Key">Its key, such as "buck".</param>
/// <param name="Name">What a person reads.</param>
/// <param name="Efficiency">Efficiency (0 to 1) by the share of its rated output (0 to 1).</param>
/// <param name="Source">Document, "common practice" or "from memory".</param>
public sealed record ConverterRow(string Key, string Name, LinearCurve Efficiency, string Source)
{
    /// <summary>Which way it can change a voltage. The default is either way.</summary>
    public ConverterStep Step { get; init; }

    /// <summary>Key of the row that a mains adapter without an efficiency of its own is taken for.</summary>
    public const string MainsAdapter = "mains-adapter";

    /// <summary>Key of the row that a converter of no kind is taken for.</summary>
    public const string Buck = "buck";

    /// <summary>Key of the row that a battery charger without an efficiency of its own is taken for.</summary>
    public const string Charger = "charger";
}

/// <summary>Which way a kind of converter can change a voltage. The default is either way.</summary>
public enum ConverterStep
{
    /// <summary>Its output may lie above or below its input, as a transformer gives it.</summary>
    Either,

    /// <summary>Its output lies below its input.</summary>
    Down,

    /// <summary>Its output lies above its input.</summary>
    Up,
}
