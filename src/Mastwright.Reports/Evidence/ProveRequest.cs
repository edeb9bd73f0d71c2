namespace Mastwright.Reports.Evidence;

/// <summary>What a proof is asked for.</summary>
/// <param name="Site">Key of the site whose station is proved.</param>
/// <param name="Network">The network in the store; null for the only one.</param>
/// <param name="Before">The period before as text, "2026-06-01..2026-07-01"; null where an entry gives it.</param>
/// <param name="After">The period after.</param>
/// <param name="Entry">Number of the log entry of the change; null where periods are given.</param>
internal sealed record ProveRequest(string Site, string? Network, string? Before, string? After, int? Entry);
