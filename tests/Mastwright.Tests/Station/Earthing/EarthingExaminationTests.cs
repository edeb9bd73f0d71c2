using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Earthing;
using Mastwright.Station.Feed;

namespace Mastwright.Tests.Station.Earthing;

public sealed class EarthingExaminationTests
{
    internal static readonly EarthingInput Input = new()
    {
        FitOutPath = "p",
        TipHeightMetres = 9,
        Feed = [new LossyPart("p/feed/1", LossyPartKind.SurgeArrester, 1, Estimate.Exactly(0.3))],
        Catalogue = new([], [], [])
        {
            Earthing = new()
            {
                Classes = new([new("III", 45, 0.04, "IEC 62305-3")], row => row.Key),
                Conductors = new([new("copper", 16, "IEC 60728-11"), new("steel", 50, "IEC 60728-11")], row => row.Key),
                Soils = new([new("humus", Estimate.Of(50, 100, 200), "handbook")], row => row.Key),
            },
        },
        Earthing = new()
        {
            LightningClass = "III",
            AirTermination = AirTermination.Rod,
            RodHeightMetres = 10,
            RodDistanceMetres = 1,
            ConductorSquareMillimetres = 16,
            ConductorMaterial = "copper",
            SoilOhmMetres = Estimate.Exactly(100),
            Rods = 2,
            RodLengthMetres = 3,
            RodDiameterMetres = 0.016,
            RodSpacingMetres = 3,
            HasLightningProtection = false,
            DataCable = DataCableSurge.Arrester,
        },
    };

    [Fact]
    public void A_tip_is_held_against_the_height_of_the_zone_where_it_stands()
    {
        // 45 − √(45² − (28.284 − 1)²) = 9.214 m, by hand.
        Finding zone = Single(EarthingExamination.Of(Input), "lightning-zone");
        Assert.Equal(9.214, zone.Limit!.Value, 1e-3);
        Assert.Equal(Verdict.Ok, zone.Verdict);

        Assert.Equal(Verdict.Tight, Single(EarthingExamination.Of(Input with { TipHeightMetres = 9.5 }), "lightning-zone").Verdict);
    }

    [Fact]
    public void Nothing_that_is_said_of_lightning_claims_protection()
    {
        string text = FindingSentences.Text(Single(EarthingExamination.Of(Input), "lightning-zone"));

        Assert.Contains("Some strikes go past", text, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_rods_resistance_is_held_against_what_the_standard_recommends()
    {
        Examination result = EarthingExamination.Of(Input);
        Assert.Equal(19.399, Single(result, "earth-resistance").Value!.Value.Median, 2e-3);
        Assert.Equal(19.399, Assert.Single(result.Ledgers).Total, 2e-3);
        Assert.Equal(Verdict.Tight, Single(result, "earth-resistance").Verdict);

        EarthingFit vague = Input.Earthing! with { SoilOhmMetres = Estimate.Of(20, 60, 200) };
        Assert.Equal(Verdict.Unknown, Single(EarthingExamination.Of(Input with { Earthing = vague }), "earth-resistance").Verdict);
    }

    [Theory]
    [InlineData(16, "copper", Verdict.Ok)]
    [InlineData(10, "copper", Verdict.Fails)]
    [InlineData(16, "steel", Verdict.Fails)]
    public void The_conductor_is_held_against_the_least_of_its_material(double area, string material, Verdict verdict) => Assert.Equal(
        verdict,
        Single(EarthingExamination.Of(Input with { Earthing = Input.Earthing! with { ConductorSquareMillimetres = area, ConductorMaterial = material } }), "mast-earth").Verdict);

    [Fact]
    public void Missing_surge_arresters_are_findings()
    {
        Examination result = EarthingExamination.Of(Input with { Feed = [], Earthing = Input.Earthing! with { DataCable = DataCableSurge.Bare } });

        Assert.Equal(Verdict.Tight, Single(result, "surge-coax").Verdict);
        Assert.Equal(Verdict.Tight, Single(result, "surge-data-cable").Verdict);
    }

    [Fact]
    public void Nothing_said_is_unknown()
    {
        Examination silent = EarthingExamination.Of(Input with { Earthing = null });
        Assert.Equal(Verdict.Unknown, Single(silent, "earthing-not-described").Verdict);

        Examination empty = EarthingExamination.Of(Input with { Earthing = new() });
        Assert.Equal(["lightning-separation-unknown", "lightning-zone-unknown", "mast-earth-unknown", "surge-data-cable"],
            empty.Findings.Where(finding => finding.Verdict == Verdict.Unknown).Select(finding => finding.Code).Order(StringComparer.Ordinal));
        Assert.Empty(EarthingExamination.Of(Input with { IsIndoors = true }).Findings);
    }

    [Fact]
    public void A_lightning_protection_system_asks_for_its_separation_distance()
    {
        EarthingFit near = Input.Earthing! with { HasLightningProtection = true, SeparationMetres = 0.3, SeparationLengthMetres = 10, DownConductors = 2 };
        Finding finding = Single(EarthingExamination.Of(Input with { Earthing = near }), "lightning-separation");

        Assert.Equal(0.264, finding.Limit!.Value, 1e-9); // 0.04 · 0.66 · 10 m.
        Assert.Equal(Verdict.Ok, finding.Verdict);
        Assert.Equal(Verdict.Fails, Single(EarthingExamination.Of(Input with { Earthing = near with { ThroughSolid = true } }), "lightning-separation").Verdict);
    }

    [Fact]
    public void An_antenna_well_below_the_roof_s_edge_and_near_the_wall_needs_no_earth_by_the_standard() =>
        Assert.Equal(Verdict.Ok, Single(EarthingExamination.Of(Input with { Earthing = Input.Earthing! with { BelowRoofEdgeMetres = 2.5, FromWallMetres = 0.4 } }), "mast-earth-exempt").Verdict);

    private static Finding Single(Examination result, string code) => Assert.Single(result.Findings, finding => finding.Code == code);
}
