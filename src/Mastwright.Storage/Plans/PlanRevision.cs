namespace Mastwright.Storage.Plans;

/// <summary>One state of a plan file, well formed or not: its text and the hash of its bytes. Immutable.</summary>
/// <remarks>An editor needs it: what it writes is the keeper's own text, which need not be right yet. Line ends and a byte order mark stay as they are.</remarks>
public sealed class PlanRevision
{
    private readonly PlanSource source;

    private PlanRevision(PlanSource source) => this.source = source;

    /// <summary>The text, without a byte order mark.</summary>
    public string Text => source.Text;

    /// <summary>SHA-256 of the bytes, in lower-case hexadecimal.</summary>
    public string Hash => source.Hash;

    /// <summary>Reads the file as it is now.</summary>
    /// <param name="path">The plan file.</param>
    /// <param name="problem">Why it cannot be read; null when it was.</param>
    public static PlanRevision? Read(string path, out PlanProblem? problem)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        return Of(PlanSource.Read(Path.GetFileName(path), Path.GetFullPath(path), out problem));
    }

    /// <summary>An earlier state of the file, from its bytes.</summary>
    /// <param name="path">The plan file.</param>
    /// <param name="bytes">Its bytes at that time.</param>
    /// <param name="problem">Why they are no text; null when they are.</param>
    public static PlanRevision? FromBytes(string path, byte[] bytes, out PlanProblem? problem)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(bytes);
        return Of(PlanSource.FromBytes(Path.GetFileName(path), Path.GetFullPath(path), bytes, out problem));
    }

    /// <summary>The bytes of the file in this state.</summary>
    public byte[] ToBytes() => source.Encode(source.Text);

    /// <summary>The same file with another text.</summary>
    /// <param name="text">The text.</param>
    /// <param name="problem">Why it is no text of a plan: half characters, or more than 16 MiB; null when it is.</param>
    public PlanRevision? With(string text, out PlanProblem? problem)
    {
        ArgumentNullException.ThrowIfNull(text);
        byte[] bytes;
        try
        {
            bytes = source.Encode(text);
        }
        catch (System.Text.EncoderFallbackException)
        {
            problem = new() { Code = "plan-encoding", File = source.Name, Message = "The text holds half of a character.", Wanted = "well-formed text" };
            return null;
        }

        if (bytes.Length > PlanLimits.FileBytes)
        {
            problem = new() { Code = "plan-too-large", File = source.Name, Message = "The text is larger than 16 MiB, which no plan needs.", Wanted = "a plan file of at most 16 MiB" };
            return null;
        }

        return Of(PlanSource.FromBytes(source.Name, source.FullPath, bytes, out problem));
    }

    /// <summary>Reads this state as a plan, with what it includes: every problem is collected.</summary>
    public PlanReading Check(PlanReadOptions? options = null) => PlanFile.Bind(source, options ?? new());

    /// <summary>This state as a text whose single values can be changed; a problem where its structure is not well formed.</summary>
    public PlanTextResult AsText() => PlanText.FromSource(source);

    /// <summary>Writes this state to the file: beside it, then in its place.</summary>
    /// <param name="expectedHash">Hash of the state that it is to replace.</param>
    /// <returns>Null when it was written; else why not ("plan-changed" where the file is in another state), and then the file is as it was.</returns>
    public PlanProblem? Save(string expectedHash)
    {
        ArgumentNullException.ThrowIfNull(expectedHash);
        return PlanSaver.Replace(source, expectedHash);
    }

    private static PlanRevision? Of(PlanSource? source) => source is null ? null : new(source);
}
