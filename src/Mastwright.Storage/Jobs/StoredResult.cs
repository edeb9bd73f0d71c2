using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using Mastwright.Storage.Files;

namespace Mastwright.Storage.Jobs;

/// <summary>A result in a file: a head that says whose it is and what its bytes sum to, then the bytes.</summary>
/// <remarks>
/// Layout: "MWRESULT", a version (1) in four bytes, the length in eight, the SHA-256 of key and bytes in 32, the bytes; numbers little-endian.
/// The key is in the sum, so that a file under another's name counts as damaged.
/// </remarks>
internal static class StoredResult
{
    /// <summary>Bytes before the result itself.</summary>
    internal const int HeadBytes = 52;

    private const int Version = 1;
    private const int SumAt = 20;

    private static ReadOnlySpan<byte> Mark => "MWRESULT"u8;

    /// <summary>Writes a result: beside, flushed, renamed.</summary>
    internal static void Write(string path, string key, ReadOnlySpan<byte> content)
    {
        Span<byte> head = stackalloc byte[HeadBytes];
        Mark.CopyTo(head);
        BinaryPrimitives.WriteInt32LittleEndian(head[8..], Version);
        BinaryPrimitives.WriteInt64LittleEndian(head[12..], content.Length);
        using (IncrementalHash hash = Begin(key))
        {
            hash.AppendData(content);
            hash.GetHashAndReset(head[SumAt..]);
        }

        using WrittenBeside target = new(path);
        target.Stream.Write(head);
        target.Stream.Write(content);
        target.Keep();
    }

    /// <summary>Whether a file holds the result of a key, whole.</summary>
    /// <exception cref="IOException">The file is not there or cannot be read.</exception>
    internal static bool IsWhole(string path, string key)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1);
        return TryOpen(stream, out ReadOnlySpan<byte> sum, new byte[HeadBytes]) && Sum(stream, key).AsSpan().SequenceEqual(sum);
    }

    /// <summary>The bytes of a result; null when the file is damaged.</summary>
    /// <exception cref="IOException">The file is not there or cannot be read.</exception>
    internal static byte[]? Read(string path, string key)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1);
        if (!TryOpen(stream, out ReadOnlySpan<byte> sum, new byte[HeadBytes]))
        {
            return null;
        }

        byte[] content = new byte[stream.Length - HeadBytes];
        stream.ReadExactly(content);
        using IncrementalHash hash = Begin(key);
        hash.AppendData(content);
        return hash.GetHashAndReset().AsSpan().SequenceEqual(sum) ? content : null;
    }

    /// <summary>Reads a part of a result, unchecked; false when the file ends before it.</summary>
    /// <exception cref="IOException">The file is not there or cannot be read.</exception>
    internal static bool TryReadPart(string path, long offset, Span<byte> into)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, 1);
        stream.Position = HeadBytes + offset;
        return stream.ReadAtLeast(into, into.Length, throwOnEndOfStream: false) == into.Length;
    }

    private static bool TryOpen(FileStream stream, out ReadOnlySpan<byte> sum, byte[] head)
    {
        int count = stream.ReadAtLeast(head, HeadBytes, throwOnEndOfStream: false);
        sum = head.AsSpan(SumAt);
        return count == HeadBytes && head.AsSpan(0, Mark.Length).SequenceEqual(Mark)
            && BinaryPrimitives.ReadInt32LittleEndian(head.AsSpan(8)) == Version
            && BinaryPrimitives.ReadInt64LittleEndian(head.AsSpan(12)) == stream.Length - HeadBytes
            && stream.Length - HeadBytes <= Array.MaxLength;
    }

    private static byte[] Sum(FileStream stream, string key)
    {
        using IncrementalHash hash = Begin(key);
        byte[] buffer = new byte[1 << 16];
        for (int count = stream.Read(buffer); count > 0; count = stream.Read(buffer))
        {
            hash.AppendData(buffer.AsSpan(0, count));
        }

        return hash.GetHashAndReset();
    }

    private static IncrementalHash Begin(string key)
    {
        IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Encoding.ASCII.GetBytes(key));
        return hash;
    }
}
