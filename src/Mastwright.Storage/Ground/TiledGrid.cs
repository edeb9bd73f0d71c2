using System.Buffers;
using System.IO.Compression;
using System.Runtime.InteropServices;
using BitMiracle.LibTiff.Classic;
using Mastwright.Ground;
using Mastwright.Storage.Files;

namespace Mastwright.Storage.Ground;

/// <summary>Writes a grid of one value a sample as a tiled, deflated GeoTIFF.</summary>
internal static class TiledGrid
{
    private const int TileSide = 256;

    static TiledGrid() => TiffGeoTags.Register();

    /// <summary>Writes a file beside its final name, then renames it: nothing half written is left behind.</summary>
    /// <param name="path">File to write; its folder exists.</param>
    /// <param name="frame">Where the samples lie.</param>
    /// <param name="values">Values row by row from the north-west.</param>
    /// <param name="format">What a sample is.</param>
    /// <param name="absent">The value that says "nothing here" in <paramref name="values"/>.</param>
    /// <param name="stored">What the file holds in its place, and beyond the grid in the tiles at its edge.</param>
    /// <param name="noData">The sample that the file declares as "no value"; null for none.</param>
    internal static void Write<T>(string path, GridFrame frame, ReadOnlyMemory<T> values, SampleFormat format, T absent, T stored, double? noData = null)
        where T : unmanaged, IEquatable<T>
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(frame);
        if ((long)frame.Columns * frame.Rows != values.Length)
        {
            throw new ArgumentException($"A grid of {frame.Columns} × {frame.Rows} has one value for each sample, not {values.Length}.", nameof(values));
        }

