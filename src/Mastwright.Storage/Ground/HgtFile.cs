using System.Buffers.Binary;
using System.Globalization;
using System.IO.Compression;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Text.RegularExpressions;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>
/// A tile of one degree as 16-bit big-endian metres, row by row from the north-west, both edges included: 1201 × 1201 samples of
/// 3 arc-seconds or 3601 × 3601 of one; −32768 is a void. Plain, in a .zip or in a .gz. Its name starts with its south-western corner.
/// </summary>
internal sealed partial class HgtFile : GroundFile
{
    private const int BandRows = 256;
    private const int SmallSide = 1201;
    private const int LargestArchiveBytes = 64 * 1024 * 1024;
    private static readonly int[] Sides = [1201, 3601];

    private readonly Packing _packing;
    private readonly int _side;

    private HgtFile(string path, string format, GridFrame frame, Packing packing)
        : base(path, format, frame)
    {
        _packing = packing;
        _side = frame.Columns;
    }

    private enum Packing
    {
        Plain,
        Zip,
        GZip,
    }

    /// <inheritdoc/>
    internal override int PieceColumns => _side;

    /// <summary>A band of a large plain file; the whole of a small one, and of a packed one, which has to be unpacked from its start.</summary>
    internal override int PieceRows => _packing == Packing.Plain && _side > SmallSide ? BandRows : _side;

    /// <inheritdoc/>
    internal override bool HasCheapRows => _packing == Packing.Plain;

    internal static GroundFile Open(string path)
    {
        Packing packing = path.EndsWith(".zip", StringComparison.OrdinalIgnoreCase) ? Packing.Zip
            : path.EndsWith(".gz", StringComparison.OrdinalIgnoreCase) ? Packing.GZip
            : Packing.Plain;
        string name = Path.GetFileName(path);
        long length;
        string format;
        switch (packing)
        {
            case Packing.Zip:
                using (ZipArchive archive = OpenZip(path))
                {
                    ZipArchiveEntry entry = OnlyTile(path, archive);
                    length = entry.Length;
                    name = CornerName().IsMatch(name) ? name : entry.Name;
                }

                format = ".hgt in .zip";
                break;
            case Packing.GZip:
                length = UnpackedLength(path);
                format = ".hgt in .gz";
                break;
            default:
                length = new FileInfo(path).Length;
                format = ".hgt";
                break;
        }

        int side = SideOf(path, length);
        (int south, int west) = CornerOf(path, name);
        double step = 1.0 / (side - 1);
        return new HgtFile(path, format, GridFrame.Geographic(west, south + 1, step, step, side, side, samplesAreAreas: false), packing);
    }

    /// <inheritdoc/>
    internal override float[] ReadHeights(int column, int row, int columns, int rows) => GroundFileFormat.Guard(FilePath, Format, () =>
    {
        short[] band = GC.AllocateUninitializedArray<short>(_side * rows);
        Span<byte> bytes = MemoryMarshal.AsBytes(band.AsSpan());
        if (_packing == Packing.Plain)
        {
            ReadPlain(row, bytes);
        }
        else
        {
            ReadPacked(row, bytes);
        }

        if (BitConverter.IsLittleEndian)
        {
            BinaryPrimitives.ReverseEndianness(band, band);
        }

        float[] heights = GC.AllocateUninitializedArray<float>(columns * rows);
        for (int r = 0; r < rows; r++)
        {
            ReadOnlySpan<short> from = band.AsSpan((r * _side) + column, columns);
            Span<float> to = heights.AsSpan(r * columns, columns);
            Convert(from, to);
        }

        return heights;
    });

    private static void Convert(ReadOnlySpan<short> from, Span<float> to)
    {
        int i = 0;
        if (Vector128.IsHardwareAccelerated)
        {
            for (; i <= from.Length - Vector128<short>.Count; i += Vector128<short>.Count)
            {
                (Vector128<int> low, Vector128<int> high) = Vector128.Widen(Vector128.Create(from[i..]));
                Vector128.ConvertToSingle(low).CopyTo(to[i..]);
                Vector128.ConvertToSingle(high).CopyTo(to[(i + 4)..]);
            }
        }

        for (; i < from.Length; i++)
        {
            to[i] = from[i];
        }
    }

