using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Propagation.Area;

namespace Mastwright.Network.Relays;

/// <summary>Where relays may stand: outside the excluded areas, and near enough to a track where tracks are given.</summary>
public sealed record RelayLimits
{
    /// <summary>No limits.</summary>
    public static RelayLimits None { get; } = new();

    /// <summary>Excluded areas: each a list of rings, the first the outline, the others holes in it.</summary>
    public ImmutableArray<ImmutableArray<ImmutableArray<GeoPoint>>> Excluded { get; init; } = [];

    /// <summary>Tracks as lines; empty where none are given.</summary>
    public ImmutableArray<ImmutableArray<GeoPoint>> Tracks { get; init; } = [];

    /// <summary>Greatest distance from a track in metres.</summary>
    public double TrackMetres { get; init; } = double.PositiveInfinity;

    /// <summary>The limits on a plane.</summary>
    internal RelayLimitsOnPlane On(SweepFrame frame) => new(
        [.. Excluded.Select(area => area.Select(ring => OnPlane(ring, frame)).ToArray())], [.. Tracks.Select(line => OnPlane(line, frame))], TrackMetres / frame.CellMetres);

    /// <summary>Whether a place keeps the limits.</summary>
    public bool Allow(GeoPoint place)
    {
        SweepFrame frame = SweepFrame.Around(place, 2, 1);
        return On(frame).Allow(0, 0);
    }

    private static (double East, double North)[] OnPlane(ImmutableArray<GeoPoint> points, SweepFrame frame) => [.. points.Select(frame.Locate)];
}

/// <summary>Limits in cells east and north of a station.</summary>
internal sealed class RelayLimitsOnPlane((double East, double North)[][][] excluded, (double East, double North)[][] tracks, double trackCells)
{
    internal bool Allow(double east, double north) => !excluded.Any(area => IsInside(area, east, north)) && (tracks.Length == 0 || tracks.Any(line => IsNear(line, east, north)));

    /// <summary>By the number of edges that a ray to the east crosses: a hole takes out what its outline holds.</summary>
    private static bool IsInside((double East, double North)[][] rings, double east, double north)
    {
        bool inside = false;
        foreach ((double East, double North)[] ring in rings)
        {
            for (int i = 0, before = ring.Length - 1; i < ring.Length; before = i++)
            {
                (double East, double North) a = ring[i];
                (double East, double North) b = ring[before];
                if (a.North > north != b.North > north && east < a.East + ((north - a.North) / (b.North - a.North) * (b.East - a.East)))
                {
                    inside = !inside;
                }
            }
        }

        return inside;
    }

    private bool IsNear((double East, double North)[] line, double east, double north)
    {
        for (int i = 0; i < line.Length; i++)
        {
            (double East, double North) a = line[Math.Max(0, i - 1)];
            (double East, double North) b = line[i];
            double dx = b.East - a.East;
            double dy = b.North - a.North;
            double length = (dx * dx) + (dy * dy);
            double along = length == 0 ? 0 : Math.Clamp((((east - a.East) * dx) + ((north - a.North) * dy)) / length, 0, 1);
            double x = a.East + (along * dx) - east;
            double y = a.North + (along * dy) - north;
            if ((x * x) + (y * y) <= trackCells * trackCells)
            {
                return true;
            }
        }

        return false;
    }
}
