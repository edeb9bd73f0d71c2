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
        SweepWarp warp = new(mosaic, frame)
        {
            Heights = new float[cells],
            Cover = mosaic.Covers.IsEmpty ? null : new byte[cells],
            Zones = mosaic.Sea is { HasSea: true } || !mosaic.SeaTiles.IsEmpty ? new byte[cells] : null,
        };
        ParallelOptions options = new() { MaxDegreeOfParallelism = threads == 0 ? -1 : threads, CancellationToken = cancellation };
        Parallel.For(0, warp.Bands, options, warp.Fill);
        float[]? coverHeights = null;
        if (warp.Cover is not null)
        {
            coverHeights = new float[256];
            for (int code = 1; code < coverHeights.Length; code++)
            {
                coverHeights[code] = (float)mosaic.CoverTable.HeightMetres((byte)code);
            }
        }

        SweepRaster raster = new(
            frame.Reach, frame.CellMetres, frame.Station.LatitudeDegrees, warp.Heights, warp.Cover, coverHeights, warp.Zones);
        return new(raster, FindGaps(frame, warp));
    }

    private static ImmutableArray<SweepGap> FindGaps(SweepFrame frame, SweepWarp warp)
    {
        Dictionary<string, SweepGap> gaps = new(StringComparer.Ordinal);
        int side = frame.Side;
        for (int cell = Array.FindIndex(warp.Heights, float.IsNaN); cell >= 0; cell = Array.FindIndex(warp.Heights, cell + 1, float.IsNaN))
        {
            int east = (cell % side) - frame.Reach;
            int north = frame.Reach - (cell / side);
            double square = ((double)east * east) + ((double)north * north);
            if (square > (double)frame.Reach * frame.Reach)
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

        return [.. gaps.Values.OrderBy(gap => gap.NearestMetres).ThenBy(gap => gap.Tile, StringComparer.Ordinal)];
    }
}
