using System.Buffers.Binary;
using System.IO.Compression;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Writers;

/// <summary>Writes pixels as a PNG picture, without the native library.</summary>
/// <remarks>Source: Portable Network Graphics, third edition (W3C): signature, IHDR, IDAT with filter "up", IEND.</remarks>
public static class PixelPng
{
    private const byte FilterUp = 2;
    private static readonly uint[] Remainders = [.. Enumerable.Range(0, 256).Select(Remainder)];

    /// <summary>The bytes of a PNG file: eight bits a channel with opacity. Same pixels, same bytes.</summary>
    public static byte[] Write(PixelImage image)
    {
        ArgumentNullException.ThrowIfNull(image);
        using MemoryStream file = new();
        file.Write([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]);
        Span<byte> head = stackalloc byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, image.Width);
        BinaryPrimitives.WriteInt32BigEndian(head[4..], image.Height);
        head[8] = 8;
        head[9] = 6;
        Chunk(file, "IHDR"u8, head);
        Chunk(file, "IDAT"u8, Deflated(image));
        Chunk(file, "IEND"u8, []);
        return file.ToArray();
    }

    private static ReadOnlySpan<byte> Deflated(PixelImage image)
    {
        using MemoryStream packed = new();
        using (ZLibStream deflate = new(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            int stride = image.Width * 4;
            byte[] line = new byte[stride + 1];
            line[0] = FilterUp;
            for (int row = 0; row < image.Height; row++)
            {
                ReadOnlySpan<byte> here = image.Pixels.Slice(row * stride, stride);
                for (int i = 0; i < stride; i++)
                {
                    line[i + 1] = (byte)(here[i] - (row == 0 ? 0 : image.Pixels[((row - 1) * stride) + i]));
                }

                deflate.Write(line);
            }
        }

        return packed.ToArray();
    }

    private static void Chunk(MemoryStream file, ReadOnlySpan<byte> kind, ReadOnlySpan<byte> content)
    {
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, content.Length);
        file.Write(number);
        file.Write(kind);
        file.Write(content);
        BinaryPrimitives.WriteUInt32BigEndian(number, ~Sum(content, Sum(kind, uint.MaxValue)));
        file.Write(number);
    }

    private static uint Sum(ReadOnlySpan<byte> bytes, uint sum)
    {
        foreach (byte one in bytes)
        {
            sum = Remainders[(byte)(sum ^ one)] ^ (sum >> 8);
        }

        return sum;
    }

    private static uint Remainder(int value)
    {
        uint remainder = (uint)value;
        for (int bit = 0; bit < 8; bit++)
        {
            remainder = (remainder & 1) == 0 ? remainder >> 1 : (remainder >> 1) ^ 0xEDB88320;
        }

        return remainder;
    }
}
