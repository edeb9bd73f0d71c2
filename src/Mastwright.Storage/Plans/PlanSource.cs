using System.Security.Cryptography;
using System.Text;

namespace Mastwright.Storage.Plans;

/// <summary>One file of a plan: its text, and the hash by which a later change is noticed.</summary>
internal sealed class PlanSource
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private PlanSource(string name, string fullPath, string text, bool hasByteOrderMark, string hash)
    {
        Name = name;
        FullPath = fullPath;
        Text = text;
        HasByteOrderMark = hasByteOrderMark;
        Hash = hash;
    }

    /// <summary>The name that problems speak of it by.</summary>
    internal string Name { get; }

    /// <summary>Where it lies; empty for a text that came from memory.</summary>
    internal string FullPath { get; }

    /// <summary>The text, without a byte order mark.</summary>
    internal string Text { get; }

    /// <summary>Whether the file began with a byte order mark.</summary>
    internal bool HasByteOrderMark { get; }

    /// <summary>SHA-256 of the bytes as read, in lower-case hexadecimal.</summary>
    internal string Hash { get; }

    /// <summary>Reads a file, at most <see cref="PlanLimits.FileBytes"/> of it.</summary>
    internal static PlanSource? Read(string name, string fullPath, out PlanProblem? problem)
    {
        byte[]? bytes = ReadBounded(name, fullPath, out problem);
        return bytes is null ? null : FromBytes(name, fullPath, bytes, out problem);
    }

    /// <summary>The bytes of a file; null with a problem when it cannot be read or is too large.</summary>
    internal static byte[]? ReadBounded(string name, string fullPath, out PlanProblem? problem)
    {
        try
        {
            if (Directory.Exists(fullPath))
            {
                problem = Whole(name, "plan-file", "This is a folder.", "a file");
                return null;
            }

            using FileStream stream = new(fullPath, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1);

            // The length is a first guess: a pipe has none, and a file may grow while it is read.
            byte[] bytes = new byte[Math.Clamp(stream.CanSeek ? stream.Length : 0, 4096, PlanLimits.FileBytes) + 1];
            int count = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            while (count == bytes.Length && count <= PlanLimits.FileBytes)
            {
                Array.Resize(ref bytes, Math.Min(2 * bytes.Length, PlanLimits.FileBytes + 1));
                count += stream.ReadAtLeast(bytes.AsSpan(count), bytes.Length - count, throwOnEndOfStream: false);
            }

            if (count > PlanLimits.FileBytes)
            {
                problem = Whole(name, "plan-too-large", "The file is larger than 16 MiB, which no plan needs.", "a plan file of at most 16 MiB");
                return null;
            }

            problem = null;
            return bytes[..count];
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            string message = exception is FileNotFoundException or DirectoryNotFoundException ? "There is no such file." : "The file cannot be read: " + exception.Message;
            problem = Whole(name, "plan-file", message, "a readable file");
            return null;
        }
    }

    /// <summary>Decodes bytes as UTF-8 with or without a byte order mark.</summary>
    internal static PlanSource? FromBytes(string name, string fullPath, byte[] bytes, out PlanProblem? problem)
    {
        ReadOnlySpan<byte> content = bytes;
        bool mark = content.StartsWith(Encoding.UTF8.Preamble);
        if (mark)
        {
            content = content[3..];
        }
        else if (content.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || content.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            problem = Whole(name, "plan-encoding", "The file is UTF-16.", "UTF-8 text: save it as UTF-8");
            return null;
        }

        try
        {
            string text = Strict.GetString(content);
            int zero = text.AsSpan().IndexOfAny('\0', '\uFEFF');
            if (zero >= 0)
            {
                problem = At(name, text, zero, "plan-encoding", "The file holds characters that no text has.");
                return null;
            }

            problem = null;
            return new(name, fullPath, text, mark, HashOf(bytes));
        }
        catch (DecoderFallbackException exception)
        {
            int line = 1 + content[..Math.Clamp(exception.Index, 0, content.Length)].Count((byte)'\n');
            problem = Whole(name, "plan-encoding", "The bytes here are not UTF-8.", "UTF-8 text: save it as UTF-8") with { Line = line, Column = 1 };
            return null;
        }
    }

    /// <summary>The file's bytes with another text in it.</summary>
    internal byte[] Encode(string text) => HasByteOrderMark ? [.. Encoding.UTF8.Preamble, .. Strict.GetBytes(text)] : Strict.GetBytes(text);

    /// <summary>SHA-256 of some bytes, in lower-case hexadecimal.</summary>
    internal static string HashOf(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static PlanProblem Whole(string name, string code, string message, string wanted) =>
        new() { Code = code, File = name, Message = message, Wanted = wanted };

    private static PlanProblem At(string name, string text, int index, string code, string message)
    {
        ReadOnlySpan<char> before = text.AsSpan(0, index);
        return new()
        {
            Code = code,
            File = name,
            Line = 1 + before.Count('\n'),
            Column = index - before.LastIndexOf('\n'),
            Message = message,
            Wanted = "UTF-8 text",
        };
    }
}
