using BitMiracle.LibTiff.Classic;
using Mastwright.Ground;
using Mastwright.Storage.Ground;

namespace Mastwright.Storage.Tests.Ground;

public sealed class TiffFileTests
{
    private static readonly GridFrame Frame = GridFrame.Geographic(8.25, 47.75, 0.01, 0.02, 70, 45, samplesAreAreas: true);
    private static readonly GridFrame Utm = GridFrame.Utm(33, isNorth: false, 400_015, 6_500_015, 30, 30, 70, 45, samplesAreAreas: false);

    public static TheoryData<string, Compression, Predictor, bool> Kinds
    {
        get
        {
            TheoryData<string, Compression, Predictor, bool> kinds = [];
            foreach (string type in (string[])["int16", "uint16", "float32", "uint8"])
            {
                foreach (Compression compression in (Compression[])[Compression.NONE, Compression.LZW, Compression.ADOBE_DEFLATE, Compression.DEFLATE])
                {
                    foreach (Predictor predictor in (Predictor[])[Predictor.NONE, Predictor.HORIZONTAL, Predictor.FLOATINGPOINT])
                    {
                        bool fits = compression != Compression.NONE || predictor == Predictor.NONE;
                        if (fits && (predictor != Predictor.FLOATINGPOINT || type == "float32") && (predictor != Predictor.HORIZONTAL || type != "float32"))
                        {
                            kinds.Add(type, compression, predictor, true);
                            kinds.Add(type, compression, predictor, false);
                        }
                    }
                }
            }

            return kinds;
        }
    }

    [Theory, MemberData(nameof(Kinds))]
    public void Every_kind_gives_its_samples_back(string type, Compression compression, Predictor predictor, bool tiled)
    {
        using ScratchFolder folder = new();
        string path = folder.At("heights.tif");
        int block = tiled ? 32 : 7;
        float[] expected = new float[Frame.Columns * Frame.Rows];
        for (int i = 0; i < expected.Length; i++)
        {
            expected[i] = type == "uint8" ? i % 251 : type == "float32" ? (i * 0.37f) - 200 : (i % 3000) + (type == "int16" ? -400 : 0);
        }

        switch (type)
        {
            case "int16": TiffFixture.Write(path, Frame, Array.ConvertAll(expected, height => (short)height), compression, predictor, block, tiled); break;
            case "uint16": TiffFixture.Write(path, Frame, Array.ConvertAll(expected, height => (ushort)height), compression, predictor, block, tiled); break;
            case "uint8": TiffFixture.Write(path, Frame, Array.ConvertAll(expected, height => (byte)height), compression, predictor, block, tiled); break;
            default: TiffFixture.Write(path, Frame, expected, compression, predictor, block, tiled); break;
        }

        GroundFile file = GroundFileFormat.OpenFile(path);
        Near(Frame, file.Frame);
        Assert.Equal(expected, file.ReadHeights(0, 0, Frame.Columns, Frame.Rows));
        float[] part = file.ReadHeights(31, 6, 5, 30);
        for (int r = 0; r < 30; r++)
        {
            Assert.Equal(expected.AsSpan(((6 + r) * 70) + 31, 5), part.AsSpan(r * 5, 5));
        }
    }

    /// <summary>A ramp of 16 × 16 heights, 3 m a sample from -300 m, written by GDAL 3.6.2 with ENDIANNESS=BIG.</summary>
    public static TheoryData<string, string> BigEndian => new()
    {
        {
            "16-bit, LZW, predictor 2",
            "TU0AKgAAAAgAEQEAAAMAAAABABAAAAEBAAMAAAABABAAAAECAAMAAAABABAAAAEDAAMAAAABAAUAAAEGAAMAAAABAAEAAAERAAQAAAABAAABegEVAAMAAAABAAEAAAEWAAMAAAABABAAAAEXAAQAAAABAAAAWAEcAAMAAAABAAEAAAE9AAMAAAABAAIAAAFTAAMAAAABAAIAAIMOAAwAAAADAAAA2oSCAAwAAAAGAAAA8oevAAMAAAAgAAABIoewAAwAAAACAAABYoexAAIAAAAIAAABcgAAAAA/hHrhR64Uez+EeuFHrhR7AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAABAIAAAAAAAAEBHFHrhR64UAAAAAAAAAAAAAQABAAAABwQAAAAAAQACBAEAAAABAAEIAAAAAAEQ5ggBh7EABwAACAYAAAABI44ICYewAAEAAQgLh7AAAQAAQHKkHZZ0bYhBWFSmQAAAAFdHUyA4NHwAgD+agAAcEg0FhEHhUJhj/AkLiEMiMHf40icSjERf5ki8djIDf6Uj0jhrEkknkD0lEnEkrj8KKkukaEmUvgq0msdck5j4BCk8iIBIlAjABOlEhYBUlIhkBA=="
        },
        {
            "32-bit floating-point, deflate, predictor 3",
            "TU0AKgAAAAgAEQEAAAMAAAABABAAAAEBAAMAAAABABAAAAECAAMAAAABACAAAAEDAAMAAAABAAgAAAEGAAMAAAABAAEAAAERAAQAAAABAAABegEVAAMAAAABAAEAAAEWAAMAAAABABAAAAEXAAQAAAABAAAAsgEcAAMAAAABAAEAAAE9AAMAAAABAAMAAAFTAAMAAAABAAMAAIMOAAwAAAADAAAA2oSCAAwAAAAGAAAA8oevAAMAAAAgAAABIoewAAwAAAACAAABYoexAAIAAAAIAAABcgAAAAA/hHrhR64Uez+EeuFHrhR7AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAABAIAAAAAAAAEBHFHrhR64UAAAAAAAAAAAAAQABAAAABwQAAAAAAQACBAEAAAABAAEIAAAAAAEQ5ggBh7EABwAACAYAAAABI44ICYewAAEAAQgLh7AAAQAAQHKkHZZ0bYhBWFSmQAAAAFdHUyA4NHwAeJxjQAcNKIBh2r//KNCFgTRQ8xcVlJCo3wdN/xIS9cvAdf7+BQJP4TL/idJ/4xcK+OFGov0FX2DgzYsXL148CCLRfocLGxoOODQEGBgoSEhISIjsZfjP4ODAwAiVZiSkX4AHBjjYQGABA2lgBRsKYHVElSZoPwszKhAi0X4TNP2PiNcKTsBP4DqZGEFwN1G6EICLkQkFLiZRvxKa/m4S9Vuh6S8mUX8Qmv5oNOUA6JmXKw=="
        },
    };

