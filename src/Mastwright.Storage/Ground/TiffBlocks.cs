using System.Buffers;
using System.Buffers.Binary;
using System.IO.Compression;
using System.Runtime.InteropServices;
using BitMiracle.LibTiff.Classic;
using Microsoft.Win32.SafeHandles;

namespace Mastwright.Storage.Ground;

/// <summary>Decodes the tiles or strips that a rectangle of samples needs.</summary>
internal static class TiffBlocks
{
    static TiffBlocks() => Tiff.SetErrorHandler(new Silence());

    /// <summary>Takes a run of samples of a decoded block: first sample in the block, count, first sample in the rectangle.</summary>
    internal delegate void TakeRun(byte[] block, int from, int count, int to);

    internal static void Read(string path, TiffLayout layout, int column, int row, int columns, int rows, TakeRun take)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);

        // c: a single long strip is left as it is, not shown as many short ones.
        using Tiff? tiff = layout.Packing != TiffPacking.Other ? null : Tiff.ClientOpen(path, "rc", file, new TiffStream())
            ?? throw new GroundFileException(path, "its directory cannot be decoded", "download or make it again");
        byte[] block = new byte[layout.BlockColumns * layout.BlockRows * layout.BytesPerSample];
        byte[] packed = layout.Packing is TiffPacking.Deflated or TiffPacking.DeflatedAfterPrediction ? new byte[Math.Max(1, Largest(layout, column, row, columns, rows))] : [];
        foreach ((int blockColumn, int blockRow, int index) in Blocks(layout, column, row, columns, rows))
        {
            int held = layout.IsTiled ? layout.BlockRows : Math.Min(layout.BlockRows, layout.Rows - (blockRow * layout.BlockRows));
            Span<byte> samples = block.AsSpan(0, held * layout.BlockColumns * layout.BytesPerSample);
            if (!(tiff is null ? Unpack(file.SafeFileHandle, layout, index, packed, samples) : Decode(tiff, layout, index, block, samples)))
            {
                throw new GroundFileException(path, $"tile or strip {index + 1} of it cannot be decoded", "it is damaged: download or make it again");
            }

            Copy(layout, block, blockColumn * layout.BlockColumns, blockRow * layout.BlockRows, column, row, columns, rows, take);
        }
    }

    /// <summary>The blocks of a rectangle that were written: which column and row of blocks, and which of all.</summary>
    private static IEnumerable<(int Column, int Row, int Index)> Blocks(TiffLayout layout, int column, int row, int columns, int rows)
    {
        for (int blockRow = row / layout.BlockRows; blockRow * layout.BlockRows < row + rows; blockRow++)
        {
            for (int blockColumn = column / layout.BlockColumns; blockColumn * layout.BlockColumns < column + columns; blockColumn++)
            {
                int index = (blockRow * layout.BlocksAcross) + blockColumn;
                if (layout.BlockBytes[index] != 0)
                {
                    yield return (blockColumn, blockRow, index);
                }
            }
        }
    }

    private static long Largest(TiffLayout layout, int column, int row, int columns, int rows) =>
        Blocks(layout, column, row, columns, rows).Select(block => layout.BlockBytes[block.Index]).DefaultIfEmpty().Max();

    /// <summary>Reads a block without the library; whether all of it was there.</summary>
    private static bool Unpack(SafeFileHandle file, TiffLayout layout, int index, byte[] packed, Span<byte> samples)
    {
        long bytes = layout.BlockBytes[index];
        if (layout.Packing == TiffPacking.Plain)
        {
            return bytes >= samples.Length && ReadAll(file, samples, layout.BlockPlaces[index]);
        }

        if (!ReadAll(file, packed.AsSpan(0, (int)bytes), layout.BlockPlaces[index]))
        {
            return false;
        }

        byte[]? rented = layout.Packing == TiffPacking.DeflatedAfterPrediction ? ArrayPool<byte>.Shared.Rent(samples.Length) : null;
        Span<byte> unpacked = rented is null ? samples : rented.AsSpan(0, samples.Length);
        bool isWhole = Inflate(packed, (int)bytes, unpacked);
        if (rented is not null)
        {
            FloatingPointPredictor.Decode(unpacked, layout.BlockColumns, samples);
            ArrayPool<byte>.Shared.Return(rented);
        }

        return isWhole;
    }

    private static bool ReadAll(SafeFileHandle file, Span<byte> into, long place)
    {
        for (int done = 0; done < into.Length;)
        {
            int read = RandomAccess.Read(file, into[done..], place + done);
            if (read == 0)
            {
                return false;
            }

            done += read;
        }

        return true;
    }

    private static bool Inflate(byte[] packed, int length, Span<byte> into)
    {
        using MemoryStream stream = new(packed, 0, length, writable: false);
        using ZLibStream inflated = new(stream, CompressionMode.Decompress);
        try
        {
            return inflated.ReadAtLeast(into, into.Length, throwOnEndOfStream: false) == into.Length;
        }
        catch (InvalidDataException)
        {
            return false;
        }
    }

    private static bool Decode(Tiff tiff, TiffLayout layout, int index, byte[] block, Span<byte> samples)
    {
        int got = layout.IsTiled ? tiff.ReadEncodedTile(index, block, 0, samples.Length) : tiff.ReadEncodedStrip(index, block, 0, samples.Length);
        if (got != samples.Length)
        {
            return false;
        }

        if (layout.IsSwappedTwice)
        {
            Span<int> words = MemoryMarshal.Cast<byte, int>(samples);
            BinaryPrimitives.ReverseEndianness(words, words);
        }

        return true;
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
