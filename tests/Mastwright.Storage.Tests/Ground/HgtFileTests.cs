using System.IO.Compression;
using Mastwright.Ground;
using Mastwright.Storage.Ground;

namespace Mastwright.Storage.Tests.Ground;

public sealed class HgtFileTests
{
    private const int Bytes = 1201 * 1201 * 2;

    [Fact]
    public void What_is_written_is_read_back()
    {
        using ScratchFolder folder = new();
        short[] samples = new short[3601 * 3601];
        for (int i = 0; i < samples.Length; i++)
        {
            samples[i] = (short)(i % 9_000);
        }

        samples[5] = HgtWriter.Void;
        HgtWriter.Write(folder.At("S46W019.hgt"), samples, 3601);
        GroundFile file = GroundFileFormat.OpenFile(folder.At("S46W019.hgt"));

        Assert.Equal((-19, -45, 3601), (file.Frame.OriginX, file.Frame.OriginY, file.Frame.Rows));
        Assert.Equal(256, file.PieceRows);
        float[] band = file.ReadHeights(0, 3584, 3601, 17);
        Assert.Equal(samples.AsSpan(3584 * 3601).ToArray().Select(height => (float)height), band);
        Assert.Equal(-32768, file.ReadHeights(5, 0, 1, 1)[0]);
        Assert.Equal(["S46W019.hgt"], Directory.GetFiles(folder.Root).Select(Path.GetFileName));
    }

    [Theory]
    [InlineData("N50E011.hgt.zip")]
    [InlineData("n50e011.SRTMGL3.hgt.zip")]
    [InlineData("some-name.zip")]
    [InlineData("N50E011.hgt.gz")]
    [InlineData("N50E011.SRTMGL3.hgt")]
    public void Packed_and_oddly_named_tiles_are_read(string name)
    {
        using ScratchFolder folder = new();
        Write(folder.At(name), Tile(height: 123), entryName: "N50E011.hgt");
        GroundFile file = GroundFileFormat.OpenFile(folder.At(name));

        Assert.Equal((11, 51), (file.Frame.OriginX, file.Frame.OriginY));
        Assert.Equal(-1, file.ReadHeights(0, 0, 1201, 1201).AsSpan().IndexOfAnyExcept(123f));
    }

    [Theory]
    [InlineData("N50E011.hgt", Bytes - 1, "2,884,801 bytes")]
    [InlineData("N50E011.hgt", 0, "0 bytes")]
    [InlineData("N50E011.hgt.zip", Bytes + 2, "2,884,804 bytes")]
    [InlineData("N50E011.hgt.gz", Bytes - 2, "2,884,800 bytes")]
    [InlineData("tile.hgt", Bytes, "does not start with the south-western corner")]
    [InlineData("N95E011.hgt", Bytes, "does not start with the south-western corner")]
    [InlineData("N50E181.hgt", Bytes, "does not start with the south-western corner")]
    public void A_wrong_size_or_name_is_told_with_what_would_be_right(string name, int bytes, string found)
    {
        using ScratchFolder folder = new();
        Write(folder.At(name), new byte[bytes], entryName: "heights.hgt");

        GroundFileException fault = Assert.Throws<GroundFileException>(() => GroundFileFormat.OpenFile(folder.At(name)));
        Assert.Contains(found, fault.Message, StringComparison.Ordinal);
        Assert.Contains(name, fault.Message, StringComparison.Ordinal);
        Assert.NotEmpty(fault.Right);
    }

    [Fact]
    public void A_zip_bomb_is_refused_without_being_unpacked()
    {
        using ScratchFolder folder = new();
        string path = folder.At("N50E011.hgt.zip");
        using (ZipArchive archive = new(File.Create(path), ZipArchiveMode.Create))
        using (Stream entry = archive.CreateEntry("N50E011.hgt").Open())
        {
            byte[] zeros = new byte[1 << 20];
            for (int i = 0; i < 300; i++)
            {
                entry.Write(zeros);
            }
        }

        long before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Contains("314,572,800", Assert.Throws<GroundFileException>(() => GroundFileFormat.OpenFile(path)).Message, StringComparison.Ordinal);
        Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 10 << 20);
    }

    [Fact]
    public void A_packed_tile_that_lies_about_its_length_is_refused()
    {
        using ScratchFolder folder = new();

        // 100 MB of zeros whose last four bytes claim the length of a tile.
        string path = folder.At("N50E011.hgt.gz");
        Write(path, new byte[100_000_000], "");
        byte[] packed = File.ReadAllBytes(path);
        BitConverter.GetBytes(Bytes).CopyTo(packed, packed.Length - 4);
        File.Delete(path);
        File.WriteAllBytes(path, packed);
        GroundFile file = GroundFileFormat.OpenFile(path);
        Assert.Throws<GroundFileException>(() => file.ReadHeights(0, 0, 1201, 1201));

        // And too little behind a true-looking claim.
        Write(folder.At("N51E011.hgt.gz"), new byte[1_000], "");
        packed = File.ReadAllBytes(folder.At("N51E011.hgt.gz"));
        BitConverter.GetBytes(Bytes).CopyTo(packed, packed.Length - 4);
        File.WriteAllBytes(folder.At("N51E011.hgt.gz"), packed);
        Assert.Throws<GroundFileException>(() => GroundFileFormat.OpenFile(folder.At("N51E011.hgt.gz")).ReadHeights(0, 0, 1201, 1201));
    }

    [Fact]
    public void An_archive_with_no_tile_or_two_is_refused()
    {
        using ScratchFolder folder = new();
        string path = folder.At("N50E011.hgt.zip");
        using (ZipArchive archive = new(File.Create(path), ZipArchiveMode.Create))
        {
            archive.CreateEntry("N50E011.hgt");
            archive.CreateEntry("N51E011.hgt");
        }

        Assert.Contains("more than one", Assert.Throws<GroundFileException>(() => GroundFileFormat.OpenFile(path)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Mutated_packed_tiles_are_read_or_refused_and_never_crash()
    {
        using ScratchFolder folder = new();
        foreach (string name in (string[])["N50E011.hgt.zip", "N50E012.hgt.gz"])
        {
            Write(folder.At(name), Tile(height: 7), "N50E011.hgt");
            byte[] sound = File.ReadAllBytes(folder.At(name));
            Mutations.NeverCrash(folder.At(name), [sound], iterations: 300);
            Mutations.RandomBytesAreRefused(folder.At(name), [[], [0x50, 0x4B, 3, 4], [0x1F, 0x8B, 8, 0]], iterations: 300);
        }
    }

    private static byte[] Tile(short height)
    {
        byte[] bytes = new byte[Bytes];
        for (int i = 0; i < bytes.Length; i += 2)
        {
            bytes[i] = (byte)(height >> 8);
            bytes[i + 1] = (byte)height;
        }

        return bytes;
    }

    private static void Write(string path, byte[] bytes, string entryName)
    {
        if (path.EndsWith(".zip", StringComparison.Ordinal))
        {
            using ZipArchive archive = new(File.Create(path), ZipArchiveMode.Create);
            using Stream entry = archive.CreateEntry(entryName).Open();
            entry.Write(bytes);
        }
        else if (path.EndsWith(".gz", StringComparison.Ordinal))
        {
            using GZipStream packed = new(File.Create(path), CompressionLevel.Fastest);
            packed.Write(bytes);
        }
        else
        {
            File.WriteAllBytes(path, bytes);
        }
    }
}
