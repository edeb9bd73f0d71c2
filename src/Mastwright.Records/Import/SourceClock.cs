namespace Mastwright.Records.Import;

/// <summary>What is known of the time at which an import runs: no reception is later than that.</summary>
/// <param name="LatestMicroseconds">The latest time, in microseconds since 1970 UTC, that a record may have.</param>
internal readonly record struct SourceClock(long LatestMicroseconds)
{
    /// <summary>
    /// Before it stands a clock that was never set: radios of this kind did not exist before 2000-01-01T00:00:00Z, and clocks without a battery begin
    /// at 1970 or 1980.
    /// </summary>
    internal const long EarliestMicroseconds = 946_684_800_000_000;

    /// <summary>Two clocks that are both right may differ by so much.</summary>
    private static readonly TimeSpan Allowed = TimeSpan.FromMinutes(10);

    internal static SourceClock Of(TimeProvider time) => new((time.GetUtcNow() + Allowed - DateTimeOffset.UnixEpoch).Ticks / TimeSpan.TicksPerMicrosecond);
}
