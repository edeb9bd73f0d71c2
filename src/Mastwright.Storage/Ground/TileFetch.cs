using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Ground;

namespace Mastwright.Storage.Ground;

/// <summary>How a tile fared.</summary>
public enum TileFetchOutcome
{
    /// <summary>It could not be had; the text says why.</summary>
    Failed,

    /// <summary>It was downloaded and is sound.</summary>
    Fetched,

    /// <summary>It was there already.</summary>
    Present,

    /// <summary>The source has no such tile.</summary>
    Absent,
}

/// <summary>What came of one tile.</summary>
/// <param name="Tile">The tile.</param>
/// <param name="Outcome">How it fared.</param>
/// <param name="FilePath">The file, where there is one.</param>
/// <param name="Bytes">Bytes that came over the line for it.</param>
/// <param name="Text">Why it failed; empty otherwise.</param>
public sealed record TileFetchResult(GroundTile Tile, TileFetchOutcome Outcome, string FilePath, long Bytes, string Text)
{
    /// <summary>Tile and outcome.</summary>
    public override string ToString() => Text.Length > 0 ? $"{Tile}: {Outcome}, {Text}" : $"{Tile}: {Outcome}";
}

/// <summary>How far a fetch has come.</summary>
/// <param name="TilesDone">Tiles that are settled.</param>
/// <param name="Tiles">Tiles in all.</param>
/// <param name="Bytes">Bytes that have come over the line so far.</param>
/// <param name="Last">The tile that was settled last; null while bytes are coming in.</param>
public sealed record TileFetchProgress(int TilesDone, int Tiles, long Bytes, TileFetchResult? Last)
{
    /// <summary>Tiles and bytes, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{TilesDone} of {Tiles} tiles, {Bytes / 1e6:0.0} MB");
}

/// <summary>How to fetch.</summary>
public sealed record TileFetchOptions
{
    /// <summary>Tiles at a time, 1 to 4: public servers are shared. 3 by default.</summary>
    public int AtATime { get; init => field = Math.Clamp(value, 1, 4); } = 3;

    /// <summary>Attempts at a tile before it is given up, 1 to 10. 5 by default.</summary>
    public int Attempts { get; init => field = Math.Clamp(value, 1, 10); } = 5;

    /// <summary>Wait before the second attempt; doubled before each one after. 1 s by default.</summary>
    public TimeSpan FirstWait { get; init; } = TimeSpan.FromSeconds(1);

    /// <summary>Longest time without a byte before an attempt is given up. 30 s by default.</summary>
    public TimeSpan Silence { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>Most bytes of a tile. 256 MiB by default.</summary>
    public long LargestTileBytes { get; init; } = 256L << 20;
}

/// <summary>What came of a fetch.</summary>
/// <param name="Results">One result for each tile, in the order asked for.</param>
public sealed record TileFetchSummary(ImmutableArray<TileFetchResult> Results)
{
    /// <summary>Number of tiles with an outcome.</summary>
    public int Count(TileFetchOutcome outcome) => Results.Count(result => result.Outcome == outcome);

    /// <summary>How many tiles fared how, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Count(TileFetchOutcome.Fetched)} fetched, {Count(TileFetchOutcome.Present)} present, {Count(TileFetchOutcome.Absent)} absent, {Count(TileFetchOutcome.Failed)} failed");
}
