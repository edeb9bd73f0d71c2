using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Mastwright.Propagation.Area;

/// <summary>The heights along a radial with the bulge of the Earth taken off, and what of them any receiver beyond may ask.</summary>
/// <param name="heights">The heights as they are, filled by the radial.</param>
/// <param name="capacity">Most points.</param>
/// <param name="fall">Half the curvature of the Earth: a point x away falls by this times x².</param>
internal sealed class FlattenedGround(double[] heights, int capacity, double fall)
{
    private readonly double[] z = new double[capacity];
    private readonly double[] slopes = new double[capacity];
    private readonly UpperHull hull = new(capacity);
    private readonly NearestToRay ray = new(capacity);

    /// <summary>Half the curvature of the Earth.</summary>
    internal double Fall => fall;

    /// <summary>Largest slope from the station so far.</summary>
    internal double Slope { get; private set; }

    /// <summary>Starts again from the station, with so many points.</summary>
    internal void Start(double[] x, double[] inverse, int known, double station)
    {
        hull.Clear();
        ray.Clear();
        Slope = double.NegativeInfinity;
        for (int i = 0; i < known; i += EightLanes.Count)
        {
            Vector512<double> at = Vector512.LoadUnsafe(ref x[i]);
            Vector512<double> height = Vector512.LoadUnsafe(ref heights[i]) - (at * at * fall);
            height.StoreUnsafe(ref z[i]);
            ((height - Vector512.Create(station)) * Vector512.LoadUnsafe(ref inverse[i])).StoreUnsafe(ref slopes[i]);
        }
    }

    /// <summary>Adds the next point; whether it is a new horizon of the station.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal bool Push(int point, double x)
    {
        hull.Push(point, x, z[point]);
        double slope = slopes[point];
        if (slope > Slope)
        {
            Slope = slope;
            return true;
        }

        return false;
    }

    /// <summary>The point seen highest from an antenna beyond the newest point; of equals the last.</summary>
    internal int Tangent(double x, double antenna) => hull.Tangent(x, antenna - (fall * x * x));

    /// <summary>The point that leaves the least of its Fresnel zone free, of points 1 to <paramref name="last"/>.</summary>
    internal int Nearest(double step, int last, double length, double station, double line) =>
        ray.Find(z, step, last, length, station, line - (fall * length));

    /// <summary>Height of a point as it is.</summary>
    internal double Height(int point) => heights[point];
}
