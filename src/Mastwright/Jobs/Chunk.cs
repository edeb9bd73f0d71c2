using System.Security.Cryptography;
using System.Text;

namespace Mastwright.Jobs;

/// <summary>A piece of long work: a pure function from bytes to bytes, with the input that it is asked for.</summary>
/// <remarks>
/// Two chunks with one key give the same bytes, whenever and wherever they run: the input names all that the result depends on, the
/// ground by its content hash. Immutable and safe from many threads, as the work has to be.
/// </remarks>
public sealed class Chunk
{
    private readonly Lazy<string> key;

    /// <summary>Makes a chunk.</summary>
    /// <param name="kind">What sort of work.</param>
    /// <param name="input">All that the result depends on, besides the kind.</param>
    /// <param name="work">The work itself. It looks at the token now and then and ends by <see cref="OperationCanceledException"/>.</param>
    /// <param name="cost">What it costs compared with the others of its job, above zero: for telling how far the job is.</param>
    /// <exception cref="ArgumentOutOfRangeException">The cost is not above zero.</exception>
    public Chunk(ChunkKind kind, ReadOnlyMemory<byte> input, Func<ReadOnlyMemory<byte>, CancellationToken, byte[]> work, double cost = 1)
    {
        ArgumentNullException.ThrowIfNull(kind);
        ArgumentNullException.ThrowIfNull(work);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(cost);
        Kind = kind;
        Input = input;
        Work = work;
        Cost = cost;
        key = new(Hash);
    }

    /// <summary>What sort of work.</summary>
    public ChunkKind Kind { get; }

    /// <summary>All that the result depends on, besides the kind.</summary>
    public ReadOnlyMemory<byte> Input { get; }

    /// <summary>What it costs compared with the others of its job.</summary>
    public double Cost { get; }

    /// <summary>SHA-256 of kind and input in lower-case hexadecimal: the name of its result.</summary>
    public string Key => key.Value;

    private Func<ReadOnlyMemory<byte>, CancellationToken, byte[]> Work { get; }

    /// <summary>Does the work.</summary>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public byte[] Run(CancellationToken cancellation) => Work(Input, cancellation);

    /// <summary>Kind and the first letters of the key.</summary>
    public override string ToString() => $"{Kind} {Key[..8]}";

    private string Hash()
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(Encoding.UTF8.GetBytes($"{Kind}\n"));
        hash.AppendData(Input.Span);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
