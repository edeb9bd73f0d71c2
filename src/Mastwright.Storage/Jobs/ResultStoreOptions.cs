namespace Mastwright.Storage.Jobs;

/// <summary>How a store of results keeps house.</summary>
public sealed record ResultStoreOptions
{
    /// <summary>Most bytes kept once a job is done with, zero or more; 4 GiB by default.</summary>
    public long MostBytes { get; init => field = Math.Max(value, 0); } = 4L << 30;

    /// <summary>A result used more recently than this is not thrown out: another program may be reading it. Ten minutes by default.</summary>
    public TimeSpan Grace { get; init; } = TimeSpan.FromMinutes(10);

    /// <summary>Chunks of a job that nobody went on with for so long are no longer held for it. 30 days by default.</summary>
    public TimeSpan Patience { get; init; } = TimeSpan.FromDays(30);
}
