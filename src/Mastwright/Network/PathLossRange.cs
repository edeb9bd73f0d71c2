using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;

namespace Mastwright.Network;

/// <summary>The loss of the path in one direction, over the ranges of where its ends are and how high.</summary>
/// <param name="LossDb">Basic transmission loss with what the ends add to it (clutter, walls, woodland): least, median, most, in dB.</param>
/// <param name="Lines">Lines, as losses counted negative, that sum to minus the median.</param>
/// <param name="LocationShiftDb">The part of the median that a location percentage other than 50 % added, in dB.</param>
public sealed record PathLossRange(Estimate LossDb, ImmutableArray<LedgerLine> Lines, double LocationShiftDb = 0)
{
    /// <summary>What is not known about what the ends add.</summary>
    public ImmutableArray<SpreadPart> Spreads { get; init; } = [];

    /// <summary>The loss in dB, in the invariant culture.</summary>
    public override string ToString() => $"{LossDb} dB";
}
