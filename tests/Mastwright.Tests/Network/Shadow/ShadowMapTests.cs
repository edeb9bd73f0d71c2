using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network;
using Mastwright.Network.Reach;
using Mastwright.Network.Shadow;
using Mastwright.Quantities;
using Mastwright.Tests.Ground;
using Mastwright.Tests.Network.Reach;

namespace Mastwright.Tests.Network.Shadow;

public sealed class ShadowMapTests
{
    private const double WallLongitude = -18.46;

    /// <summary>A plain 50 m above the sea with a wall of 300 m some 3 km east of the station, and a wood of 30 m some 3 km west of it.</summary>
    private static readonly GroundMosaic Plain = GroundMosaic.Of(
    [
        GroundSamples.Tile(46, -19, 1001, (_, longitude) => Math.Abs(longitude - WallLongitude) < 0.0006 ? 350 : 50),
        GroundSamples.Cover(-18.6, 46.6, 0.001, 200, 200, (_, longitude) => longitude is > -18.56 and < -18.54 ? (byte)10 : (byte)30),
    ]).With([], CoverTable.Of([new(10, "trees", CoverClass.UrbanOrTrees, 30, "test", "test"), new(30, "grass", CoverClass.Open, 0, "test", "test")]), null);

    private static ReachMap Map(ReachField field, double requiredDbm = -118) =>
        ReachMap.Of(field, ReachSamples.Budget() with { Receiver = ReachSamples.Budget().Receiver with { RequiredDbm = Estimate.Exactly(requiredDbm) } });

    [Theory]
    [InlineData(120, 110, 115, 125, ShadowCause.Ground)]
    [InlineData(120, 110, 115, 119, ShadowCause.Cover)]
    [InlineData(120, 110, 121, 119, ShadowCause.Curve)]
    [InlineData(120, 121, 130, 140, ShadowCause.TooFar)]
    [InlineData(120, 110, 115, double.NaN, ShadowCause.Ground)]
    internal void The_first_thing_that_takes_too_much_is_the_cause(double most, double free, double smooth, double bare, ShadowCause cause) =>
        Assert.Equal(cause, ShadowMap.Cause(most, bare, (free, smooth)));

    [Fact]
    public void Behind_a_wall_is_ground_and_behind_a_wood_is_cover()
    {
        ReachFieldInput input = ReachSamples.Input(6_000, 200);
        ShadowMap shadow = ShadowMap.Of(Map(DirectArea.Evaluate(input, Plain)), DirectArea.Evaluate(input, Plain.Bare()), Plain, ReachDirection.Heard);
        Assert.Equal(ShadowCause.Ground, At(shadow, new(46.5, -18.455)));
        Assert.Equal(ShadowCause.Ground, At(shadow, new(46.505, -18.45)));
        Assert.Equal(ShadowCause.Cover, At(shadow, new(46.5, -18.555)));
        Assert.Equal(ShadowCause.Reached, At(shadow, new(46.52, -18.5)));
        Assert.Equal(ShadowCause.Unknown, shadow.Causes[0]);

        // Every cell with a value is in just one part, and the reached part is what the map reaches.
        ImmutableArray<ShadowPart> parts = shadow.Parts(3);
        Assert.Equal(shadow.Map.Field.CellCount, parts.Sum(part => part.Cells));
        Assert.Equal(shadow.Map.MarginsDb(ReachDirection.Heard).Count(margin => margin >= 0), parts.Single(part => part.Cause == ShadowCause.Reached).Cells);
        Assert.Equal(0, parts.Sum(part => part.ByHops.Sum()));

        // The wall throws the shadow; the wood, which is no ground, does not.
        ImmutableArray<RidgePoint> ridge = RidgeLine.Of(shadow, Plain);
        Assert.True(ridge.Length > 20);
        Assert.All(ridge, point => Assert.Equal(WallLongitude, point.Place.LongitudeDegrees, 0.0025));
    }

    [Fact]
    public void Where_free_space_takes_too_much_it_is_too_far()
    {
        // 17 + 5 + 1 − 3 + 80 = 100 dB: 92.45 + 20 log 0.868 + 20 log d is 100 dB at d = 2.75 km (ITU-R P.525).
        ReachFieldInput input = ReachSamples.Input(5_000, 200);
        ShadowMap shadow = ShadowMap.Of(Map(DirectArea.Evaluate(input, Plain), -80), DirectArea.Evaluate(input, Plain.Bare()), Plain, ReachDirection.Heard);
        Assert.Equal(ShadowCause.TooFar, At(shadow, Geodesic.Direct(ReachSamples.Station, 0, 3_000)));
        Assert.NotEqual(ShadowCause.TooFar, At(shadow, Geodesic.Direct(ReachSamples.Station, 0, 2_500)));
    }

    [Fact]
    public void The_smooth_Earth_takes_more_of_low_antennas_far_away()
    {
        GroundMosaic sea = GroundMosaic.Of([GroundSamples.Tile(46, -19, 101, (_, _) => 0)]);
        GroundMosaic plateau = GroundMosaic.Of([GroundSamples.Tile(46, -19, 101, (_, _) => 400)]);
        ReachFieldInput input = ReachSamples.Input(60_000, 1000);
        GeoPoint far = Geodesic.Direct(ReachSamples.Station, 0, 50_000);
        (double free, double low) = new SmoothPaths(input, sea).Losses(far);
        (double freeToo, double high) = new SmoothPaths(input, plateau).Losses(far);
        Assert.Equal(92.45 + (20 * Math.Log10(0.868)) + (20 * Math.Log10(50)), free, 0.02);
        Assert.Equal(free, freeToo, 1e-9);
        Assert.True(low - free > 30);
        Assert.Equal(free, high, 1);
    }

    [Fact]
    public void What_a_relay_reaches_is_opened_by_one_hop_more_than_it_takes_to_the_relay()
    {
        // West of the middle the station is heard; the relay is heard north of it, on a smaller grid.
        ReachField own = ReachSamples.Field(20, 100, (east, _) => east < 0 ? 120 : 160);
        ReachField bare = ReachSamples.Field(20, 100, (east, _) => east < 0 ? 120 : 150);
        ShadowMap shadow = ShadowMap.Of(Map(own), bare, Plain, ReachDirection.Heard);
        ReachField relay = ReachSamples.Field(16, 100, (_, north) => north > 0 ? 110 : 170);
        ShadowMap opened = shadow.With(Map(relay), 2, ReachDirection.Heard);
        int cells = 0;
        for (int i = 0; i < opened.Hops.Length; i++)
        {
            cells += opened.Hops[i] == 3 ? 1 : 0;
            Assert.True(shadow.Hops[i] != 1 || opened.Hops[i] == 1);
        }

        // The relay's first 8 of 16 rows, of its columns those 6 that lie in the eastern half of the other grid.
        Assert.Equal(8 * 6, cells);
        Assert.Equal(cells * 10_000, opened.Parts(3).Sum(part => part.ByHops[1]), 1e-6);
        Assert.Equal(0, opened.Parts(2).Sum(part => part.ByHops.Sum()));
        Assert.Equal(2, opened.With(Map(relay), 1, ReachDirection.Heard).Hops.ToArray().Max());
        Assert.Throws<ArgumentException>(() => ShadowMap.Of(Map(own), relay, Plain, ReachDirection.Heard));
    }

    private static ShadowCause At(ShadowMap shadow, GeoPoint place)
    {
        (double column, double row) = shadow.Map.Field.Frame.Locate(place);
        return shadow.Causes[((int)Math.Round(row) * shadow.Map.Field.Frame.Columns) + (int)Math.Round(column)];
    }
}
