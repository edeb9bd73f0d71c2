using Mastwright.Station.Wind;

namespace Mastwright.Station.Mast;

/// <summary>The rows that the mast and the wind on it look values up in.</summary>
/// <remarks>Immutable, so safe from many threads.</remarks>
public sealed record StructureCatalogue
{
    /// <summary>Without rows.</summary>
    public static StructureCatalogue Empty { get; } = new();

    /// <summary>Terrain categories of EN 1991-1-4.</summary>
    public KeyedRows<TerrainRow> Terrains { get; init; } = new([], row => row.Key);

    /// <summary>Exposure categories of ASCE/SEI 7.</summary>
    public KeyedRows<ExposureRow> Exposures { get; init; } = new([], row => row.Key);

    /// <summary>Ice classes of ISO 12494.</summary>
    public KeyedRows<IceRow> Ice { get; init; } = new([], row => row.Key);

    /// <summary>Sizes of tubes.</summary>
    public KeyedRows<TubeRow> Tubes { get; init; } = new([], row => row.Key);

    /// <summary>Grades of tubes.</summary>
    public KeyedRows<TubeGradeRow> Grades { get; init; } = new([], row => row.Key);

    /// <summary>This catalogue with another's rows added; a row of the same key replaces.</summary>
    public StructureCatalogue Overlay(StructureCatalogue other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return new()
        {
            Terrains = Terrains.Overlay(other.Terrains),
            Exposures = Exposures.Overlay(other.Exposures),
            Ice = Ice.Overlay(other.Ice),
            Tubes = Tubes.Overlay(other.Tubes),
            Grades = Grades.Overlay(other.Grades),
        };
    }
}
