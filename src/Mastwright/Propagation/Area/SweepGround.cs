using System.Collections.Immutable;
using Mastwright.Geodesy;
using Mastwright.Ground;

namespace Mastwright.Propagation.Area;

/// <summary>Ground that is missing from a map.</summary>
/// <param name="Tile">The one-degree tile it would lie in, named by its south-western corner.</param>
/// <param name="Cells">Cells of the map without ground there.</param>
/// <param name="NearestMetres">Distance of the nearest of them from the station, in metres.</param>
/// <param name="NearestBearingDegrees">Its bearing from the station, clockwise from true north, in degrees.</param>
public sealed record SweepGap(string Tile, int Cells, double NearestMetres, double NearestBearingDegrees)
{
    /// <summary>Tile, count and the nearest cell.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Tile}: {Cells} cells without ground, the nearest at {NearestMetres / 1000:0.0} km, {NearestBearingDegrees:0}°");
}

/// <summary>The ground of a mosaic, brought onto the plane of a sweep.</summary>
/// <param name="Raster">Heights, cover and zones, with what is missing as NaN.</param>
/// <param name="Gaps">What is missing within the radius, nearest first; empty when nothing is.</param>
/// <remarks>Heights are bilinear and cover the nearest code, as for a single path; zones follow the same rule as there.</remarks>
public sealed record SweepGround(SweepRaster Raster, ImmutableArray<SweepGap> Gaps)
{
    /// <summary>Reads the ground around a station.</summary>
    /// <param name="mosaic">Heights and cover, in degrees or in UTM, across as many tiles as it takes.</param>
    /// <param name="frame">The plane.</param>
    /// <param name="threads">Most threads to use, 1 or more; 0 for all processors.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static SweepGround Read(GroundMosaic mosaic, SweepFrame frame, int threads = 0, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentOutOfRangeException.ThrowIfNegative(threads);
        int cells = frame.Side * frame.Side;
        float[] heights = GC.AllocateUninitializedArray<float>(cells);
        Array.Fill(heights, float.NaN);
        SweepWarp warp = new(mosaic, frame)
        {
            Heights = heights,
            Cover = mosaic.Covers.IsEmpty ? null : new byte[cells],
            Zones = mosaic.Sea is { HasSea: true } || !mosaic.SeaTiles.IsEmpty ? new byte[cells] : null,
        };
        ParallelOptions options = new() { MaxDegreeOfParallelism = threads == 0 ? -1 : threads, CancellationToken = cancellation };
        Parallel.For(0, warp.Bands, options, warp.Fill);
        SweepRaster raster = new(
            frame.Reach, frame.CellMetres, frame.Station.LatitudeDegrees, warp.Heights, warp.Cover, CoverHeights(warp, mosaic.CoverTable), warp.Zones);
        SweepLayout whole = raster.Layout;
        Dictionary<string, SweepGap> gaps = new(StringComparer.Ordinal);
        FindGaps(frame, warp, whole, gaps, null);
        return new(raster, InOrder(gaps.Values));
    }

    /// <summary>Reads the ground of a part of the plane, cut bit by bit, on this thread: the same heights, cover and zones as of the whole.</summary>
    /// <param name="ground">The ground.</param>
    /// <param name="frame">The plane.</param>
    /// <param name="layout">The cells wanted.</param>
    /// <param name="counts">Whether a cell, counted east and north of the station, is to be told where its ground is missing; null for every cell.</param>
    /// <param name="room">Where to read it to.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    internal static SweepGround Read(GroundExtent ground, SweepFrame frame, SweepLayout layout, Func<int, int, bool>? counts, SweepRoom room, CancellationToken cancellation)
    {
        float[] heights = room.Heights(layout.Length);
        byte[]? cover = ground.HasCover ? room.Cover(layout.Length) : null;
        byte[]? zones = ground.HasSea.Value ? room.Zones(layout.Length) : null;
        float[]? coverHeights = null;
        Dictionary<string, SweepGap> gaps = new(StringComparer.Ordinal);
        foreach (SweepBlocks group in SweepBlocks.Groups(frame, layout))
        {
            GroundMosaic mosaic = ground.Cut(group.Ground(frame));
            SweepWarp warp = new(mosaic, frame, layout, group) { Heights = heights, Cover = cover, Zones = zones };
            for (int band = 0; band < warp.Bands; band++)
            {
                cancellation.ThrowIfCancellationRequested();
                warp.Fill(band);
            }

            coverHeights ??= CoverHeights(warp, mosaic.CoverTable);
            FindGaps(frame, warp, layout, gaps, counts);
        }

        return new(new(layout, frame.CellMetres, frame.Station.LatitudeDegrees, heights, cover, coverHeights, zones), InOrder(gaps.Values));
    }

    /// <summary>The gaps of several parts as one list, nearest first.</summary>
    internal static ImmutableArray<SweepGap> InOrder(IEnumerable<SweepGap> gaps) =>
        [.. gaps.OrderBy(gap => gap.NearestMetres).ThenBy(gap => gap.Tile, StringComparer.Ordinal)];

    private static float[]? CoverHeights(SweepWarp warp, CoverTable table)
    {
        if (warp.Cover is null)
        {
            return null;
        }

        float[] heights = new float[256];
        for (int code = 1; code < heights.Length; code++)
        {
            heights[code] = (float)table.HeightMetres((byte)code);
        }

        return heights;
    }

    private static void FindGaps(SweepFrame frame, SweepWarp warp, SweepLayout layout, Dictionary<string, SweepGap> gaps, Func<int, int, bool>? counts)
    {
        foreach ((int row, int first, int count) in warp.Lines())
        {
            Span<float> line = warp.Heights.AsSpan(layout.Index(first, row), count);
            for (int i = 0; i < line.Length; i++)
            {
                if (!float.IsNaN(line[i]))
                {
                    continue;
                }

                int east = first + i - frame.Reach;
                int north = frame.Reach - row;
                double square = ((double)east * east) + ((double)north * north);
                if (square > (double)frame.Reach * frame.Reach || counts?.Invoke(east, north) == false)
                {
                    continue;
                }

                string tile = GroundTile.OneDegree(warp.PointNear(east, north)).Name;
                double distance = Math.Sqrt(square) * frame.CellMetres;
                SweepGap known = gaps.GetValueOrDefault(tile, new(tile, 0, double.PositiveInfinity, 0));
                double bearing = double.RadiansToDegrees(Math.Atan2(east, north));
                gaps[tile] = distance < known.NearestMetres
                    ? new(tile, known.Cells + 1, distance, bearing < 0 ? bearing + 360 : bearing)
                    : known with { Cells = known.Cells + 1 };
            }
        }
    }
}
