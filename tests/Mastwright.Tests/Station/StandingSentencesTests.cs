using System.Text.RegularExpressions;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Earthing;
using Mastwright.Station.Hazards;
using Mastwright.Station.Mast;
using Mastwright.Tests.Station.BoxClimate;
using Mastwright.Tests.Station.Earthing;
using Mastwright.Tests.Station.Mast;
using Mastwright.Tests.Station.Wind;

namespace Mastwright.Tests.Station;

/// <summary>The sentences on mast, wind, hazards and earth: every word in braces filled, no claim of safety.</summary>
public sealed class StandingSentencesTests
{
    private static IEnumerable<Finding> Everything()
    {
        MastInput mast = MastExaminationTests.Input;
        MastInput[] masts =
        [
            mast,
            mast with { Mast = null },
            mast with { Wind = new() },
            mast with { Wind = mast.Wind with { Terrain = "V" } },
            mast with { Wind = mast.Wind with { ReturnPeriodYears = 10 } },
            mast with { AntennaHeightMetres = Estimate.Exactly(20), Antenna = mast.Antenna with { GainDbi = null } },
            mast with { Mast = mast.Mast! with { BracketCapacityNewtons = null, BracketSpacingMetres = null, Guys = new(2, 45, 0.004, 3, null, null) } },
            mast with { Mast = mast.Mast! with { FixedTo = "chimney", Tubes = [new("t", "", 0.1, 0.0005, "s235", 9)] } },
            mast with { Mast = mast.Mast! with { Tubes = [new("t", "steel-61x3", null, null, "s236", 3)] } },
            mast with { Mast = mast.Mast! with { Tubes = [new("t", "steel-60.3x3.2", null, null, "aw-6082-t6", 3)] }, Wind = mast.Wind with { IceClass = "G9" } },
        ];
        foreach (MastInput input in masts)
        {
            foreach (Finding finding in MastExamination.Of(input).Examination.Findings)
            {
                yield return finding;
            }
        }

        SiteHazards[] hazards =
        [
            new(),
            new()
            {
                OverheadLineMetres = Estimate.Exactly(5),
                LocalClearanceMetres = 3,
                Access = Access.Climbing,
                FallZone = FallZone.People,
                Owner = Consent.Asked,
                Planning = Consent.Granted,
                Airfield = Consent.NotNeeded,
            },
            new() { OverheadLineMetres = Estimate.Exactly(50), LocalClearanceMetres = 3, Access = Access.Ground, FallZone = FallZone.OwnGround },
        ];
        foreach (Finding finding in hazards.SelectMany(one => HazardExamination.Of(one, MastExamination.Of(mast), "h").Findings))
        {
            yield return finding;
        }

        EarthingInput earth = EarthingExaminationTests.Input;
        EarthingFit fit = earth.Earthing!;
        EarthingFit?[] fits =
        [
            null,
            new(),
            fit,
            fit with { AirTermination = AirTermination.None, HasLightningProtection = true, SeparationMetres = 0.1, SeparationLengthMetres = 9, DownConductors = 1, Rods = 1, SoilOhmMetres = null },
            fit with { SoilOhmMetres = null, Soil = "moon-dust", BelowRoofEdgeMetres = 3, FromWallMetres = 0.2, DataCable = DataCableSurge.Bare },
            fit with { RodSpacingMetres = 1 },
            fit with { SoilOhmMetres = null, Soil = "humus", ConductorSquareMillimetres = 4, DataCable = DataCableSurge.NoCable },
        ];
        foreach (Finding finding in fits.SelectMany(one => EarthingExamination.Of(earth with { Earthing = one }).Findings))
        {
            yield return finding;
        }

        BoxInput box = BoxExaminationTests.Input;
        BoxInput[] boxes =
        [
            box,
            box with { Box = new() },
            box with { Box = box.Box with { Parts = [], Code = null, Colour = "wite", Entries = BoxFacing.NotSaid } },
            box with { Box = box.Box with { Parts = [], TemperatureCelsius = Estimate.Exactly(20), OutsideCelsius = Estimate.Exactly(5), Entries = BoxFacing.Side, DripLoops = false, Connectors = BoxFacing.Up } },
            box with { Box = box.Box with { Surface = null } },
            box with { Box = box.Box with { Code = BoxRowsForTests.Code("IP67"), OutsideCelsius = Estimate.Of(-50, 0, 45) } },
            box with { Year = [new(5, 1, 0, 0, 0, 0, null), new(-5, 1, 0, 0, 0, 0, null)], YearSource = "year.epw" },
            box with { Year = [new(45, 1, 0, 0, 0, 0, null), new(-25, 1, 0, 0, 0, 0, null)], YearSource = "year.epw" },
        ];
        foreach (Finding finding in boxes.SelectMany(one => BoxExamination.Of(one).Examination.Findings))
        {
            yield return finding;
        }

        yield return GalvanicPair.Judge("p", "the clamp on the mast", "stainless-steel", "zinc", null, BoxRowsForTests.Catalogue.Box)!;
    }

