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
    private readonly float[] heights;
    private readonly byte[] cover;
    private readonly byte[] zones;
    private readonly float[] coverHeights;
    private readonly int pitch;
    private readonly int origin;

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
    }

    /// <summary>Takes over the samples of the cells that a layout holds.</summary>
    internal SweepRaster(
        SweepLayout layout, double cellMetres, double stationLatitudeDegrees, float[] heightsMetres, byte[]? cover, float[]? coverHeightsMetres, byte[]? zones)
    {
        ArgumentNullException.ThrowIfNull(heightsMetres);
        Layout = layout;
        Reach = layout.Reach;
        Side = layout.Side;
        pitch = layout.Pitch;
        origin = layout.Origin;
        CellMetres = Domain.Positive(cellMetres, nameof(cellMetres));
        StationLatitudeDegrees = Domain.Within(stationLatitudeDegrees, -SweepFrame.HighestLatitude, SweepFrame.HighestLatitude, nameof(stationLatitudeDegrees));
        heights = OfLength(heightsMetres, layout.Length, nameof(heightsMetres));
        this.cover = cover is null or [] ? [] : OfLength(cover, layout.Length, nameof(cover));
        coverHeights = this.cover.Length == 0 ? [] : OfLength(coverHeightsMetres ?? [], 256, nameof(coverHeightsMetres));
        this.zones = zones is null or [] ? [] : OfLength(zones, layout.Length, nameof(zones));
        if (Array.Exists(coverHeights, height => !(height >= 0 && float.IsFinite(height))))
        {
            throw new ArgumentException("Cover heights are finite, zero or more.", nameof(coverHeightsMetres));
        }

        if (Array.Exists(heights, float.IsInfinity) || this.zones.AsSpan().ContainsAnyExceptInRange((byte)Zone.Inland, (byte)Zone.Sea))
        {
            throw new ArgumentException("Heights are finite or NaN, and zones are inland, coast or sea.", nameof(heightsMetres));
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

    /// <summary>The same at eight places.</summary>
    internal Vector512<double> HeightsAt(Vector512<double> easts, Vector512<double> souths)
    {
        Vector512<double> columns = easts + Vector512.Create((double)Reach);
        Vector512<double> rows = souths + Vector512.Create((double)Reach);
        double last = Side - 1;
        if (!Vector512.LessThanAll(Vector512.Max(columns, rows), Vector512.Create(last)) || !Vector512.GreaterThanOrEqualAll(Vector512.Min(columns, rows), Vector512<double>.Zero))
        {
            return OnEdge(easts, souths);
        }

        // Where the samples lie is found for all eight at once; only reading them is one by one.
        Vector512<double> west = Vector512.Floor(columns);
        Vector512<double> above = Vector512.Floor(rows);
        Vector512<double> across = columns - west;
        Vector512<double> down = rows - above;
        Vector512<double> places = (above * pitch) + west;

        // The vector is put together in registers: written to memory one by one and read as one, the processor would wait.
        return Vector512.Create(
            At(places[0], across[0], down[0]),
            At(places[1], across[1], down[1]),
            At(places[2], across[2], down[2]),
            At(places[3], across[3], down[3]),
            At(places[4], across[4], down[4]),
            At(places[5], across[5], down[5]),
            At(places[6], across[6], down[6]),
            At(places[7], across[7], down[7]));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private double At(double place, double across, double down)
    {
        ref float sample = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(heights), origin + (int)place);
        return Between(ref sample, ref Unsafe.Add(ref sample, pitch), across, down);
    }

    /// <summary>Cover, if asked, and zones of the cells nearest to eight places; a zone takes one byte.</summary>
    internal (Vector512<double> Cover, ulong Zones) SurfaceAt(Vector512<double> easts, Vector512<double> souths, bool withCover)
    {
        Vector512<double> half = Vector512.Create(Reach + 0.5);
        Vector512<double> most = Vector512.Create(Side - 1.0);
        Vector512<double> column = Vector512.Min(Vector512.Max(Vector512.Floor(easts + half), Vector512<double>.Zero), most);
        Vector512<double> row = Vector512.Min(Vector512.Max(Vector512.Floor(souths + half), Vector512<double>.Zero), most);
        Vector512<double> places = (row * pitch) + column + Vector512.Create((double)origin);
        ulong there = 0;
        for (int i = 0; HasZones && i < OwnPoints.Count; i++)
        {
            there |= (ulong)zones[(int)places[i]] << (8 * i);
        }

        Vector512<double> covers = !withCover ? Vector512<double>.Zero : Vector512.Create(
            CoverOf((int)places[0]),
            CoverOf((int)places[1]),
            CoverOf((int)places[2]),
            CoverOf((int)places[3]),
            CoverOf((int)places[4]),
            CoverOf((int)places[5]),
            CoverOf((int)places[6]),
            CoverOf((int)places[7]));
        return (covers, there);
    }

    private Vector512<double> OnEdge(Vector512<double> easts, Vector512<double> souths)
    {
        OwnPoints.Eight there = default;
        for (int i = 0; i < OwnPoints.Count; i++)
        {
            there[i] = HeightAt(easts[i], souths[i]);
        }

        return Vector512.LoadUnsafe(ref there[0]);
    }

    private static double Between(ref float sample, ref float below, double across, double down)
    {
        double top = sample + (across * ((double)Unsafe.Add(ref sample, 1) - sample));
        double bottom = below + (across * ((double)Unsafe.Add(ref below, 1) - below));
        return top + (down * (bottom - top));
    }

    /// <summary>Index of the cell nearest to a place on the grid.</summary>
    internal int CellAt(double east, double south) =>
        ((int)Math.Clamp(south + Reach + 0.5, 0, Side - 1) * pitch) + (int)Math.Clamp(east + Reach + 0.5, 0, Side - 1) + origin;

    /// <summary>Reads the ground along a line from the station, a cell's side apart, until ground is missing.</summary>
    /// <param name="east">Cells to the east for each step.</param>
    /// <param name="south">Cells to the south for each step.</param>
    /// <param name="count">Steps to take.</param>
    /// <param name="ground">Receives heights, the first one step from the station.</param>
    /// <param name="top">Receives heights with the cover on them; empty where that is not asked.</param>
    /// <param name="along">Receives zones; empty where they are not asked.</param>
    /// <returns>Number of points with ground.</returns>
    internal int Read(double east, double south, int count, Span<double> ground, Span<double> top, Span<Zone> along)
    {
        // All points between the first rows and columns and the last: four samples are there without asking.
        bool isInside = count * Math.Max(Math.Abs(east), Math.Abs(south)) <= Reach - 0.5;
        ground = ground[..count];
        ref float corner = ref MemoryMarshal.GetArrayDataReference(heights);
        for (int i = 0; i < ground.Length; i++)
        {
            double x = (i + 1) * east;
            double y = (i + 1) * south;
            double height;
            if (isInside)
            {
                double column = x + Reach;
                double row = y + Reach;
                int c = (int)column;
                int r = (int)row;
                ref float sample = ref Unsafe.Add(ref corner, (r * pitch) + c + origin);
                height = Between(ref sample, ref Unsafe.Add(ref sample, pitch), column - c, row - r);
            }
            else
            {
                height = HeightAt(x, y);
            }

            if (double.IsNaN(height))
            {
                return i;
            }

            ground[i] = height;
            if (!top.IsEmpty)
            {
                top[i] = height + CoverOf(CellAt(x, y));
            }

            if (!along.IsEmpty)
            {
                along[i] = ZoneOf(CellAt(x, y));
            }
        }

        return ground.Length;
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
