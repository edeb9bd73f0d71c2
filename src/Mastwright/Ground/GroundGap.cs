using System.Globalization;

namespace Mastwright.Ground;

/// <summary>A stretch of a profile whose height nobody knows.</summary>
/// <param name="Tile">The tile with the void, or the one-degree tile that is absent.</param>
/// <param name="IsVoid">Whether a tile was there and holds no height; else no tile was there.</param>
/// <param name="FromMetres">Distance of its first point from the start of the path, in metres.</param>
/// <param name="ToMetres">Distance of its last point from the start of the path, in metres.</param>
public readonly record struct GroundGap(string Tile, bool IsVoid, double FromMetres, double ToMetres)
{
    /// <summary>What is missing and where, in the invariant culture.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{(IsVoid ? "void in" : "no tile")} {Tile} from {FromMetres / 1000:0.00} to {ToMetres / 1000:0.00} km");
}

/// <summary>A source that a profile's heights came from.</summary>
/// <param name="Name">Name of the source; "sea by tile index" where the index says so.</param>
/// <param name="Kind">What its heights are of.</param>
/// <param name="Datum">Its vertical datum; empty when nobody said.</param>
/// <param name="ResolutionMetres">Distance of its samples in metres; 0 for the sea.</param>
/// <param name="Points">How many points of the profile it gave.</param>
public sealed record ProfileSource(string Name, HeightKind Kind, string Datum, double ResolutionMetres, int Points)
{
    /// <summary>Name and number of points.</summary>
    public override string ToString() => $"{Name}: {Points} points";
}
