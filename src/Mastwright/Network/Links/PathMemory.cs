using System.Collections.Concurrent;
using System.Text;

namespace Mastwright.Network.Links;

/// <summary>Paths that were worked out before, by a hash of everything that they depend on. Safe from many threads.</summary>
public sealed class PathMemory
{
    private const int MostPaths = 200_000;

    private readonly ConcurrentDictionary<string, (byte[] Facts, bool IsUsed)> paths = new(StringComparer.Ordinal);
    private int found;
    private int added;

    /// <summary>How many of the paths asked for were known.</summary>
    public int Found => found;

    /// <summary>How many had to be worked out.</summary>
    public int Added => added;

    /// <summary>A path that is known; null when it is not.</summary>
    public PathFacts? Find(string key)
    {
        if (!paths.TryGetValue(key, out (byte[] Facts, bool IsUsed) known))
        {
            return null;
        }

        paths[key] = (known.Facts, true);
        Interlocked.Increment(ref found);
        return PathFacts.FromBytes(known.Facts);
    }

    /// <summary>Keeps a path.</summary>
    public void Keep(string key, PathFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        paths[key] = (facts.ToBytes(), true);
        Interlocked.Increment(ref added);
    }

    /// <summary>All paths as bytes in the order of their keys; those that nobody asked for since they were read are dropped when there are too many.</summary>
    public byte[] ToBytes()
    {
        using MemoryStream stream = new();
        using (BinaryWriter writer = new(stream, Encoding.UTF8))
        {
            KeyValuePair<string, (byte[] Facts, bool IsUsed)>[] kept = [.. paths.OrderByDescending(one => one.Value.IsUsed).Take(MostPaths).OrderBy(one => one.Key, StringComparer.Ordinal)];
            writer.Write(kept.Length);
            foreach ((string key, (byte[] facts, bool _)) in kept)
            {
                writer.Write(key);
                writer.Write(facts.Length);
                writer.Write(facts);
            }
        }

        return stream.ToArray();
    }

    /// <summary>Reads what <see cref="ToBytes"/> wrote; an empty memory for null.</summary>
    public static PathMemory FromBytes(byte[]? bytes)
    {
        PathMemory memory = new();
        if (bytes is null)
        {
            return memory;
        }

        using BinaryReader reader = new(new MemoryStream(bytes), Encoding.UTF8);
        int count = reader.ReadInt32();
        for (int i = 0; i < count; i++)
        {
            string key = reader.ReadString();
            memory.paths[key] = (reader.ReadBytes(reader.ReadInt32()), false);
        }

        return memory;
    }
}
