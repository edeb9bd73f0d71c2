namespace Mastwright.Network.Reach;

/// <summary>What is to be said of one cell of a field.</summary>
[Flags]
[System.Diagnostics.CodeAnalysis.SuppressMessage("Design", "CA1028", Justification = "A field holds hundreds of thousands of them.")]
public enum ReachFlags : byte
{
    /// <summary>Nothing: an ordinary cell.</summary>
    None = 0,

    /// <summary>The cell lies outside the radius; its loss is NaN.</summary>
    Outside = 1,

    /// <summary>The cell is nearer than 0.25 km: free space and a knife edge, not ITU-R P.1812.</summary>
    ShortPath = 2,

    /// <summary>The ground on the way to the cell is not known; its loss is NaN.</summary>
    GroundMissing = 4,
}
