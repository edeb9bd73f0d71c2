namespace Mastwright.Jobs;

/// <summary>What sort of work a chunk is, and in which version of its method: results of one version are never taken for those of another.</summary>
/// <param name="Name">Name of the work, such as "reach-field".</param>
/// <param name="Version">Version of the method, 1 or more; raised whenever the same input gives other bytes.</param>
/// <param name="Arithmetic">What else the bytes depend on, such as the width of the vectors that a machine has; empty when they do not.</param>
public sealed record ChunkKind(string Name, int Version, string Arithmetic = "")
{
    /// <summary>Name, version and arithmetic, as they enter a key.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name}/{Version}/{Arithmetic}");
}
