using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;

namespace Mastwright.Tests.Network.Reach;

/// <summary>The lattice against the projection and the geodesic that it stands for, point by point.</summary>
public sealed class GridLatticeTests
{
    /// <summary>Within 2 mm of the geodesic anywhere in a zone, from a field of a few cells to one of 100 km.</summary>
    [Fact]
    public void The_plane_around_a_station_is_that_of_the_geodesic() => Sample((frame, station, random) =>
    {
        GridLattice plane = GridLattice.OfPlane(frame, station);
        for (int i = 0; i < 200; i++)
        {
            (int column, int row) = (random.Next(frame.Columns), random.Next(frame.Rows));
            (double east, double north) = plane.Row(row).At(column);
            GeodesicSegment exact = Geodesic.Inverse(station, ReachGrid.Centre(frame, column, row));
            (double sin, double cos) = Math.SinCos(double.DegreesToRadians(exact.InitialBearingDegrees));
            double off = Math.Sqrt(Math.Pow(east - (exact.DistanceMetres * sin), 2) + Math.Pow(north - (exact.DistanceMetres * cos), 2));
            Assert.True(off < 0.002, $"{frame} at {station}, {column} {row}: {off} m");
        }
    });

    [Fact]
    public void Places_are_those_of_the_projection() => Sample((frame, _, random) =>
    {
        GridLattice places = GridLattice.OfPlaces(frame);
        for (int i = 0; i < 200; i++)
        {
            (int column, int row) = (random.Next(frame.Columns), random.Next(frame.Rows));
            (double latitude, double longitude) = places.Row(row).At(column);
            GeoPoint exact = ReachGrid.Centre(frame, column, row);
            double off = Geodesic.Inverse(exact, new(latitude, longitude - (360 * Math.Round(longitude / 360)))).DistanceMetres;
            Assert.True(off < 0.025, $"{frame}, {column} {row}: {off} m");
        }
    });

    [Fact]
    public void The_last_column_and_row_are_exact_or_between_nodes()
    {
        // 129 points, 64 between nodes: the last point is a node; of 130 it lies just past one.
        foreach (int side in (int[])[2, 65, 129, 130])
        {
            GridFrame frame = GridFrame.Utm(27, true, 600_005, 5_140_000, 5, 5, side, side, samplesAreAreas: true);
            GeoPoint station = ReachGrid.Centre(frame, side / 2, side / 2);
            GeodesicSegment exact = Geodesic.Inverse(station, ReachGrid.Centre(frame, side - 1, side - 1));
            (double east, double north) = GridLattice.OfPlane(frame, station).Row(side - 1).At(side - 1);
            Assert.Equal(exact.DistanceMetres, Math.Sqrt((east * east) + (north * north)), 0.002);
        }
    }

    private static void Sample(Action<GridFrame, GeoPoint, Random> check) =>
        Gen.Select(Gen.Double[-79, 79], Gen.Double[-179.99, 179.99], Gen.Double[300, 100_000], Gen.Int[1, int.MaxValue]).Sample(
            (latitude, longitude, radius, seed) =>
            {
                GeoPoint station = new(latitude, longitude);
                check(ReachGrid.Of(station, radius, Math.Max(5, radius / 300)), station, new Random(seed));
            },
            iter: 60);
}
