using Mastwright.Plans;
using Mastwright.Station;
using Mastwright.Station.Feed;

namespace Mastwright.Tests.Plans;

/// <summary>What a change of a plan moves.</summary>
public sealed class ReportDifferenceTests
{
    [Fact]
    public void The_same_plan_twice_moves_nothing() => Assert.Empty(ReportDifference.Of("west", Report(2), Report(2)).Findings);

    [Fact]
    public void Three_more_decibels_in_the_feed_are_told_and_what_stays_is_not()
    {
        ReportDifference difference = ReportDifference.Of("west", Report(2), Report(5));
        ComparedMeasure feed = difference.Measures.Single(measure => measure.Code == "feed-loss");
        Assert.Equal(3, feed.Values[1].Value!.Value.Median - feed.Values[0].Value!.Value.Median, 1e-9);
        MovedFinding loss = difference.Findings.Single(moved => moved.After?.Code == "feed-loss");
        Assert.Equal(3, loss.Before!.Margin!.Value - loss.After!.Margin!.Value, 1e-9);
        Assert.DoesNotContain(difference.Findings, moved => moved.After?.Code == "external-noise-unknown");
    }

    [Fact]
    public void What_changes_its_verdict_stands_first_and_what_comes_or_goes_counts()
    {
        ReportDifference difference = ReportDifference.Of("west", Report(null), Report(8));
        Assert.NotEmpty(difference.Findings);
        Assert.Equal(difference.Findings.Select(moved => !moved.ChangesVerdict).Order(), difference.Findings.Select(moved => !moved.ChangesVerdict));
        Assert.Contains(difference.Findings, moved => moved.Before?.Code == "part-loss-unknown" && moved.After is null);
    }

    /// <summary>A site whose feed loses so much; null for an unknown loss.</summary>
    private static PlanReport Report(double? lossDb) => FlatPlan.Check(
        FlatPlan.Of(new(), 868e6, new LossyPart("sites/west/fit-outs/pole/feed/1", LossyPartKind.Filter, 1, lossDb is { } loss ? Mastwright.Quantities.Estimate.Exactly(loss) : null)), StationCatalogue.Empty);
}
