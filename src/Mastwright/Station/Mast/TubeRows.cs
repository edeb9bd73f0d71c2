namespace Mastwright.Station.Mast;

/// <summary>What a tube is made of.</summary>
public enum TubeMaterial
{
    /// <summary>Steel.</summary>
    Steel,

    /// <summary>Aluminium.</summary>
    Aluminium,
}

/// <summary>A size of tube.</summary>
/// <param name="Key">Its key, such as "steel-48.3x3.2".</param>
/// <param name="OuterDiameterMetres">Outer diameter in metres, greater than zero.</param>
/// <param name="WallMetres">Wall in metres: greater than zero and at most half the diameter.</param>
/// <param name="Material">What tubes of this size are made of.</param>
/// <param name="Source">Document, edition, table, and how it was read.</param>
public sealed record TubeRow(string Key, double OuterDiameterMetres, double WallMetres, TubeMaterial Material, string Source);

/// <summary>A grade of tube: its strength and stiffness.</summary>
/// <param name="Key">Its key, such as "s235".</param>
/// <param name="Name">What a person reads.</param>
/// <param name="Material">Steel or aluminium.</param>
/// <param name="YieldPa">Yield strength, or 0.2 % proof strength, in pascals.</param>
/// <param name="ModulusPa">Modulus of elasticity in pascals.</param>
/// <param name="DensityKilogramsPerCubicMetre">Density in kg/m³.</param>
/// <param name="WeldShare">Share of the strength that is left beside a weld, 0 to 1: 1 for steel.</param>
/// <param name="MaterialFactor">Partial factor γM on the strength.</param>
/// <param name="Source">Document, edition, table, and how it was read.</param>
public sealed record TubeGradeRow(
    string Key,
    string Name,
    TubeMaterial Material,
    double YieldPa,
    double ModulusPa,
    double DensityKilogramsPerCubicMetre,
    double WeldShare,
    double MaterialFactor,
    string Source);
