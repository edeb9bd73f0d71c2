using BitMiracle.LibTiff.Classic;
using Mastwright.Ground;
using Mastwright.Storage.Files;

namespace Mastwright.Storage.Ground;

/// <summary>Writes cover codes as a tiled, deflated GeoTIFF.</summary>
public static class CoverTiffWriter
{
    private const int TileSide = 256;

    static CoverTiffWriter() => TiffGeoTags.Register();

    /// <summary>Writes a file beside its final name, then renames it: nothing half written is left behind.</summary>
    /// <param name="path">File to write; its folder exists.</param>
    /// <param name="frame">Where the codes lie.</param>
    /// <param name="codes">Codes row by row from the north-west; 0 where nothing is known.</param>
    /// <exception cref="ArgumentException">There is not one code for each sample of the frame.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    public static void Write(string path, GridFrame frame, ReadOnlySpan<byte> codes)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(frame);
        if ((long)frame.Columns * frame.Rows != codes.Length)
        {
            throw new ArgumentException($"A grid of {frame.Columns} × {frame.Rows} has one code for each sample, not {codes.Length}.", nameof(codes));
        }

        using WrittenBeside target = new(path);
        using (Tiff tiff = Tiff.ClientOpen(path, "w", target.Stream, new TiffStreamKeptOpen()) ?? throw new IOException($"{path} cannot be written."))
        {
            tiff.SetField(TiffTag.IMAGEWIDTH, frame.Columns);
            tiff.SetField(TiffTag.IMAGELENGTH, frame.Rows);
            tiff.SetField(TiffTag.BITSPERSAMPLE, 8);
            tiff.SetField(TiffTag.SAMPLESPERPIXEL, 1);
            tiff.SetField(TiffTag.SAMPLEFORMAT, SampleFormat.UINT);
            tiff.SetField(TiffTag.PHOTOMETRIC, Photometric.MINISBLACK);
            tiff.SetField(TiffTag.PLANARCONFIG, PlanarConfig.CONTIG);
            tiff.SetField(TiffTag.COMPRESSION, Compression.ADOBE_DEFLATE);
            tiff.SetField(TiffTag.TILEWIDTH, TileSide);
            tiff.SetField(TiffTag.TILELENGTH, TileSide);
            TiffGeoTags.Write(tiff, frame);
            WriteTiles(path, tiff, frame, codes);
        }

        target.Keep();
    }

    private static void WriteTiles(string path, Tiff tiff, GridFrame frame, ReadOnlySpan<byte> codes)
    {
        byte[] tile = new byte[TileSide * TileSide];
        for (int row = 0; row < frame.Rows; row += TileSide)
        {
            for (int column = 0; column < frame.Columns; column += TileSide)
            {
                Array.Clear(tile);
                int width = Math.Min(TileSide, frame.Columns - column);
                for (int r = 0; r < Math.Min(TileSide, frame.Rows - row); r++)
                {
                    codes.Slice(((row + r) * frame.Columns) + column, width).CopyTo(tile.AsSpan(r * TileSide));
                }

                if (tiff.WriteEncodedTile(tiff.ComputeTile(column, row, 0, 0), tile, tile.Length) != tile.Length)
                {
                    throw new IOException($"{path} cannot be written.");
                }
            }
        }
    }
}
