using System.Buffers.Binary;
using System.Runtime.InteropServices;
using BitMiracle.LibTiff.Classic;

namespace Mastwright.Storage.Ground;

/// <summary>Decodes the tiles or strips that a rectangle of samples needs.</summary>
internal static class TiffBlocks
{
    static TiffBlocks() => Tiff.SetErrorHandler(new Silence());

    /// <summary>Takes a run of samples of a decoded block: first sample in the block, count, first sample in the rectangle.</summary>
    internal delegate void TakeRun(byte[] block, int from, int count, int to);

    internal static void Read(string path, TiffLayout layout, int column, int row, int columns, int rows, TakeRun take)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        // c: a single long strip is left as it is, not shown as many short ones.
        using Tiff tiff = Tiff.ClientOpen(path, "rc", file, new TiffStream())
            ?? throw new GroundFileException(path, "its directory cannot be decoded", "download or make it again");
        byte[] block = new byte[layout.BlockColumns * layout.BlockRows * layout.BytesPerSample];
        for (int blockRow = row / layout.BlockRows; blockRow * layout.BlockRows < row + rows; blockRow++)
        {
            for (int blockColumn = column / layout.BlockColumns; blockColumn * layout.BlockColumns < column + columns; blockColumn++)
            {
                int index = (blockRow * layout.BlocksAcross) + blockColumn;
                if (layout.BlockBytes[index] == 0)
                {
                    continue;
                }

                Decode(path, tiff, layout, index, blockRow, block);
                Copy(layout, block, blockColumn * layout.BlockColumns, blockRow * layout.BlockRows, column, row, columns, rows, take);
            }
        }
    }

    private static void Decode(string path, Tiff tiff, TiffLayout layout, int index, int blockRow, byte[] block)
    {
        int rows = layout.IsTiled ? layout.BlockRows : Math.Min(layout.BlockRows, layout.Rows - (blockRow * layout.BlockRows));
        int wanted = rows * layout.BlockColumns * layout.BytesPerSample;
        int got = layout.IsTiled ? tiff.ReadEncodedTile(index, block, 0, wanted) : tiff.ReadEncodedStrip(index, block, 0, wanted);
        if (got != wanted)
        {
            throw new GroundFileException(path, $"tile or strip {index + 1} of it cannot be decoded", "it is damaged: download or make it again");
        }

        if (layout.IsSwappedTwice)
        {
            Span<int> words = MemoryMarshal.Cast<byte, int>(block.AsSpan(0, wanted));
            BinaryPrimitives.ReverseEndianness(words, words);
        }
    }

    private static void Copy(
        TiffLayout layout, byte[] block, int blockColumn, int blockRow, int column, int row, int columns, int rows, TakeRun take)
    {
        int firstColumn = Math.Max(column, blockColumn);
        int lastColumn = Math.Min(Math.Min(column + columns, blockColumn + layout.BlockColumns), layout.Columns);
        int lastRow = Math.Min(Math.Min(row + rows, blockRow + layout.BlockRows), layout.Rows);
        for (int r = Math.Max(row, blockRow); r < lastRow; r++)
        {
            int from = ((r - blockRow) * layout.BlockColumns) + firstColumn - blockColumn;
            take(block, from, lastColumn - firstColumn, ((r - row) * columns) + firstColumn - column);
        }
    }

    /// <summary>The library writes its complaints to the console; ours go to whoever asked.</summary>
    private sealed class Silence : TiffErrorHandler
    {
        public override void ErrorHandler(Tiff tif, string method, string format, params object[] args)
        {
        }

        public override void ErrorHandlerExt(Tiff tif, object clientData, string method, string format, params object[] args)
        {
        }

        public override void WarningHandler(Tiff tif, string method, string format, params object[] args)
        {
        }

        public override void WarningHandlerExt(Tiff tif, object clientData, string method, string format, params object[] args)
        {
        }
    }
}