    [Theory, MemberData(nameof(BigEndian))]
    public void Big_endian_files_of_another_program_are_read(string kind, string base64)
    {
        using ScratchFolder folder = new();
        string path = folder.At("big.tif");
        File.WriteAllBytes(path, Convert.FromBase64String(base64));

        float[] heights = GroundFileFormat.OpenFile(path).ReadHeights(0, 0, 16, 16);
        Assert.True(heights.SequenceEqual(Enumerable.Range(0, 256).Select(i => (3f * i) - 300)), kind);
    }

    [Fact]
    public void Files_with_64_bit_places_are_read()
    {
        using ScratchFolder folder = new();
        string path = folder.At("bigtiff.tif");
        short[] heights = Enumerable.Range(0, 70 * 45).Select(i => (short)(i - 300)).ToArray();
        TiffFixture.Write(path, Frame, heights, Compression.LZW, Predictor.HORIZONTAL, 16, tiled: true, mode: "w8");
        Assert.Equal((byte)43, File.ReadAllBytes(path)[2]);

        GroundFile file = GroundFileFormat.OpenFile(path);
        Near(Frame, file.Frame);
        Assert.Equal(heights.Select(height => (float)height), file.ReadHeights(0, 0, 70, 45));
    }

    [Fact]
    public void Nodata_is_a_void_and_a_utm_grid_of_points_lies_where_it_was_written()
    {
        using ScratchFolder folder = new();
        string path = folder.At("utm.tif");
        float[] heights = new float[70 * 45];
        heights[3] = -9999;
        heights[4] = 55;
        TiffFixture.Write(path, Utm, heights, Compression.NONE, Predictor.NONE, 45, tiled: false, noData: -9999);

        GroundFile file = GroundFileFormat.OpenFile(path);
        Near(Utm, file.Frame);
        float[] read = file.ReadHeights(0, 0, 70, 45);
        Assert.True(float.IsNaN(read[3]));
        Assert.Equal(55, read[4]);
    }

    [Fact]
    public void Cover_that_we_write_reads_back_on_the_same_grid()
    {
        using ScratchFolder folder = new();
        GridFrame frame = GridFrame.Geographic(-19, 47, 0.001, 0.001, 600, 300, samplesAreAreas: true);
        byte[] codes = Enumerable.Range(0, 600 * 300).Select(i => (byte)(i / 13 % 11 * 10)).ToArray();
        CoverTiffWriter.Write(folder.At("cover.tif"), frame, codes);

        GroundFile file = GroundFileFormat.OpenFile(folder.At("cover.tif"));
        Near(frame, file.Frame);
        Assert.True(file.CanBeCover);
        Assert.Equal(codes, file.ReadCover(0, 0, 600, 300));
        Assert.Equal(["cover.tif"], Directory.GetFiles(folder.Root).Select(Path.GetFileName));
    }

