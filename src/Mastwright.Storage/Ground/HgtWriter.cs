using System.Buffers.Binary;
using Mastwright.Storage.Files;

namespace Mastwright.Storage.Ground;

/// <summary>Writes height tiles in .hgt form.</summary>
public static class HgtWriter
{
    /// <summary>The sample that means "nothing known".</summary>
    public const short Void = short.MinValue;

    /// <summary>Writes a tile beside its final name, then renames it: nothing half written is left behind.</summary>
    /// <param name="path">File to write, such as "N46W019.hgt"; its folder exists.</param>
    /// <param name="samples">Heights in metres, row by row from the north-west, both edges of the tile included.</param>
    /// <param name="side">Samples a side: 1201 (3 arc-seconds) or 3601 (1 arc-second).</param>
    /// <exception cref="ArgumentException">The side is another, or there are not side × side samples.</exception>
    public static void Write(string path, ReadOnlySpan<short> samples, int side)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        if (side is not (1201 or 3601) || samples.Length != side * side)
        {
            throw new ArgumentException($"A tile has 1201 or 3601 samples a side; {samples.Length} samples with a side of {side} do not fit.", nameof(side));
        }

        using WrittenBeside target = new(path);
        byte[] row = new byte[side * sizeof(short)];
        for (int r = 0; r < side; r++)
        {
            for (int c = 0; c < side; c++)
            {
                BinaryPrimitives.WriteInt16BigEndian(row.AsSpan(c * sizeof(short)), samples[(r * side) + c]);
            }

            target.Stream.Write(row);
        }

        target.Keep();
    }
}
