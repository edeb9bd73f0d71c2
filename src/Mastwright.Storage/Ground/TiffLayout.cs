using System.Globalization;

namespace Mastwright.Storage.Ground;

/// <summary>Kinds of sample that are read.</summary>
internal enum TiffSampleType
{
    UInt8,
    UInt16,
    Int16,
    Float32,
}

/// <summary>How the blocks of a file are packed.</summary>
internal enum TiffPacking
{
    /// <summary>In a way that is left to the library.</summary>
    Other,

    /// <summary>Not at all: samples in this machine's order.</summary>
    Plain,

    /// <summary>As one zlib stream each.</summary>
    Deflated,

    /// <summary>The same, of floating-point samples after the predictor of <see cref="FloatingPointPredictor"/>.</summary>
    DeflatedAfterPrediction,
}

/// <summary>How the samples of a TIFF file are laid out: only what can be read comes into being.</summary>
internal sealed record TiffLayout
{
    private const int MostSamplesABlock = 32 * 1024 * 1024;
    private const int MostBlocks = 4_000_000;

    internal required int Columns { get; init; }

    internal required int Rows { get; init; }

    internal required TiffSampleType SampleType { get; init; }

    internal required bool IsTiled { get; init; }

    /// <summary>Columns of a tile; those of the grid for strips.</summary>
    internal required int BlockColumns { get; init; }

    /// <summary>Rows of a tile or strip.</summary>
    internal required int BlockRows { get; init; }

    /// <summary>Bytes of each block in the file; 0 for a block that was never written.</summary>
    internal required long[] BlockBytes { get; init; }

    /// <summary>Where each block begins in the file.</summary>
    internal required long[] BlockPlaces { get; init; }

    /// <summary>How the blocks are packed.</summary>
    internal required TiffPacking Packing { get; init; }

    /// <summary>Whether the decoder hands floating-point samples over with their bytes the wrong way round.</summary>
    /// <remarks>
    /// The library swaps the bytes of a big-endian file once more after the floating-point predictor has already put them in order
    /// (seen with version 2.4.660).
    /// </remarks>
    internal bool IsSwappedTwice { get; init; }

    /// <summary>The sample that means "nothing known"; null when the file names none.</summary>
    internal double? NoData { get; init; }

    internal int BytesPerSample => SampleType switch
    {
        TiffSampleType.UInt8 => 1,
        TiffSampleType.Float32 => 4,
        _ => 2,
    };

    internal int BlocksAcross => (Columns + BlockColumns - 1) / BlockColumns;

    internal static TiffLayout Of(TiffHeader header, long fileLength)
    {
        int columns = Side(header, 256, "width");
        int rows = Side(header, 257, "height");
        TiffSampleType type = TypeOf(header);
        CheckCoding(header, type);
        bool isTiled = header.Has(322) || header.Has(324);
        int blockColumns = isTiled ? Side(header, 322, "tile width") : columns;
        int blockRows = isTiled ? Side(header, 323, "tile height") : (int)Math.Clamp(header.Number(278, rows), 1, rows);
        TiffLayout layout = new()
        {
            Columns = columns,
            Rows = rows,
            SampleType = type,
            IsTiled = isTiled,
            BlockColumns = blockColumns,
            BlockRows = blockRows,
            BlockBytes = header.Integers(isTiled ? 325 : 279),
            BlockPlaces = header.Integers(isTiled ? 324 : 273),
            Packing = PackingOf(header, type),
            IsSwappedTwice = !header.IsLittleEndian && header.Number(259, 1) != 1 && header.Number(317, 1) == 3,
            NoData = double.TryParse(header.Text(42113), NumberStyles.Float, CultureInfo.InvariantCulture, out double noData) ? noData : null,
        };
        layout.CheckBlocks(header, fileLength);
        return layout;
    }

    private static int Side(TiffHeader header, int tag, string name)
    {
        long side = header.Number(tag, 0);
        return side is >= 1 and <= Mastwright.Ground.GridFrame.MostSamplesASide
            ? (int)side
            : throw header.Wrong(string.Create(CultureInfo.InvariantCulture, $"its {name} is {side}"));
    }