    [Fact]
    public void A_compression_that_is_not_read_is_named()
    {
        using ScratchFolder folder = new();
        string path = folder.At("packed.tif");
        TiffFixture.Write(path, Frame, new short[70 * 45], Compression.PACKBITS, Predictor.NONE, 45, tiled: false);

        GroundFileException fault = Assert.Throws<GroundFileException>(() => GroundFileFormat.OpenFile(path));
        Assert.Contains("PackBits", fault.Message, StringComparison.Ordinal);
        Assert.Contains("packed.tif", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sample_type_that_is_not_read_is_named_with_the_way_to_convert_it()
    {
        using ScratchFolder folder = new();
        TiffFixture.Write(folder.At("int32.tif"), Frame, new int[70 * 45], Compression.NONE, Predictor.NONE, 45, tiled: false);
        TiffFixture.Write(folder.At("float64.tif"), Frame, new double[70 * 45], Compression.NONE, Predictor.NONE, 45, tiled: false);

        foreach ((string name, string type) in ((string, string)[])[("int32.tif", "32 bits with sign"), ("float64.tif", "64 bits floating-point")])
        {
            GroundFileException fault = Assert.Throws<GroundFileException>(() => GroundFileFormat.OpenFile(folder.At(name)));
            Assert.Equal($"its sample type ({type}) is not read", fault.Found);
            Assert.Contains("gdal_translate -ot Float32", fault.Right, StringComparison.Ordinal);
        }
    }

    /// <summary>EPSG 4258 (ETRS 89) is within a metre of WGS 84; 4267 (NAD 27) is up to some hundred metres away.</summary>
    [Fact]
    public void Geographic_ETRS_89_is_taken_as_WGS_84_and_other_systems_are_refused()
    {
        using ScratchFolder folder = new();
        TiffFixture.Write(folder.At("wgs.tif"), Frame, new short[70 * 45], Compression.NONE, Predictor.NONE, 45, tiled: false);
        byte[] bytes = File.ReadAllBytes(folder.At("wgs.tif"));
        int code = bytes.AsSpan().IndexOf((ReadOnlySpan<byte>)[0x00, 0x08, 0, 0, 1, 0, 0xE6, 0x10]) + 6;
        Assert.True(code > 6);

        File.WriteAllBytes(folder.At("etrs.tif"), [.. bytes[..code], 0xA2, 0x10, .. bytes[(code + 2)..]]);
        Near(Frame, GroundFileFormat.OpenFile(folder.At("etrs.tif")).Frame);

        File.WriteAllBytes(folder.At("other.tif"), [.. bytes[..code], 0xAB, 0x10, .. bytes[(code + 2)..]]);
        GroundFileException fault = Assert.Throws<GroundFileException>(() => GroundFileFormat.OpenFile(folder.At("other.tif")));
        Assert.Contains("EPSG:4267", fault.Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_cut_off_says_so()
    {
        using ScratchFolder folder = new();
        string path = folder.At("cut.tif");
        TiffFixture.Write(path, Frame, new short[70 * 45], Compression.NONE, Predictor.NONE, 45, tiled: false);
        byte[] whole = File.ReadAllBytes(path);
        for (int length = 0; length < whole.Length; length += 101)
        {
            File.WriteAllBytes(path, whole[..length]);
            GroundFileException fault = Assert.Throws<GroundFileException>(() => GroundFileFormat.OpenFile(path));
            Assert.NotEmpty(fault.Found);
        }
    }

    [Fact]
    public void Mutated_files_are_read_or_refused_and_never_crash()
    {
        using ScratchFolder folder = new();
        List<byte[]> sound = [];
        foreach ((Compression compression, Predictor predictor, bool tiled) in ((Compression, Predictor, bool)[])
            [(Compression.NONE, Predictor.NONE, false), (Compression.LZW, Predictor.HORIZONTAL, true), (Compression.ADOBE_DEFLATE, Predictor.NONE, true), (Compression.LZW, Predictor.NONE, false)])
        {
            string path = folder.At("sound.tif");
            TiffFixture.Write(path, Frame, Enumerable.Range(0, 70 * 45).Select(i => (short)i).ToArray(), compression, predictor, 16, tiled);
            sound.Add(File.ReadAllBytes(path));
            File.Delete(path);
        }

        Mutations.NeverCrash(folder.At("mutated.tif"), sound, iterations: 1_500);
    }

    [Fact]
    public void Random_bytes_are_refused()
    {
        using ScratchFolder folder = new();
        Mutations.RandomBytesAreRefused(folder.At("random.tif"), [[0x49, 0x49, 42, 0], [0x4D, 0x4D, 0, 42], [0x49, 0x49, 43, 0, 8, 0, 0, 0], []]);
    }

    private static void Near(GridFrame expected, GridFrame actual)
    {
        Assert.Equal((expected.UtmZone, expected.IsNorth, expected.Columns, expected.Rows, expected.SamplesAreAreas), (actual.UtmZone, actual.IsNorth || actual.IsGeographic, actual.Columns, actual.Rows, actual.SamplesAreAreas));
        Assert.Equal(expected.OriginX, actual.OriginX, expected.StepX * 1e-9);
        Assert.Equal(expected.OriginY, actual.OriginY, expected.StepY * 1e-9);
        Assert.Equal(expected.StepX, actual.StepX);
        Assert.Equal(expected.StepY, actual.StepY);
    }
}
