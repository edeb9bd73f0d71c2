using System.Security.Cryptography;
using System.Text;
using Mastwright.Storage.Files;
using Mastwright.Storage.Ground;

namespace Mastwright.Storage.Demo;

/// <summary>What the demo wrote into a folder, with the SHA-256 of each file, so that it can tell its own files from changed ones.</summary>
/// <remarks>The file has the lines of <c>sha256sum</c>, below one line that names who wrote them. It is written last.</remarks>
internal sealed class WrittenList
{
    private const int MostBytes = 65_536;
    private readonly Dictionary<string, string> hashes = new(StringComparer.Ordinal);

    /// <summary>The line that names the writer and its version; empty when nothing was written yet.</summary>
    public string Writer { get; private set; } = "";

    /// <summary>Reads a list; one that is absent or unreadable is an empty one.</summary>
    public static WrittenList Read(string path)
    {
        WrittenList list = new();
        if (!File.Exists(path) || new FileInfo(path).Length > MostBytes)
        {
            return list;
        }

        foreach (string line in File.ReadLines(path))
        {
            if (line.StartsWith("# ", StringComparison.Ordinal))
            {
                list.Writer = line[2..];
            }
            else if (line.Length > 66)
            {
                list.hashes[line[66..]] = line[..64];
            }
        }

        return list;
    }

    /// <summary>A list of files that are there now.</summary>
    public static WrittenList Of(string writer, string folder, IEnumerable<string> names)
    {
        WrittenList list = new() { Writer = writer };
        foreach (string name in names)
        {
            list.Add(name, HashOfFile(Path.Combine(folder, name)));
        }

        return list;
    }

    /// <summary>Notes the hash with which a file was written.</summary>
    public void Add(string name, string hash) => hashes[name] = hash;

    /// <summary>The hash with which a file was written; empty when it was not.</summary>
    public string HashOf(string name) => hashes.GetValueOrDefault(name, "");

    /// <summary>Whether each of these files is there with the content that was written.</summary>
    public bool Matches(string folder, IEnumerable<string> names) => names.All(name =>
        File.Exists(Path.Combine(folder, name)) && HashOf(name) == HashOfFile(Path.Combine(folder, name)));

    /// <summary>Writes the list whole.</summary>
    public void Write(string path)
    {
        StringBuilder text = new();
        text.Append("# ").Append(Writer).Append('\n');
        foreach ((string name, string hash) in hashes.OrderBy(pair => pair.Key, StringComparer.Ordinal))
        {
            text.Append(hash).Append("  ").Append(name).Append('\n');
        }

        WholeFile.Write(path, text.ToString());
    }

    /// <summary>SHA-256 in lower-case hexadecimal.</summary>
    public static string Hash(ReadOnlySpan<byte> content) => Convert.ToHexStringLower(SHA256.HashData(content));

    /// <summary>SHA-256 of a file in lower-case hexadecimal.</summary>
    public static string HashOfFile(string path)
    {
        using FileStream stream = File.OpenRead(path);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }
}
