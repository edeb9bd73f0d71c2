using System.Buffers.Binary;
using System.IO.Compression;
using System.Runtime.InteropServices;

namespace Mastwright.Tests.Propagation.Area;

/// <summary>Real heights of the reference folder, as plain numbers.</summary>
internal static class RealTiles
{
    private const int Side = 1201;

    /// <summary>The samples of a zipped or plain tile of 1201 × 1201, or of a GeoTIFF of that size, in metres; the test is skipped where the file is absent.</summary>
    internal static short[] Heights(string file)
    {
        string path = TestPlaces.Reference("terrain", file);
        if (file.EndsWith(".tif", StringComparison.Ordinal))
        {
            return ReadTiff(File.ReadAllBytes(path));
        }

        using Stream stream = File.OpenRead(path);
        if (!file.EndsWith(".zip", StringComparison.Ordinal))
        {
            return Read(stream);
        }

        using ZipArchive archive = new(stream);
        using Stream entry = archive.Entries[0].Open();
        return Read(entry);
    }

    private static short[] Read(Stream stream)
    {
        byte[] bytes = new byte[Side * Side * 2];
        stream.ReadExactly(bytes);
        short[] heights = new short[Side * Side];
        for (int i = 0; i < heights.Length; i++)
        {
            heights[i] = BinaryPrimitives.ReadInt16BigEndian(bytes.AsSpan(2 * i));
        }

        return heights;
    }

    /// <summary>The samples with each void on a straight line along its row between the heights beside it.</summary>
    internal static short[] Filled(short[] heights, short noData)
    {
        short[] filled = [.. heights];
        for (int row = 0; row < Side; row++)
        {
            Span<short> line = filled.AsSpan(row * Side, Side);
            int known = -1;
            for (int column = 0; column <= Side; column++)
            {
                if (column < Side && line[column] == noData)
                {
                    continue;
                }

                for (int gap = known + 1; gap < column; gap++)
                {
                    double west = known < 0 ? line[column] : line[known];
                    double east = column == Side ? west : line[column];
                    line[gap] = (short)Math.Round(west + ((east - west) * (gap - known) / (column - known)));
                }

                known = column;
            }
        }

        return filled;
    }

    /// <summary>TIFF 6.0, as plain as it comes: little-endian, one band of 16-bit samples in strips, not compressed.</summary>
    private static short[] ReadTiff(byte[] file)
    {
        int directory = BinaryPrimitives.ReadInt32LittleEndian(file.AsSpan(4));
        int strips = 0;
        (int offsets, int counts) = (0, 0);
        for (int i = 0; i < BinaryPrimitives.ReadUInt16LittleEndian(file.AsSpan(directory)); i++)
        {
            ReadOnlySpan<byte> tag = file.AsSpan(directory + 2 + (12 * i), 12);
            int value = BinaryPrimitives.ReadInt32LittleEndian(tag[8..]);
            switch (BinaryPrimitives.ReadUInt16LittleEndian(tag))
            {
                case 256 or 257:
                    Assert.Equal(Side, (short)value);
                    break;
                case 259:
                    Assert.Equal(1, (short)value);
                    break;
                case 273:
                    strips = BinaryPrimitives.ReadInt32LittleEndian(tag[4..]);
                    offsets = value;
                    break;
                case 279:
                    counts = value;
                    break;
                default:
                    break;
            }
        }

        List<byte> samples = new(Side * Side * 2);
        for (int strip = 0; strip < strips; strip++)
        {
            samples.AddRange(file.AsSpan(
                BinaryPrimitives.ReadInt32LittleEndian(file.AsSpan(offsets + (4 * strip))), BinaryPrimitives.ReadInt32LittleEndian(file.AsSpan(counts + (4 * strip)))));
        }

        return MemoryMarshal.Cast<byte, short>(CollectionsMarshal.AsSpan(samples)).ToArray();
    }
}
