using CsCheck;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Supply;
using static Mastwright.Tests.Station.Supply.SupplySamples;

namespace Mastwright.Tests.Station.Supply;

public sealed class ConductorSectionsTests
{
    /// <summary>IEC 60228, maximum resistance of plain copper at 20 °C: classes 1 and 2 by a public copy, class 5 from memory.</summary>
    [Theory]
    [InlineData(1.5, ConductorStrands.Solid, 12.1)]
    [InlineData(2.5, ConductorStrands.Stranded, 7.41)]
    [InlineData(16, ConductorStrands.Stranded, 1.15)]
    [InlineData(35, ConductorStrands.Stranded, 0.524)]
    [InlineData(0.5, ConductorStrands.Flexible, 39.0)]
    [InlineData(6, ConductorStrands.Flexible, 3.30)]
    public void A_nominal_section_has_the_resistance_of_its_table(double section, ConductorStrands strands, double ohms) =>
        Assert.Equal(ohms, ConductorSections.OhmsPerKilometre(section, strands));

    /// <summary>IEC 60228, aluminium, classes 1 and 2, from memory: 10 mm² 3.08, 16 mm² 1.91, 25 mm² 1.20 ohm/km.</summary>
    [Theory]
    [InlineData(10, 3.08)]
    [InlineData(16, 1.91)]
    [InlineData(25, 1.20)]
    public void Aluminium_is_within_3_percent_of_its_table(double section, double ohms) =>
        Assert.Equal(1, ConductorSections.OhmsPerKilometre(section, ConductorStrands.Stranded, ConductorMetal.Aluminium) / ohms, 0.03);

    [Fact]
    public void A_thicker_conductor_never_has_more_resistance_and_a_flexible_one_never_less() =>
        Gen.Select(Gen.Double[0.1, 40], Gen.Double[1.1, 3]).Sample((section, more) =>
        {
            double solid = ConductorSections.OhmsPerKilometre(section, ConductorStrands.Solid);
            return ConductorSections.OhmsPerKilometre(section * more, ConductorStrands.Solid) <= solid
                && ConductorSections.OhmsPerKilometre(section, ConductorStrands.Flexible) >= solid
                && ConductorSections.OhmsPerKilometre(section, ConductorStrands.Solid, ConductorMetal.CopperCladAluminium) > solid;
        });

    /// <summary>40 m of 2 × 1.5 mm² flexible copper (13.3 ohm/km) drop 2 A · 2 · 40 m · 13.3 ohm/km = 2.128 V.</summary>
    [Fact]
    public void A_cable_described_by_its_conductors_drops_what_they_say()
    {
        SupplyResult result = Compute(Adapter(24, 100), Own(isData: false, new() { SquareMillimetres = 1.5, Metal = ConductorMetal.Copper, Strands = ConductorStrands.Flexible }, 40), Steady(2 * (24 - 2.128)));

        Assert.Equal(2.128, 24 - result.Peak[1].Volts, 1e-9);
        Assert.Equal(2, result.Peak[1].Amperes, 1e-9);
        Assert.Equal(["conductor-current", "conductor-sheath"], result.Assumptions.Select(one => one.Code).Where(code => code.StartsWith("conductor", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    /// <summary>A data cable of 24 AWG solid copper is the catalogue's of that gauge; stranded it has 2 % more, copper-clad 1.54 times, with two pairs no more than two.</summary>
    [Fact]
    public void Gauge_metal_strands_and_pairs_of_a_data_cable_count()
    {
        CableConductor solid = new() { Gauge = 24, Metal = ConductorMetal.Copper, Strands = ConductorStrands.Solid, CablePairs = 4, MostAmperes = 0.5 };
        double Loss(CableConductor conductor, int pairs = 4) => Compute(OfClass("class-3", 53), Own(isData: true, conductor, 1) with { Pairs = pairs }, Steady(1)).Peak[0].HeatWatts;
        double one = Loss(solid);

        // 1 W at 53 V through 2 · 84.2 mΩ over four conductors each way.
        Assert.Equal(1.0 / 53 / 53 * 2 * 0.0842 / 4, one, 1e-8);
        Assert.Equal(1.02, Loss(solid with { Strands = ConductorStrands.Stranded }) / one, 1e-3);
        Assert.Equal(1.54, Loss(solid with { Metal = ConductorMetal.CopperCladAluminium }) / one, 0.01);
        Assert.Equal(2, Loss(solid with { CablePairs = 2 }) / one, 1e-3);
        Assert.Contains(
            Compute(OfClass("class-3"), Own(isData: true, solid with { Metal = ConductorMetal.CopperCladAluminium }, 10), Steady(5)).Findings, finding => finding.Code == "supply-cable-clad");
    }

    [Fact]
    public void What_a_description_leaves_out_is_listed_and_takes_the_greater_resistance()
    {
        SupplyResult result = Compute(Injector(48, 20), Own(isData: true, new() { Gauge = 24 }, 10) with { Pairs = 2 }, Steady(5, Estimate.Between(36, 57)));

        Assert.Equal(
            ["cable-pairs", "conductor-current", "conductor-metal", "conductor-sheath", "conductor-strands"],
            result.Assumptions.Where(one => one.PlanPath.StartsWith("p/supply/2", StringComparison.Ordinal) && one.Code != "cable-temperature").Select(one => one.Code).Order(StringComparer.Ordinal));
        Assert.Contains("data cable of 24 AWG flexible copper", result.Peak[0].Label, StringComparison.Ordinal);

        // 0.2047 mm² (ASTM B258) at 2.4 A/mm².
        Assert.Equal(0.4913, Assert.Single(result.Findings, finding => finding.Code == "supply-cable-current").Limit!.Value, 1e-3);
    }

    private static SupplyCable Own(bool isData, CableConductor conductor, double metres) =>
        new("p/supply/2", isData, "", Estimate.Exactly(metres)) { TemperatureCelsius = 20, Conductor = conductor };
}
