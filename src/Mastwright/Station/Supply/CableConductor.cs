using System.Globalization;
using Mastwright.Findings;

namespace Mastwright.Station.Supply;

/// <summary>A cable described by its conductors, in place of a type of the catalogue.</summary>
/// <remarks>
/// What nobody gives is assumed and listed: copper, flexible (the greatest resistance), four pairs in a data cable. The current that a conductor carries is assumed from its section: 2.4 A/mm² in a data cable, 6 A/mm² in a
/// cable with two cores, seven tenths of that for other metals than copper; the lower ends of what the catalogue's cables have, from memory. So are the sheath, 2.2 mm + 4.6 mm · √(section/mm²) for two cores and
/// the same with half again for a data cable, and what it bears: 60 °C and 70 °C.
/// </remarks>
public sealed record CableConductor
{
    private const double DataAmperesPerSquareMillimetre = 2.4;
    private const double CoreAmperesPerSquareMillimetre = 6;
    private const double OtherMetalFactor = 0.7;

    /// <summary>American wire gauge, 0 to 40; null where its section is given.</summary>
    public int? Gauge { get; init; }

    /// <summary>Nominal section in mm², greater than zero; null where its gauge is given.</summary>
    public double? SquareMillimetres { get; init; }

    /// <summary>What it is made of; null when nobody said.</summary>
    public ConductorMetal? Metal { get; init; }

    /// <summary>How it is made up; null when nobody said.</summary>
    public ConductorStrands? Strands { get; init; }

    /// <summary>Pairs in a data cable, 2 or 4; null when nobody said.</summary>
    public int? CablePairs { get; init; }

    /// <summary>The most current in one conductor, in amperes; null when nobody said.</summary>
    public double? MostAmperes { get; init; }

    /// <summary>Size and metal, as on a parts list.</summary>
    public override string ToString() =>
        (Gauge is { } gauge ? Text($"{gauge} AWG") : Text($"{SquareMillimetres:0.###} mm²"))
        + (Strands is { } strands ? " " + Word(strands) : "")
        + (Metal is { } metal ? " " + Word(metal) : "");

    /// <summary>The cable as a row of the catalogue would have it, with what was assumed.</summary>
    /// <param name="isData">Whether it is a data cable.</param>
    /// <param name="planPath">Where in the plan it stands.</param>
    /// <param name="assumptions">Where what was assumed is added.</param>
    /// <exception cref="InvalidOperationException">It has neither a gauge nor a section.</exception>
    internal CableRow Row(bool isData, string planPath, List<Assumption> assumptions)
    {
        T Given<T>(T? value, T fallback, string code, string text, string key)
            where T : struct
        {
            if (value is null)
            {
                assumptions.Add(new(code, text, "assumed", planPath + "/" + key));
            }

            return value ?? fallback;
        }

        ConductorMetal metal = Given(Metal, ConductorMetal.Copper, "conductor-metal", "conductors of copper", "metal");
        ConductorStrands strands = Given(Strands, ConductorStrands.Flexible, "conductor-strands", "flexible conductors: the greatest resistance of their size", "strands");
        double area = SquareMillimetres ?? (Gauge is { } gauge ? Conductor.AreaSquareMillimetres(gauge) : throw new InvalidOperationException("A conductor has a gauge or a section."));
        double carries = area * (isData ? DataAmperesPerSquareMillimetre : CoreAmperesPerSquareMillimetre) * (metal == ConductorMetal.Copper ? 1 : OtherMetalFactor);
        double sheath = (2.2 + (4.6 * Math.Sqrt(area))) * (isData ? 1.5 : 1);
        double bears = isData ? 60 : 70;
        assumptions.Add(new("conductor-sheath", Text($"sheath of {sheath:0.#} mm that bears {bears:0} °C"), "from memory, by the section", planPath));
        return new()
        {
            Key = "",
            Name = Text($"{(isData ? "data cable" : "two cores")} of {this with { Metal = metal, Strands = strands }}"),
            Pairs = isData ? Given(CablePairs, 4, "cable-pairs", "four pairs in the data cable", "cable-pairs") : 0,
            OhmsPerKilometre = Gauge is not null
                ? Conductor.OhmsPerKilometre(area, metal) * ConductorSections.LayFactor(strands)
                : ConductorSections.OhmsPerKilometre(area, strands, metal),
            Metal = metal,
            MostAmperes = Given(MostAmperes, carries, "conductor-current", Text($"at most {carries:0.##} A in one conductor, by its section (from memory)"), "carries"),
            SheathMillimetres = sheath,
            MostCelsius = bears,
            Source = Gauge is not null ? "ASTM B258 and IEC 60028; lay from memory" : "IEC 60228, " + (strands == ConductorStrands.Flexible ? "class 5, from memory" : "classes 1 and 2"),
        };
    }

    private static string Word(ConductorMetal metal) => metal switch
    {
        ConductorMetal.Aluminium => "aluminium",
        ConductorMetal.CopperCladAluminium => "copper-clad aluminium",
        _ => "copper",
    };

    private static string Word(ConductorStrands strands) => strands switch
    {
        ConductorStrands.Stranded => "stranded",
        ConductorStrands.Flexible => "flexible",
        _ => "solid",
    };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
