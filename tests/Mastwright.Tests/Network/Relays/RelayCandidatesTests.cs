using CsCheck;
using Mastwright.Geodesy;
using Mastwright.Network.Relays;
using Mastwright.Propagation.Area;

namespace Mastwright.Tests.Network.Relays;

/// <summary>Places found on grids made by hand.</summary>
public sealed class RelayCandidatesTests
{
    private static readonly GeoPoint Middle = new(46, 8);

    /// <summary>
    /// Row by row: A is 90, B 70, C 60; between A and B one has to go down to 40, between B and C to 50. So C has 60 − 50 = 10, B 70 − 40 = 30 and A,
    /// the highest, all the way down to the lowest, 90 − 5 = 85.
    /// </summary>
    [Fact]
    public void Prominence_is_counted_down_to_the_saddle_of_the_higher_ground()
    {
        float[] heights =
        [
            10, 10, 10, 10, 10, 10, 10,
            10, 90, 40, 70, 50, 60, 10,
            10, 10, 10, 10, 10, 10, 5,
        ];
        Assert.Equal([new Summit(8, 85), new Summit(10, 30), new Summit(12, 10)], Summits.Of(heights, 7, 1));
        Assert.Equal([new Summit(8, 85), new Summit(10, 30)], Summits.Of(heights, 7, 11));
    }

    /// <summary>A crater's rim is one summit whatever is inside, a gap in the ground (NaN) joins nothing, and level ground has no summit.</summary>
    [Fact]
    public void A_rim_is_one_summit_and_unknown_ground_joins_nothing()
    {
        float[] rim =
        [
            20, 20, 20,
            20, 02, 21,
            20, 20, 20,
        ];
        Assert.Equal([new Summit(5, 19)], Summits.Of(rim, 3, 1));
        Assert.Equal([new Summit(0, 6)], Summits.Of([9, 3, float.NaN, 4, 8], 5, 1).Where(one => one.Cell == 0));
        Assert.Empty(Summits.Of([7, 7, 7, 7], 2, 1));
    }

    /// <summary>By the definition: from the summit, the highest pass to any higher cell, found by raising the water until the two part.</summary>
    [Fact]
    public void Prominence_agrees_with_its_definition() => Gen.Int[0, 9].Array[30].Sample(whole =>
    {
        float[] heights = [.. whole.Select((height, cell) => (height * 100) + (float)((cell * 7) % 30))];
        return Summits.Of(heights, 6, 0.5f).All(summit => Math.Abs(ByDefinition(heights, summit.Cell) - summit.ProminenceMetres) < 1e-3)
            && Enumerable.Range(0, 30).All(cell => ByDefinition(heights, cell) < 0.5 || Summits.Of(heights, 6, 0.5).Any(one => one.Cell == cell));
    }, iter: 200);

    /// <summary>A roof that falls 2 m a metre east and west of column 10, cells of 100 m: along it every cell falls by 600 m in 300 m on either side.</summary>
    [Fact]
    public void The_top_of_a_roof_is_a_ridge()
    {
        RelayPlane plane = Plane(10, 100, (column, _) => 5_000 - (200 * Math.Abs(column - 10)));
        (int Cell, double FallMetres)[] ridge = [.. RidgePoints.Of(plane, 1).Where(point => point.Cell / plane.Side is >= 3 and <= 17)];
        Assert.All(ridge, point => Assert.Equal((10, 600.0), (point.Cell % plane.Side, point.FallMetres)));
        Assert.Equal(15, ridge.Length);
    }

    /// <summary>
    /// A wall of 100 m stands 1 km east of a mast of 10 m on a plain. A receiver of 1 m is seen on all of the near side. Behind the wall nothing is: the ray over
    /// its top still climbs 90 m a kilometre, the Earth falls by some 6 cm. West of the mast nothing hides the plain.
    /// </summary>
    [Fact]
    public void A_wall_hides_what_is_behind_it()
    {
        RelayPlane plane = Plane(40, 100, (column, _) => column == 50 ? 100 : 0);
        ulong[] seen = new ulong[CoverageObjective.Words(81 * 81)];
        new LineOfSight(plane).Mark(40, 40, 10, 1, 4_000, 720, 1, seen);
        bool IsSeen(int column) => (seen[((40 * 81) + column) >> 6] >> ((40 * 81) + column) & 1) != 0;
        Assert.All(Enumerable.Range(41, 10), column => Assert.True(IsSeen(column), $"{column}"));
        Assert.All(Enumerable.Range(51, 29), column => Assert.False(IsSeen(column), $"{column}"));
        Assert.All(Enumerable.Range(1, 38), column => Assert.True(IsSeen(column), $"{column}"));
    }

