using System.Buffers.Binary;
using System.Globalization;

namespace Mastwright.Storage.Ground;

/// <summary>The first directory of a TIFF or BigTIFF file, read with every count and place checked against the file's length.</summary>
/// <remarks>
/// Read by ourselves so that a damaged file is refused before a decoder sees it, and so that listing a folder needs no decoder.
/// Source: TIFF revision 6.0; BigTIFF is the same with 64-bit counts and places.
/// </remarks>
internal sealed class TiffHeader
{
    private const int MostEntries = 1_000;
    private const int MostValueBytes = 64 * 1024 * 1024;

    private readonly string _path;
    private readonly Stream _file;
    private readonly Dictionary<int, Entry> _entries = [];
    private readonly bool _isBig;

    private TiffHeader(string path, Stream file)
    {
        _path = path;
        _file = file;
        Span<byte> head = stackalloc byte[16];
        file.ReadExactly(head[..8]);
        IsLittleEndian = head[0] == 'I' && head[1] == 'I';
        if (!IsLittleEndian && !(head[0] == 'M' && head[1] == 'M'))
        {
            throw Wrong("it does not start like a TIFF file");
        }

        int version = U16(head[2..]);
        _isBig = version == 43;
        if (version is not (42 or 43))
        {
            throw Wrong("it does not start like a TIFF file");
        }

        long directory;
        if (_isBig)
        {
            file.ReadExactly(head[8..16]);
            directory = I64(head[8..]);
        }
        else
        {
            directory = U32(head[4..]);
        }

        ReadDirectory(directory);
    }

    internal bool IsLittleEndian { get; }

    internal static TiffHeader Read(string path, Stream file) => new(path, file);

    internal bool Has(int tag) => _entries.ContainsKey(tag);

    /// <summary>The only or first number of a tag.</summary>
    internal long Number(int tag, long absent) => _entries.TryGetValue(tag, out Entry entry) && entry.Count > 0 ? Integers(tag)[0] : absent;

    /// <summary>The whole numbers of a tag; empty when it is absent.</summary>
    internal long[] Integers(int tag)
    {
        if (!_entries.TryGetValue(tag, out Entry entry))
        {
            return [];
        }

        byte[] bytes = Bytes(entry);
        long[] values = new long[entry.Count];
        for (int i = 0; i < values.Length; i++)
        {
            ReadOnlySpan<byte> at = bytes.AsSpan(i * Size(entry.Type));
            values[i] = entry.Type switch
            {
                1 or 7 => at[0],
                3 => U16(at),
                4 or 13 => U32(at),
                16 or 18 => I64(at),
                _ => throw Wrong($"its tag {tag} is of type {entry.Type}, not a whole number"),
            };
            if (values[i] < 0)
            {
                throw Wrong($"its tag {tag} is out of range");
            }
        }

        return values;
    }

    /// <summary>The 64-bit floating-point numbers of a tag; empty when it is absent.</summary>
    internal double[] Doubles(int tag)
    {
        if (!_entries.TryGetValue(tag, out Entry entry))
        {
            return [];
        }

        if (entry.Type != 12)
        {
            throw Wrong($"its tag {tag} is of type {entry.Type}, not a 64-bit floating-point number");
        }

        byte[] bytes = Bytes(entry);
        double[] values = new double[entry.Count];
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = BitConverter.Int64BitsToDouble(I64(bytes.AsSpan(i * 8)));
        }

        return values;
    }

    /// <summary>The text of a tag; empty when it is absent.</summary>
    internal string Text(int tag) => _entries.TryGetValue(tag, out Entry entry) && entry.Type == 2
        ? System.Text.Encoding.ASCII.GetString(Bytes(entry)).Trim('\0', ' ')
        : "";

    internal GroundFileException Wrong(string found, string right = "give a GeoTIFF with one band, geographic WGS 84 or UTM") =>
        new(_path, found, right);

    private static int Size(int type) => type switch
    {
        1 or 2 or 6 or 7 => 1,
        3 or 8 => 2,
        4 or 9 or 11 or 13 => 4,
        5 or 10 or 12 or 16 or 17 or 18 => 8,
        _ => 0,
    };

    private void ReadDirectory(long place)
    {
        int entryBytes = _isBig ? 20 : 12;
        int countBytes = _isBig ? 8 : 2;
        byte[] counted = At(place, countBytes);
        long entries = _isBig ? I64(counted) : U16(counted);
        if (entries is < 1 or > MostEntries)
        {
            throw Wrong(string.Create(CultureInfo.InvariantCulture, $"its directory has {entries} entries"));
        }

        byte[] all = At(place + countBytes, entries * entryBytes);
        for (int i = 0; i < entries; i++)
        {
            ReadOnlySpan<byte> raw = all.AsSpan(i * entryBytes, entryBytes);
            int tag = U16(raw);
            int type = U16(raw[2..]);
            long count = _isBig ? I64(raw[4..]) : U32(raw[4..]);
            int size = Size(type);
            int inline = _isBig ? 8 : 4;
            ReadOnlySpan<byte> value = raw[(_isBig ? 12 : 8)..];
            if (count < 0 || count > MostValueBytes / Math.Max(1, size))
            {
                throw Wrong(string.Create(CultureInfo.InvariantCulture, $"its tag {tag} claims {count} values"));
            }

            long bytes = count * size;
            long where = _isBig ? I64(value) : U32(value);
            if (bytes > inline && (where < 0 || where > _file.Length - bytes))
            {
                throw Wrong($"its tag {tag} points past the end of the file: it was cut off or damaged");
            }

            if (size > 0 && !_entries.TryAdd(tag, new(type, (int)count, bytes > inline ? where : -1, value[..inline].ToArray())))
            {
                throw Wrong($"its directory holds tag {tag} twice");
            }
        }
    }

    private byte[] Bytes(Entry entry)
    {
        int bytes = entry.Count * Size(entry.Type);
        return entry.Place < 0 ? entry.Inline : At(entry.Place, bytes);
    }

    private byte[] At(long place, long bytes)
    {
        if (place < 0 || bytes > MostValueBytes || place > _file.Length - bytes)
        {
            throw Wrong("its directory lies past the end of the file: it was cut off or damaged");
        }

        byte[] buffer = new byte[bytes];
        _file.Position = place;
        _file.ReadExactly(buffer);
        return buffer;
    }

    private ushort U16(ReadOnlySpan<byte> at) =>
        IsLittleEndian ? BinaryPrimitives.ReadUInt16LittleEndian(at) : BinaryPrimitives.ReadUInt16BigEndian(at);

    private uint U32(ReadOnlySpan<byte> at) =>
        IsLittleEndian ? BinaryPrimitives.ReadUInt32LittleEndian(at) : BinaryPrimitives.ReadUInt32BigEndian(at);

    private long I64(ReadOnlySpan<byte> at) =>
        IsLittleEndian ? BinaryPrimitives.ReadInt64LittleEndian(at) : BinaryPrimitives.ReadInt64BigEndian(at);

    private readonly record struct Entry(int Type, int Count, long Place, byte[] Inline);
}
