using Mastwright.Geodesy;
using Mastwright.Network.Reach;

namespace Mastwright.Tests.Network.Reach;

public sealed class ReachContourTests
{
    /// <summary>A cone of margins whose 0, 10, 20 and 30 dB lie at 4, 3, 2 and 1 km: each contour is a circle.</summary>
    [Fact]
    public void The_contours_of_a_cone_are_circles()
    {
        ReachField cone = ReachSamples.Field(181, 50, (east, north) => 108 + (Math.Sqrt((east * east) + (north * north)) / 100));
        ReachContour[] contours = [.. ReachContour.Of(ReachMap.Of(cone, ReachSamples.Budget()), ReachDirection.Heard)];
        Assert.Equal([0, 10, 20, 30], contours.Select(contour => contour.FromDb));
        for (int i = 0; i < 4; i++)
        {
            double radius = 4_000 - (i * 1_000);
            ReachPatch patch = Assert.Single(contours[i].Patches);
            Assert.Empty(patch.Holes);
            Assert.Equal(Math.PI * radius * radius, contours[i].AreaSquareMetres, Math.PI * radius * radius * 0.01);

            // The grid's scale off by 0.1 % at most, the line by a quarter of a cell and half a cell's bend.
            Assert.All(patch.Outer.Places, place => Assert.Equal(radius, Geodesic.Inverse(cone.Input.Station, place).DistanceMetres, (radius * 0.001) + 15));
            Assert.True(patch.Outer.Places.Length < 200, $"{patch.Outer.Places.Length}");
        }
    }

    [Fact]
    public void A_ring_has_a_hole_that_runs_the_other_way_and_an_island_in_it_is_a_patch_of_its_own()
    {
        // Heard within 500 m, not from there to 1 km, heard again to 2 km.
        ReachField rings = ReachSamples.Field(101, 50, (east, north) => Math.Sqrt((east * east) + (north * north)) is double metres && (metres < 500 || (metres > 1_000 && metres < 2_000)) ? 140 : 160);
        ReachContour contour = ReachContour.Of(ReachMap.Of(rings, ReachSamples.Budget()), ReachDirection.Heard)[0];
        Assert.Equal(2, contour.Patches.Length);
        ReachPatch wide = contour.Patches[0];
        Assert.Single(wide.Holes);
        Assert.Empty(contour.Patches[1].Holes);
        Assert.True(Turn(wide.Outer) > 0);
        Assert.True(Turn(wide.Holes[0]) < 0);
        Assert.True(Turn(contour.Patches[1].Outer) > 0);
        double area = Math.PI * (0.25 + 4 - 1) * 1e6;
        Assert.Equal(area, contour.AreaSquareMetres, area * 0.02);
    }

    [Fact]
    public void Where_there_is_no_value_the_line_is_closed_and_nothing_is_heard_there()
    {
        ReachField half = ReachSamples.Field(41, 100, (east, _) => east > 0 ? double.NaN : 120);
        ReachContour contour = ReachContour.Of(ReachMap.Of(half, ReachSamples.Budget()), ReachDirection.Heard)[0];
        ReachPatch patch = Assert.Single(contour.Patches);
        Assert.Equal(21 * 41 * 1e4, contour.AreaSquareMetres, 1e4);

        // Half a cell past the last column, and the grid's north some 2° off true north: 120 m over 2 km.
        Assert.All(patch.Outer.Places, place => Assert.True(place.LongitudeDegrees < half.Input.Station.LongitudeDegrees + (180 / 76_000.0), $"{place}"));
        Assert.Empty(ReachContour.Of(ReachMap.Of(ReachSamples.Field(41, 100, (_, _) => 170), ReachSamples.Budget()), ReachDirection.Heard)[0].Patches);
    }

