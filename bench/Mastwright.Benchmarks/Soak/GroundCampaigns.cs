using System.Globalization;
using System.IO.Compression;
using System.Text;
using BitMiracle.LibTiff.Classic;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Storage.Ground;

namespace Mastwright.Benchmarks.Soak;

/// <summary>Damaged ground files of each format: read or refused with a complaint that names the file, and nothing else.</summary>
internal static class GroundCampaigns
{
    private const int TileBytes = 1201 * 1201 * 2;
    private static readonly GridFrame Frame = GridFrame.Geographic(8.25, 47.75, 0.01, 0.02, 70, 45, samplesAreAreas: true);

    internal static IEnumerable<Campaign> All(string scratch)
    {
        string folder = Path.Combine(scratch, "ground");
        Directory.CreateDirectory(folder);
        byte[] tile = Tile();
        byte[] zip = Zip(tile);
        byte[] gzip = GZip(tile);
        byte[][] tiffs = [.. Tiffs(folder)];
        byte[] ascii = Ascii();
        yield return new("hgt", random => OfFile(folder, "N50E011.hgt", Plain(random, tile)));
        yield return new("hgt-zip", random => OfFile(folder, "N50E011.hgt.zip", random.Next(10) == 0 ? Damage.Noise(random, [0x50, 0x4B, 3, 4], 400) : Damage.Bytes(random, zip)));
        yield return new("hgt-gz", random => OfFile(folder, "N50E011.hgt.gz", random.Next(10) == 0 ? Damage.Noise(random, [0x1F, 0x8B, 8, 0], 400) : Damage.Bytes(random, gzip)));
        yield return new("geotiff", random => OfFile(folder, "heights.tif", random.Next(10) == 0 ? Damage.Noise(random, [0x49, 0x49, 42, 0], 400) : Damage.Bytes(random, tiffs[random.Next(tiffs.Length)])));
        yield return new("ascii-grid", random => OfFile(folder, "heights.asc", random.Next(10) == 0 ? Damage.Noise(random, "ncols 3\nnrows 2\n"u8, 400) : Damage.Bytes(random, ascii)));
    }

    private static SoakCase OfFile(string folder, string name, byte[] bytes) => new(name, bytes, () =>
    {
        // A new file each time: some file systems wait for the disk when a file is cut to nothing and written again.
        string path = Path.Combine(folder, name);
        File.Delete(path);
        File.WriteAllBytes(path, bytes);
        try
        {
            GroundFile file = GroundFileFormat.OpenFile(path);
            int columns = Math.Min(file.PieceColumns, file.Frame.Columns);
            int rows = Math.Min(file.PieceRows, file.Frame.Rows);
            SoakFailureException.Require(file.ReadHeights(0, 0, columns, rows).Length == columns * rows, "not one height for each sample");
            if (file.CanBeCover)
            {
                file.ReadCover(0, 0, columns, rows);
            }
        }
        catch (GroundFileException fault)
        {
            SoakFailureException.Require(fault.Message.Contains(name, StringComparison.Ordinal) && fault.Found.Length > 0, $"a complaint without file or reason: {fault.Message}");
        }

        // And as a plan's source, where every fault is a problem of the library and none is thrown.
        using GroundLibrary library = GroundLibrary.Open(folder, [new() { Name = "soak", Files = [name] }], []);
        GroundMosaic mosaic = library.MosaicFor(new GeoPoint(50.2, 11.2), new GeoPoint(50.3, 11.4));
        SoakFailureException.Require(TerrainProfile.Extract(mosaic, new(50.2, 11.2), new(50.3, 11.4)).Count > 2, "no profile");
        library.Info();
    });

    /// <summary>Plain heights have no structure but their length: cut and lengthened files, and any heights at all.</summary>
    private static byte[] Plain(Random random, byte[] tile)
    {
        byte[] bytes = random.Next(3) == 0 ? new byte[Math.Max(0, TileBytes + random.Next(-3, 4))] : [.. tile];
        random.NextBytes(bytes.AsSpan(0, Math.Min(bytes.Length, random.Next(100_000))));
        return random.Next(3) == 0 ? bytes[..random.Next(bytes.Length)] : bytes;
    }

    private static byte[] Tile()
    {
        byte[] bytes = new byte[TileBytes];
        for (int i = 0; i < bytes.Length; i += 2)
        {
            bytes[i + 1] = (byte)(100 + (60 * Math.Sin(i * 0.0001)));
        }

        return bytes;
    }

