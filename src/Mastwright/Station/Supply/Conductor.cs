namespace Mastwright.Station.Supply;

/// <summary>Resistance of a conductor by metal, size and temperature.</summary>
/// <remarks>
/// <para>Gauge: ASTM B258, d = 0.127 mm · 92^((36 − n)/39). Resistance: ρ/A, with ρ of copper 1/58 Ω·mm²/m at 20 °C (IEC 60028).</para>
/// <para>Temperature: R = R20·(1 + α·(T − 20)), α = 0.00393 /K for copper (IEC 60028).</para>
/// <para>Aluminium: ρ = 0.028264 Ω·mm²/m, α = 0.00403 /K (IEC 60889, from memory). Copper-clad aluminium: a tenth of the section is
/// copper, the rest aluminium, side by side (class 10 of ASTM B566, from memory).</para>
/// </remarks>
public static class Conductor
{
    private const double CopperSiemensMetresPerSquareMillimetre = 58;
    private const double AluminiumOhmSquareMillimetresPerMetre = 0.028264;
    private const double CladCopperShare = 0.1;

    /// <summary>Diameter in mm of an American wire gauge, 0 to 40.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The gauge is outside 0 to 40.</exception>
    public static double DiameterMillimetres(int gauge) => gauge is >= 0 and <= 40
        ? 0.127 * Math.Pow(92, (36 - gauge) / 39.0)
        : throw new ArgumentOutOfRangeException(nameof(gauge), "A gauge is a number from 0 to 40.");

    /// <summary>Section in mm² of an American wire gauge, 0 to 40.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The gauge is outside 0 to 40.</exception>
    public static double AreaSquareMillimetres(int gauge)
    {
        double diameter = DiameterMillimetres(gauge);
        return Math.PI / 4 * diameter * diameter;
    }

    /// <summary>Resistance in ohms per kilometre of one conductor at 20 °C.</summary>
    /// <param name="areaSquareMillimetres">Section of the metal in mm², greater than zero.</param>
    /// <param name="metal">What it is made of.</param>
    /// <exception cref="ArgumentOutOfRangeException">The section is not greater than zero.</exception>
    public static double OhmsPerKilometre(double areaSquareMillimetres, ConductorMetal metal = ConductorMetal.Copper) => areaSquareMillimetres > 0
        ? 1000 / (Conductivity(metal) * areaSquareMillimetres)
        : throw new ArgumentOutOfRangeException(nameof(areaSquareMillimetres), "A section is greater than zero.");

    /// <summary>What a resistance at 20 °C is at another temperature, as a factor.</summary>
    /// <param name="temperatureCelsius">Temperature of the conductor, −200 °C to 300 °C.</param>
    /// <param name="metal">What it is made of.</param>
    public static double TemperatureFactor(double temperatureCelsius, ConductorMetal metal = ConductorMetal.Copper) =>
        1 + ((metal == ConductorMetal.Copper ? 0.00393 : 0.00403) * (temperatureCelsius - 20));

    private static double Conductivity(ConductorMetal metal) => metal switch
    {
        ConductorMetal.Aluminium => 1 / AluminiumOhmSquareMillimetresPerMetre,
        ConductorMetal.CopperCladAluminium =>
            (CladCopperShare * CopperSiemensMetresPerSquareMillimetre) + ((1 - CladCopperShare) / AluminiumOhmSquareMillimetresPerMetre),
        _ => CopperSiemensMetresPerSquareMillimetre,
    };
}

/// <summary>What a conductor is made of. The default is copper.</summary>
public enum ConductorMetal
{
    /// <summary>Annealed copper.</summary>
    Copper,

    /// <summary>Aluminium.</summary>
    Aluminium,

    /// <summary>Aluminium with a skin of copper, a tenth of the section.</summary>
    CopperCladAluminium,
}
