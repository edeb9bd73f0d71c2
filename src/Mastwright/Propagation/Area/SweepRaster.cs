using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>Ground around a station on a square grid of metres: row 0 is the northernmost, the station stands in the middle of the middle cell.</summary>
/// <remarks>
/// The grid counts true distance and true bearing from the station (<see cref="SweepFrame"/>), so a straight line from the middle is a
/// geodesic. The arrays are taken over and must not change afterwards. Safe from many threads.
/// </remarks>
public sealed class SweepRaster
{
    /// <summary>Places read at once.</summary>
    private const int Lanes = 8;

    private readonly float[] heights;
    private readonly byte[] cover;
    private readonly byte[] zones;
    private readonly double[] coverHeights;
    private readonly int pitch;
    private readonly int origin;
    private readonly int middle;

    // First and last place whose neighbours to the east, south and south-east have a place, too.
    private readonly int lowest;
    private readonly int highest;

    /// <summary>Takes over the samples of a grid.</summary>
    /// <param name="reach">Cells on each side of the station's own, 2 or more.</param>
    /// <param name="cellMetres">Side of a cell in metres, above zero.</param>
    /// <param name="stationLatitudeDegrees">Latitude of the station, −89 to 89.</param>
    /// <param name="heightsMetres">Ground heights row by row, (2·reach + 1)² of them; NaN where nothing is known.</param>
    /// <param name="cover">Cover codes, as many; empty where no cover is known.</param>
    /// <param name="coverHeightsMetres">Height of the cover of each of the 256 codes, zero or more; empty when there are no codes.</param>
    /// <param name="zones">Values of <see cref="Zone"/>, as many; empty where all is inland.</param>
    /// <exception cref="ArgumentException">A value is outside its range, or an array has another length.</exception>
    public SweepRaster(
        int reach,
        double cellMetres,
        double stationLatitudeDegrees,
        float[] heightsMetres,
        byte[]? cover = null,
        float[]? coverHeightsMetres = null,
        byte[]? zones = null)
        : this(LayoutOf(reach), cellMetres, stationLatitudeDegrees, heightsMetres, cover, coverHeightsMetres, zones)
    {
        if (heightsMetres.AsSpan().ContainsAny(float.PositiveInfinity, float.NegativeInfinity))
        {
            throw new ArgumentException("Heights are finite or NaN.", nameof(heightsMetres));
        }
    }

    /// <summary>Takes over the samples of the cells that a layout holds; heights, finite or NaN, are taken on trust.</summary>
    internal SweepRaster(
        SweepLayout layout, double cellMetres, double stationLatitudeDegrees, float[] heightsMetres, byte[]? cover, float[]? coverHeightsMetres, byte[]? zones)
    {
        ArgumentNullException.ThrowIfNull(heightsMetres);
        Layout = layout;
        Reach = layout.Reach;
        Side = layout.Side;
        pitch = layout.Pitch;
        origin = layout.Origin;
        middle = layout.Middle;
        (lowest, highest) = layout.WithNeighbours;
        CellMetres = Domain.Positive(cellMetres, nameof(cellMetres));
        StationLatitudeDegrees = Domain.Within(stationLatitudeDegrees, -SweepFrame.HighestLatitude, SweepFrame.HighestLatitude, nameof(stationLatitudeDegrees));
        heights = OfLength(heightsMetres, layout.Length, nameof(heightsMetres));
        this.cover = cover is null or [] ? [] : OfLength(cover, layout.Length, nameof(cover));
        coverHeights = this.cover.Length == 0 ? [] : Array.ConvertAll(OfLength(coverHeightsMetres ?? [], 256, nameof(coverHeightsMetres)), height => (double)height);
        this.zones = zones is null or [] ? [] : OfLength(zones, layout.Length, nameof(zones));
        if (Array.Exists(coverHeights, height => !(height >= 0 && double.IsFinite(height))))
        {
            throw new ArgumentException("Cover heights are finite, zero or more.", nameof(coverHeightsMetres));
        }

        if (this.zones.AsSpan().ContainsAnyExceptInRange((byte)Zone.Inland, (byte)Zone.Sea))
        {
            throw new ArgumentException("Zones are inland, coast or sea.", nameof(zones));
        }
    }