    [Fact]
    public void Every_word_in_braces_is_filled_and_no_sentence_says_safe()
    {
        Finding[] findings = [.. Everything()];

        Assert.True(findings.Select(finding => finding.Code).Distinct().Count() >= 48);
        Assert.All(findings, finding =>
        {
            string both = FindingSentences.Text(finding) + FindingSentences.Advice(finding);
            Assert.DoesNotContain('{', both);
            Assert.DoesNotMatch(new Regex(@"\bis safe\b|\bprotected\b", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)), both);
            Assert.NotEqual(finding.Code, FindingSentences.Text(finding));
            Assert.True(finding.Verdict == Verdict.Ok || FindingSentences.Advice(finding).Length > 0, finding.Code);
        });
    }

    /// <summary>What can hurt someone, and the words of its caution. Advice is not printed where all is well, so the words stand in the text.</summary>
    public static TheoryData<string, string> Cautions => new()
    {
        { "mast-not-described", Decide },
        { "mast-incomplete", Decide },
        { "tube-wall-thin", Decide },
        { "mast-bending", Decide },
        { "mast-bracket", Decide },
        { "mast-bracket-spacing", Decide },
        { "mast-bracket-spacing-unknown", Decide },
        { "mast-guys", Decide },
        { "mast-guys-short", Decide },
        { "mast-bracket-underground", Decide },
        { "mast-swing", Decide },
        { "antenna-pointing-in-wind", Decide },
        { "overhead-line", Decide },
        { "working-height", Decide },
        { "fall-zone", Decide },
        { "consents-given", "Local codes decide" },
        { "hazards-unknown", Decide },
        { "box-part-hot", "lithium cells can catch fire" },
        { "box-part-cold", "Lithium cells charged too cold become a fire hazard" },
        { "box-pressure", "its lid may spring" },
        { "box-ingress", Decide },
        { "galvanic-pair", "drops what it holds" },
        { "surge-coax", Decide },
        { "surge-data-cable", Decide },
        { "surge-data-cable-differs", Decide },
        { "earthing-not-described", Decide },
        { "mast-earth", Decide },
        { "mast-earth-unknown", Decide },
        { "mast-earth-exempt", Decide },
        { "lightning-highest", Decide },
        { "lightning-zone", Decide },
        { "lightning-zone-unknown", Decide },
        { "lightning-separation", Decide },
        { "lightning-separation-unknown", Decide },
        { "earth-rods-close", Decide },
        { "earth-resistance", Decide },
        { "earth-resistance-unknown", Decide },
    };

    private const string Decide = "Local codes and licensed practice decide";

    [Theory, MemberData(nameof(Cautions))]
    public void Whatever_can_hurt_someone_carries_its_caution(string code, string caution) => Assert.All(
        Enum.GetValues<Verdict>(), verdict => Assert.Contains(caution, FindingSentences.Text(new() { Code = code, Subject = "s", Verdict = verdict }), StringComparison.Ordinal));

    [Fact]
    public void No_caution_is_said_twice() => Assert.All(
        Everything(), finding => Assert.Single(Regex.Split(FindingSentences.Text(finding) + FindingSentences.Advice(finding), Decide, RegexOptions.None, TimeSpan.FromSeconds(1))[..^1].DefaultIfEmpty("")));

    [Fact]
    public void A_value_a_limit_and_a_margin_go_together() => Assert.All(
        Everything().Where(finding => finding is { Value: not null, Limit: not null }), finding => Assert.NotNull(finding.Margin));
}
