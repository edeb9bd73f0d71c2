using System.Collections.Immutable;

namespace Mastwright.Agreement;

/// <summary>How far a rival was off in the folds of a correction.</summary>
/// <param name="Name">What it predicts with.</param>
/// <param name="OffDb">Root of its mean squared error on what was left out, in dB.</param>
public sealed record RivalScore(string Name, double OffDb);

/// <summary>How a correction did on links that it had not seen.</summary>
/// <param name="LeftOut">What was left out together: "whole stations" or "blocks of positions".</param>
/// <param name="Folds">How many times.</param>
/// <param name="Links">How many links were left out in all: each once.</param>
/// <param name="OffDb">Root of the mean squared error on what was left out, in dB.</param>
/// <param name="Held">Share, 0 to 1, of what was left out that lay in its 90 % interval.</param>
/// <param name="OwnOffDb">The same error with each station's own offset where the fold had seen the station; null where no own offsets can be told.</param>
/// <param name="OwnHeld">The share held with own offsets.</param>
/// <param name="Rivals">The rivals, each fitted in the same folds.</param>
public sealed record CorrectionScore(
    string LeftOut, int Folds, int Links, double OffDb, double Held, double? OwnOffDb, double? OwnHeld, ImmutableArray<RivalScore> Rivals)
{
    /// <summary>The best of the rivals.</summary>
    public RivalScore Best => Rivals.MinBy(rival => rival.OffDb)!;

    /// <summary>The error in dB as a plan that adopted the correction would make it: a station that the fold had seen has its own offset there.</summary>
    public double AsUsedDb => OwnOffDb ?? OffDb;

    /// <summary>The share, 0 to 1, that the interval held in that use.</summary>
    public double HeldAsUsed => OwnHeld ?? Held;

    /// <summary>Whether the correction was nearer than every rival.</summary>
    public bool BeatsRivals => AsUsedDb < Best.OffDb;

    /// <summary>Whether the 90 % interval held what it should: 85 to 95 %.</summary>
    public bool IntervalHolds => HeldAsUsed is >= 0.85 and <= 0.95;
}
