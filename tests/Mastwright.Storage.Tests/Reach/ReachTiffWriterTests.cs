using Mastwright.Ground;
using Mastwright.Storage.Ground;
using Mastwright.Storage.Reach;
using Mastwright.Storage.Tests.Ground;

namespace Mastwright.Storage.Tests.Reach;

/// <summary>
/// Rasters of reach maps, read back by the reader of ground files. One of 335 × 335 cells of 90 m with its first cell at 664065, 5155965 in
/// zone 27 was also read by GDAL 3.6's gdalinfo: EPSG 32627, origin 664020, 5156010, pixel 90, −90, blocks of 256 × 256, Float32, DEFLATE,
/// area, no-data value −9999; since then with predictor 3, as gdalinfo -stats says, and with the same least, mean and greatest loss as before.
/// </summary>
public sealed class ReachTiffWriterTests : IDisposable
{
    private readonly ScratchFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(335, 335, true)]
    [InlineData(256, 256, false)]
    [InlineData(1, 700, true)]
    public void What_was_written_is_read_back_to_the_bit(int columns, int rows, bool isNorth)
    {
        GridFrame frame = GridFrame.Utm(27, isNorth, 664_065, 5_155_965, 90, 90, columns, rows, samplesAreAreas: true);
        float[] values = [.. Enumerable.Range(0, columns * rows).Select(i => i % 7 == 3 ? float.NaN : (float)Math.Sin(i) * 90)];
        string path = Path.Combine(folder.Root, "reach.tif");
        ReachTiffWriter.Write(path, frame, values);

        GroundFile file = GroundFileFormat.OpenFile(path);
        Assert.Equal(frame, file.Frame);
        Assert.Equal("GeoTIFF, tiles", file.Format);
        Assert.Equal(values, file.ReadHeights(0, 0, columns, rows));
    }

    [Fact]
    public void The_tags_say_what_GDAL_reads()
    {
        GridFrame frame = GridFrame.Utm(27, true, 664_065, 5_155_965, 90, 90, 335, 335, samplesAreAreas: true);
        string path = Path.Combine(folder.Root, "reach.tif");
        ReachTiffWriter.Write(path, frame, new float[335 * 335]);
        using FileStream file = new(path, FileMode.Open);
        TiffHeader header = TiffHeader.Read(path, file);
        Assert.Equal([256L, 256L, 32L, 3L, 8L, 3L], new[] { 322, 323, 258, 339, 259, 317 }.Select(tag => header.Number(tag, -1)));
        Assert.Equal([90.0, 90, 0], header.Doubles(33550));
        Assert.Equal([0.0, 0, 0, 664_020, 5_156_010, 0], header.Doubles(33922));
        Assert.Equal("-9999", header.Text(42113));
        long[] keys = header.Integers(34735);
        Assert.Contains((3072L, 32627L), keys.Chunk(4).Select(key => (key[0], key[3])));
        Assert.Contains((1025L, 1L), keys.Chunk(4).Select(key => (key[0], key[3])));
    }

    [Fact]
    public void Nothing_half_written_is_left()
    {
        GridFrame frame = GridFrame.Utm(27, true, 664_065, 5_155_965, 90, 90, 3, 3, samplesAreAreas: true);
        Assert.Throws<ArgumentException>(() => ReachTiffWriter.Write(Path.Combine(folder.Root, "reach.tif"), frame, new float[8]));
        Assert.Throws<DirectoryNotFoundException>(() => ReachTiffWriter.Write(Path.Combine(folder.Root, "none", "reach.tif"), frame, new float[9]));
        Assert.Empty(Directory.EnumerateFileSystemEntries(folder.Root));
    }
}
