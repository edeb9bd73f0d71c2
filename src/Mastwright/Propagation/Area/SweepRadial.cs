using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>One straight line out from the station, walked once; what a cell needs of it is asked when its newest point is the cell's last.</summary>
/// <remarks>
/// With z = g − x²/(2a) the slope from the station to a point with the bulge of the Earth towards a receiver differs from (z − hts)/x by
/// the same amount for all points. So one walk serves every receiver: the largest slope so far is the station's horizon, the upper hull
/// of z holds every horizon of any receiver. Sums give the smooth surface, a restarted hull the roughness.
/// </remarks>
internal sealed class SweepRadial
{
    private readonly SweepRaster raster;
    private readonly SweepTerms t;
    private readonly double[] x;
    private readonly double[] inverse;
    private readonly double[] rise;
    private readonly double[] ground;
    private readonly double[] top;
    private readonly Zone[] zones;
    private SweepClimate climate;

    internal SweepRadial(SweepRaster raster, in SweepTerms terms)
    {
        this.raster = raster;
        t = terms;

        // Points are read and flattened eight at a time: room for the rest of the last eight.
        int capacity = (int)Math.Ceiling(raster.Reach * 1.5) + 4 + (2 * EightLanes.Count);
        x = new double[capacity];
        inverse = new double[capacity];
        rise = new double[capacity];
        for (int i = 0; i < capacity; i++)
        {
            x[i] = i * t.Step;
            inverse[i] = 1 / x[i];
        }

        ground = new double[capacity];
        BetweenHorizons = new(capacity);
        Bare = new(ground, capacity, t.MedianFall);
        zones = raster.HasZones ? new Zone[capacity] : [];
        top = t.HasCover ? new double[capacity] : ground;
        Median = t.HasCover ? new(top, capacity, t.MedianFall) : Bare;
        Ducting = t.NeedsDucting ? new(top, capacity, t.DuctingFall) : Bare;
    }

    /// <summary>Number of points with known ground, the station's among them.</summary>
    internal int Known { get; private set; }

    internal ReadOnlySpan<double> Distances => x;

    internal ReadOnlySpan<double> Ground => ground;

    /// <summary>The bare ground at the median radius of the Earth; with cover at that radius, and at that of ducting time. May be one and the same.</summary>
    internal FlattenedGround Bare { get; }

    internal FlattenedGround Median { get; }

    internal FlattenedGround Ducting { get; }

    /// <summary>The bare ground, not flattened, since the station's horizon.</summary>
    internal RestartedHull BetweenHorizons { get; }

    /// <summary>The newest point.</summary>
    internal int Newest { get; private set; }

    /// <summary>The station's horizon so far: its number.</summary>
    internal int HorizonPoint { get; private set; }

    /// <summary>Largest slope from the station to the ground so far, the Earth taken as flat.</summary>
    internal double FlatSlope { get; private set; }

    /// <summary>Sum of the heights from the first point on, and of heights times distances: what the smooth surface needs, P.1812 (83) and (84).</summary>
    internal double Sum { get; private set; }

    internal double Moment { get; private set; }

    internal SweepClimate Climate => climate;

    internal double CoverMetres(int point) => t.HasCover ? top[point] - ground[point] : 0;

    internal Zone ZoneAt(int point) => raster.HasZones ? zones[point] : Zone.Inland;

    /// <summary>Reads the ground along a bearing and starts again from the station.</summary>
    /// <param name="east">Cells to the east for each step, the sine of the bearing.</param>
    /// <param name="south">Cells to the south for each step.</param>
    /// <param name="last">Last point to read.</param>
    internal void Start(double east, double south, int last)
    {
        Read(east, south, last);
        Newest = 0;
        Vector512<double> antenna = Vector512.Create(t.StationAntenna);
        for (int i = 0; i < Known; i += EightLanes.Count)
        {
            ((Vector512.LoadUnsafe(ref ground[i]) - antenna) * Vector512.LoadUnsafe(ref inverse[i])).StoreUnsafe(ref rise[i]);
        }

        Bare.Start(x, inverse, Known, t.StationAntenna);
        if (Median != Bare)
        {
            Median.Start(x, inverse, Known, t.StationAntenna);
        }

        if (Ducting != Bare)
        {
            Ducting.Start(x, inverse, Known, t.StationAntenna);
        }

        climate = SweepClimate.Empty;
        FlatSlope = double.NegativeInfinity;
        HorizonPoint = 0;
        Sum = 0;
        Moment = 0;
    }

    /// <summary>Walks on to a point; never back.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal void WalkTo(int point)
    {
        Debug.Assert(point >= Newest, "A radial does not walk back.");
        while (Newest < point)
        {
            Newest++;
            Push(Newest);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Read(double east, double south, int last)
    {
        ground[0] = t.StationGround;
        top[0] = ground[0];
        if (raster.HasZones)
        {
            zones[0] = t.StationZone;
        }

        Known = 1 + raster.Read(
            east,
            south,
            last,
            ground.AsSpan(1),
            t.HasCover ? top.AsSpan(1) : [],
            raster.HasZones ? zones.AsSpan(1) : []);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Push(int i)
    {
        double at = x[i];
        double h = ground[i];
        Sum += h;
        Moment += h * at;
        FlatSlope = double.MaxNative(FlatSlope, rise[i]);
        if (Bare.Push(i, at))
        {
            HorizonPoint = i;
            BetweenHorizons.Restart(i, at, h);
        }
        else
        {
            BetweenHorizons.Push(i, at, h);
        }

        if (t.HasCover)
        {
            Median.Push(i, at);
        }

        if (t.NeedsDucting)
        {
            Ducting.Push(i, at);
        }

        if (raster.HasZones)
        {
            climate.Add(i - 1, zones[i - 1], i == 1 ? t.Step / 2 : t.Step);
        }
    }
}