    private static TiffSampleType TypeOf(TiffHeader header)
    {
        long bits = header.Number(258, 1);
        long format = header.Number(339, 1);
        long bands = header.Number(277, 1);
        if (bands != 1)
        {
            throw header.Wrong(string.Create(CultureInfo.InvariantCulture, $"it has {bands} bands"));
        }

        return (bits, format) switch
        {
            (8, 1) => TiffSampleType.UInt8,
            (16, 1) => TiffSampleType.UInt16,
            (16, 2) => TiffSampleType.Int16,
            (32, 3) => TiffSampleType.Float32,
            _ => throw header.Wrong(
                $"its sample type ({SampleTypeName(bits, format)}) is not read",
                "what is read is 8 bits unsigned, 16 bits with or without sign, and 32 bits floating-point; convert it, for example by gdal_translate -ot Float32 (cover: -ot Byte)"),
        };
    }

    private static string SampleTypeName(long bits, long format) => string.Create(CultureInfo.InvariantCulture, $"{bits} bits {(format switch
    {
        1 => "unsigned",
        2 => "with sign",
        3 => "floating-point",
        5 or 6 => "complex",
        _ => "of an unknown kind",
    })}");

    private static void CheckCoding(TiffHeader header, TiffSampleType type)
    {
        long compression = header.Number(259, 1);
        string unread = compression switch
        {
            1 or 5 or 8 or 32946 => "",
            7 or 6 => "JPEG",
            32773 => "PackBits",
            34887 => "LERC",
            34925 => "LZMA",
            50000 => "ZSTD",
            50001 => "WebP",
            _ => string.Create(CultureInfo.InvariantCulture, $"kind {compression}"),
        };
        if (unread.Length > 0)
        {
            throw header.Wrong(
                $"its compression ({unread}) is not read", "what is read is none, LZW and deflate; rewrite it, for example by gdal_translate -co COMPRESS=DEFLATE");
        }

        long predictor = compression == 1 ? 1 : header.Number(317, 1);
        if (predictor is not (1 or 2 or 3) || (predictor == 3) != (predictor == 3 && type == TiffSampleType.Float32))
        {
            throw header.Wrong(string.Create(CultureInfo.InvariantCulture, $"its predictor {predictor} does not fit its samples"));
        }
    }

    /// <summary>Plain and deflated samples are read by the framework: several times as fast as by the library, which runs in managed code.</summary>
    private static TiffPacking PackingOf(TiffHeader header, TiffSampleType type)
    {
        bool isOrdered = type == TiffSampleType.UInt8 || header.IsLittleEndian == BitConverter.IsLittleEndian;
        return (header.Number(259, 1), header.Number(317, 1)) switch
        {
            (1, _) when isOrdered => TiffPacking.Plain,
            (8 or 32946, 1) when isOrdered => TiffPacking.Deflated,
            (8 or 32946, 3) when header.IsLittleEndian && FloatingPointPredictor.Suits<float>() => TiffPacking.DeflatedAfterPrediction,
            _ => TiffPacking.Other,
        };
    }

    private void CheckBlocks(TiffHeader header, long fileLength)
    {
        if ((long)BlockColumns * BlockRows > MostSamplesABlock)
        {
            throw header.Wrong($"one tile or strip of it holds {BlockColumns} × {BlockRows} samples, too many to read at once; make it tiled");
        }

        long blocks = (long)BlocksAcross * ((Rows + BlockRows - 1) / BlockRows);
        if (blocks > MostBlocks || BlockPlaces.Length < blocks || BlockBytes.Length < blocks)
        {
            throw header.Wrong("its list of tiles or strips is too short for its size: it was cut off or damaged");
        }

        for (int i = 0; i < blocks; i++)
        {
            if (BlockPlaces[i] > fileLength - BlockBytes[i])
            {
                throw header.Wrong(string.Create(CultureInfo.InvariantCulture, $"tile or strip {i + 1} of {blocks} lies past the end of the file: it was cut off"));
            }
        }
    }
}
