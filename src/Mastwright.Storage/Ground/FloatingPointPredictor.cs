using System.Runtime.InteropServices;

namespace Mastwright.Storage.Ground;

/// <summary>
/// The floating-point predictor of TIFF: of each row all first bytes, then all second ones and so on, each less the one before it. Nothing is
/// lost, and neighbours that are alike leave runs of zeros: a map of losses packs into two thirds of the bytes in two thirds of the time (measured).
/// </summary>
/// <remarks>Source: Adobe Photoshop TIFF Technical Note 3 (2005), predictor 3; read back by another library in ReachTiffWriterTests.</remarks>
internal static class FloatingPointPredictor
{
    private const int Bytes = sizeof(float);

    /// <summary>Whether samples of a type can be written so: of 32-bit floating point, on a machine that puts their low byte first.</summary>
    internal static bool Suits<T>() => typeof(T) == typeof(float) && BitConverter.IsLittleEndian;

    /// <summary>Encodes rows of samples.</summary>
    /// <param name="samples">The samples' bytes, row by row.</param>
    /// <param name="columns">Samples of a row.</param>
    /// <param name="encoded">Receives as many bytes.</param>
    internal static void Encode(ReadOnlySpan<byte> samples, int columns, Span<byte> encoded)
    {
        for (int from = 0; from < samples.Length; from += Bytes * columns)
        {
            ReadOnlySpan<uint> line = MemoryMarshal.Cast<byte, uint>(samples.Slice(from, Bytes * columns));
            Span<byte> row = encoded.Slice(from, Bytes * columns);
            uint before = 0;

            // All four bytes of a sample are taken off at once; the first of each run follows the last of the run before it.
            for (int i = 0; i < line.Length; i++)
            {
                uint sample = line[i];
                row[i] = (byte)((sample >> 24) - (before >> 24));
                row[columns + i] = (byte)((sample >> 16) - (before >> 16));
                row[(2 * columns) + i] = (byte)((sample >> 8) - (before >> 8));
                row[(3 * columns) + i] = (byte)(sample - before);
                before = sample;
            }

            uint last = line[^1];
            row[columns] -= (byte)(last >> 24);
            row[2 * columns] -= (byte)(last >> 16);
            row[3 * columns] -= (byte)(last >> 8);
        }
    }

    /// <summary>Decodes rows of samples.</summary>
    /// <param name="encoded">What <see cref="Encode"/> made.</param>
    /// <param name="columns">Samples of a row.</param>
    /// <param name="samples">Receives the samples' bytes, as many.</param>
    internal static void Decode(ReadOnlySpan<byte> encoded, int columns, Span<byte> samples)
    {
        for (int from = 0; from < encoded.Length; from += Bytes * columns)
        {
            ReadOnlySpan<byte> row = encoded.Slice(from, Bytes * columns);
            Span<uint> line = MemoryMarshal.Cast<byte, uint>(samples.Slice(from, Bytes * columns));

            // The four runs go on side by side; where each begins follows from the sum of the run before it.
            byte first = 0;
            byte second = Sum(row[..columns]);
            byte third = (byte)(second + Sum(row.Slice(columns, columns)));
            byte fourth = (byte)(third + Sum(row.Slice(2 * columns, columns)));
            for (int i = 0; i < line.Length; i++)
            {
                first += row[i];
                second += row[columns + i];
                third += row[(2 * columns) + i];
                fourth += row[(3 * columns) + i];
                line[i] = ((uint)first << 24) | ((uint)second << 16) | ((uint)third << 8) | fourth;
            }
        }
    }

    private static byte Sum(ReadOnlySpan<byte> values)
    {
        byte sum = 0;
        foreach (byte value in values)
        {
            sum += value;
        }

        return sum;
    }
}