    private static byte[] Zip(byte[] tile)
    {
        using MemoryStream packed = new();
        using (ZipArchive archive = new(packed, ZipArchiveMode.Create, leaveOpen: true))
        using (Stream entry = archive.CreateEntry("N50E011.hgt").Open())
        {
            entry.Write(tile);
        }

        return packed.ToArray();
    }

    private static byte[] GZip(byte[] tile)
    {
        using MemoryStream packed = new();
        using (GZipStream stream = new(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            stream.Write(tile);
        }

        return packed.ToArray();
    }

    private static byte[] Ascii()
    {
        StringBuilder text = new("ncols 70\nnrows 45\nxllcorner 8\nyllcorner 46\ncellsize 0.01\nNODATA_value -9999\n");
        for (int i = 0; i < 70 * 45; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{(i % 97 == 0 ? -9999 : i * 0.25)}{(i % 70 == 69 ? '\n' : ' ')}");
        }

        return Encoding.ASCII.GetBytes(text.ToString());
    }

    private static IEnumerable<byte[]> Tiffs(string folder)
    {
        (Compression Compression, Predictor Predictor, bool IsTiled, string Mode)[] kinds =
        [
            (Compression.NONE, Predictor.NONE, false, "w"),
            (Compression.NONE, Predictor.NONE, true, "w8"),
            (Compression.LZW, Predictor.HORIZONTAL, true, "w"),
            (Compression.LZW, Predictor.NONE, false, "wb"),
            (Compression.ADOBE_DEFLATE, Predictor.HORIZONTAL, true, "w"),
            (Compression.DEFLATE, Predictor.NONE, false, "w"),
        ];
        foreach ((Compression compression, Predictor predictor, bool isTiled, string mode) in kinds)
        {
            string path = Path.Combine(folder, "sound.tif");
            Write(path, compression, predictor, isTiled, mode);
            yield return File.ReadAllBytes(path);
            File.Delete(path);
        }

        byte[] codes = new byte[Frame.Columns * Frame.Rows];
        Array.Fill<byte>(codes, 10);
        string cover = Path.Combine(folder, "cover.tif");
        CoverTiffWriter.Write(cover, Frame, codes);
        yield return File.ReadAllBytes(cover);
        File.Delete(cover);
    }

    private static void Write(string path, Compression compression, Predictor predictor, bool isTiled, string mode)
    {
        const int block = 16;
        TiffGeoTags.Register();
        using Tiff tiff = Tiff.Open(path, mode) ?? throw new InvalidOperationException($"{path} cannot be written.");
        tiff.SetField(TiffTag.IMAGEWIDTH, Frame.Columns);
        tiff.SetField(TiffTag.IMAGELENGTH, Frame.Rows);
        tiff.SetField(TiffTag.BITSPERSAMPLE, 16);
        tiff.SetField(TiffTag.SAMPLESPERPIXEL, 1);
        tiff.SetField(TiffTag.SAMPLEFORMAT, SampleFormat.INT);
        tiff.SetField(TiffTag.PHOTOMETRIC, Photometric.MINISBLACK);
        tiff.SetField(TiffTag.PLANARCONFIG, PlanarConfig.CONTIG);
        tiff.SetField(TiffTag.COMPRESSION, compression);
        if (compression != Compression.NONE)
        {
            tiff.SetField(TiffTag.PREDICTOR, predictor);
        }

        if (isTiled)
        {
            tiff.SetField(TiffTag.TILEWIDTH, block);
            tiff.SetField(TiffTag.TILELENGTH, block);
        }
        else
        {
            tiff.SetField(TiffTag.ROWSPERSTRIP, block);
        }

        TiffGeoTags.Write(tiff, Frame, -9999);
        int blocks = isTiled ? tiff.NumberOfTiles() : tiff.NumberOfStrips();
        for (int i = 0; i < blocks; i++)
        {
            byte[] raw = new byte[isTiled ? tiff.TileSize() : Math.Min(block, Frame.Rows - (i * block)) * Frame.Columns * sizeof(short)];
            for (int b = 0; b < raw.Length; b += 2)
            {
                raw[b] = (byte)(i + b);
            }

            if ((isTiled ? tiff.WriteEncodedTile(i, raw, raw.Length) : tiff.WriteEncodedStrip(i, raw, raw.Length)) != raw.Length)
            {
                throw new InvalidOperationException($"Block {i} cannot be written.");
            }
        }
    }
}
