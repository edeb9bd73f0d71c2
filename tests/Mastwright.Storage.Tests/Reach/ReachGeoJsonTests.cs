using System.Collections.Immutable;
using System.Text.Json;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Storage.Reach;

namespace Mastwright.Storage.Tests.Reach;

/// <summary>Shapes that cross the meridian of 180° are cut there: RFC 7946 section 3.1.9.</summary>
public sealed class ReachGeoJsonTests
{
    /// <summary>A square from 179.9° E to 179.8° W with a hole over the meridian, and one hole on each side.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void A_shape_over_the_meridian_becomes_shapes_on_either_side(int start)
    {
        ReachPatch patch = new(
            Turned(start, (179.9, 0), (180.2, 0), (180.2, 1), (179.9, 1)),
            [
                Turned(start, (179.95, 0.1), (179.95, 0.3), (180.05, 0.3), (180.05, 0.1)),
                Turned(start, (179.92, 0.6), (179.92, 0.7), (179.98, 0.7), (179.98, 0.6)),
                Turned(start, (180.1, 0.6), (180.1, 0.7), (180.15, 0.7), (180.15, 0.6)),
            ]);
        double[][][][] polygons = Polygons(patch);
        Assert.Equal(2, polygons.Length);
        Assert.All(polygons, polygon => Assert.Equal(2, polygon.Length));
        Assert.All(polygons.SelectMany(polygon => polygon), ring =>
        {
            Assert.Equal(ring[0], ring[^1]);
            bool isEast = ring.All(place => place[0] >= 179.9 - 1e-9 && place[0] <= 180);
            bool isWest = ring.All(place => place[0] >= -180 && place[0] <= -179.8 + 1e-9);
            Assert.True(isEast || isWest);
        });

        // Outer lines counter-clockwise, holes clockwise; east 0.1 − 0.05 · 0.2 − 0.06 · 0.1 and west 0.2 − 0.05 · 0.2 − 0.05 · 0.1 square degrees.
        Assert.All(polygons, polygon => Assert.True(Area(polygon[0]) > 0 && Area(polygon[1]) < 0));
        double[] areas = [.. polygons.OrderByDescending(polygon => polygon[0][0][0]).Select(polygon => polygon.Sum(Area))];
        Assert.Equal(0.1 - 0.01 - 0.006, areas[0], 1e-9);
        Assert.Equal(0.2 - 0.01 - 0.005, areas[1], 1e-9);
    }

    /// <summary>A comb whose three teeth reach over the meridian: one piece with the back, three of teeth.</summary>
    [Fact]
    public void Each_part_that_reaches_over_becomes_a_shape_of_its_own()
    {
        ReachPatch patch = new(
            Turned(0, (179.8, 0), (180.1, 0), (180.1, 1), (179.9, 1), (179.9, 2), (180.1, 2), (180.1, 3), (179.9, 3), (179.9, 4), (180.1, 4), (180.1, 5), (179.8, 5)), []);
        double[][][][] polygons = Polygons(patch);
        Assert.Equal(4, polygons.Length);
        Assert.Equal((0.1 * 5) + (0.1 * 3), polygons.Where(polygon => polygon[0][0][0] > 0).Sum(polygon => Area(polygon[0])), 1e-9);
        Assert.Equal([0.1, 0.1, 0.1], polygons.Where(polygon => polygon[0][0][0] < 0).Select(polygon => Math.Round(Area(polygon[0]), 9)));
    }

    /// <summary>A station 0.7 km west of the meridian that is heard to 2 km all around: the circle comes in two pieces, whose areas add up to its own.</summary>
    [Fact]
    public void A_station_beside_the_meridian_is_heard_on_both_sides_of_it()
    {
        GeoPoint station = Geodesic.Direct(new(10, 180), 270, 700);
        UtmPosition at = UniversalTransverseMercator.FromGeo(station);
        Assert.Equal(60, at.Zone);
        const int Side = 101;
        GridFrame frame = GridFrame.Utm(at.Zone, at.North, at.EastingMetres - 2_500, at.NorthingMetres + 2_500, 50, 50, Side, Side, samplesAreAreas: true);
        float[] margins = [.. Enumerable.Range(0, Side * Side).Select(i => (float)(2_000 - (50 * double.Hypot((i % Side) - 50, (i / Side) - 50))))];
        ReachContour contour = ReachContour.Around(frame, margins, 0);
        Assert.Equal(Math.PI * 4e6, contour.AreaSquareMetres, Math.PI * 4e6 * 0.01);

        double[][][] rings = [.. Polygons(Assert.Single(contour.Patches)).Select(Assert.Single)];
        Assert.Equal(2, rings.Length);
        Assert.True(rings[0].All(place => place[0] is > 179.9 and <= 180) && rings[1].All(place => place[0] is >= -180 and < -179.9));
        double degrees = rings.Sum(Area);
        GeodesicSegment east = Geodesic.Inverse(new(10, 179), new(10, 180));
        GeodesicSegment north = Geodesic.Inverse(new(9.5, 180), new(10.5, 180));
        Assert.Equal(contour.AreaSquareMetres, degrees * east.DistanceMetres * north.DistanceMetres, contour.AreaSquareMetres * 0.002);

        // East of a chord 700 m from the middle: r² acos(d/r) − d √(r² − d²).
        double beyond = (4e6 * Math.Acos(0.35)) - (700 * Math.Sqrt(4e6 - 490_000));
        Assert.Equal(beyond, Area(rings[1]) * east.DistanceMetres * north.DistanceMetres, beyond * 0.02);
    }

    [Fact]
    public void A_shape_on_one_side_stays_as_it_is()
    {
        double[][] ring = Assert.Single(Assert.Single(Polygons(new(Turned(0, (-179.9, 0), (-179.8, 0), (-179.8, 1)), []))));
        Assert.Equal([[-179.9, 0], [-179.8, 0], [-179.8, 1], [-179.9, 0]], ring);
    }

    private static double[][][][] Polygons(ReachPatch patch)
    {
        using JsonDocument document = JsonDocument.Parse(ReachGeoJson.Write([new ReachFeature { Patches = [patch] }], ImmutableDictionary<string, string>.Empty));
        return document.RootElement.GetProperty("features")[0].GetProperty("geometry").GetProperty("coordinates").Deserialize<double[][][][]>()!;
    }

    /// <summary>A ring that starts at one of its places, with longitudes from −180 to 180.</summary>
    private static ReachRing Turned(int start, params (double X, double Y)[] places) => new(
        [.. Enumerable.Range(0, places.Length).Select(i => places[(i + start) % places.Length]).Select(place => new GeoPoint(place.Y, place.X >= 180 ? place.X - 360 : place.X))]);

    private static double Area(double[][] ring)
    {
        double twice = 0;
        for (int i = 0; i + 1 < ring.Length; i++)
        {
            twice += (ring[i][0] * ring[i + 1][1]) - (ring[i + 1][0] * ring[i][1]);
        }

        return twice / 2;
    }
}