        Write(path, frame, (row, rows) => values.Slice(row * frame.Columns, rows * frame.Columns), format, absent, stored, noData);
    }

    /// <summary>The same, with the values asked for a row of tiles at a time, from the north: they need not fit into memory together.</summary>
    /// <inheritdoc cref="Write{T}(string, GridFrame, ReadOnlyMemory{T}, SampleFormat, T, T, double?)"/>
    internal static void Write<T>(string path, GridFrame frame, Func<int, int, ReadOnlyMemory<T>> valuesOf, SampleFormat format, T absent, T stored, double? noData = null)
        where T : unmanaged, IEquatable<T>
    {
        using WrittenBeside target = new(path);
        using (Tiff tiff = Tiff.ClientOpen(path, "w", target.Stream, new TiffStreamKeptOpen()) ?? throw new IOException($"{path} cannot be written."))
        {
            tiff.SetField(TiffTag.IMAGEWIDTH, frame.Columns);
            tiff.SetField(TiffTag.IMAGELENGTH, frame.Rows);
            tiff.SetField(TiffTag.BITSPERSAMPLE, 8 * Marshal.SizeOf<T>());
            tiff.SetField(TiffTag.SAMPLESPERPIXEL, 1);
            tiff.SetField(TiffTag.SAMPLEFORMAT, format);
            tiff.SetField(TiffTag.PHOTOMETRIC, Photometric.MINISBLACK);
            tiff.SetField(TiffTag.PLANARCONFIG, PlanarConfig.CONTIG);
            tiff.SetField(TiffTag.COMPRESSION, Compression.ADOBE_DEFLATE);
            if (FloatingPointPredictor.Suits<T>())
            {
                tiff.SetField(TiffTag.PREDICTOR, Predictor.FLOATINGPOINT);
            }

            tiff.SetField(TiffTag.TILEWIDTH, TileSide);
            tiff.SetField(TiffTag.TILELENGTH, TileSide);
            TiffGeoTags.Write(tiff, frame, noData);
            WriteTiles(path, tiff, frame, valuesOf, absent, stored);
        }

        target.Keep();
    }

    private static void WriteTiles<T>(string path, Tiff tiff, GridFrame frame, Func<int, int, ReadOnlyMemory<T>> valuesOf, T absent, T stored)
        where T : unmanaged, IEquatable<T>
    {
        // Tiles are packed a row of them at a time on all cores, while the row before is written; in order, so the same bytes whatever the number of threads.
        int across = (frame.Columns + TileSide - 1) / TileSide;
        TilePacker<T>[] packing = [.. Enumerable.Range(0, across).Select(_ => new TilePacker<T>(absent, stored))];
        TilePacker<T>[] packed = [.. Enumerable.Range(0, across).Select(_ => new TilePacker<T>(absent, stored))];
        Task writing = Task.CompletedTask;
        try
        {
            for (int row = 0; row < frame.Rows; row += TileSide)
            {
                int rows = Math.Min(TileSide, frame.Rows - row);
                ReadOnlyMemory<T> values = valuesOf(row, rows);
                TilePacker<T>[] packers = packing;
                Parallel.For(0, across, i => packers[i].Pack(frame, values.Span, i * TileSide, rows));
                writing.GetAwaiter().GetResult();
                (packing, packed) = (packed, packing);
                int first = row;
                writing = Task.Run(() => WriteRow(path, tiff, packers, first));
            }
        }
        finally
        {
            // Nobody may close the file while it is written.
            writing.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing).GetAwaiter().GetResult();
        }

        writing.GetAwaiter().GetResult();
    }

    private static void WriteRow<T>(string path, Tiff tiff, TilePacker<T>[] packers, int row)
        where T : unmanaged, IEquatable<T>
    {
        for (int i = 0; i < packers.Length; i++)
        {
            if (tiff.WriteRawTile(tiff.ComputeTile(i * TileSide, row, 0, 0), packers[i].Bytes, 0, packers[i].Length) != packers[i].Length)
            {
                throw new IOException($"{path} cannot be written.");
            }
        }
    }

    /// <summary>Packs tiles with the framework's own deflate: several times as fast as that of the library, which runs in managed code.</summary>
    private sealed class TilePacker<T>(T absent, T stored)
        where T : unmanaged, IEquatable<T>
    {
        /// <summary>The last tile, packed: the first <see cref="Length"/> of these. What cannot be packed grows by far less than an eighth.</summary>
        internal byte[] Bytes { get; } = new byte[(TileSide * TileSide * Marshal.SizeOf<T>() * 9 / 8) + 64];

        internal int Length { get; private set; }

        internal void Pack(GridFrame frame, ReadOnlySpan<T> values, int column, int rows)
        {
            T[] rented = ArrayPool<T>.Shared.Rent(TileSide * TileSide);
            Span<T> tile = rented.AsSpan(0, TileSide * TileSide);
            int width = Math.Min(TileSide, frame.Columns - column);
            if (width < TileSide || rows < TileSide)
            {
                tile.Fill(stored);
            }

            for (int r = 0; r < rows; r++)
            {
                Span<T> line = tile.Slice(r * TileSide, width);
                values.Slice((r * frame.Columns) + column, width).CopyTo(line);
                line.Replace(absent, stored);
            }

            Deflate(MemoryMarshal.AsBytes(tile));
            ArrayPool<T>.Shared.Return(rented);
        }

        private void Deflate(ReadOnlySpan<byte> samples)
        {
            byte[] predicted = [];
            if (FloatingPointPredictor.Suits<T>())
            {
                predicted = ArrayPool<byte>.Shared.Rent(samples.Length);
                FloatingPointPredictor.Encode(samples, TileSide, predicted);
                samples = predicted.AsSpan(0, samples.Length);
            }

            using MemoryStream packed = new(Bytes);
            using (ZLibStream deflate = new(packed, CompressionLevel.Fastest, leaveOpen: true))
            {
                deflate.Write(samples);
            }

            if (predicted.Length > 0)
            {
                ArrayPool<byte>.Shared.Return(predicted);
            }

            Length = (int)packed.Position;
        }
    }
}