    /// <summary>Cells on each side of the station's own.</summary>
    public int Reach { get; }

    /// <summary>Columns, and rows, of the grid: 2·<see cref="Reach"/> + 1.</summary>
    public int Side { get; }

    /// <summary>Side of a cell, in metres: also the step of the radials.</summary>
    public double CellMetres { get; }

    /// <summary>Latitude of the station, in degrees.</summary>
    public double StationLatitudeDegrees { get; }

    /// <summary>Which cells are held, and where.</summary>
    internal SweepLayout Layout { get; }

    /// <summary>Whether cover is known.</summary>
    public bool HasCover => cover.Length > 0;

    /// <summary>Whether any zone is known: else all is inland.</summary>
    public bool HasZones => zones.Length > 0;

    /// <summary>Ground heights row by row, in metres; NaN where nothing is known.</summary>
    public ReadOnlySpan<float> HeightsMetres => heights;

    /// <summary>Height of the ground at a cell, in metres; NaN where nothing is known.</summary>
    internal double HeightOf(int cell) => heights[cell];

    /// <summary>Zone of a cell.</summary>
    internal Zone ZoneOf(int cell) => HasZones ? (Zone)zones[cell] : Zone.Inland;

    /// <summary>Height of the ground at a place counted in cells from the station, bilinear; NaN off the grid or beside a void.</summary>
    /// <param name="east">Cells to the east.</param>
    /// <param name="south">Cells to the south.</param>
    internal double HeightAt(double east, double south)
    {
        double column = east + Reach;
        double row = south + Reach;
        int c = (int)column;
        int r = (int)row;
        if (!(column >= 0 && row >= 0) || c >= Side - 1 || r >= Side - 1)
        {
            return OnEdge(column, row);
        }

        double fc = column - c;
        double fr = row - r;
        int i = (r * pitch) + c + origin;
        double top = heights[i] + (fc * ((double)heights[i + 1] - heights[i]));
        double bottom = heights[i + pitch] + (fc * ((double)heights[i + pitch + 1] - heights[i + pitch]));
        return top + (fr * (bottom - top));
    }

    /// <summary>The same at eight places whose four neighbours are held; numbers of no meaning at others.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Vector512<double> HeightsAt(Vector512<double> easts, Vector512<double> souths)
    {
        Vector512<double> west = Vector512.Floor(easts);
        Vector512<double> above = Vector512.Floor(souths);
        Vector512<double> across = easts - west;
        Vector512<double> down = souths - above;
        Vector512<long> places = Vector512.Min(Vector512.Max(PlacesOf(west, above), Vector512.Create((long)lowest)), Vector512.Create((long)highest));

        ref long place = ref FourCorners.OneByOne(places, stackalloc long[Lanes]);
        return FourCorners.Read(ref MemoryMarshal.GetArrayDataReference(heights), pitch, ref place).Between(across, down);
    }

