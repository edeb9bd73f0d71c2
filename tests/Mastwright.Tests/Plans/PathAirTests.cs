using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Plans;
using Mastwright.Propagation;
using Mastwright.Tests.Ground;
using Mastwright.Tests.Propagation;
using Mastwright.Tests.Station.Radio;

namespace Mastwright.Tests.Plans;

public sealed class PathAirTests
{
    /// <summary>Maps of which the value tells the place: ΔN by latitude, N0 by longitude.</summary>
    private static readonly RefractivityMaps Maps = new(
        RefractivityMapTests.Map((north, _) => 40 + (north / 10)),
        RefractivityMapTests.Map((_, east) => 300 + (Math.Min(east, 360 - east) / 10)));

    private static readonly GeoPoint From = new(46.0, -18.8);
    private static readonly GeoPoint To = new(46.4, -18.8);

    [Fact]
    public void Without_plan_and_maps_the_defaults_count_and_are_assumed()
    {
        PathAir air = PathAir.Of(new(), null, From, To);

        Assert.Equal((45, 325), (air.RefractivityGradient, air.SurfaceRefractivity));
        Assert.Equal(("assumed", "assumed"), (air.RefractivityGradientSource, air.SurfaceRefractivitySource));
        Assert.Equal(["air/refractivity-gradient", "air/surface-refractivity"], air.Assumptions.Select(assumption => assumption.PlanPath));
        Assert.Equal(157.0 / (157 - 45), air.KFactor, 1e-12);
    }

    [Fact]
    public void Maps_are_read_at_the_centre_of_the_path_and_nothing_is_assumed()
    {
        PathAir air = PathAir.Of(new(), Maps, From, To);

        // Half-way along a meridian: 46.2° N up to the flattening of the Earth, which moves it by less than 0.001°.
        Assert.Equal(40 + 4.62, air.RefractivityGradient, 1e-4);
        Assert.Equal(300 + 1.88, air.SurfaceRefractivity, 1e-9);
        Assert.Equal("map DN50 of ITU-R P.1812 at the path's centre, 46.20, -18.80", air.RefractivityGradientSource);
        Assert.StartsWith("map N050 ", air.SurfaceRefractivitySource, StringComparison.Ordinal);
        Assert.Empty(air.Assumptions);
    }

    [Fact]
    public void The_plan_wins_over_the_maps_for_each_value_by_itself()
    {
        PathAir both = PathAir.Of(new() { RefractivityGradient = 70, SurfaceRefractivity = 350 }, Maps, From, To);
        PathAir one = PathAir.Of(new() { SurfaceRefractivity = 350 }, Maps, From, To);

        Assert.Equal((70, "air/refractivity-gradient", 350, "air/surface-refractivity"), (both.RefractivityGradient, both.RefractivityGradientSource, both.SurfaceRefractivity, both.SurfaceRefractivitySource));
        Assert.Equal(44.62, one.RefractivityGradient, 1e-4);
        Assert.Equal(350, one.SurfaceRefractivity);
        Assert.Empty(one.Assumptions);
    }

    [Fact]
    public void The_centre_of_a_path_across_the_antimeridian_lies_on_it()
    {
        PathAir air = PathAir.Of(new(), Maps, new(10, 179.5), new(10, -179.5));

        Assert.Equal(300 + 18, air.SurfaceRefractivity, 1e-6);
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
