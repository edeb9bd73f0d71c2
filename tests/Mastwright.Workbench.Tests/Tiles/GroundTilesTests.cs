using Mastwright.Ground;
using Mastwright.Storage.Ground;
using Mastwright.Tests.EndToEnd;
using Mastwright.Workbench.Tiles;

namespace Mastwright.Tests.Workbench.Tiles;

/// <summary>Height tiles hold the ground's heights where the tile's pixels lie, at every zoom, and 0 m where nothing is known.</summary>
public sealed class GroundTilesTests : IDisposable
{
    private const int Side = 1201;

    private readonly TemporaryFolder folder = new();
    private readonly GroundLibrary ground;
    private readonly GroundTiles tiles;

    public GroundTilesTests()
    {
        // A plane that rises 1000 m to the east and 500 m to the north over one degree: bilinear reading and averaging keep a plane exact.
        short[] samples = new short[Side * Side];
        for (int row = 0; row < Side; row++)
        {
            for (int column = 0; column < Side; column++)
            {
                samples[(row * Side) + column] = (short)Math.Round(Height(46 + (1 - (row / 1200.0)), -19 + (column / 1200.0)));
            }
        }

        byte[] bytes = new byte[samples.Length * 2];
        for (int i = 0; i < samples.Length; i++)
        {
            System.Buffers.Binary.BinaryPrimitives.WriteInt16BigEndian(bytes.AsSpan(2 * i), samples[i]);
        }

        File.WriteAllBytes(folder.File("N46W019.hgt"), bytes);
        ground = GroundLibrary.Open(folder.Path, [new HeightSource { Name = "plane", Files = ["N46W019.hgt"] }], []);
        tiles = new(ground);
    }

    public void Dispose()
    {
        ground.Dispose();
        folder.Dispose();
    }

    [Theory]
    [InlineData(15, 14_700, 11_591)]
    [InlineData(12, 1_837, 1_448)]
    [InlineData(10, 459, 362)]
    [InlineData(8, 114, 90)]
    public void Every_zoom_holds_the_same_ground(int zoom, int x, int y)
    {
        Assert.Empty(ground.Problems);
        TileAddress tile = new(zoom, x, y);
        float[] heights = tiles.Heights(tile);
        int known = 0;
        for (int i = 0; i < heights.Length; i += 97)
        {
            (double latitude, double longitude) = (tile.LatitudeDegrees((i / 256) + 0.5), tile.LongitudeDegrees((i % 256) + 0.5));
            if (latitude is > 46.01 and < 46.99 && longitude is > -18.99 and < -18.01)
            {
                // Whole metres in the file make ±0.5 m; a pixel of a small zoom is the mean of places that lie symmetrically in it.
                Assert.Equal(Height(latitude, longitude), heights[i], 0.6);
                known++;
            }
        }

        Assert.True(known > 50, $"only {known} pixels lie on the file");
    }

    [Fact]
    public void Heights_read_back_from_the_colours()
    {
        float[] heights = new float[256 * 256];
        Array.Fill(heights, float.NaN);
        (heights[0], heights[1], heights[2]) = (719.25f, -3.5f, 8849);
        byte[] pixels = Pixels(HeightPicture.Write(heights));
        Assert.Equal(719.25, Metres(pixels, 0), 1.0 / 512);
        Assert.Equal(-3.5, Metres(pixels, 1), 1.0 / 512);
        Assert.Equal(8849, Metres(pixels, 2), 1.0 / 512);
        Assert.Equal(0, Metres(pixels, 3));
        Assert.Equal(255, pixels[3]);
    }

    [Fact]
    public void Where_no_file_reaches_no_work_is_done() => Assert.Empty(tiles.Heights(new(6, 0, 0)));

    private static double Height(double latitude, double longitude) => 100 + (1000 * (longitude + 19)) + (500 * (latitude - 46));

    private static double Metres(byte[] pixels, int i) => (pixels[4 * i] * 256) + pixels[(4 * i) + 1] + (pixels[(4 * i) + 2] / 256.0) - 32_768;

    /// <summary>Pixels of a PNG picture, by the drawing library and so by other hands than wrote it.</summary>
    private static byte[] Pixels(byte[] png)
    {
        using SkiaSharp.SKBitmap bitmap = SkiaSharp.SKBitmap.Decode(png, new SkiaSharp.SKImageInfo(256, 256, SkiaSharp.SKColorType.Rgba8888, SkiaSharp.SKAlphaType.Unpremul));
        return bitmap.Bytes;
    }
}
