using System.Collections.Immutable;

namespace Mastwright.Station.Mast;

/// <summary>A mast as it stands, in metres, for whoever draws it. Heights along the mast count from its upper bracket.</summary>
public sealed record MastFigure
{
    /// <summary>The tubes whose measures are known, from the upper bracket up.</summary>
    public ImmutableArray<FigureTube> Tubes { get; init; } = [];

    /// <summary>Free length above the upper bracket in metres.</summary>
    public required double FreeLengthMetres { get; init; }

    /// <summary>Height of the upper bracket above the ground in metres; null when unknown.</summary>
    public double? BracketHeightMetres { get; init; }

    /// <summary>Distance of the brackets in metres; null when unknown.</summary>
    public double? BracketSpacingMetres { get; init; }

    /// <summary>Foot of the antenna above the upper bracket in metres; null when unknown.</summary>
    public double? AntennaFootMetres { get; init; }

    /// <summary>Length of the antenna over all in metres; null when unknown.</summary>
    public double? AntennaLengthMetres { get; init; }

    /// <summary>Diameter of the antenna in metres; null when unknown.</summary>
    public double? AntennaDiameterMetres { get; init; }

    /// <summary>Distance in metres of an antenna that hangs beside the mast; null for one on top.</summary>
    public double? SideMountMetres { get; init; }

    /// <summary>The box on the mast; null when there is none.</summary>
    public MastBox? Box { get; init; }

    /// <summary>The cable up the mast; null when there is none.</summary>
    public MastCable? Cable { get; init; }

    /// <summary>The level of guys; null when there is none.</summary>
    public GuyLevel? Guys { get; init; }

    /// <summary>How the worst case bends it; null when that is not known.</summary>
    public MastBending? Bending { get; init; }
}

/// <summary>One tube of a mast that is drawn.</summary>
/// <param name="Number">Its number from the bracket up, from 1.</param>
/// <param name="FootMetres">Where it begins above the upper bracket, in metres.</param>
/// <param name="TopMetres">Where it ends.</param>
/// <param name="DiameterMetres">Its outer diameter in metres.</param>
/// <param name="Measures">Its measures as a person reads them: "60.3 × 3.2 mm".</param>
public readonly record struct FigureTube(int Number, double FootMetres, double TopMetres, double DiameterMetres, string Measures)
{
    /// <summary>Number and measures.</summary>
    public override string ToString() => FormattableString.Invariant($"tube {Number}, {Measures}");
}

/// <summary>How one case of wind bends a mast, from the upper bracket to the top.</summary>
/// <param name="Name">The case: "without ice".</param>
/// <param name="Points">Moment, strength and way across at rising heights; two at a height where the strength changes.</param>
/// <param name="Loads">What the wind blows at.</param>
/// <param name="Worst">Where the most of the strength is used: "at the upper bracket".</param>
/// <param name="WorstMetres">Its height above the upper bracket in metres.</param>
/// <param name="Utilisation">Share of the strength used there, as design values.</param>
public sealed record MastBending(string Name, ImmutableArray<BendingPoint> Points, ImmutableArray<MastLoad> Loads, string Worst, double WorstMetres, double Utilisation)
{
    /// <summary>The wind that bends it without any load factor: "characteristic wind", or "ultimate wind".</summary>
    public string WindName { get; init; } = "characteristic wind";

    /// <summary>Way of the top across in metres, under that wind.</summary>
    public double TopMetres => Points[^1].DeflectionMetres;
}

/// <summary>A mast at one height.</summary>
/// <param name="HeightMetres">Height above the upper bracket in metres.</param>
/// <param name="MomentNewtonMetres">Bending moment in N·m, design value, without its sign.</param>
/// <param name="StrengthNewtonMetres">Bending strength in N·m, design value; a weld softens only the foot of its tube.</param>
/// <param name="DeflectionMetres">Way across in metres, under the wind without load factor.</param>
public readonly record struct BendingPoint(double HeightMetres, double MomentNewtonMetres, double StrengthNewtonMetres, double DeflectionMetres)
{
    /// <summary>All four, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{HeightMetres:0.##} m: {MomentNewtonMetres:0} of {StrengthNewtonMetres:0} N·m, {DeflectionMetres * 1000:0} mm");
}
