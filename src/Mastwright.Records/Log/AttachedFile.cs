using System.Security.Cryptography;
using Mastwright.Evidence;

namespace Mastwright.Records.Log;

/// <summary>A file that is to be attached to an entry.</summary>
/// <param name="Attachment">Its name and hash.</param>
/// <param name="Content">Its content.</param>
public sealed record AttachedFile(LogAttachment Attachment, byte[] Content)
{
    /// <summary>The most bytes that a file may have: 16 MiB.</summary>
    public const int Most = 16 << 20;

    /// <summary>Reads a file; null, with what is wrong, where it is too long.</summary>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be read.</exception>
    public static AttachedFile? Read(string path, out string problem)
    {
        using FileStream stream = File.OpenRead(path);
        problem = stream.Length > Most ? $"{path}: is longer than an attachment may be (16 MiB)" : "";
        if (problem.Length > 0)
        {
            return null;
        }

        byte[] content = new byte[stream.Length];
        stream.ReadExactly(content);
        return new(new(Path.GetFileName(path), Convert.ToHexStringLower(SHA256.HashData(content))), content);
    }
}
