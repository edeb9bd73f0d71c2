using System.Collections.Immutable;

namespace Mastwright.Station.Supply;

/// <summary>Resistance of conductors sold by their nominal section in mm².</summary>
/// <remarks>
/// <para>Source: IEC 60228, maximum resistance at 20 °C of plain copper: classes 1 and 2 from 1.5 mm² as a public copy has them; the smaller ones and class 5 from memory.</para>
/// <para>A nominal section stands for the resistance, not for the metal's true section. Between and beyond the table's sections: the formula of <see cref="Conductor"/> with what the table adds to it at the
/// most, 8 % for classes 1 and 2 and 16 % for class 5. Aluminium and copper-clad aluminium: copper's, by the metals' conductivities; within 3 % of the table's aluminium (ConductorSectionsTests).</para>
/// </remarks>
public static class ConductorSections
{
    private static readonly ImmutableArray<(double SquareMillimetres, double Rigid, double Flexible)> Copper =
    [
        (0.5, 36.0, 39.0), (0.75, 24.5, 26.0), (1, 18.1, 19.5), (1.5, 12.1, 13.3), (2.5, 7.41, 7.98), (4, 4.61, 4.95),
        (6, 3.08, 3.30), (10, 1.83, 1.91), (16, 1.15, 1.21), (25, 0.727, 0.780), (35, 0.524, 0.554),
    ];

    /// <summary>Resistance in ohms per kilometre of one conductor at 20 °C.</summary>
    /// <param name="nominalSquareMillimetres">Nominal section in mm², greater than zero.</param>
    /// <param name="strands">How it is made up.</param>
    /// <param name="metal">What it is made of.</param>
    /// <exception cref="ArgumentOutOfRangeException">The section is not greater than zero.</exception>
    public static double OhmsPerKilometre(double nominalSquareMillimetres, ConductorStrands strands, ConductorMetal metal = ConductorMetal.Copper)
    {
        bool isFlexible = strands == ConductorStrands.Flexible;
        double byFormula = Conductor.OhmsPerKilometre(nominalSquareMillimetres);
        double copper = byFormula * (isFlexible ? 1.16 : 1.08);
        foreach ((double section, double rigid, double flexible) in Copper)
        {
            if (Math.Abs(section - nominalSquareMillimetres) < 1e-9)
            {
                copper = isFlexible ? flexible : rigid;
            }
        }

        return copper * (Conductor.OhmsPerKilometre(nominalSquareMillimetres, metal) / byFormula);
    }

    /// <summary>What the lay of the strands adds to a gauge, as a factor: nothing for a solid wire, 2 % for stranded, 4 % for flexible (from memory).</summary>
    /// <param name="strands">How the conductor is made up.</param>
    public static double LayFactor(ConductorStrands strands) => strands switch
    {
        ConductorStrands.Stranded => 1.02,
        ConductorStrands.Flexible => 1.04,
        _ => 1,
    };
}

/// <summary>How a conductor is made up. The default is one solid wire.</summary>
public enum ConductorStrands
{
    /// <summary>One wire: class 1 of IEC 60228.</summary>
    Solid,

    /// <summary>Several wires: class 2 of IEC 60228.</summary>
    Stranded,

    /// <summary>Many thin wires, for cables that are moved: class 5 of IEC 60228.</summary>
    Flexible,
}
