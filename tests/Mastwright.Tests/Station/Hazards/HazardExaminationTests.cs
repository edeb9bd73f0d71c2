using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Hazards;
using Mastwright.Station.Mast;
using Mastwright.Tests.Station.Mast;

namespace Mastwright.Tests.Station.Hazards;

public sealed class HazardExaminationTests
{
    private static readonly MastResult Mast = new() { Examination = Examination.Nothing, LeastLengthMetres = 6.8, BracketHeightMetres = 6.9 };

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

    [Theory]
    [InlineData("antenna/total-length", 500.0, Verdict.Unknown)]
    [InlineData("mast/bracket/spacing", 500.0, Verdict.Unknown)]
    [InlineData("mast/bracket/spacing", 14.9, Verdict.Unknown)] // 6.8 + 2 + 6 = 14.8 m of what is known: not hit, and not clear either.
    [InlineData("mast/bracket/spacing", 14.7, Verdict.Fails)] // What is known of it reaches the line; the rest only adds.
    public void A_mast_known_in_part_leaves_the_line_unknown_unless_that_part_reaches_it(string lacks, double distance, Verdict verdict)
    {
        SiteHazards hazards = new() { OverheadLineMetres = Estimate.Exactly(distance), LocalClearanceMetres = 6 };
        Finding line = Single(HazardExamination.Of(hazards, Mast with { LengthLacks = [lacks] }, "h"), "overhead-line");

        Assert.Equal(verdict, line.Verdict);
        Assert.Contains(lacks, FindingSentences.Text(line), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(7.9, Verdict.Fails)] // 2 m of handling and 6 m of clearance.
    [InlineData(8.1, Verdict.Unknown)]
    public void A_line_nearer_than_handling_and_clearance_fails_without_any_mast(double distance, Verdict verdict)
    {
        SiteHazards hazards = new() { OverheadLineMetres = Estimate.Exactly(distance), LocalClearanceMetres = 6 };
        MastResult nothing = MastExamination.Of(MastExaminationTests.Input with { Mast = null, Antenna = new() { Height = MastExaminationTests.Input.Antenna.Height } });

        Assert.Equal(verdict, Single(HazardExamination.Of(hazards, nothing, "h"), "overhead-line").Verdict);
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

    private static Finding Single(Examination result, string code) => Assert.Single(result.Findings, finding => finding.Code == code);
}
