using System.Collections.Immutable;

namespace Mastwright.Ground;

/// <summary>A set of height files that the plan names as one source.</summary>
public sealed record HeightSource
{
    /// <summary>Name to speak of it by; the file patterns when the plan gives none.</summary>
    public required string Name { get; init; }

    /// <summary>Files, folders or globs, relative to the plan, in the plan's order.</summary>
    public required ImmutableArray<string> Files { get; init; }

    /// <summary>Bare earth or surface.</summary>
    public HeightKind Kind { get; init; }

    /// <summary>Vertical datum as the source states it, such as "EGM96"; empty when nobody said.</summary>
    public string Datum { get; init; } = "";

    /// <summary>
    /// File, relative to the plan, that lists which tiles the source has: one tile name a line. A tile it does not list is
    /// sea at 0 m. Empty: an absent tile is missing.
    /// </summary>
    public string TileIndex { get; init; } = "";
}

/// <summary>A set of land-cover files that the plan names as one source.</summary>
public sealed record CoverSource
{
    /// <summary>Name to speak of it by.</summary>
    public required string Name { get; init; }

    /// <summary>Files, folders or globs, relative to the plan.</summary>
    public required ImmutableArray<string> Files { get; init; }
}
