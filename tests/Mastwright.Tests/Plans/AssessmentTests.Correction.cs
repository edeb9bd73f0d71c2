using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Network.Links;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Tests.Plans;

/// <content>A correction that the plan has adopted.</content>
public sealed partial class AssessmentTests
{
    private static readonly AdoptedCorrection Fitted = new() { Key = "summer", OffsetDb = Estimate.PlusMinus(-4, 1.5), SpreadDb = 6 };

    private static Plan Using(Plan plan, AdoptedCorrection correction) => plan with { Corrections = [correction], CorrectionInUse = correction.Key };

    [Fact]
    public void An_adopted_offset_is_a_line_of_both_ledgers_and_its_spread_takes_the_place_of_the_model_error()
    {
        Plan plan = PlanOf(Site("a", -18.7), Site("b", -18.4));
        LinkReport without = Link(plan, Ground(60));
        LinkReport with = Link(Using(plan, Fitted), Ground(60));
        foreach ((LinkDirection before, LinkDirection after) in new[] { (without.Out, with.Out), (without.Back, with.Back) })
        {
            Assert.Equal(before.MarginDb!.Value.Median - 4, after.MarginDb!.Value.Median, 1e-9);
            Assert.Equal(after.MarginDb.Value.Median, after.Budget!.Lines.Sum(line => line.Value), 1e-9);
            Assert.Equal((-4, "Adopted correction summer"), after.Budget.Lines.Where(line => line.Code == "correction").Select(line => (line.Value, line.Label)).Single());
            Assert.Equal(6, after.Spread!.Unknown.Total, 1e-9);
            Assert.Equal(before.MarginDb.Value.HalfRange, after.MarginDb.Value.HalfRange, 1e-9);
        }

        Assert.DoesNotContain(with.Assumptions, one => one.Code == "location-spread");
    }

    [Fact]
    public void One_that_is_not_in_use_or_is_for_other_stations_changes_nothing()
    {
        Plan plan = PlanOf(Site("a", -18.7), Site("b", -18.4));
        double before = Link(plan, Ground(60)).Out.MarginDb!.Value.Median;
        Assert.Equal(before, Link(plan with { Corrections = [Fitted] }, Ground(60)).Out.MarginDb!.Value.Median);
        Assert.Equal(before, Link(Using(plan, Fitted with { AppliesTo = ["c"] }), Ground(60)).Out.MarginDb!.Value.Median);
        Assert.Equal(before - 4, Link(Using(plan, Fitted with { AppliesTo = ["b"] }), Ground(60)).Out.MarginDb!.Value.Median, 1e-9);
    }

    [Fact]
    public void The_own_offset_of_a_station_is_for_what_it_hears_alone()
    {
        Plan plan = PlanOf(Site("a", -18.7), Site("b", -18.4));
        LinkReport link = Link(Using(plan, Fitted with { Stations = ImmutableSortedDictionary<string, OwnCorrection>.Empty.Add("b", new(Estimate.Exactly(3), 5)) }), Ground(60));
        double before = Link(plan, Ground(60)).Out.MarginDb!.Value.Median;
        Assert.Equal(before - 1, link.Out.MarginDb!.Value.Median, 1e-9);
        Assert.Equal(before - 4, link.Back.MarginDb!.Value.Median, 1e-9);
        Assert.Equal((5, 6), (link.Out.Spread!.Unknown.Total, link.Back.Spread!.Unknown.Total));
    }