    /// <summary>Over a smooth Earth the plain ends where √(2·a·h) says: with k = 4/3 and 10 m, 13.03 km; here found in steps that grow by 5 %.</summary>
    [Fact]
    public void The_horizon_of_a_plain_is_that_of_the_round_earth()
    {
        RelayPlane plane = Plane(100, 300, (_, _) => 0);
        double metres = new LineOfSight(plane, 39.25).MeanHorizonMetres(100, 100, 10, 29_000, 36);
        Assert.InRange(metres, 13_030 * 0.93, 13_030 * 1.07);
    }

    [Fact]
    public void Candidates_keep_their_distance_and_their_limits()
    {
        RelayPlane plane = Plane(60, 100, (column, row) => 300 + (60 * Math.Sin(column / 5.0)) + (50 * Math.Cos(row / 7.0)) + (column * 0.5));
        GeoPoint Corner(double east, double north) => plane.Frame.PointAt(east, north);
        RelayWish wish = new()
        {
            Most = 40,
            SpacingMetres = 600,
            Limits = new()
            {
                Excluded = [[[Corner(-61, -61), Corner(0, -61), Corner(0, 61), Corner(-61, 61), Corner(-61, -61)], [Corner(-30, -10), Corner(-10, -10), Corner(-10, 10), Corner(-30, 10), Corner(-30, -10)]]],
                Tracks = [[Corner(-61, 0), Corner(61, 0)]],
                TrackMetres = 2_000,
            },
        };
        RelayCandidate[] found = [.. RelayCandidates.Find(plane, wish, TestContext.Current.CancellationToken)];
        Assert.True(found.Length >= 10, $"{found.Length}");
        Assert.Contains(found, one => one.Origin == RelayOrigin.Summit && one.ProminenceMetres >= 10);
        foreach (RelayCandidate one in found)
        {
            (double east, double north) = plane.Frame.Locate(one.Place);
            Assert.True(Math.Abs(north) <= 20.001 && (east >= -0.001 || (east is > -30.001 and < -9.999 && Math.Abs(north) <= 10.001)), $"{one}: {east:0.0} {north:0.0}");
            Assert.True(wish.Limits.Allow(one.Place) || Math.Abs(Math.Abs(north) - 20) < 0.1 || Math.Abs(Math.Abs(north) - 10) < 0.1 || Math.Abs(east) < 0.1 || Math.Abs(east + 30) < 0.1 || Math.Abs(east + 10) < 0.1, $"{one}");
            Assert.All(found.Where(other => other != one), other => Assert.True(Geodesic.Inverse(one.Place, other.Place).DistanceMetres >= 599));
        }

        Assert.Equal(found.Length, found.Select(one => one.Key).Distinct().Count());
    }

    private static RelayPlane Plane(int reach, double cellMetres, Func<int, int, double> height)
    {
        SweepFrame frame = SweepFrame.Around(Middle, reach * cellMetres, cellMetres);
        return new(frame, [.. Enumerable.Range(0, frame.Side * frame.Side).Select(cell => (float)height(cell % frame.Side, cell / frame.Side))]);
    }

    private static double ByDefinition(float[] heights, int summit)
    {
        double[] levels = [.. heights.Select(one => (double)one).Where(one => one <= heights[summit]).OrderDescending()];
        foreach (double level in levels)
        {
            HashSet<int> island = [summit];
            Queue<int> queue = new([summit]);
            while (queue.TryDequeue(out int at))
            {
                foreach (int next in Enumerable.Range(0, heights.Length).Where(one => heights[one] >= level && Math.Abs((one / 6) - (at / 6)) <= 1 && Math.Abs((one % 6) - (at % 6)) <= 1))
                {
                    if (island.Add(next))
                    {
                        queue.Enqueue(next);
                    }
                }
            }

            if (island.Any(one => heights[one] > heights[summit]))
            {
                return heights[summit] - level;
            }
        }

        return heights[summit] - heights.Min();
    }
}