    /// <summary>Heights of the cover of the cells nearest to eight places on the grid.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Vector512<double> CoversAt(Vector512<double> easts, Vector512<double> souths)
    {
        ref long place = ref FourCorners.OneByOne(NearestCells(easts, souths), stackalloc long[Lanes]);
        return CoversOf(ref MemoryMarshal.GetArrayDataReference(cover), ref place, 0);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector512<double> CoversOf(ref byte code, ref long places, nint offset)
    {
        ref double height = ref MemoryMarshal.GetArrayDataReference(coverHeights);
        return Vector512.Create(
            Unsafe.Add(ref height, Unsafe.Add(ref code, (nint)Unsafe.Add(ref places, 0) + offset)),
            Unsafe.Add(ref height, Unsafe.Add(ref code, (nint)Unsafe.Add(ref places, 1) + offset)),
            Unsafe.Add(ref height, Unsafe.Add(ref code, (nint)Unsafe.Add(ref places, 2) + offset)),
            Unsafe.Add(ref height, Unsafe.Add(ref code, (nint)Unsafe.Add(ref places, 3) + offset)),
            Unsafe.Add(ref height, Unsafe.Add(ref code, (nint)Unsafe.Add(ref places, 4) + offset)),
            Unsafe.Add(ref height, Unsafe.Add(ref code, (nint)Unsafe.Add(ref places, 5) + offset)),
            Unsafe.Add(ref height, Unsafe.Add(ref code, (nint)Unsafe.Add(ref places, 6) + offset)),
            Unsafe.Add(ref height, Unsafe.Add(ref code, (nint)Unsafe.Add(ref places, 7) + offset)));
    }

    /// <summary>Heights at two places, one beside each of eight cells and the other beside each of eight others.</summary>
    /// <remarks>Weighted in single precision: a tenth of a millimetre. Two places, for they fill the vector.</remarks>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal (Vector512<double> One, Vector512<double> Other) HeightsBeside(
        ReadOnlySpan<long> cells, in SweepOffset one, ReadOnlySpan<long> others, in SweepOffset other) =>
        Vector512.Widen(Vector512.Narrow(Weighted(cells, in one), Weighted(others, in other)).AsSingle());

    /// <summary>The height in the lower half of each number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector512<long> Weighted(ReadOnlySpan<long> cells, in SweepOffset offset)
    {
        ref long places = ref Within(cells, offset.NorthWest, lowest, highest);
        ref float first = ref MemoryMarshal.GetArrayDataReference(heights);
        Vector512<float> north = FourCorners.Pairs(ref first, ref places, offset.NorthWest).AsSingle() * offset.Northern;
        Vector512<float> both = north + (FourCorners.Pairs(ref first, ref places, (nint)offset.NorthWest + pitch).AsSingle() * offset.Southern);
        return (both + Vector512.ShiftRightLogical(both.AsInt64(), 32).AsSingle()).AsInt64();
    }

    /// <summary>Heights of the cover at a place beside each of eight cells.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal Vector512<double> CoversBeside(ReadOnlySpan<long> cells, in SweepOffset offset) =>
        CoversOf(ref MemoryMarshal.GetArrayDataReference(cover), ref Within(cells, offset.Nearest, 0, heights.Length - 1), offset.Nearest);

    /// <summary>The cell itself, or where a place so far from it would lie beyond all that is held, a cell from which it does not.</summary>
    internal long Inside(long cell, int offset) => Math.Clamp(cell + offset, lowest, highest) - offset;

    /// <summary>The cells, once it is sure that what is read beside them is in memory.</summary>
    /// <remarks>
    /// The indices stay as they are, and the offset is added to each as it is read: written as a vector and read one by one they would cost more
    /// than the reading. It is not added to the reference: one that points outside its array is lost when the array is moved in memory.
    /// </remarks>
    private static ref long Within(ReadOnlySpan<long> cells, int offset, int first, int last)
    {
        Vector512<long> indices = Vector512.Create(cells) + Vector512.Create((long)offset - first);
        if (Vector512.GreaterThanAny(indices.AsUInt64(), Vector512.Create((ulong)(last - first))))
        {
            throw new InvalidOperationException("A place beside a cell lies on the grid.");
        }

        return ref MemoryMarshal.GetReference(cells);
    }

