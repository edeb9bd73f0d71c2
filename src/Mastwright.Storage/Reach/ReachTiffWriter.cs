using System.Runtime.InteropServices;
using BitMiracle.LibTiff.Classic;
using Mastwright.Ground;
using Mastwright.Storage.Files;
using Mastwright.Storage.Ground;

namespace Mastwright.Storage.Reach;

/// <summary>Writes one number a cell as a tiled, deflated GeoTIFF of 32-bit floating-point samples.</summary>
public static class ReachTiffWriter
{
    /// <summary>The sample that stands for "no value".</summary>
    public const float NoData = -9999;

    private const int TileSide = 256;

    static ReachTiffWriter() => TiffGeoTags.Register();

    /// <summary>Writes a file beside its final name, then renames it: nothing half written is left behind.</summary>
    /// <param name="path">File to write; its folder exists.</param>
    /// <param name="frame">Where the cells lie.</param>
    /// <param name="values">Values row by row from the north-west; NaN where there is none.</param>
    /// <exception cref="ArgumentException">There is not one value for each cell of the frame.</exception>
    /// <exception cref="IOException">The file cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be written.</exception>
    public static void Write(string path, GridFrame frame, ReadOnlySpan<float> values)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(frame);
        if ((long)frame.Columns * frame.Rows != values.Length)
        {
            throw new ArgumentException($"A grid of {frame.Columns} × {frame.Rows} has one value for each cell, not {values.Length}.", nameof(values));
        }

        using WrittenBeside target = new(path);
        using (Tiff tiff = Tiff.ClientOpen(path, "w", target.Stream, new TiffStreamKeptOpen()) ?? throw new IOException($"{path} cannot be written."))
        {
            tiff.SetField(TiffTag.IMAGEWIDTH, frame.Columns);
            tiff.SetField(TiffTag.IMAGELENGTH, frame.Rows);
            tiff.SetField(TiffTag.BITSPERSAMPLE, 32);
            tiff.SetField(TiffTag.SAMPLESPERPIXEL, 1);
            tiff.SetField(TiffTag.SAMPLEFORMAT, SampleFormat.IEEEFP);
            tiff.SetField(TiffTag.PHOTOMETRIC, Photometric.MINISBLACK);
            tiff.SetField(TiffTag.PLANARCONFIG, PlanarConfig.CONTIG);
            tiff.SetField(TiffTag.COMPRESSION, Compression.ADOBE_DEFLATE);
            tiff.SetField(TiffTag.TILEWIDTH, TileSide);
            tiff.SetField(TiffTag.TILELENGTH, TileSide);
            TiffGeoTags.Write(tiff, frame, NoData);
            WriteTiles(path, tiff, frame, values);
        }

        target.Keep();
    }

    private static void WriteTiles(string path, Tiff tiff, GridFrame frame, ReadOnlySpan<float> values)
    {
        float[] tile = new float[TileSide * TileSide];
        byte[] bytes = new byte[tile.Length * sizeof(float)];
        for (int row = 0; row < frame.Rows; row += TileSide)
        {
            for (int column = 0; column < frame.Columns; column += TileSide)
            {
                Array.Fill(tile, NoData);
                int width = Math.Min(TileSide, frame.Columns - column);
                for (int r = 0; r < Math.Min(TileSide, frame.Rows - row); r++)
                {
                    Span<float> line = tile.AsSpan(r * TileSide, width);
                    values.Slice(((row + r) * frame.Columns) + column, width).CopyTo(line);
                    line.Replace(float.NaN, NoData);
                }

                MemoryMarshal.AsBytes<float>(tile).CopyTo(bytes);
                if (tiff.WriteEncodedTile(tiff.ComputeTile(column, row, 0, 0), bytes, bytes.Length) != bytes.Length)
                {
                    throw new IOException($"{path} cannot be written.");
                }
            }
        }
    }
}
