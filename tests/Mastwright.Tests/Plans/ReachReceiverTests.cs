using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Tests.Ground;
using Mastwright.Tests.Station.Radio;

namespace Mastwright.Tests.Plans;

public sealed class ReachReceiverTests
{
    private static readonly GroundMosaic Land = GroundMosaic.Of([GroundSamples.Tile(46, -19, 101, (_, _) => 10)]);

    private static readonly Plan Plan = FlatPlan.Of(new() { ExternalNoiseFigureDb = 0 });

    [Fact]
    public void A_hand_held_lists_every_number_of_its_own()
    {
        ReachReceiver receiver = Find("handheld");
        Assert.Equal(1.5, receiver.HeightMetres);
        Assert.Equal(
            ["receiver-body", "receiver-gain", "receiver-height", "receiver-noise-figure", "receiver-power"],
            receiver.Assumptions.Select(assumption => assumption.Code).Order(StringComparer.Ordinal));
        ReachBudget budget = Setup(receiver).Budget!;
        Assert.Equal(-3, -budget.EndLossDb);
        Assert.Equal(14, budget.Receiver.PowerIntoAntennaDbm!.Value.Median);
        Assert.Equal(0, budget.Receiver.GainDbi!.Value.Median);
    }

    /// <summary>ITU-R P.2109, traditional building at 868 MHz: the median is 12.64 + 3.72 log10 f + 0.96 (log10 f)² dB = 12.4 dB, and a little more with its second part.</summary>
    [Fact]
    public void In_a_house_the_walls_are_counted_with_their_spread()
    {
        ReachBudget budget = Setup(Find("handheld-indoors")).Budget!;
        Assert.InRange(budget.EndLosses.Single(line => line.Code == "building-entry").Value, 12.4, 15);
        Assert.InRange(budget.EndSpreads.Single(part => part.Code == "building-entry").DeviationDb, 5, 12);
        Assert.True(budget.Spread(heard: true).Unknown.Total > Setup(Find("handheld")).Budget!.Spread(heard: true).Unknown.Total);
    }

    [Fact]
    public void A_mast_stands_as_high_as_it_is_told()
    {
        ReachSetup setup = Setup(Find("mast", 14));
        Assert.Equal(14, setup.Field!.ReceiverHeightMetres);
        Assert.Equal(0, setup.Budget!.EndLossDb);
        Assert.DoesNotContain(setup.Assumptions, assumption => assumption.Code == "receiver-height");
    }

    [Fact]
    public void A_station_like_a_neighbour_has_that_ones_numbers()
    {
        ReachSetup setup = Setup(Find("east"));
        Assert.Equal(5, setup.Field!.ReceiverHeightMetres);
        Assert.Equal(2, setup.Budget!.Receiver.GainDbi!.Value.Median);
        Assert.Contains(setup.Assumptions, assumption => assumption.Code == "receiver-like-neighbour");
    }

    [Fact]
    public void The_ranges_of_a_neighbour_widen_what_is_not_known()
    {
        Plan vague = Plan with { Neighbours = [Plan.Neighbours[0] with { PowerDbm = Estimate.Between(8, 20) }] };
        ReachReceiver receiver = ReachReceiver.Find(vague, "east", null, out _)!;
        ReachBudget budget = new Assessment(vague, SensitivityTests.Catalogue, (_, _) => Land).Reach(Station(vague), receiver, new(1_000, 100), Land).Budget!;
        double variance = Math.Pow(budget.Spread(heard: false).Unknown.Total, 2) - Math.Pow(budget.Spread(heard: true).Unknown.Total, 2);
        Assert.Equal(12 * 12 / 12.0, variance, 1e-9);
    }

    [Theory]
    [InlineData("hand", null, "handheld, handheld-indoors, mast, east")]
    [InlineData("mast", 0.1, "0.5 to 500 m")]
    [InlineData("mast", double.NaN, "0.5 to 500 m")]
    public void A_receiver_that_is_none_is_refused(string key, double? metres, string part)
    {
        Assert.Null(ReachReceiver.Find(Plan, key, metres, out string problem));
        Assert.Contains(part, problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_neighbour_whose_height_means_nothing_elsewhere_needs_one()
    {
        Plan plan = Plan with { Neighbours = [Plan.Neighbours[0] with { Height = new(Estimate.Exactly(300), HeightAbove.SeaLevel) }] };
        Assert.Null(ReachReceiver.Find(plan, "east", null, out string problem));
        Assert.Contains("--receiver-height", problem, StringComparison.Ordinal);
        Assert.NotNull(ReachReceiver.Find(plan, "east", 4, out _));
    }

    [Fact]
    public void What_is_missing_for_a_map_is_named()
    {
        Plan plan = Plan with { Neighbours = [Plan.Neighbours[0] with { GainDbi = null, PowerDbm = null }] };
        ReachSetup setup = new Assessment(plan, SensitivityTests.Catalogue, (_, _) => Land).Reach(Station(plan), ReachReceiver.Find(plan, "east", null, out _)!, new(1_000, 100), GroundMosaic.Empty);
        Assert.Null(setup.Field);
        Assert.Null(setup.Budget);
        Assert.Contains("neighbours/east/power", setup.Missing);
        Assert.Contains("neighbours/east/gain", setup.Missing);
        Assert.Contains(setup.Missing, one => one.Contains("N46W019", StringComparison.Ordinal));
    }

    private static LinkStation Station(Plan plan) => LinkStation.Of(plan.Sites[0], plan.Sites[0].FitOuts[0]);

    private static ReachReceiver Find(string key, double? metres = null)
    {
        ReachReceiver? receiver = ReachReceiver.Find(Plan, key, metres, out string problem);
        Assert.Equal("", problem);
        return receiver!;
    }

    private static ReachSetup Setup(ReachReceiver receiver)
    {
        ReachSetup setup = new Assessment(Plan, SensitivityTests.Catalogue, (_, _) => Land).Reach(Station(Plan), receiver, new(1_000, 100), Land);
        Assert.Empty(setup.Missing);
        return setup;
    }
}
