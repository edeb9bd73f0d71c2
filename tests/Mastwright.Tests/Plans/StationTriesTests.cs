using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Tests.Plans;

public sealed class StationTriesTests
{
    private static readonly Site Site = FlatPlan.Of(new()).Sites[0];

    [Fact]
    public void What_the_plan_gives_exactly_is_not_varied()
    {
        LinkStation station = LinkStation.Of(Site, Site.FitOuts[0]);
        Assert.Empty(StationTries.Of(station, 30));
        Assert.Empty(StationTries.Of(station with { Position = new(station.Position.Point, 30) }, 30));
    }

    [Fact]
    public void Heights_are_tried_at_their_ends_and_places_around()
    {
        LinkStation station = LinkStation.Of(Site, Site.FitOuts[0]) with
        {
            Position = new(FlatPlan.West, 60),
            Height = new(Estimate.Of(4, 5, 7), HeightAbove.Roof, Estimate.Of(6, 7, 8)),
        };
        ImmutableArray<StationTry> tries = StationTries.Of(station, 30);
        Assert.Equal(["antenna at 4 m", "antenna at 7 m", "roof at 6 m", "roof at 8 m"], tries[..4].Select(one => one.Text));
        Assert.Equal((4, 7), (tries[0].Station.Height!.Metres.Median, tries[0].Station.Height!.RoofMetres!.Value.Median));
        Assert.Equal((5, 8), (tries[3].Station.Height!.Metres.Median, tries[3].Station.Height!.RoofMetres!.Value.Median));

        // Two rings of eight places, at half of the radius and at all of it.
        Assert.Equal(20, tries.Length);
        Assert.All(tries[4..].Select((one, i) => (one.Station.Position.Point, Metres: i < 8 ? 30 : 60)), place =>
            Assert.Equal(place.Metres, Geodesic.Inverse(FlatPlan.West, place.Point).DistanceMetres, 1e-6));
        Assert.Equal("30 m aside, bearing 0°", tries[4].Text);
        Assert.All(tries[4..], one => Assert.Equal(5, one.Station.Height!.Metres.Median));
    }
}
