using System.Globalization;
using System.Runtime.InteropServices;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>
/// A GeoTIFF with one band: strips or tiles; 8-bit unsigned, 16-bit or 32-bit floating-point samples; not compressed, LZW or deflate
/// with any predictor. A cloud-optimised file is a plain tiled one; its overviews are not used.
/// </summary>
internal sealed class TiffFile : GroundFile
{
    private const int PieceSide = 1024;

    private readonly TiffLayout _layout;

    private TiffFile(string path, GridFrame frame, TiffLayout layout, string datum)
        : base(path, layout.IsTiled ? "GeoTIFF, tiles" : "GeoTIFF, strips", frame)
    {
        _layout = layout;
        Datum = datum;
        PieceColumns = layout.IsTiled ? Multiple(layout.BlockColumns, PieceSide, frame.Columns) : frame.Columns;
        int rows = layout.IsTiled ? PieceSide : Math.Max(1, PieceSide * PieceSide / frame.Columns);
        PieceRows = Multiple(layout.BlockRows, rows, frame.Rows);
    }

    /// <inheritdoc/>
    internal override string Datum { get; }

    /// <inheritdoc/>
    internal override int PieceColumns { get; }

    /// <inheritdoc/>
    internal override int PieceRows { get; }

    /// <inheritdoc/>
    internal override bool CanBeCover => _layout.SampleType == TiffSampleType.UInt8;

    internal static GroundFile Open(string path)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        TiffHeader header = TiffHeader.Read(path, file);
        TiffLayout layout = TiffLayout.Of(header, file.Length);
        GridFrame frame = TiffGeoReference.Frame(path, header, layout.Columns, layout.Rows);
        return new TiffFile(path, frame, layout, TiffGeoReference.Datum(header));
    }

    /// <inheritdoc/>
    internal override float[] ReadHeights(int column, int row, int columns, int rows) => GroundFileFormat.Guard(FilePath, Format, () =>
    {
        float[] heights = GC.AllocateUninitializedArray<float>(columns * rows);
        if (_layout.BlockBytes.Contains(0))
        {
            // What was never written is not known.
            Array.Fill(heights, float.NaN);
        }

        TiffBlocks.Read(FilePath, _layout, column, row, columns, rows, (block, from, count, to) =>
        {
            Convert(block, from, heights.AsSpan(to, count));
        });
        return heights;
    });

    /// <inheritdoc/>
    internal override byte[] ReadCover(int column, int row, int columns, int rows) => GroundFileFormat.Guard(FilePath, Format, () =>
    {
        if (!CanBeCover)
        {
            throw new GroundFileException(FilePath, "its samples are heights, not cover codes", "give a GeoTIFF of one unsigned byte a sample");
        }

        byte[] codes = new byte[columns * rows];
        TiffBlocks.Read(FilePath, _layout, column, row, columns, rows, (block, from, count, to) =>
        {
            block.AsSpan(from, count).CopyTo(codes.AsSpan(to, count));
        });
        if (_layout.NoData is > 0 and <= 255)
        {
            codes.AsSpan().Replace((byte)_layout.NoData.Value, (byte)0);
        }

        return codes;
    });

    private void Convert(byte[] block, int from, Span<float> to)
    {
        switch (_layout.SampleType)
        {
            case TiffSampleType.UInt8:
                for (int i = 0; i < to.Length; i++)
                {
                    to[i] = block[from + i];
                }

                break;
            case TiffSampleType.Int16:
                ReadOnlySpan<short> signed = MemoryMarshal.Cast<byte, short>(block).Slice(from, to.Length);
                for (int i = 0; i < to.Length; i++)
                {
                    to[i] = signed[i];
                }

                break;
            case TiffSampleType.UInt16:
                ReadOnlySpan<ushort> unsigned = MemoryMarshal.Cast<byte, ushort>(block).Slice(from, to.Length);
                for (int i = 0; i < to.Length; i++)
                {
                    to[i] = unsigned[i];
                }

                break;
            default:
                MemoryMarshal.Cast<byte, float>(block).Slice(from, to.Length).CopyTo(to);
                break;
        }

        if (_layout.NoData is double noData)
        {
            to.Replace((float)noData, float.NaN);
        }
    }

    /// <summary>A multiple of a block's side near the wanted one; all of a grid that is not much larger.</summary>
    private static int Multiple(int block, int wanted, int whole)
    {
        int side = Math.Max(1, wanted / block) * block;
        return whole <= side + (side / 4) ? whole : side;
    }
}
