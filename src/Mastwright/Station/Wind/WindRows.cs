namespace Mastwright.Station.Wind;

/// <summary>A terrain category of EN 1991-1-4, Table 4.1.</summary>
/// <param name="Key">The category: "0", "I", "II", "III", "IV".</param>
/// <param name="Meaning">What such ground is like.</param>
/// <param name="RoughnessLengthMetres">Roughness length z0 in metres, greater than zero.</param>
/// <param name="LeastHeightMetres">Height zmin in metres below which the wind is taken as at it.</param>
/// <param name="Source">Document, edition, table, and how it was read.</param>
public sealed record TerrainRow(string Key, string Meaning, double RoughnessLengthMetres, double LeastHeightMetres, string Source);

/// <summary>An exposure category of ASCE/SEI 7.</summary>
/// <param name="Key">The category: "B", "C", "D".</param>
/// <param name="Meaning">What such ground is like.</param>
/// <param name="Exponent">Power-law exponent α of the three-second gust.</param>
/// <param name="GradientHeightMetres">Gradient height zg in metres.</param>
/// <param name="Source">Document, edition, table, and how it was read.</param>
public sealed record ExposureRow(string Key, string Meaning, double Exponent, double GradientHeightMetres, string Source);

/// <summary>An ice class of ISO 12494.</summary>
/// <param name="Key">The class: "G1" to "G5" (glaze), "R1" to "R9" (rime).</param>
/// <param name="ThicknessMetres">Thickness of glaze all round in metres; null for rime.</param>
/// <param name="MassKilogramsPerMetre">Mass of rime on a rod of 30 mm in kg/m; null for glaze.</param>
/// <param name="DensityKilogramsPerCubicMetre">Density that the class is taken with.</param>
/// <param name="Source">Document, edition, table, and how it was read.</param>
public sealed record IceRow(string Key, double? ThicknessMetres, double? MassKilogramsPerMetre, double DensityKilogramsPerCubicMetre, string Source);
