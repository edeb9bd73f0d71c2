namespace Mastwright.Station.Earthing;

/// <summary>A class of lightning protection of IEC 62305-3.</summary>
/// <param name="Key">The class: "I" to "IV".</param>
/// <param name="SphereMetres">Radius of its rolling sphere in metres (Table 2).</param>
/// <param name="SeparationFactor">Its factor ki of the separation distance (Table 10).</param>
/// <param name="Source">Document, edition, table, and how it was read.</param>
public sealed record LightningClassRow(string Key, double SphereMetres, double SeparationFactor, string Source);

/// <summary>The least conductor from an antenna's mast to earth, by material.</summary>
/// <param name="Key">The material: "copper", "aluminium", "steel".</param>
/// <param name="LeastSquareMillimetres">Least cross-section in mm².</param>
/// <param name="Source">Document, edition, clause, and how it was read.</param>
public sealed record EarthConductorRow(string Key, double LeastSquareMillimetres, string Source);

/// <summary>Resistivity of a soil.</summary>
/// <param name="Key">Its key, such as "moist-sand".</param>
/// <param name="OhmMetres">Resistivity in Ω·m.</param>
/// <param name="Source">Where the figure comes from.</param>
public sealed record SoilRow(string Key, Quantities.Estimate OhmMetres, string Source);

/// <summary>The rows that earthing looks values up in. Immutable, so safe from many threads.</summary>
public sealed record EarthingCatalogue
{
    /// <summary>Without rows.</summary>
    public static EarthingCatalogue Empty { get; } = new();

    /// <summary>Classes of lightning protection.</summary>
    public KeyedRows<LightningClassRow> Classes { get; init; } = new([], row => row.Key);

    /// <summary>Conductors from a mast to earth.</summary>
    public KeyedRows<EarthConductorRow> Conductors { get; init; } = new([], row => row.Key);

    /// <summary>Soils.</summary>
    public KeyedRows<SoilRow> Soils { get; init; } = new([], row => row.Key);

    /// <summary>This catalogue with another's rows added; a row of the same key replaces.</summary>
    public EarthingCatalogue Overlay(EarthingCatalogue other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new() { Classes = Classes.Overlay(other.Classes), Conductors = Conductors.Overlay(other.Conductors), Soils = Soils.Overlay(other.Soils) };
    }
}
