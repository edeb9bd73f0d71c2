using System.Collections.Immutable;
using Mastwright.Findings;

namespace Mastwright.Propagation;

/// <summary>The loss of one path, how it was found, and what it is made of.</summary>
public sealed record PathLossPrediction
{
    /// <summary>Basic transmission loss between isotropic antennas, in dB.</summary>
    public required double LossDb { get; init; }

    /// <summary>"ITU-R P.1812", or "free space and knife edge" for a path under 0.25 km.</summary>
    public required string Method { get; init; }

    /// <summary>Every intermediate of P.1812; null when another method was used.</summary>
    public P1812Result? P1812Result { get; init; }

    /// <summary>What lies outside the range of P.1812, in words; empty when nothing does.</summary>
    public ImmutableArray<RangeProblem> RangeProblems { get; init; } = [];

    /// <summary>
    /// Signed parts that sum to the loss: "free-space", "diffraction", "atmosphere" (scatter, ducting, bending over time), "places".
    /// </summary>
    public required ImmutableArray<LedgerLine> Lines { get; init; }

    /// <summary>The parts as a ledger.</summary>
    public Ledger Ledger => Ledger.SummingTo(LossDb, "Basic transmission loss", "dB", Lines);

    /// <summary>The loss and the method, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{LossDb:0.0} dB by {Method}");
}