    /// <summary>Whatever the field: the area within the lines is that of the cells inside, but for the squares that the line crosses.</summary>
    [Fact]
    public void The_area_within_the_lines_is_that_of_the_cells() =>
        Gen.Int[120, 160].Array[24 * 24].Sample(
            losses =>
            {
                ReachField noise = ReachSamples.Field(24, 100, (east, north) =>
                    losses[(((int)Math.Floor((1_200 - north) / 100) % 24) * 24) + ((int)Math.Floor((1_200 + east) / 100) % 24)]);
                ReachMap map = ReachMap.Of(noise, ReachSamples.Budget());
                ReachContour contour = ReachContour.Of(map, ReachDirection.Heard)[0];
                int inside = map.MarginsDb(ReachDirection.Heard).Count(margin => margin >= 0);
                Assert.InRange(contour.AreaSquareMetres, 0, 26 * 26 * 1e4);
                Assert.Equal(inside * 1e4, contour.AreaSquareMetres, 24 * 24 * 1e4 * 0.35);
                Assert.Empty(RingCrossings.Find([.. Lines(contour)], 150));
                Assert.All(contour.Patches, patch => Assert.True(Turn(patch.Outer) > 0 && patch.Holes.All(hole => Turn(hole) < 0)));
            },
            iter: 40);

    [Fact]
    public void A_straight_line_keeps_only_its_ends()
    {
        List<(double X, double Y)> square = [];
        for (int i = 0; i < 10; i++)
        {
            square.Add((i * 10, 0));
        }

        square.AddRange([(100, 0), (100, 50), (100, 100), (50, 100.2), (0, 100), (0, 40)]);
        Assert.Equal([(0, 0), (100, 0), (100, 100), (0, 100)], RingSimplifier.Simplify(square, 1));
        Assert.Equal(3, RingSimplifier.Simplify([(0, 0), (1, 0), (0, 1)], 10).Count);
    }

    [Fact]
    public void Rings_that_cross_are_found()
    {
        List<(double X, double Y)> square = [(0, 0), (10, 0), (10, 10), (0, 10)];
        List<(double X, double Y)> away = [(20, 0), (30, 0), (30, 10), (20, 10)];
        List<(double X, double Y)> over = [(5, 5), (25, 5), (25, 8), (5, 8)];
        List<(double X, double Y)> bow = [(50, 50), (60, 60), (60, 50), (50, 60)];
        Assert.Empty(RingCrossings.Find([square, away], 7));
        Assert.Equal([0, 1, 2], RingCrossings.Find([square, away, over], 7).Order());
        Assert.Equal([1], RingCrossings.Find([square, bow], 7));

        // In one line with a side of the square, and apart from it.
        Assert.Empty(RingCrossings.Find([square, [(0, 12), (0, 20), (-10, 20), (-10, 12)]], 70));
    }

    /// <summary>All lines of a contour in the metres of the samples' zone.</summary>
    private static IEnumerable<List<(double X, double Y)>> Lines(ReachContour contour) => contour.Patches
        .SelectMany(patch => patch.Holes.Prepend(patch.Outer))
        .Select(ring => ring.Places.Select(place => UniversalTransverseMercator.FromGeo(place, 27, north: true)).Select(at => (at.EastingMetres, at.NorthingMetres)).ToList());

    /// <summary>Twice the area in degrees, positive for counter-clockwise.</summary>
    private static double Turn(ReachRing ring)
    {
        double twice = 0;
        for (int i = 0; i < ring.Places.Length; i++)
        {
            GeoPoint one = ring.Places[i];
            GeoPoint two = ring.Places[(i + 1) % ring.Places.Length];
            twice += ((one.LongitudeDegrees - ring.Places[0].LongitudeDegrees) * (two.LatitudeDegrees - ring.Places[0].LatitudeDegrees))
                - ((two.LongitudeDegrees - ring.Places[0].LongitudeDegrees) * (one.LatitudeDegrees - ring.Places[0].LatitudeDegrees));
        }

        return twice;
    }
}
