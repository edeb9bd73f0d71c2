using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>What a map says of one place.</summary>
/// <param name="Kind">What there is to show.</param>
/// <param name="Ink">The colour, where there is one.</param>
/// <param name="Hatch">The pattern over it; null for none.</param>
internal readonly record struct MapPixel(MapPixelKind Kind, Ink Ink = default, HatchKind? Hatch = null);

/// <summary>What there is to show of a place.</summary>
internal enum MapPixelKind
{
    /// <summary>It lies outside the map.</summary>
    Outside,

    /// <summary>Nothing is known of it, for want of ground on the way.</summary>
    Missing,

    /// <summary>It is below the limit.</summary>
    Below,

    /// <summary>It has a colour.</summary>
    Coloured,
}
