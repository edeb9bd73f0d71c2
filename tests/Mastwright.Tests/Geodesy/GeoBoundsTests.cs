using Mastwright.Geodesy;

namespace Mastwright.Tests.Geodesy;

/// <summary>Areas between parallels and meridians.</summary>
public sealed class GeoBoundsTests
{
    private static readonly Gen<GeoPoint> Points =
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 180]).Select((latitude, longitude) => new GeoPoint(latitude, longitude));

    [Fact]
    public void Bounds_hold_every_point_they_were_made_of() =>
        Points.Array[1, 8].Sample(points => Array.TrueForAll(points, GeoBounds.Of(points).Contains));

    [Fact]
    public void Bounds_take_the_short_way_over_the_antimeridian()
    {
        GeoBounds bounds = GeoBounds.Of(new GeoPoint(10, 179), new GeoPoint(-5, -178), new GeoPoint(0, 180));
        Assert.True(bounds.CrossesAntimeridian);
        Assert.Equal(new GeoBounds(-5, 179, 10, -178), bounds);
        Assert.Equal(3, bounds.WidthDegrees);
        Assert.False(bounds.Contains(new GeoPoint(0, 0)));
        Assert.True(bounds.Contains(new GeoPoint(0, -179)));
    }

    [Fact]
    public void Expanded_bounds_hold_everything_within_the_distance() =>
        Gen.Select(Points.Array[1, 3], Gen.Double[0, 360], Gen.Double[0.001, 3e6], Gen.Double[0, 1]).Sample((points, bearing, metres, share) =>
        {
            GeoBounds expanded = GeoBounds.Of(points).Expanded(metres);
            return Array.TrueForAll(points, point => expanded.Contains(Geodesic.Direct(point, bearing, metres * share)));
        });

    [Fact]
    public void Expanding_adds_no_more_than_needed()
    {
        // One degree at 50° N: 111.229 km of latitude and 71.696 km of longitude (from the radii of curvature of WGS 84).
        GeoBounds expanded = new GeoBounds(50, 8, 50, 8).Expanded(10_000);
        Assert.Equal(50 + (10 / 111.229), expanded.NorthDegrees, 1e-3);
        Assert.Equal(8 + (10 / 71.696), expanded.EastDegrees, 2e-3);
    }

    [Fact]
    public void Bounds_near_a_pole_go_all_the_way_round()
    {
        GeoBounds expanded = new GeoBounds(89.95, 0, 89.99, 1).Expanded(5000);
        Assert.Equal((-180.0, 180.0, 90.0), (expanded.WestDegrees, expanded.EastDegrees, expanded.NorthDegrees));
    }

    [Fact]
    public void Areas_meet_over_the_antimeridian()
    {
        GeoBounds pacific = new(-10, 170, 10, -170);
        Assert.True(pacific.Intersects(new GeoBounds(0, -175, 5, -160)));
        Assert.True(new GeoBounds(0, -180, 5, -160).Intersects(pacific));
        Assert.False(pacific.Intersects(new GeoBounds(0, -160, 5, 160)));
        Assert.False(pacific.Intersects(new GeoBounds(11, 170, 12, 175)));
    }

    [Fact]
    public void Edges_the_wrong_way_up_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new GeoBounds(1, 0, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new GeoBounds(0, double.NaN, 0, 1));
        Assert.Throws<ArgumentException>(() => GeoBounds.Of());
        Assert.Throws<ArgumentOutOfRangeException>(() => new GeoBounds(0, 0, 0, 1).Expanded(-1));
    }
}
