using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

namespace Mastwright.Jobs;

/// <summary>Long work: chunks that do not depend on one another, in an order that their results are read in.</summary>
public sealed record Job
{
    /// <summary>What it is, for people.</summary>
    public required string Name { get; init; }

    /// <summary>Who waits for it.</summary>
    public JobPriority Priority { get; init; } = JobPriority.Settle;

    /// <summary>Its chunks.</summary>
    public required ImmutableArray<Chunk> Chunks { get; init; }

    /// <summary>Whether finished chunks are kept on disk; else they are held in memory and gone with the job's result.</summary>
    public bool IsKept { get; init; } = true;

    /// <summary>SHA-256 of the keys of its chunks: the same work has the same key, whatever it is called.</summary>
    public string Key => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', Chunks.Select(chunk => chunk.Key)))));

    /// <summary>Name and number of chunks.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name}: {Chunks.Length} chunks");
}
