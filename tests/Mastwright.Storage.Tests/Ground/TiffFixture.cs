using System.Runtime.InteropServices;
using BitMiracle.LibTiff.Classic;
using Mastwright.Ground;
using Mastwright.Storage.Ground;

namespace Mastwright.Storage.Tests.Ground;

/// <summary>Writes GeoTIFF files of every kind that is read, through the library that other programs use.</summary>
internal static class TiffFixture
{
    internal static void Write<T>(
        string path, GridFrame frame, T[] samples, Compression compression, Predictor predictor, int block, bool tiled, double? noData = null, string mode = "w")
        where T : unmanaged
    {
        TiffGeoTags.Register();
        using Tiff tiff = Tiff.Open(path, mode);
        int bytes = Marshal.SizeOf<T>();
        tiff.SetField(TiffTag.IMAGEWIDTH, frame.Columns);
        tiff.SetField(TiffTag.IMAGELENGTH, frame.Rows);
        tiff.SetField(TiffTag.BITSPERSAMPLE, 8 * bytes);
        tiff.SetField(TiffTag.SAMPLESPERPIXEL, 1);
        tiff.SetField(TiffTag.SAMPLEFORMAT, samples is float[] or double[] ? SampleFormat.IEEEFP : samples is short[] or int[] ? SampleFormat.INT : SampleFormat.UINT);
        tiff.SetField(TiffTag.PHOTOMETRIC, Photometric.MINISBLACK);
        tiff.SetField(TiffTag.PLANARCONFIG, PlanarConfig.CONTIG);
        tiff.SetField(TiffTag.COMPRESSION, compression);
        if (compression != Compression.NONE)
        {
            tiff.SetField(TiffTag.PREDICTOR, predictor);
        }

        if (tiled)
        {
            tiff.SetField(TiffTag.TILEWIDTH, block);
            tiff.SetField(TiffTag.TILELENGTH, block);
        }
        else
        {
            tiff.SetField(TiffTag.ROWSPERSTRIP, block);
        }

        TiffGeoTags.Write(tiff, frame, noData);
        int blockColumns = tiled ? block : frame.Columns;
        for (int row = 0; row < frame.Rows; row += block)
        {
            for (int column = 0; column < frame.Columns; column += blockColumns)
            {
                int rows = tiled ? block : Math.Min(block, frame.Rows - row);
                T[] part = new T[blockColumns * rows];
                for (int r = 0; r < Math.Min(rows, frame.Rows - row); r++)
                {
                    samples.AsSpan(((row + r) * frame.Columns) + column, Math.Min(blockColumns, frame.Columns - column)).CopyTo(part.AsSpan(r * blockColumns));
                }

                byte[] raw = MemoryMarshal.AsBytes(part.AsSpan()).ToArray();
                int written = tiled
                    ? tiff.WriteEncodedTile(tiff.ComputeTile(column, row, 0, 0), raw, raw.Length)
                    : tiff.WriteEncodedStrip(row / block, raw, raw.Length);
                Assert.Equal(raw.Length, written);
            }
        }
    }
}
