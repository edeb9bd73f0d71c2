using Mastwright.Geodesy;

namespace Mastwright.Ground;

/// <summary>The points of a geodesic as quadratics through exact nodes: a twentieth of the cost of a geodesic for each point.</summary>
internal sealed class ProfileTrack
{
    private const int MostPointsPerNode = 16;
    private const double LongestNodeMetres = 1_000;
    private const double LastQuadraticLatitudeDegrees = 89;

    private readonly double[] _latitudes;
    private readonly double[] _longitudes;

    private ProfileTrack(int steps, double lengthMetres, int pointsPerNode, double[] latitudes, double[] longitudes)
    {
        Steps = steps;
        LengthMetres = lengthMetres;
        PointsPerNode = pointsPerNode;
        _latitudes = latitudes;
        _longitudes = longitudes;
    }

    internal int Steps { get; }

    internal double LengthMetres { get; }

    internal int PointsPerNode { get; }

    /// <summary>Number of blocks of two node intervals.</summary>
    internal int Blocks => (_latitudes.Length - 1) / 2;

    internal ReadOnlySpan<double> NodeLatitudes => _latitudes;

    /// <summary>Longitudes of the nodes, running on past 180° instead of jumping.</summary>
    internal ReadOnlySpan<double> NodeLongitudes => _longitudes;

    internal static ProfileTrack Along(GeoPoint from, GeodesicSegment segment, int steps)
    {
        double step = segment.DistanceMetres / steps;
        int perNode = Math.Clamp((int)(LongestNodeMetres / step), 1, MostPointsPerNode);
        GeodesicLine line = new(from, segment.InitialBearingDegrees);
        ProfileTrack track = Along(line, segment.DistanceMetres, steps, perNode);
        foreach (double latitude in track._latitudes)
        {
            if (perNode > 1 && Math.Abs(latitude) > LastQuadraticLatitudeDegrees)
            {
                return Along(line, segment.DistanceMetres, steps, 1);
            }
        }

        return track;
    }

    /// <summary>First and last point of a block; the last block ends with the path.</summary>
    internal (int First, int Last) PointsOf(int block)
    {
        int first = block * 2 * PointsPerNode;
        return (first, block == Blocks - 1 ? Steps : first + (2 * PointsPerNode) - 1);
    }

    /// <summary>The place of a point, by its quadratic.</summary>
    internal GeoPoint PointNear(int point)
    {
        int block = Math.Min(point / (2 * PointsPerNode), Blocks - 1);
        int n = 2 * block;
        double t = (point - (n * PointsPerNode)) / (double)PointsPerNode;
        double latitude = new Quadratic(_latitudes[n], _latitudes[n + 1], _latitudes[n + 2]).At(t);
        double longitude = new Quadratic(_longitudes[n], _longitudes[n + 1], _longitudes[n + 2]).At(t);
        return new(Math.Clamp(latitude, -90, 90), longitude - (360 * Math.Round(longitude / 360)));
    }

    private static ProfileTrack Along(GeodesicLine line, double length, int steps, int perNode)
    {
        int blocks = (steps + (2 * perNode) - 1) / (2 * perNode);
        double[] distances = new double[(2 * blocks) + 1];
        for (int i = 0; i < distances.Length; i++)
        {
            distances[i] = length * i * perNode / steps;
        }

        double[] latitudes = new double[distances.Length];
        double[] longitudes = new double[distances.Length];
        line.At(distances, latitudes, longitudes);
        for (int i = 1; i < longitudes.Length; i++)
        {
            longitudes[i] += 360 * Math.Round((longitudes[i - 1] - longitudes[i]) / 360);
        }

        return new(steps, length, perNode, latitudes, longitudes);
    }
}

/// <summary>A quadratic through three values at 0, 1 and 2.</summary>
internal readonly struct Quadratic
{
    private readonly double _start;
    private readonly double _slope;
    private readonly double _bend;

    internal Quadratic(double at0, double at1, double at2)
    {
        _start = at0;
        _bend = (at0 - (2 * at1) + at2) / 2;
        _slope = at1 - at0 - _bend;
    }

    internal double At(double t) => _start + (t * (_slope + (t * _bend)));

    /// <summary>Bounds of the values between 0 and 2.</summary>
    internal (double Low, double High) Range()
    {
        double end = At(2);
        double slack = Math.Abs(_bend);
        return (Math.Min(_start, end) - slack, Math.Max(_start, end) + slack);
    }
}