    private void ReadPlain(int row, Span<byte> bytes)
    {
        using FileStream file = new(FilePath, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
        if (file.Length != FullBytes)
        {
            SideOf(FilePath, file.Length);
        }

        file.Position = (long)row * _side * sizeof(short);
        file.ReadExactly(bytes);
    }

    private void ReadPacked(int row, Span<byte> bytes)
    {
        using ZipArchive? archive = _packing == Packing.Zip ? OpenZip(FilePath) : null;
        using Stream unpacked = archive is not null
            ? OnlyTile(FilePath, archive).Open()
            : new GZipStream(new FileStream(FilePath, FileMode.Open, FileAccess.Read, FileShare.Read), CompressionMode.Decompress);
        long before = (long)row * _side * sizeof(short);
        byte[] skipped = new byte[Math.Min(before, 1 << 16)];
        while (before > 0)
        {
            int part = (int)Math.Min(before, skipped.Length);
            unpacked.ReadExactly(skipped.AsSpan(0, part));
            before -= part;
        }

        unpacked.ReadExactly(bytes);
        if (row + (bytes.Length / (_side * sizeof(short))) == _side && unpacked.ReadByte() >= 0)
        {
            throw Wrong(FilePath, "it unpacks to more than one tile");
        }
    }

    private long FullBytes => (long)_side * _side * sizeof(short);

    private static ZipArchive OpenZip(string path)
    {
        FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        if (file.Length > LargestArchiveBytes)
        {
            file.Dispose();
            throw Wrong(path, string.Create(CultureInfo.InvariantCulture, $"it has {file.Length:N0} bytes, too many for one packed tile"));
        }

        return new(file, ZipArchiveMode.Read, leaveOpen: false);
    }

    private static ZipArchiveEntry OnlyTile(string path, ZipArchive archive)
    {
        ZipArchiveEntry[] tiles = [.. archive.Entries.Where(entry => entry.Name.EndsWith(".hgt", StringComparison.OrdinalIgnoreCase)).Take(2)];
        return tiles.Length == 1 ? tiles[0] : throw Wrong(path, tiles.Length == 0 ? "it holds no .hgt file" : "it holds more than one .hgt file");
    }

    /// <summary>The length that a .gz file states at its end. It is only a promise: reading checks it.</summary>
    private static long UnpackedLength(string path)
    {
        using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
        if (file.Length is < 18 or > LargestArchiveBytes)
        {
            throw Wrong(path, string.Create(CultureInfo.InvariantCulture, $"it has {file.Length:N0} bytes, which is no packed tile"));
        }

        Span<byte> four = stackalloc byte[4];
        file.Position = file.Length - 4;
        file.ReadExactly(four);
        return BinaryPrimitives.ReadUInt32LittleEndian(four);
    }

    private static int SideOf(string path, long bytes)
    {
        foreach (int side in Sides)
        {
            if (bytes == (long)side * side * sizeof(short))
            {
                return side;
            }
        }

        throw Wrong(path, string.Create(CultureInfo.InvariantCulture, $"its heights take {bytes:N0} bytes"));
    }

    private static (int South, int West) CornerOf(string path, string name)
    {
        Match match = CornerName().Match(name);
        if (match.Success)
        {
            int latitude = int.Parse(match.Groups["lat"].ValueSpan, CultureInfo.InvariantCulture) * (match.Groups["ns"].ValueSpan is "S" or "s" ? -1 : 1);
            int longitude = int.Parse(match.Groups["lon"].ValueSpan, CultureInfo.InvariantCulture) * (match.Groups["ew"].ValueSpan is "W" or "w" ? -1 : 1);
            if (latitude is >= -90 and < 90 && longitude is >= -180 and < 180)
            {
                return (latitude, longitude);
            }
        }

        throw new GroundFileException(
            path, $"the name '{name}' does not start with the south-western corner of a tile", "a name such as N46W019.hgt: north or south with two figures, east or west with three");
    }

    private static GroundFileException Wrong(string path, string found) => new(
        path, found, "a .hgt tile has exactly 2,884,802 bytes (1201 × 1201 samples, 3 arc-seconds) or 25,934,402 (3601 × 3601, 1 arc-second)");

    [GeneratedRegex(@"^(?<ns>[NnSs])(?<lat>\d\d)(?<ew>[EeWw])(?<lon>\d{3})(?!\d)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex CornerName();
}
