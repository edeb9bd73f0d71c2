using System.Globalization;

namespace Mastwright.Jobs;

/// <summary>How far a job is.</summary>
/// <param name="Done">Finished chunks, those found on disk included.</param>
/// <param name="Found">Those of them that were found on disk.</param>
/// <param name="Damaged">Results on disk that were damaged, and are made again.</param>
/// <param name="Total">All chunks.</param>
/// <param name="Share">Share of the whole cost that is done, 0 to 1.</param>
/// <param name="Elapsed">Time since the job began.</param>
/// <param name="Remaining">Time that the rest takes if it goes on as it went so far; null while nothing was made.</param>
public readonly record struct JobProgress(int Done, int Found, int Damaged, int Total, double Share, TimeSpan Elapsed, TimeSpan? Remaining)
{
    /// <summary>Chunks done, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Done} of {Total} ({Share:0 %})");
}
