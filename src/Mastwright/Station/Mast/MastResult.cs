using System.Collections.Immutable;

namespace Mastwright.Station.Mast;

/// <summary>What the examination of a mast came to, for whoever compares or goes on with it.</summary>
public sealed record MastResult
{
    /// <summary>Ledgers, findings and assumptions.</summary>
    public required Examination Examination { get; init; }

    /// <summary>Share of the strength used at the worst section of the worst case, as design values; null when unknown.</summary>
    public double? Utilisation { get; init; }

    /// <summary>Mass above the upper bracket without ice in kg, of what is known; null when nothing is.</summary>
    public double? MassKilograms { get; init; }

    /// <summary>Height of the upper bracket above the ground in metres; null when unknown.</summary>
    public double? BracketHeightMetres { get; init; }

    /// <summary>Length in metres of mast and antenna from the lower bracket to the tip; null while part of it is not given (<see cref="LengthLacks"/>).</summary>
    public double? WholeLengthMetres => LengthLacks.IsEmpty ? LeastLengthMetres : null;

    /// <summary>What of that length the plan gives, in metres: zero or more, and the whole of it when nothing lacks.</summary>
    public double LeastLengthMetres { get; init; }

    /// <summary>Keys below the fit-out that the whole length lacks, such as "mast/bracket/spacing"; empty when it is known.</summary>
    public ImmutableArray<string> LengthLacks { get; init; } = [];

    /// <summary>The mast as it stands and bends; null when it is not described.</summary>
    public MastFigure? Figure { get; init; }
}
