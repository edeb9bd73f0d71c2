using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Plans;
using Mastwright.Propagation;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Tests.Ground;
using Mastwright.Tests.Network.Reach;
using Mastwright.Tests.Propagation;
using Mastwright.Tests.Station.Radio;

namespace Mastwright.Tests.Plans;

public sealed class PathAirTests
{
    /// <summary>Maps of which the value tells the place: ΔN by latitude, N0 by longitude.</summary>
    private static readonly RefractivityMaps Maps = new(
        RefractivityMapTests.Map((north, _) => 40 + (north / 10)),
        RefractivityMapTests.Map((_, east) => 300 + (Math.Min(east, 360 - east) / 10)));

    private static readonly GeoPoint Station = new(46.2, -18.8);

    [Fact]
    public void Without_plan_and_maps_the_defaults_count_and_are_assumed()
    {
        PathAir air = PathAir.Of(new(), null, Station);

        Assert.Equal((45, 325), (air.RefractivityGradient, air.SurfaceRefractivity));
        Assert.Equal(("assumed", "assumed"), (air.RefractivityGradientSource, air.SurfaceRefractivitySource));
        Assert.Equal(["air/refractivity-gradient", "air/surface-refractivity"], air.Assumptions.Select(assumption => assumption.PlanPath));
        Assert.Equal(157.0 / (157 - 45), air.KFactor, 1e-12);
    }

    [Fact]
    public void Maps_are_read_at_the_station_and_nothing_is_assumed()
    {
        PathAir air = PathAir.Of(new(), Maps, Station);

        Assert.Equal(40 + 4.62, air.RefractivityGradient, 1e-9);
        Assert.Equal(300 + 1.88, air.SurfaceRefractivity, 1e-9);
        Assert.Equal("map DN50 of ITU-R P.1812 at the station, 46.20, -18.80", air.RefractivityGradientSource);
        Assert.StartsWith("map N050 ", air.SurfaceRefractivitySource, StringComparison.Ordinal);
        Assert.Empty(air.Assumptions);
    }

    [Fact]
    public void The_plan_wins_over_the_maps_for_each_value_by_itself()
    {
        PathAir both = PathAir.Of(new() { RefractivityGradient = 70, SurfaceRefractivity = 350 }, Maps, Station);
        PathAir one = PathAir.Of(new() { SurfaceRefractivity = 350 }, Maps, Station);

        Assert.Equal((70, "air/refractivity-gradient", 350, "air/surface-refractivity"), (both.RefractivityGradient, both.RefractivityGradientSource, both.SurfaceRefractivity, both.SurfaceRefractivitySource));
        Assert.Equal(44.62, one.RefractivityGradient, 1e-9);
        Assert.Equal(350, one.SurfaceRefractivity);
        Assert.Empty(one.Assumptions);
    }

    /// <summary>Maps that fall by 20 N-units/km over the radius: a cell and the path to its centre have the same air whatever lies between.</summary>
    [Fact]
    public void A_cell_of_the_map_and_the_path_to_its_centre_have_one_air()
    {
        RefractivityMaps steep = new(RefractivityMapTests.Map((north, _) => 60 - (30 * (north - 46.5))), RefractivityMapTests.Map((_, _) => 330));
        GroundMosaic hills = ReachSamples.Hills;
        Plan plan = FlatPlan.Of(new());
        plan = plan with { Sites = [plan.Sites[0] with { Position = new(ReachSamples.Station, 0) }] };
        Assessment ofMap = new(plan, SensitivityTests.Catalogue, (_, _) => hills, steep);
        ReachReceiver mast = ReachReceiver.Find(plan, ReachReceiver.MastKey, 7, out _)!;
        ReachSetup setup = ofMap.Reach(LinkStation.Of(plan.Sites[0], plan.Sites[0].FitOuts[0]), mast, new(12_000, 2_000), hills);
        ReachField field = DirectArea.Evaluate(setup.Field!, hills);
        Assert.Equal(60, setup.Air.RefractivityGradient, 0.3);
        foreach ((int column, int row) in new[] { (6, 1), (2, 10), (10, 9) })
        {
            Neighbour at = plan.Neighbours[0] with { Position = new(ReachGrid.Centre(field.Frame, column, row), 0), Height = new(Estimate.Exactly(7), HeightAbove.Ground) };
            Assessment ofPath = new(plan with { Neighbours = [at] }, SensitivityTests.Catalogue, (_, _) => hills, steep);
            LinkReport link = ofPath.Link(setup.Station, LinkStation.Of(at));
            Assert.Equal(setup.Air, link.Path.Air with { Assumptions = setup.Air.Assumptions });
            Assert.Equal(link.Path.Out!.LossDb, field.LossDb[(row * field.Frame.Columns) + column], 1e-4);

            // Drawn from the other end it is that end's air, which differs here.
            Assert.NotEqual(setup.Air.RefractivityGradient, ofPath.Link(LinkStation.Of(at), setup.Station).Path.Air.RefractivityGradient, 0.05);
        }
    }

    [Fact]
    public void A_plan_of_one_link_assumes_what_the_link_does()
    {
        GroundMosaic land = GroundMosaic.Of([GroundSamples.Tile(46, -19, 101, (_, _) => 10)]);
        Assessment assessment = new(FlatPlan.Of(new()), SensitivityTests.Catalogue, (_, _) => land);
        PlanReport report = assessment.Run(new Dictionary<string, string>(StringComparer.Ordinal));

        string[] ofLink = [.. assessment.AssumptionsOf(Assert.Single(report.Links)).Select(assumption => assumption.Code).Distinct()];
        Assert.Equal(report.Assumptions.Select(assumption => assumption.Code).Distinct(), ofLink);
        Assert.Superset(new HashSet<string>(["wanted-margin", "model-error", "external-noise", "refractivity-gradient"], StringComparer.Ordinal), ofLink.ToHashSet(StringComparer.Ordinal));
    }

    [Fact]
    public void A_link_is_computed_with_the_air_of_the_maps_and_says_so()
    {
        RefractivityMaps thick = new(RefractivityMapTests.Map((_, _) => 70), RefractivityMapTests.Map((_, _) => 350));
        LinkPath mapped = Assert.Single(FlatPlan.Check(FlatPlan.Of(new()), SensitivityTests.Catalogue, thick).Links).Path;
        LinkPath given = Assert.Single(FlatPlan.Check(FlatPlan.Of(new() { RefractivityGradient = 70, SurfaceRefractivity = 350 }), SensitivityTests.Catalogue).Links).Path;
        PlanReport usual = FlatPlan.Check(FlatPlan.Of(new()), SensitivityTests.Catalogue);

        // Rec. ITU-R P.1812 equations (6) and (7a): ae = 6 371 km · 157 / (157 − ΔN).
        Assert.Equal(6371 * 157 / (157.0 - 70), mapped.Out!.P1812Result!.Value.AeKm, 1e-6);
        Assert.Equal(157 / (157.0 - 70), mapped.Clearance!.KFactor, 1e-12);
        Assert.Equal(given.Out!.LossDb, mapped.Out.LossDb, 1e-12);
        Assert.NotEqual(Assert.Single(usual.Links).Path.Out!.LossDb, mapped.Out.LossDb);
        Assert.DoesNotContain(mapped.Assumptions, assumption => assumption.PlanPath.StartsWith("air/refr", StringComparison.Ordinal));
        Assert.Single(usual.Assumptions, assumption => assumption.Code == "refractivity-gradient");
        Assert.Single(usual.Assumptions, assumption => assumption.Code == "surface-refractivity");
    }
}
