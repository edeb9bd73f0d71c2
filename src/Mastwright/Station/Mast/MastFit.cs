using System.Collections.Immutable;

namespace Mastwright.Station.Mast;

/// <summary>A mast as it stands. A null or an empty text is "nobody said".</summary>
/// <remarks>Heights along the mast count from the upper bracket, where the free length begins.</remarks>
public sealed record MastFit
{
    /// <summary>The tubes from the upper bracket up, each the length that stands free above the bracket or the tube below.</summary>
    public ImmutableArray<MastTube> Tubes { get; init; } = [];

    /// <summary>Height in metres of the upper bracket above the ground.</summary>
    public double? BracketHeightMetres { get; init; }

    /// <summary>Distance in metres between the upper and the lower bracket, centre to centre.</summary>
    public double? BracketSpacingMetres { get; init; }

    /// <summary>What one bracket with its anchors bears across the mast, in newtons, as a design value; null while nobody knows.</summary>
    public double? BracketCapacityNewtons { get; init; }

    /// <summary>What the brackets are fixed to, in a word: "masonry", "chimney", "gable", "anchor", "timber", "steel", "concrete", "ground".</summary>
    public string FixedTo { get; init; } = "";

    /// <summary>Metal of the clamp that holds the antenna, a catalogue key such as "stainless-steel"; empty when nobody said.</summary>
    public string Clamp { get; init; } = "";

    /// <summary>A box on the mast; null when there is none.</summary>
    public MastBox? Box { get; init; }

    /// <summary>A cable up the mast; null when there is none.</summary>
    public MastCable? Cable { get; init; }

    /// <summary>One level of guys; null when there is none.</summary>
    public GuyLevel? Guys { get; init; }

    /// <summary>Partial factor γM on the strength in place of the grade's.</summary>
    public double? MaterialFactor { get; init; }

    /// <summary>Whether all that holds the mast is known: what a bracket bears, how far apart the two are, and with guys what rope and anchors bear.</summary>
    public bool IsHoldKnown => BracketCapacityNewtons is not null && BracketSpacingMetres is not null && Guys is not ({ AnchorNewtons: null } or { BreakingNewtons: null });

    /// <summary>Free length above the upper bracket in metres.</summary>
    public double FreeLengthMetres => Tubes.Sum(tube => tube.LengthMetres);
}

/// <summary>One tube of a mast.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="Size">Catalogue key of its size; empty when its measures are given.</param>
/// <param name="OuterDiameterMetres">Its outer diameter in metres, where no size is named.</param>
/// <param name="WallMetres">Its wall in metres, where no size is named.</param>
/// <param name="Grade">Catalogue key of its grade.</param>
/// <param name="LengthMetres">Its free length in metres, greater than zero.</param>
/// <param name="WeldedAtFoot">Whether it is welded where it begins; null when nobody said.</param>
public sealed record MastTube(
    string PlanPath, string Size, double? OuterDiameterMetres, double? WallMetres, string Grade, double LengthMetres, bool? WeldedAtFoot = null);

/// <summary>A box on a mast.</summary>
/// <param name="WidthMetres">Width across the wind in metres.</param>
/// <param name="HeightMetres">Height in metres.</param>
/// <param name="CentreMetres">Its centre above the upper bracket in metres; below the bracket it is not counted.</param>
/// <param name="MassKilograms">Mass in kg; null when unknown.</param>
/// <param name="DragCoefficient">Force coefficient; null for that of a flat face.</param>
public sealed record MastBox(double WidthMetres, double HeightMetres, double CentreMetres, double? MassKilograms, double? DragCoefficient);

/// <summary>A cable up a mast.</summary>
/// <param name="DiameterMetres">Outer diameter in metres.</param>
/// <param name="LengthMetres">Length in metres along the free part, from the upper bracket up; null for all of it.</param>
/// <param name="KilogramsPerMetre">Mass in kg/m; null when unknown.</param>
public sealed record MastCable(double DiameterMetres, double? LengthMetres, double? KilogramsPerMetre);

/// <summary>One level of guys.</summary>
/// <param name="HeightMetres">Height of the level above the upper bracket in metres.</param>
/// <param name="AngleDegrees">Angle of the guys with the level ground in degrees, above 0 and below 90.</param>
/// <param name="DiameterMetres">Diameter of the wire rope in metres.</param>
/// <param name="LengthMetres">Length of one guy in metres.</param>
/// <param name="BreakingNewtons">Breaking force of one guy in newtons; null when unknown.</param>
/// <param name="AnchorNewtons">What one guy's anchor bears along the guy in newtons, as a design value; null while nobody knows.</param>
/// <param name="Count">How many guys the level has, 3 or more; null when nobody said.</param>
public sealed record GuyLevel(
    double HeightMetres, double AngleDegrees, double DiameterMetres, double LengthMetres, double? BreakingNewtons, double? AnchorNewtons, int? Count = null)
{
    /// <summary>Guys of a level where nobody said: the fewest that hold a mast.</summary>
    public const int UsualCount = 3;
}
