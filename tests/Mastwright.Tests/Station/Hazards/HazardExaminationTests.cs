using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Hazards;
using Mastwright.Station.Mast;

namespace Mastwright.Tests.Station.Hazards;

public sealed class HazardExaminationTests
{
    private static readonly MastResult Mast = new() { Examination = Examination.Nothing, WholeLengthMetres = 6.8, BracketHeightMetres = 6.9 };

    [Fact]
    public void Nothing_said_is_unknown_and_never_ok()
    {
        Examination result = HazardExamination.Of(new(), Mast, "h");

        Assert.DoesNotContain(result.Findings, finding => finding.Verdict == Verdict.Ok);
        Assert.Equal(Verdict.Unknown, Single(result, "overhead-line").Verdict);
        Assert.Equal(Verdict.Unknown, Single(result, "hazards-unknown").Verdict);
    }

    [Theory]
    [InlineData(22.0, null, Verdict.Unknown)] // Far enough for the mast alone, but nobody asked for the clearance.
    [InlineData(8.0, null, Verdict.Fails)] // The mast itself reaches it.
    [InlineData(14.0, 6.0, Verdict.Fails)] // 6.8 + 2 + 6 = 14.8 m.
    [InlineData(15.0, 6.0, Verdict.Ok)]
    [InlineData(null, 6.0, Verdict.Unknown)]
    public void A_line_is_held_against_the_whole_fallen_reach_and_the_clearance(double? distance, double? clearance, Verdict verdict)
    {
        SiteHazards hazards = new() { OverheadLineMetres = distance is { } metres ? Estimate.Exactly(metres) : null, LocalClearanceMetres = clearance };

        Assert.Equal(verdict, Single(HazardExamination.Of(hazards, Mast, "h"), "overhead-line").Verdict);
    }

    [Fact]
    public void A_vague_distance_counts_by_its_least()
    {
        SiteHazards hazards = new() { OverheadLineMetres = Estimate.PlusMinus(16, 2), LocalClearanceMetres = 6 };

        Assert.Equal(Verdict.Fails, Single(HazardExamination.Of(hazards, Mast, "h"), "overhead-line").Verdict);
    }

    [Fact]
    public void A_mast_of_unknown_length_leaves_the_line_unknown()
    {
        SiteHazards hazards = new() { OverheadLineMetres = Estimate.Exactly(500), LocalClearanceMetres = 6 };

        Assert.Equal(Verdict.Unknown, Single(HazardExamination.Of(hazards, Mast with { WholeLengthMetres = null }, "h"), "overhead-line").Verdict);
    }

    [Fact]
    public void Work_on_a_ladder_takes_the_bracket_s_height_where_none_is_given()
    {
        Examination result = HazardExamination.Of(new() { Access = Access.Ladder }, Mast, "h");

        Assert.Equal(6.9, Single(result, "working-height").Value!.Value.Median);
        Assert.Equal(Verdict.Tight, Single(result, "working-height").Verdict);
        Assert.Contains(result.Assumptions, assumption => assumption.Code == "working-height");
    }

    [Theory]
    [InlineData(Consent.Granted, Consent.NotNeeded, Consent.Granted, Verdict.Ok)]
    [InlineData(Consent.Granted, Consent.Asked, Consent.Granted, Verdict.Tight)]
    [InlineData(Consent.Granted, Consent.NotSaid, Consent.Granted, Verdict.Unknown)]
    [InlineData(Consent.Refused, Consent.NotSaid, Consent.Granted, Verdict.Fails)]
    public void Consents_are_as_good_as_the_worst_of_them(Consent owner, Consent planning, Consent airfield, Verdict verdict) =>
        Assert.Equal(verdict, Single(HazardExamination.Of(new() { Owner = owner, Planning = planning, Airfield = airfield }, Mast, "h"), "consents-given").Verdict);

    [Fact]
    public void Whatever_can_hurt_someone_carries_its_caution_even_when_it_is_ok()
    {
        SiteHazards hazards = new() { OverheadLineMetres = Estimate.Exactly(500), LocalClearanceMetres = 6 };

        Assert.Contains("Local codes and licensed practice decide", FindingSentences.Text(Single(HazardExamination.Of(hazards, Mast, "h"), "overhead-line")), StringComparison.Ordinal);
    }

    private static Finding Single(Examination result, string code) => Assert.Single(result.Findings, finding => finding.Code == code);
}
