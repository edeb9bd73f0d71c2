namespace Mastwright.Station.Wind;

/// <summary>Mean wind, turbulence and peak velocity pressure of EN 1991-1-4:2005+A1:2010, clauses 4.2 to 4.5.</summary>
/// <remarks>
/// With the recommended turbulence factor 1.0. Up to 200 m above the ground (clause 4.3.1). The formulas and Table 4.1 were read in public worked examples that
/// state them; the standard itself was not at hand.
/// </remarks>
public static class EurocodeWind
{
    /// <summary>Greatest height in metres that the formulas hold for.</summary>
    public const double GreatestHeightMetres = 200;

    /// <summary>Recommended shape parameter K of the probability factor (note to (4.2), from memory).</summary>
    public const double ProbabilityShape = 0.2;

    /// <summary>Recommended exponent n of the probability factor (note to (4.2), from memory).</summary>
    public const double ProbabilityExponent = 0.5;

    /// <summary>Return period in years of the basic wind: yearly probability 0.02 (clause 4.2).</summary>
    public const int BasicReturnPeriodYears = 50;

    private const double RoughnessOfCategoryTwo = 0.05;

    /// <summary>Terrain factor kr (4.5).</summary>
    public static double TerrainFactor(TerrainRow terrain)
    {
        ArgumentNullException.ThrowIfNull(terrain);
        return 0.19 * Math.Pow(terrain.RoughnessLengthMetres / RoughnessOfCategoryTwo, 0.07);
    }

    /// <summary>Roughness factor cr(z) (4.4).</summary>
    /// <param name="terrain">The terrain category.</param>
    /// <param name="heightMetres">Height above the ground in metres, zero or more; below zmin as at zmin.</param>
    public static double RoughnessFactor(TerrainRow terrain, double heightMetres) =>
        TerrainFactor(terrain) * LogarithmOfHeight(terrain, heightMetres);

    /// <summary>Turbulence intensity Iv(z) (4.7), as a ratio.</summary>
    /// <param name="terrain">The terrain category.</param>
    /// <param name="heightMetres">Height above the ground in metres, zero or more; below zmin as at zmin.</param>
    /// <param name="orographyFactor">Orography factor co, greater than zero.</param>
    public static double TurbulenceIntensity(TerrainRow terrain, double heightMetres, double orographyFactor) =>
        1 / (orographyFactor * LogarithmOfHeight(terrain, heightMetres));

    /// <summary>Probability factor cprob (4.2) of a return period, on the speed: 1 for 50 years.</summary>
    /// <param name="returnPeriodYears">Return period in years, 2 or more.</param>
    public static double ProbabilityFactor(int returnPeriodYears)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(returnPeriodYears, 2);
        static double Of(double years) => 1 - (ProbabilityShape * Math.Log(-Math.Log(1 - (1 / years))));

        return Math.Pow(Of(returnPeriodYears) / Of(BasicReturnPeriodYears), ProbabilityExponent);
    }

    /// <summary>Peak velocity pressure qp(z) in pascals (4.8).</summary>
    /// <param name="terrain">The terrain category.</param>
    /// <param name="basicSpeedMetresPerSecond">Basic wind vb in m/s.</param>
    /// <param name="heightMetres">Height above the ground in metres, zero or more; below zmin as at zmin.</param>
    /// <param name="orographyFactor">Orography factor co, greater than zero.</param>
    /// <param name="airDensity">Density of the air in kg/m³.</param>
    public static double PeakPressurePa(
        TerrainRow terrain, double basicSpeedMetresPerSecond, double heightMetres, double orographyFactor = 1, double airDensity = WindDefaults.AirDensity)
    {
        double mean = RoughnessFactor(terrain, heightMetres) * orographyFactor * basicSpeedMetresPerSecond;
        return (1 + (7 * TurbulenceIntensity(terrain, heightMetres, orographyFactor))) * 0.5 * airDensity * mean * mean;
    }

    private static double LogarithmOfHeight(TerrainRow terrain, double heightMetres)
    {
        ArgumentNullException.ThrowIfNull(terrain);
        return Math.Log(Math.Max(heightMetres, terrain.LeastHeightMetres) / terrain.RoughnessLengthMetres);
    }
}
