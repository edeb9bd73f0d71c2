using System.Buffers.Binary;
using System.IO.Compression;

namespace Mastwright.Tests.Propagation.Area;

/// <summary>Real heights of the reference folder, as plain numbers.</summary>
internal static class RealTiles
{
    /// <summary>The samples of a zipped or plain tile of 1201 × 1201, in metres; the test is skipped where the file is absent.</summary>
    internal static short[] Heights(string file)
    {
        string path = TestPlaces.Reference("terrain", file);
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
        byte[] bytes = new byte[1201 * 1201 * 2];
        stream.ReadExactly(bytes);
        short[] heights = new short[1201 * 1201];
        for (int i = 0; i < heights.Length; i++)
        {
            heights[i] = BinaryPrimitives.ReadInt16BigEndian(bytes.AsSpan(2 * i));
        }

        return heights;
    }
}
