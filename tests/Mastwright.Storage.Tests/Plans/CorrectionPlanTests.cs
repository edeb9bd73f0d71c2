using Mastwright.Plans;
using Mastwright.Storage.Plans;

namespace Mastwright.Storage.Tests.Plans;

/// <summary>Corrections in a plan.</summary>
public sealed class CorrectionPlanTests
{
    [Fact]
    public void A_correction_is_read_with_its_ranges()
    {
        using PlanFolderFixture folder = new();
        Plan plan = PlanFileTests.Good(folder.Read(SamplePlans.Whole)).Plan;
        AdoptedCorrection one = Assert.Single(plan.Corrections);
        Assert.Equal("summer-2026", plan.CorrectionInUse);
        Assert.Equal((-4.7, -3.2, -1.7), (Math.Round(one.OffsetDb.Low, 9), one.OffsetDb.Median, Math.Round(one.OffsetDb.High, 9)));
        Assert.Equal((12, 10, 7.9), (one.CoverMetres!.Value.Median, one.StationHeightMetres!.Value.Median, one.SpreadDb));
        Assert.Equal(["ferry-house"], one.AppliesTo);
        Assert.Equal((1.2, 7.1), (one.Stations["ferry-house"].OffsetDb.Median, one.Stations["ferry-house"].SpreadDb!.Value));
    }

    [Theory]
    [InlineData("correction: nowhere\n", "correction", "plan-unknown-name")]
    [InlineData("corrections: {a: {offset: 1 dB, spread: 8 dB}}\ncorrection: b\n", "correction", "plan-unknown-name")]
    [InlineData("corrections: {a: {offset: 1 dB, spread: 8 dB, applies-to: x}}\n", "corrections/a/applies-to", "plan-unknown-name")]
    [InlineData("corrections: {a: {offset: 1 dB, spread: 8 dB, stations: {x: {offset: 1 dB}}}}\n", "corrections/a/stations/x", "plan-unknown-name")]
    [InlineData("corrections: {a: {offset: 1 dB}}\n", "corrections/a", "plan-missing-key")]
    [InlineData("corrections: {a: {offset: 1 m, spread: 8 dB}}\n", "corrections/a/offset", "plan-value")]
    public void What_is_wrong_with_one_is_told_at_its_place(string keys, string path, string code)
    {
        using PlanFolderFixture folder = new();
        PlanProblem problem = Assert.Single(folder.Read(SamplePlans.Smallest + keys).Problems);
        Assert.Equal((path, code), (problem.Path, problem.Code));
    }
}
