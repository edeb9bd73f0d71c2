using System.Collections.Immutable;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Tests.Plans;

/// <summary>A correction that is written into a plan.</summary>
public sealed class CorrectionTextTests
{
    private const string Before = "# mine\nmastwright: 1\nname: Skerrin   # the island\n" + SamplePlans.Modem + "neighbours:\n  quay: {position: \"46.4, -18.7\"}   # far\n";

    private static readonly AdoptedCorrection Correction = new()
    {
        Key = "summer",
        Source = "12 links heard by 3 stations, records of 2026-06-01..2026-07-01",
        OffsetDb = Estimate.Of(-5.02, -3.24, -0.5),
        CoverMetres = Estimate.Of(9, 12, 15),
        StationHeightMetres = Estimate.Of(4.5, 10, 12.5),
        SpreadDb = 7.86,
        Stations = ImmutableSortedDictionary<string, OwnCorrection>.Empty.Add("quay", new(Estimate.PlusMinus(1.23, 0.61), 7.1)),
    };

    [Fact]
    public void It_stands_at_the_end_and_reads_back_while_all_else_stays()
    {
        PlanText changed = Adopted(Before, Correction);
        Assert.StartsWith(Before, changed.Text, StringComparison.Ordinal);
        Assert.Contains("corrections:\n  summer:\n    source: ", changed.Text, StringComparison.Ordinal);
        Assert.Contains("      quay: {offset: 1.2 ± 0.6 dB, spread: 7.1 dB}\n", changed.Text, StringComparison.Ordinal);
        Plan plan = Read(changed);
        AdoptedCorrection read = Assert.Single(plan.Corrections);
        Assert.Equal("summer", plan.CorrectionInUse);
        Assert.Equal((-5, -3.2, -0.5), (read.OffsetDb.Low, read.OffsetDb.Median, read.OffsetDb.High));
        Assert.Equal((9, 12, 15), (read.CoverMetres!.Value.Low, read.CoverMetres.Value.Median, read.CoverMetres.Value.High));
        Assert.Equal((4.5, 10, 12.5, 7.9), (read.StationHeightMetres!.Value.Low, read.StationHeightMetres.Value.Median, read.StationHeightMetres.Value.High, read.SpreadDb));
        Assert.Equal((Correction.Source, 7.1), (read.Source, read.Stations["quay"].SpreadDb!.Value));
    }

    [Fact]
    public void A_second_one_goes_below_the_first_and_takes_over()
    {
        PlanText twice = Adopted(Adopted(Before, Correction).Text, Correction with { Key = "winter", AppliesTo = ["quay"], Stations = ImmutableSortedDictionary<string, OwnCorrection>.Empty });
        Plan plan = Read(twice);
        Assert.Equal(["summer", "winter"], plan.Corrections.Select(one => one.Key));
        Assert.Equal("winter", plan.CorrectionInUse);
        Assert.Equal(["quay"], plan.Corrections[1].AppliesTo);
    }

    [Theory]
    [InlineData(Before, "Not A Key", "plan-key")]
    [InlineData(Before + "corrections: {summer: {offset: 1 dB, spread: 8 dB}}\n", "summer", "plan-key")]
    [InlineData(Before + "corrections: {other: {offset: 1 dB, spread: 8 dB}}\n", "summer", "plan-style")]
    public void Where_it_cannot_be_added_nothing_is(string text, string key, string code) =>
        Assert.Equal(code, CorrectionText.Adopt(PlanText.FromText("plan.yaml", text).Text!, Correction with { Key = key }).Problem!.Code);

    private static PlanText Adopted(string text, AdoptedCorrection correction)
    {
        PlanTextResult result = CorrectionText.Adopt(PlanText.FromText("plan.yaml", text).Text!, correction);
        Assert.Null(result.Problem);
        return result.Text!;
    }

    private static Plan Read(PlanText text)
    {
        using PlanFolderFixture folder = new();
        return PlanFileTests.Good(folder.Read(text.Text)).Plan;
    }
}
