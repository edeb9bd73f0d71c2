using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Ground;

namespace Mastwright.Pictures.Paths;

/// <summary>Everything a path picture shows, already computed: the picture measures nothing but its own sheet.</summary>
/// <remarks>The arrays are parallel, one entry a profile point. Checked as a whole by <see cref="PathPicture.Draw"/>.</remarks>
public sealed record PathPictureModel
{
    /// <summary>Name of the end at distance 0, drawn on the left.</summary>
    public required string TransmitterName { get; init; }

    /// <summary>Name of the other end, drawn on the right.</summary>
    public required string ReceiverName { get; init; }

    /// <summary>Distance of each point from the left end, in metres: the first is 0, strictly rising, two or more.</summary>
    public required ImmutableArray<double> DistancesMetres { get; init; }

    /// <summary>Height of the bare ground at each point, in metres above sea level, without earth bulge.</summary>
    public required ImmutableArray<double> GroundMetres { get; init; }

    /// <summary>Height of the cover above the ground at each point, in metres, zero or more; empty for none anywhere.</summary>
    public ImmutableArray<double> CoverHeightMetres { get; init; } = [];

    /// <summary>What covers the ground at each point; empty for nothing known.</summary>
    public ImmutableArray<CoverKind> CoverKinds { get; init; } = [];

    /// <summary>Radio-climatic zone of each point; empty for none shown.</summary>
    public ImmutableArray<Zone> Zones { get; init; } = [];

    /// <summary>
    /// Stretches without ground data, each from the last place with a height to the next: neither ground nor cover, zone or shading is
    /// drawn strictly inside them, nor at an end of the path that one reaches. What the arrays hold there is never shown.
    /// </summary>
    public ImmutableArray<PathStretch> Missing { get; init; } = [];

    /// <summary>Height of the left antenna above its ground, in metres, zero or more; null when unknown: then no ray is drawn.</summary>
    public required double? TransmitterHeightMetres { get; init; }

    /// <summary>Height of the right antenna above its ground, in metres, zero or more; null when unknown: then no ray is drawn.</summary>
    public required double? ReceiverHeightMetres { get; init; }

    /// <summary>Frequency in hertz, more than zero: it makes the Fresnel zone.</summary>
    public required double FrequencyHz { get; init; }

    /// <summary>Effective earth radius factor that the ground is drawn with, more than zero; 4/3 in the usual air.</summary>
    public required double KFactor { get; init; }

    /// <summary>A lower factor, for the line that shows how far the ground comes up in bad air; null for no line.</summary>
    public double? LowKFactor { get; init; }

    /// <summary>What is in the way or comes nearest to it; shown only where there is a ray.</summary>
    public ImmutableArray<PathObstruction> Obstructions { get; init; } = [];

    /// <summary>The verdict of the link.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>Margin of the weaker direction in dB, negative when it is short; null when unknown.</summary>
    public double? MarginDb { get; init; }

    /// <summary>The least that margin may be, in dB; null when unknown. Shown where the verdict is unknown.</summary>
    public double? MarginLowDb { get; init; }

    /// <summary>The most that margin may be, in dB, not less than <see cref="MarginLowDb"/>; null when unknown.</summary>
    public double? MarginHighDb { get; init; }

    /// <summary>Why, in one sentence of at most two lines; empty for none.</summary>
    public string Headline { get; init; } = "";

    /// <summary>Further remarks, one or two lines each; the first three are shown, in four lines at most.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>Both directions with their margins; the first two are shown.</summary>
    public ImmutableArray<PathDirection> Directions { get; init; } = [];

    /// <summary>The two names.</summary>
    public override string ToString() => $"{TransmitterName} → {ReceiverName}";
}

/// <summary>What covers the ground. The default is <see cref="None"/>.</summary>
public enum CoverKind
{
    /// <summary>Bare ground, or nothing known.</summary>
    None,

    /// <summary>Sea, lake or river.</summary>
    Water,

    /// <summary>Pasture, crops, heath.</summary>
    Grass,

    /// <summary>Woodland.</summary>
    Trees,

    /// <summary>Houses.</summary>
    Buildings,

    /// <summary>Anything else that stands up.</summary>
    Other,
}

/// <summary>A stretch of a path.</summary>
/// <param name="FromMetres">Where it begins, in metres from the left end.</param>
/// <param name="ToMetres">Where it ends, beyond its beginning.</param>
public readonly record struct PathStretch(double FromMetres, double ToMetres);

/// <summary>Something in the way of the ray, or near it.</summary>
/// <param name="DistanceMetres">Where, in metres from the left end.</param>
/// <param name="AboveRayMetres">How far its top stands above the ray, in metres at the picture's k-factor; negative when it is below.</param>
/// <param name="FresnelRadii">The same in radii of the first Fresnel zone at that place, with the same sign.</param>
/// <param name="Label">What it is, such as "The Combs"; empty for no name.</param>
public sealed record PathObstruction(double DistanceMetres, double AboveRayMetres, double FresnelRadii, string Label = "");

/// <summary>One direction of the link in a line.</summary>
/// <param name="From">Who sends.</param>
/// <param name="To">Who listens.</param>
/// <param name="MarginDb">Margin in dB; null when unknown.</param>
/// <param name="Verdict">What comes of it.</param>
/// <param name="MarginLowDb">The least the margin may be, in dB; null when unknown. Shown where the verdict is unknown.</param>
/// <param name="MarginHighDb">The most the margin may be, in dB; null when unknown.</param>
public sealed record PathDirection(string From, string To, double? MarginDb, Verdict Verdict, double? MarginLowDb = null, double? MarginHighDb = null);
