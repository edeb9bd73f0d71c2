using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>The last points before a cell, on the cell's own bearing: D − 8s, D − 7s … D − s.</summary>
/// <remarks>
/// What stands close to a low antenna decides its loss, so here a neighbour's bearing will not do. Eight, for they fill one vector: with one
/// alone, twice the radials were needed for half the error (docs/physics/area-sweep.md).
/// </remarks>
internal readonly struct OwnPoints
{
    /// <summary>Number of them.</summary>
    internal const int Count = 8;

    private static readonly Vector512<double> Steps = Vector512.Create(8.0, 7, 6, 5, 4, 3, 2, 1);

    private readonly ulong zones;

    private OwnPoints(Vector512<double> distances, Vector512<double> ground, Vector512<double> cover, ulong zones)
    {
        Distances = distances;
        Ground = ground;
        Cover = cover;
        this.zones = zones;
    }

    /// <summary>Distances from the station, rising.</summary>
    internal Vector512<double> Distances { get; }

    /// <summary>Heights of the ground.</summary>
    internal Vector512<double> Ground { get; }

    /// <summary>Heights of the cover on it.</summary>
    internal Vector512<double> Cover { get; }

    /// <summary>Zone of one of them.</summary>
    internal Zone ZoneAt(int point) => (Zone)((zones >> (8 * point)) & 0xff);

    /// <summary>Their distances from the cell.</summary>
    internal static Vector512<double> ToEnd(double step) => Steps * step;

    /// <summary>Reads them; false where ground is missing.</summary>
    internal static bool TryRead(SweepRaster raster, bool withCover, int east, int north, double length, out OwnPoints points)
    {
        Vector512<double> distances = Vector512.Create(length) - (Steps * raster.CellMetres);
        Vector512<double> share = distances / length;
        Vector512<double> easts = share * east;
        Vector512<double> souths = share * -north;
        Vector512<double> ground = raster.HeightsAt(easts, souths);
        Vector512<double> cover = Vector512<double>.Zero;
        ulong zonesThere = 0;
        if (withCover || raster.HasZones)
        {
            (cover, zonesThere) = raster.SurfaceAt(easts, souths, withCover);
        }

        points = new(distances, ground, cover, zonesThere);
        return Vector512.EqualsAll(ground, ground);
    }

    [InlineArray(Count)]
    internal struct Eight
    {
        private double first;
    }
}

/// <summary>Largest of eight numbers, and which it is.</summary>
internal static class Lanes
{
    internal static double Largest(Vector512<double> values)
    {
        Vector256<double> four = Vector256.Max(values.GetLower(), values.GetUpper());
        Vector128<double> two = Vector128.Max(four.GetLower(), four.GetUpper());
        return Math.Max(two[0], two[1]);
    }

    internal static (double Value, int Lane) FirstLargest(Vector512<double> values)
    {
        double largest = Largest(values);
        return (largest, BitOperations.TrailingZeroCount(Vector512.Equals(values, Vector512.Create(largest)).ExtractMostSignificantBits()));
    }

    internal static (double Value, int Lane) LastLargest(Vector512<double> values)
    {
        double largest = Largest(values);
        return (largest, 63 - BitOperations.LeadingZeroCount(Vector512.Equals(values, Vector512.Create(largest)).ExtractMostSignificantBits()));
    }
}
