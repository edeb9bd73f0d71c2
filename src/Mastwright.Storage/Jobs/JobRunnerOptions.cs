namespace Mastwright.Storage.Jobs;

/// <summary>How a job runner works.</summary>
public sealed record JobRunnerOptions
{
    /// <summary>Threads that work on chunks of any job, 1 or more; as many as the machine has processors by default.</summary>
    /// <remarks>One more waits for chunks of a drag alone, so that a drag never waits for a chunk of a search to end.</remarks>
    public int Threads { get; init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "A runner has 1 thread or more."); }
        = Environment.ProcessorCount;
}
