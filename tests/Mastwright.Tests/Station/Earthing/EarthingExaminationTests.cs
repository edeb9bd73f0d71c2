using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Earthing;
using Mastwright.Station.Feed;
using Mastwright.Station.Supply;

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

    /// <summary>A panel stands outside, so its cable does too: common practice; IEC 62305-4.</summary>
    [Fact]
    public void The_cable_of_a_panel_is_a_cable_outside()
    {
        EarthingInput without = Input with { Earthing = Input.Earthing! with { DataCable = DataCableSurge.NoCable } };
        Finding panel = Single(EarthingExamination.Of(without with { HasPanel = true }), "surge-data-cable");

        Assert.Equal(Verdict.Ok, Single(EarthingExamination.Of(without), "surge-data-cable").Verdict);
        Assert.Equal(Verdict.Unknown, panel.Verdict);
        Assert.Contains("The cable of the solar panel runs outside", FindingSentences.Text(panel), StringComparison.Ordinal);
    }

    [Fact]
    public void A_tip_is_held_against_the_height_of_the_zone_where_it_stands()
    {
        // 45 − √(45² − (28.284 − 1)²) = 9.214 m, by hand.
        Finding zone = Single(EarthingExamination.Of(Input), "lightning-zone");
        Assert.Equal(9.214, zone.Limit!.Value, 1e-3);
        Assert.Equal(9.214, Assert.Single(EarthingExamination.Of(Input).Ledgers, ledger => ledger.Title.StartsWith("height of the zone", StringComparison.Ordinal)).Total, 1e-3);
        Assert.Equal(
            RollingSphere.ProtectionAngleDegrees(45, 10), Assert.Single(EarthingExamination.Of(Input).Ledgers, ledger => ledger.Unit == "°").Total, 1e-12);
        Assert.Equal(0, Single(EarthingExamination.Of(Input with { Earthing = Input.Earthing! with { RodDistanceMetres = 40 } }), "lightning-zone").Limit);
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
        Assert.Equal(19.399, Assert.Single(result.Ledgers, ledger => ledger.Unit == "Ω").Total, 2e-3);
        Assert.Equal(Verdict.Tight, Single(result, "earth-resistance").Verdict);

        EarthingFit vague = Input.Earthing! with { SoilOhmMetres = Estimate.Of(20, 60, 200) };
        Assert.Equal(Verdict.Unknown, Single(EarthingExamination.Of(Input with { Earthing = vague }), "earth-resistance").Verdict);
    }

    [Theory]
    [InlineData(2.9, true)]
    [InlineData(3.0, false)]
    public void Rods_nearer_than_their_length_are_warned_of(double spacing, bool isClose) => Assert.Equal(
        isClose, EarthingExamination.Of(Input with { Earthing = Input.Earthing! with { RodSpacingMetres = spacing } }).Findings.Any(finding => finding.Code == "earth-rods-close"));

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

    private static readonly SupplyPart Cable = new SupplyCable("p/supply/3", true, "cat-5e", Estimate.Exactly(24));

    /// <summary>A source, perhaps an arrester, a cable, perhaps an arrester, a converter and two loads.</summary>
    private static ImmutableArray<SupplyPart> Chain(bool atSource, bool atLoads, bool isBehindFork = false)
    {
        SupplyArrester near = new("p/supply/2", 0.5);
        SupplyArrester far = new("p/supply/4", 0.5);
        SupplyLoad load = new("p/supply/6", false, "board");
        return
        [
            new SupplySource("p/supply/1", SupplySourceKind.PowerOverCable) { ClassKey = "class-3" },
            .. atSource ? [near] : Array.Empty<SupplyPart>(),
            Cable,
            .. atLoads && !isBehindFork ? [far] : Array.Empty<SupplyPart>(),
            new SupplyBranches("p/supply/5", [new("a", atLoads && isBehindFork ? [far, load] : [load]), new("b", [load])]),
        ];
    }

    [Theory]
    [InlineData(true, true, false, Verdict.Ok, "at each end")]
    [InlineData(true, false, false, Verdict.Tight, "none at the other")]
    [InlineData(false, true, false, Verdict.Tight, "towards the loads")]
    [InlineData(false, false, false, Verdict.Tight, "at either end")]
    [InlineData(true, true, true, Verdict.Tight, "none at the other")] // One branch of two.
    public void The_supply_says_at_which_ends_the_data_cable_has_an_arrester(bool atSource, bool atLoads, bool isBehindFork, Verdict verdict, string words)
    {
        EarthingInput input = Input with { Supply = Chain(atSource, atLoads, isBehindFork), IsBoxOutside = true };
        Finding data = Single(EarthingExamination.Of(input with { Earthing = Input.Earthing! with { DataCable = DataCableSurge.NotSaid } }), "surge-data-cable");

        Assert.Equal(verdict, data.Verdict);
        Assert.Contains(words, FindingSentences.Text(data), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(DataCableSurge.Arrester, false, true)]
    [InlineData(DataCableSurge.Arrester, true, false)]
    [InlineData(DataCableSurge.NoCable, true, true)]
    [InlineData(DataCableSurge.Bare, true, true)]
    [InlineData(DataCableSurge.Bare, false, false)]
    [InlineData(DataCableSurge.NotSaid, false, false)]
    public void What_the_plan_says_of_the_data_cable_must_agree_with_its_supply(DataCableSurge said, bool hasArresters, bool differs)
    {
        EarthingInput input = Input with { Supply = Chain(hasArresters, hasArresters), IsBoxOutside = true, Earthing = Input.Earthing! with { DataCable = said } };

        Assert.Equal(differs, EarthingExamination.Of(input).Findings.Any(finding => finding.Code == "surge-data-cable-differs"));
        Assert.Equal(hasArresters ? Verdict.Ok : Verdict.Tight, Single(EarthingExamination.Of(input), "surge-data-cable").Verdict);
    }

    [Fact]
    public void A_cable_that_does_not_lead_to_a_box_outside_is_no_contradiction()
    {
        Examination result = EarthingExamination.Of(Input with { Supply = Chain(false, false), Earthing = Input.Earthing! with { DataCable = DataCableSurge.NoCable } });

        Assert.Equal(Verdict.Ok, Single(result, "surge-data-cable").Verdict);
        Assert.DoesNotContain(result.Findings, finding => finding.Code == "surge-data-cable-differs");
    }

    [Fact]
    public void An_arrester_that_no_supply_shows_is_not_taken_for_one_at_each_end() =>
        Assert.Equal(Verdict.Unknown, Single(EarthingExamination.Of(Input), "surge-data-cable").Verdict);

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
        Examination result = EarthingExamination.Of(Input with { Earthing = near });
        Assert.Equal(0.264, Assert.Single(result.Ledgers, ledger => ledger.Title.StartsWith("separation", StringComparison.Ordinal)).Total, 1e-9);
        Assert.Contains(result.Assumptions, assumption => assumption.Code == "separation-through-air");
        Assert.DoesNotContain(EarthingExamination.Of(Input with { Earthing = near with { ThroughSolid = false } }).Assumptions, assumption => assumption.Code == "separation-through-air");
        Assert.Equal(Verdict.Ok, finding.Verdict);
        Assert.Equal(Verdict.Fails, Single(EarthingExamination.Of(Input with { Earthing = near with { ThroughSolid = true } }), "lightning-separation").Verdict);
    }

    [Fact]
    public void An_antenna_well_below_the_roof_s_edge_and_near_the_wall_needs_no_earth_by_the_standard() =>
        Assert.Equal(Verdict.Ok, Single(EarthingExamination.Of(Input with { Earthing = Input.Earthing! with { BelowRoofEdgeMetres = 2.5, FromWallMetres = 0.4 } }), "mast-earth-exempt").Verdict);

    private static Finding Single(Examination result, string code) => Assert.Single(result.Findings, finding => finding.Code == code);
}
