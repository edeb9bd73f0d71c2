using System.Buffers.Binary;
using System.Collections.Immutable;
using System.Security.Cryptography;
using Mastwright.Jobs;

namespace Mastwright.Storage.Tests.Jobs;

/// <summary>Work for tests: a chain of hashes from a number, in chunks, and how often each was made.</summary>
internal sealed class Sums
{
    private int made;

    /// <summary>Chunks made so far.</summary>
    public int Made => made;

    /// <summary>Called at the start of each chunk with its number.</summary>
    public Action<int>? OnStart { get; init; }

    public int Version { get; init; } = 1;

    public Job Job(int first, int count, JobPriority priority = JobPriority.Settle, string name = "sums") => new()
    {
        Name = name,
        Priority = priority,
        Chunks = [.. Enumerable.Range(first, count).Select(Chunk)],
    };

    /// <summary>What the chunks of a job give, worked out here and now.</summary>
    public static ImmutableArray<string> Expected(int first, int count) => [.. Enumerable.Range(first, count).Select(number => Convert.ToHexString(Result(number)))];

    public static ImmutableArray<string> Of(Storage.Jobs.JobResult result) =>
        [.. Enumerable.Range(0, result.Job.Chunks.Length).Select(index => Convert.ToHexString(result.Read(index)))];

    private static byte[] Result(int number)
    {
        byte[] bytes = new byte[1 + (number * 37 % 500)];
        byte[] hash = SHA256.HashData(BitConverter.GetBytes(number));
        for (int i = 0; i < bytes.Length; i++)
        {
            hash = i % 32 == 31 ? SHA256.HashData(hash) : hash;
            bytes[i] = hash[i % 32];
        }

        return bytes;
    }

    private Chunk Chunk(int number)
    {
        byte[] input = new byte[4];
        BinaryPrimitives.WriteInt32LittleEndian(input, number);
        return new(new("sums", Version), input, (bytes, cancellation) =>
        {
            int asked = BinaryPrimitives.ReadInt32LittleEndian(bytes.Span);
            OnStart?.Invoke(asked);
            cancellation.ThrowIfCancellationRequested();
            Interlocked.Increment(ref made);
            return Result(asked);
        });
    }
}
