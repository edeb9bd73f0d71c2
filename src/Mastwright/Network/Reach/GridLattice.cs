using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Network.Reach;

/// <summary>Two numbers that change smoothly over a UTM grid, exact at nodes at most 500 m apart and bilinear between them.</summary>
/// <remarks>
/// A node costs a projection and a geodesic, a point of the grid some multiplications. Off the exact value by less than 2 mm on the plane
/// around a station within the grid's own zone, and by less than 25 mm as a place below 80° of latitude (measured in GridLatticeTests).
/// </remarks>
internal sealed class GridLattice
{
    private const double LongestNodeMetres = 500;
    private const int MostPointsPerNode = 64;

    private readonly int pointsPerNode;
    private readonly int across;
    private readonly double[] first;
    private readonly double[] second;

    private GridLattice(GridFrame frame, Func<GeoPoint, (double First, double Second)> exact)
    {
        pointsPerNode = Math.Clamp((int)(LongestNodeMetres / Math.Max(frame.StepX, frame.StepY)), 1, MostPointsPerNode);
        across = ((frame.Columns - 1 + pointsPerNode - 1) / pointsPerNode) + 1;
        int down = ((frame.Rows - 1 + pointsPerNode - 1) / pointsPerNode) + 1;
        first = new double[across * down];
        second = new double[first.Length];
        Parallel.For(0, down, row =>
        {
            for (int column = 0; column < across; column++)
            {
                int node = (row * across) + column;
                (first[node], second[node]) = exact(ReachGrid.Centre(frame, column * pointsPerNode, row * pointsPerNode));
            }
        });
    }

    /// <summary>Latitude and longitude of each point, in degrees; the longitude runs on past 180° where the grid does.</summary>
    internal static GridLattice OfPlaces(GridFrame frame)
    {
        double middle = ReachGrid.Centre(frame, frame.Columns / 2, frame.Rows / 2).LongitudeDegrees;
        return new(frame, place => (place.LatitudeDegrees, place.LongitudeDegrees + (360 * Math.Round((middle - place.LongitudeDegrees) / 360))));
    }

    /// <summary>Metres to the east and to the north of a station: each point at its true distance and true bearing.</summary>
    internal static GridLattice OfPlane(GridFrame frame, GeoPoint station) => new(frame, place =>
    {
        GeodesicSegment segment = Geodesic.Inverse(station, place);
        (double sin, double cos) = Math.SinCos(double.DegreesToRadians(segment.InitialBearingDegrees));
        return (segment.DistanceMetres * sin, segment.DistanceMetres * cos);
    });

    /// <summary>Both numbers along one row.</summary>
    internal RowReader Row(int row)
    {
        int node = row / pointsPerNode;
        double down = (double)(row % pointsPerNode) / pointsPerNode;

        // The last row of nodes has none below it; a point on it needs none.
        int below = (node + 1) * across < first.Length ? across : 0;
        return new(this, node * across, below, down);
    }

    /// <summary>The points of one row, from the west.</summary>
    internal readonly struct RowReader(GridLattice lattice, int start, int below, double down)
    {
        /// <summary>Both numbers at a column.</summary>
        internal (double First, double Second) At(int column)
        {
            int node = column / lattice.pointsPerNode;
            double right = (double)(column - (node * lattice.pointsPerNode)) / lattice.pointsPerNode;
            int next = node + 1 < lattice.across ? 1 : 0;
            return (Between(lattice.first, start + node, next, right), Between(lattice.second, start + node, next, right));
        }

        /// <summary>Both numbers at a run of columns: the same as one by one, with what two nodes have in common worked out once.</summary>
        /// <param name="column">The first column.</param>
        /// <param name="firsts">Receives the first number of each column.</param>
        /// <param name="seconds">Receives the second; as long as <paramref name="firsts"/>.</param>
        internal void Read(int column, Span<double> firsts, Span<double> seconds)
        {
            for (int done = 0; done < firsts.Length;)
            {
                int node = (column + done) / lattice.pointsPerNode;
                int from = column + done - (node * lattice.pointsPerNode);
                int count = Math.Min(lattice.pointsPerNode - from, firsts.Length - done);
                int next = node + 1 < lattice.across ? 1 : 0;
                Between(lattice.first, start + node, next, from, firsts.Slice(done, count));
                Between(lattice.second, start + node, next, from, seconds.Slice(done, count));
                done += count;
            }
        }

        private void Between(double[] values, int node, int next, int from, Span<double> into)
        {
            (double north, double south) = (values[node], values[node + below]);
            double northern = values[node + next] - north;
            double southern = values[node + below + next] - south;
            for (int i = 0; i < into.Length; i++)
            {
                double right = (double)(from + i) / lattice.pointsPerNode;
                double top = north + (right * northern);
                into[i] = top + (down * (south + (right * southern) - top));
            }
        }

        private double Between(double[] values, int node, int next, double right)
        {
            double top = values[node] + (right * (values[node + next] - values[node]));
            double bottom = values[node + below] + (right * (values[node + below + next] - values[node + below]));
            return top + (down * (bottom - top));
        }
    }
}
