using Mastwright.Ground;
using Mastwright.Propagation.Area;

namespace Mastwright.Tests.Propagation.Area;

/// <summary>Grounds for the tests of the sweep: real tiles where the reference folder has them, and made ones.</summary>
internal static class SweepScenes
{
    /// <summary>The grounds by name, with the station's height above ground that goes with them.</summary>
    /// <param name="name">Name of the ground.</param>
    /// <param name="withCover">Whether it has woods.</param>
    /// <param name="reach">Cells on each side of the station.</param>
    internal static (SweepRaster Raster, double StationHeight) Of(string name, bool withCover, int reach = 250) => name switch
    {
        "hilly" => (Tile(RealTiles.Heights("N50E011.hgt.zip"), 600, 600, 90, 50.5, reach, withCover), 10),
        "alpine" => (Tile(RealTiles.Filled(RealTiles.Heights("N46E008.dted_srtm3.tif"), -32767), 300, 860, 90, 46.3, reach, withCover), 10),
        "peaks" => (Peaks(withCover, reach), 10),
        "coast with sea" => (Islands(withCover, reach), 20),
        "flat" => (Made(reach, 60, (_, _) => 12, withCover, sea: false), 15),
        "rolling" => (Made(reach, 30, (x, y) => 80 + (35 * Math.Sin(x * 0.021) * Math.Cos(y * 0.017)) + (6 * Math.Sin((x * 0.31) + (y * 0.11))), withCover, sea: false), 120),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "A scene of the list is needed."),
    };

    /// <summary>Ground made of a formula of the cell's column and row; sea where it is not above zero, if asked.</summary>
    internal static SweepRaster Made(int reach, double cellMetres, Func<int, int, double> height, bool withCover, bool sea, double latitude = 47)
    {
        int side = (2 * reach) + 1;
        float[] heights = new float[side * side];
        for (int i = 0; i < heights.Length; i++)
        {
            double h = height(i % side, i / side);
            heights[i] = (float)(sea ? Math.Max(h, 0) : h);
        }

        return Raster(reach, cellMetres, latitude, heights, withCover, sea);
    }

    internal static SweepRaster Raster(int reach, double cellMetres, double latitude, float[] heights, bool withCover, bool sea)
    {
        int side = (2 * reach) + 1;
        byte[]? zones = sea ? new byte[heights.Length] : null;
        byte[]? cover = withCover ? new byte[heights.Length] : null;
        for (int i = 0; i < heights.Length; i++)
        {
            bool isSea = sea && heights[i] <= 0;
            zones?[i] = (byte)(isSea ? Zone.Sea : heights[i] < 60 ? Zone.Coast : Zone.Inland);
            int x = i % side;
            int y = i / side;
            cover?[i] = (byte)(!isSea && Math.Sin(x * 0.23) + Math.Cos(y * 0.19) > 0.7 ? 1 + ((x / 7) + (y / 5)) % 2 : 0);
        }

        float[] coverHeights = new float[256];
        coverHeights[1] = 15;
        coverHeights[2] = 10;
        return new(reach, cellMetres, latitude, heights, cover, withCover ? coverHeights : null, zones);
    }

    /// <summary>Samples of a tile of 3 arc-seconds taken as square cells: the shape of the ground is real, the scale east to west is not.</summary>
    private static SweepRaster Tile(short[] tile, int column, int row, double cellMetres, double latitude, int reach, bool withCover)
    {
        int side = (2 * reach) + 1;
        float[] heights = new float[side * side];
        for (int y = 0; y < side; y++)
        {
            for (int x = 0; x < side; x++)
            {
                short value = tile[((row - reach + y) * 1201) + column - reach + x];
                heights[(y * side) + x] = value == short.MinValue ? float.NaN : value;
            }
        }

        return Raster(reach, cellMetres, latitude, heights, withCover, sea: false);
    }

    private static SweepRaster Peaks(bool withCover, int reach) => Made(
        reach,
        90,
        (x, y) => 1600 + (900 * Math.Sin(x * 0.061) * Math.Cos(y * 0.043)) + (350 * Math.Sin((x * 0.19) - (y * 0.23))) + (60 * Math.Sin((x * 1.1) + (y * 1.7))),
        withCover,
        sea: false);

    private static SweepRaster Islands(bool withCover, int reach)
    {
        short[] tile = RealTiles.Heights("N38W028.SRTMGL3.hgt.zip");
        int side = (2 * reach) + 1;
        float[] heights = new float[side * side];
        for (int i = 0; i < heights.Length; i++)
        {
            heights[i] = Math.Max(tile[((400 - reach + (i / side)) * 1201) + 840 - reach + (i % side)], (short)0);
        }

        return Raster(reach, 90, 38.5, heights, withCover, sea: true);
    }
}