    /// <summary>Zones of the cells nearest to eight places on the grid.</summary>
    internal void ZonesAt(Vector512<double> easts, Vector512<double> souths, Span<Zone> there)
    {
        Vector512<long> places = NearestCells(easts, souths);
        for (int i = 0; i < there.Length; i++)
        {
            there[i] = ZoneOf((int)places[i]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector512<long> NearestCells(Vector512<double> easts, Vector512<double> souths)
    {
        Vector512<double> half = Vector512.Create(0.5);
        Vector512<long> places = PlacesOf(Vector512.Floor(easts + half), Vector512.Floor(souths + half));
        return Vector512.Min(Vector512.Max(places, Vector512<long>.Zero), Vector512.Create((long)heights.Length - 1));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector512<long> PlacesOf(Vector512<double> east, Vector512<double> south) =>
        Vector512.ConvertToInt64Native((south * pitch) + east + Vector512.Create((double)middle));

    /// <summary>Index of the cell nearest to a place on the grid.</summary>
    internal int CellAt(double east, double south) =>
        ((int)Math.Clamp(south + Reach + 0.5, 0, Side - 1) * pitch) + (int)Math.Clamp(east + Reach + 0.5, 0, Side - 1) + origin;

    /// <summary>Reads the ground along a line from the station, a cell's side apart, until ground is missing; eight points at once.</summary>
    /// <param name="east">Cells to the east for each step.</param>
    /// <param name="south">Cells to the south for each step.</param>
    /// <param name="count">Steps to take.</param>
    /// <param name="ground">Receives heights, the first one step from the station; room for seven more.</param>
    /// <param name="top">Receives heights with the cover on them; empty where that is not asked.</param>
    /// <param name="along">Receives zones; empty where they are not asked.</param>
    /// <returns>Number of points with ground.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal int Read(double east, double south, int count, Span<double> ground, Span<double> top, Span<Zone> along)
    {
        // All points between the first rows and columns and the last: eight at once, without asking.
        bool isInside = count * Math.Max(Math.Abs(east), Math.Abs(south)) <= Reach - 0.5;
        for (int i = 0; i < count; i += Lanes)
        {
            Vector512<double> steps = Vector512<double>.Indices + Vector512.Create(i + 1.0);
            Vector512<double> x = steps * east;
            Vector512<double> y = steps * south;
            Vector512<double> height = isInside ? HeightsAt(x, y) : OneByOne(x, y);
            height.StoreUnsafe(ref ground[i]);
            if (!top.IsEmpty)
            {
                (height + CoversAt(x, y)).StoreUnsafe(ref top[i]);
            }

            if (!along.IsEmpty)
            {
                ZonesAt(x, y, along.Slice(i, Lanes));
            }

            if (!Vector512.EqualsAll(height, height))
            {
                int known = i + BitOperations.TrailingZeroCount(~Vector512.Equals(height, height).ExtractMostSignificantBits());
                return Math.Min(known, count);
            }
        }

        return count;
    }

    private Vector512<double> OneByOne(Vector512<double> easts, Vector512<double> souths)
    {
        Span<double> there = stackalloc double[Lanes];
        for (int i = 0; i < Lanes; i++)
        {
            there[i] = HeightAt(easts[i], souths[i]);
        }

        return Vector512.Create<double>(there);
    }

    /// <summary>Height of the cover of a cell, in metres above its ground.</summary>
    internal double CoverOf(int cell) => HasCover ? coverHeights[cover[cell]] : 0;

    /// <summary>On the last row or column the neighbour of weight zero is not there.</summary>
    private double OnEdge(double column, double row)
    {
        if (!(column >= 0 && row >= 0 && column <= Side - 1 && row <= Side - 1))
        {
            return double.NaN;
        }

        int c = Math.Min((int)column, Side - 2);
        int r = Math.Min((int)row, Side - 2);
        double fc = column - c;
        double fr = row - r;
        int i = (r * pitch) + c + origin;
        double top = fc == 1 ? heights[i + 1] : heights[i] + (fc * ((double)heights[i + 1] - heights[i]));
        if (fr == 0)
        {
            return top;
        }

        double bottom = fc == 1 ? heights[i + pitch + 1] : heights[i + pitch] + (fc * ((double)heights[i + pitch + 1] - heights[i + pitch]));
        return fr == 1 ? bottom : top + (fr * (bottom - top));
    }

    private static SweepLayout LayoutOf(int reach)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(reach, 2);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(reach, SweepFrame.MostReach);
        return SweepLayout.Whole(reach);
    }

    private static T[] OfLength<T>(T[] values, int length, string name) =>
        values.Length == length ? values : throw new ArgumentException($"{length} values are needed, not {values.Length}.", name);
}
