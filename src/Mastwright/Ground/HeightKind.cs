namespace Mastwright.Ground;

/// <summary>What the heights of a source are of.</summary>
public enum HeightKind
{
    /// <summary>Nobody said.</summary>
    Unknown,

    /// <summary>The ground without trees and buildings (a terrain model).</summary>
    BareEarth,

    /// <summary>The top of whatever stands there: ground, trees, roofs (a surface model).</summary>
    Surface,
}
