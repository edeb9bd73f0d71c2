using System.IO.Compression;

namespace Mastwright.Records.Import;

/// <summary>The bytes of a source as they were before they were packed.</summary>
internal static class SourceStream
{
    /// <summary>Reads gzip where the stream is that, by its first two bytes (RFC 1952, clause 2.3.1), else the stream itself.</summary>
    internal static Stream Unpacked(Stream stream)
    {
        BufferedStream buffered = new(stream, 1 << 16);
        int first = buffered.ReadByte();
        int second = buffered.ReadByte();
        buffered.Position = 0;
        return first == 0x1F && second == 0x8B ? new GZipStream(buffered, CompressionMode.Decompress) : buffered;
    }
}
