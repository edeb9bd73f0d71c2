using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>How a ground library keeps house.</summary>
public sealed record GroundLibraryOptions
{
    /// <summary>Most bytes of samples kept in memory between uses; at least 16 MiB. 256 MiB by default.</summary>
    /// <remarks>What a mosaic holds while somebody uses it comes on top.</remarks>
    public long CacheBytes { get; init => field = Math.Max(value, 16L << 20); } = 256L << 20;

    /// <summary>Whether the plan may name files outside its own folder.</summary>
    public bool AllowOutside { get; init; }

    /// <summary>The table from cover codes to classes and heights; the built-in one by default.</summary>
    public CoverTable? CoverTable { get; init; }
}

/// <summary>A file or pattern that cannot be used.</summary>
/// <param name="SourceName">Source it belongs to.</param>
/// <param name="File">File or pattern.</param>
/// <param name="Found">What is wrong with it.</param>
/// <param name="Right">What would be right.</param>
public sealed record GroundProblem(string SourceName, string File, string Found, string Right)
{
    /// <summary>The problem as a finding on the plan's ground.</summary>
    public Finding ToFinding() => new()
    {
        Code = "ground-file-unusable",
        Subject = "ground",
        Verdict = Verdict.Unknown,
        Source = "ground files",
        Details = ImmutableSortedDictionary<string, string>.Empty.Add("file", File).Add("found", Found).Add("right", Right).Add("source", SourceName),
    };

    /// <summary>One line that says it all.</summary>
    public override string ToString() => Right.Length > 0 ? $"{File}: {Found}; {Right}" : $"{File}: {Found}";
}
