using Mastwright.Quantities;

namespace Mastwright.Station.BoxClimate;

/// <summary>A catalogue row: what a box is made of.</summary>
/// <param name="Key">Its key, such as "painted-steel".</param>
/// <param name="WattsPerSquareMetreKelvin">Heat that a square metre lets through for each kelvin between the air inside and still air outside at 20 °C, in W/(m²·K).</param>
/// <param name="Emissivity">Emissivity of its outside for heat, 0 to 1.</param>
/// <param name="Source">Document, "common practice" or "from memory".</param>
public sealed record BoxMaterialRow(string Key, double WattsPerSquareMetreKelvin, double Emissivity, string Source);

/// <summary>A catalogue row: a colour.</summary>
/// <param name="Key">Its key, such as "light-grey".</param>
/// <param name="Absorptivity">Share of the sun's power that it takes up, 0 to 1.</param>
/// <param name="Source">Document, "common practice" or "from memory".</param>
public sealed record BoxColourRow(string Key, double Absorptivity, string Source);

/// <summary>A catalogue row: how tight a box is.</summary>
/// <param name="Key">Its key, such as "sealed".</param>
/// <param name="AirChangesPerHour">How often an hour its air is replaced, besides what it breathes by warming and cooling.</param>
/// <param name="Breathes">Whether its pressure follows that outside by itself.</param>
/// <param name="Source">Document, "common practice" or "from memory".</param>
public sealed record BoxSealRow(string Key, Estimate AirChangesPerHour, bool Breathes, string Source);

/// <summary>A catalogue row: what a place does to a box, and the IP code asked for there.</summary>
/// <param name="Key">Its key, such as "rain".</param>
/// <param name="Meaning">What it means.</param>
/// <param name="Needed">The IP code that is needed.</param>
/// <param name="GalvanicVolts">The most difference in volts between two metals that touch there.</param>
/// <param name="Source">Document, "common practice" or "from memory".</param>
public sealed record BoxPlaceRow(string Key, string Meaning, IngressCode Needed, double GalvanicVolts, string Source);

/// <summary>A catalogue row: a metal's place in the galvanic series.</summary>
/// <param name="Key">Its key, such as "stainless-steel".</param>
/// <param name="Volts">Anodic index in volts: of two metals the one with the larger goes.</param>
/// <param name="Source">Document, "common practice" or "from memory".</param>
public sealed record MetalRow(string Key, double Volts, string Source);

/// <summary>The rows that a box looks values up in.</summary>
/// <remarks>Immutable, so safe from many threads.</remarks>
public sealed record BoxCatalogue
{
    /// <summary>Without rows.</summary>
    public static BoxCatalogue Empty { get; } = new();

    /// <summary>Materials.</summary>
    public KeyedRows<BoxMaterialRow> Materials { get; init; } = new([], row => row.Key);

    /// <summary>Colours.</summary>
    public KeyedRows<BoxColourRow> Colours { get; init; } = new([], row => row.Key);

    /// <summary>How tight boxes are.</summary>
    public KeyedRows<BoxSealRow> Seals { get; init; } = new([], row => row.Key);

    /// <summary>Places and what they ask of a box.</summary>
    public KeyedRows<BoxPlaceRow> Places { get; init; } = new([], row => row.Key);

    /// <summary>The galvanic series.</summary>
    public KeyedRows<MetalRow> Metals { get; init; } = new([], row => row.Key);

    /// <summary>This catalogue with another's rows added; a row of the same key replaces.</summary>
    public BoxCatalogue Overlay(BoxCatalogue other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new()
        {
            Materials = Materials.Overlay(other.Materials),
            Colours = Colours.Overlay(other.Colours),
            Seals = Seals.Overlay(other.Seals),
            Places = Places.Overlay(other.Places),
            Metals = Metals.Overlay(other.Metals),
        };
    }
}
