using System.Diagnostics.CodeAnalysis;

namespace Mastwright.Network.Shadow;

/// <summary>Why a cell is not reached directly.</summary>
[SuppressMessage("Design", "CA1028", Justification = "A map holds hundreds of thousands of them.")]
public enum ShadowCause : byte
{
    /// <summary>Outside the radius, or nothing is known of the way there.</summary>
    Unknown,

    /// <summary>It is reached.</summary>
    Reached,

    /// <summary>Below the limit in free space already.</summary>
    TooFar,

    /// <summary>Lost on a smooth Earth, both antennas as high above the sea as they are.</summary>
    Curve,

    /// <summary>Lost over the bare ground.</summary>
    Ground,

    /// <summary>Lost with trees and buildings only.</summary>
    Cover,
}

/// <summary>What falls into a cause.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Cells">Number of cells.</param>
/// <param name="AreaSquareMetres">Their area.</param>
/// <param name="ByHops">Area of those of them that are reached over relays: by 2 hops, by 3, …</param>
public sealed record ShadowPart(ShadowCause Cause, int Cells, double AreaSquareMetres, IReadOnlyList<double> ByHops);