    [Fact]
    public void Its_cover_lies_on_ground_without_any_and_counts_as_a_cover_file_of_that_height_would()
    {
        Plan plan = PlanOf(Site("a", -18.7), Site("b", -18.4));
        GroundMosaic ground = Ground(60);
        GridFrame frame = ground.Heights[0].Frame;
        byte[] codes = new byte[frame.Columns * frame.Rows];
        Array.Fill(codes, (byte)1);
        GroundMosaic file = GroundMosaic.Of([ground.Heights[0], GroundWindow.FromCover(frame, codes, "cover")])
            .With([], CoverTable.Of([new(1, "wood", CoverClass.UrbanOrTrees, 18, "test", "test")]), null);
        AdoptedCorrection cover = Fitted with { OffsetDb = Estimate.Exactly(0), CoverMetres = Estimate.PlusMinus(18, 4) };
        LinkReport under = Link(Using(plan, cover), ground);
        Assert.Equal(Link(plan, file).Path.OutLoss!.LossDb.Median, under.Path.OutLoss!.LossDb.Median, 1e-9);
        Assert.True(under.Path.OutLoss.LossDb.Median > Link(plan, ground).Path.OutLoss!.LossDb.Median + 1);
        Assert.Contains(under.Assumptions, one => one.Code == "correction-cover");
        Assert.Equal(Link(plan, file).Path.OutLoss!.LossDb.Median, Link(Using(plan, cover with { CoverMetres = Estimate.Exactly(30) }), file).Path.OutLoss!.LossDb.Median, 1e-9);
    }

    [Fact]
    public void Its_height_stands_in_for_that_of_a_neighbour_of_which_nobody_knows_it()
    {
        Plan plan = PlanOf(Site("a", -18.7)) with { Neighbours = [new() { Key = "n", Name = "n", Position = new(new(46.5, -18.4), 0), GainDbi = Estimate.Exactly(2), PowerDbm = Estimate.Exactly(14) }] };
        Assert.Null(Link(plan, Ground(60)).Out.MarginDb);
        LinkReport link = Link(Using(plan, Fitted with { StationHeightMetres = Estimate.PlusMinus(12, 4) }), Ground(60));
        Assert.Equal(12, link.Path.ToHeightMetres!.Value.Median);
        Assert.Contains(link.Assumptions, one => one.Code == "correction-height" && one.Text.Contains("12 m", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_pair_has_the_same_correction_as_the_link_by_itself()
    {
        Plan plan = Using(Mixed, Fitted with { CoverMetres = Estimate.Exactly(10), StationHeightMetres = Estimate.Exactly(15), Stations = ImmutableSortedDictionary<string, OwnCorrection>.Empty.Add("b", new(Estimate.Exactly(3), 5)) });
        PathMemory memory = new();
        _ = Matrix(Mixed, Ground(60), memory);
        LinkMatrix matrix = Matrix(plan, Ground(60), memory).Matrix;
        Assert.Equal(0, memory.Found);
        foreach (LinkReport link in new Assessment(plan, Catalogue, (_, _) => Ground(60)).Run(ImmutableDictionary<string, string>.Empty).Links)
        {
            int from = matrix.Stations.IndexOf(matrix.Stations.Single(one => one.Subject == link.From.Subject));
            int to = matrix.Stations.IndexOf(matrix.Stations.Single(one => one.Subject == link.To.Subject));
            Same(link.Out, matrix.Way(from, to));
            Same(link.Back, matrix.Way(to, from));
        }
    }

    [Fact]
    public void A_reach_map_has_its_offset_spread_and_cover()
    {
        Plan plan = Using(PlanOf(Site("a", -18.7)), Fitted with { CoverMetres = Estimate.Exactly(10) });
        GroundMosaic ground = Ground(60);
        Assessment assessment = new(plan, Catalogue, (_, _) => ground);
        LinkStation station = LinkSelection.Stations(plan, ImmutableDictionary<string, string>.Empty)[0];
        ReachReceiver receiver = ReachReceiver.Find(plan, "handheld", null, out _)!;
        GroundExtent area = assessment.ReachGround(station, GroundExtent.Of(ground));
        ReachSetup setup = assessment.Reach(station, receiver, new(5000, 100), area.Cut(Mastwright.Geodesy.GeoBounds.Of(station.Position.Point)));
        ReachSetup without = new Assessment(PlanOf(Site("a", -18.7)), Catalogue, (_, _) => ground).Reach(station, receiver, new(5000, 100), ground);
        Assert.Equal(without.Budget!.HeardAtNoLossDbm - 4, setup.Budget!.HeardAtNoLossDbm, 1e-9);
        Assert.Equal(6, setup.Budget.Spread(heard: true).Unknown.Total, 1e-9);
        Assert.True(area.HasCover);
        Assert.NotEqual(GroundExtent.Of(ground).ContentHash.Value, area.ContentHash.Value);
    }
}
