using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Mastwright.Ground;
using Eight = System.Runtime.Intrinsics.Vector512<double>;

namespace Mastwright.Propagation.Area;

/// <summary>The last points before a cell, D − ms … D − 2s, D − s, on a line of its own: beside the radial and parallel to it. Of eight cells at once.</summary>
/// <remarks>
/// <para>
/// What stands close to a low antenna decides its loss, so here the radial beside the cell will not do; how many points pay is measured in
/// docs/physics/area-sweep.md. Point 0 is the farthest from the cell.
/// </para>
/// <para>
/// Over so short a way the cell's own bearing and the radial's are the same within some hundredths of a cell. On a parallel, a point lies as
/// far from its cell for every cell of the radial: the four samples around it and their weights are found once a radial, and for a cell they are only read.
/// </para>
/// </remarks>
internal sealed class OwnPoints
{
    /// <summary>Number of them; of a cell close to the station fewer, for at least one point is the radial's.</summary>
    internal const int Count = 16;

    /// <summary>Fewest a cell can do with.</summary>
    internal const int Fewest = 3;

    private readonly SweepRaster raster;
    private readonly bool withCover;
    private readonly double step;
    private readonly Zone[] zones;
    private readonly SweepOffset[] offsets = new SweepOffset[Count];
    private bool isWhole;

    internal OwnPoints(SweepRaster raster, bool withCover)
    {
        this.raster = raster;
        this.withCover = withCover;
        step = raster.CellMetres;
        zones = raster.HasZones ? new Zone[Count * EightLanes.Count] : [];
        Ground = new Eight[Count];
        Top = withCover ? new Eight[Count] : Ground;
        ToEnd = new Eight[Count];
        PerMetre = new Eight[Count];
    }

    /// <summary>Heights of the ground at each point, a lane to each cell.</summary>
    internal Eight[] Ground { get; }

    /// <summary>The same with the cover on it.</summary>
    internal Eight[] Top { get; }

    /// <summary>Distance of each point from its cell, and one over it.</summary>
    internal Eight[] ToEnd { get; }

    internal Eight[] PerMetre { get; }

    /// <summary>So many of the first points are the first real one over again, in cells that have fewer.</summary>
    internal Eight Repeated { get; private set; }

    /// <summary>Steps that are left to the radial where a cell has fewer points, less a hair so that a whole number of steps rounds to itself.</summary>
    /// <remarks>
    /// The radial's last point is then its first for every near cell. A rule that left it now the first and now the second would ask a radial
    /// to walk back, which it cannot: its sums would be those of the farther point.
    /// </remarks>
    private const double StepsOfRadial = 2 + Hair;

    private const double Hair = 1e-6;

    /// <summary>Number of own points of a cell.</summary>
    internal static int CountOf(double length, double step) => (int)Math.Clamp(Math.Ceiling((length / step) - StepsOfRadial), Fewest, Count);

    /// <summary>The same of eight cells.</summary>
    internal static Eight CountsOf(Eight lengths, double step) => Vector512.MinNative(
        Vector512.MaxNative(Vector512.Ceiling((lengths / step) - Vector512.Create(StepsOfRadial)), Vector512.Create((double)Fewest)), Vector512.Create((double)Count));

    /// <summary>The last point on the radial: the largest i with i·s before the first of the cell's own points.</summary>
    internal static int LastOnRadial(double length, double step) => (int)Math.Ceiling((length / step) - CountOf(length, step) - Hair) - 1;

    /// <summary>The same of eight cells.</summary>
    internal static Eight LastOnRadial(Eight lengths, double step) => Vector512.Ceiling((lengths / step) - CountsOf(lengths, step) - Vector512.Create(Hair)) - Eight.One;

    /// <summary>Zone of a point of one of the cells.</summary>
    internal Zone ZoneAt(int point, int lane) => zones.Length > 0 ? zones[(point * EightLanes.Count) + lane] : Zone.Inland;

    /// <summary>Turns to another radial.</summary>
    /// <param name="east">Cells to the east for each step.</param>
    /// <param name="south">Cells to the south for each step.</param>
    internal void Aim(double east, double south)
    {
        for (int i = 0; i < Count; i++)
        {
            offsets[i] = new((i - Count) * east, (i - Count) * south, raster.Layout.Pitch);
        }
    }

    /// <summary>Reads the points of eight cells, given their indices and distances from the station.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void Read(ReadOnlySpan<long> cells, Eight lengths)
    {
        Eight counts = CountsOf(lengths, step);
        bool isFar = Vector512.EqualsAll(counts, Vector512.Create((double)Count));
        if (!isFar || !isWhole)
        {
            isWhole = isFar;
            Place(counts);
        }

        if (!isFar)
        {
            ReadNear(cells);
            return;
        }

        for (int i = 0; i < Count; i += 2)
        {
            (Ground[i], Ground[i + 1]) = raster.HeightsBeside(cells, in offsets[i], cells, in offsets[i + 1]);
            if (withCover)
            {
                Top[i] = Ground[i] + raster.CoversBeside(cells, in offsets[i]);
                Top[i + 1] = Ground[i + 1] + raster.CoversBeside(cells, in offsets[i + 1]);
            }
        }
    }

    private void Place(Eight counts)
    {
        Repeated = Vector512.Create((double)Count) - counts;
        for (int i = 0; i < Count; i++)
        {
            ToEnd[i] = Vector512.MinNative(Vector512.Create((double)(Count - i)), counts) * step;
            PerMetre[i] = Eight.One / ToEnd[i];
        }
    }

    /// <summary>Some of the cells have fewer points: the first that is real stands in the place of those before it.</summary>
    private void ReadNear(ReadOnlySpan<long> cells)
    {
        Span<long> inside = stackalloc long[EightLanes.Count];
        for (int i = Count - 1; i >= 0; i--)
        {
            // What lies beyond the station may lie beyond the ground as well.
            for (int lane = 0; lane < inside.Length; lane++)
            {
                inside[lane] = raster.Inside(cells[lane], offsets[i].NorthWest);
            }

            Eight isReal = Vector512.GreaterThanOrEqual(Vector512.Create((double)i), Repeated);
            (Eight height, _) = raster.HeightsBeside(inside, in offsets[i], inside, in offsets[i]);
            Ground[i] = Vector512.ConditionalSelect(isReal, height, Ground[Math.Min(i + 1, Count - 1)]);
            if (withCover)
            {
                for (int lane = 0; lane < inside.Length; lane++)
                {
                    inside[lane] = raster.Inside(cells[lane], offsets[i].Nearest);
                }

                Top[i] = Vector512.ConditionalSelect(isReal, height + raster.CoversBeside(inside, in offsets[i]), Top[Math.Min(i + 1, Count - 1)]);
            }
        }
    }

    /// <summary>Reads the zones of the points of eight cells.</summary>
    internal void ReadZones(ReadOnlySpan<long> cells)
    {
        for (int i = 0; i < zones.Length; i++)
        {
            zones[i] = raster.ZoneOf((int)Math.Clamp(cells[i % EightLanes.Count] + offsets[i / EightLanes.Count].Nearest, 0, raster.HeightsMetres.Length - 1));
        }
    }
}
