using System.Collections.Immutable;

namespace Mastwright.Pictures.Drawings;

/// <summary>What an area is filled with: a colour, and perhaps a pattern over it.</summary>
/// <param name="Ink">The colour under the pattern; opacity 0 for the pattern alone.</param>
/// <param name="Hatch">The pattern; null for none.</param>
public sealed record Fill(Ink Ink, Hatch? Hatch = null);

/// <summary>A pattern of small marks that repeats.</summary>
/// <param name="Kind">Which marks.</param>
/// <param name="Ink">Their colour.</param>
public sealed record Hatch(HatchKind Kind, Ink Ink);

/// <summary>How a line is drawn.</summary>
/// <param name="Ink">Its colour.</param>
/// <param name="WidthPixels">Its width in pixels at scale 1, more than zero.</param>
public sealed record Stroke(Ink Ink, double WidthPixels)
{
    /// <summary>Lengths of dash and gap in turn, in pixels at scale 1: an even number of them, or empty for an unbroken line.</summary>
    public ImmutableArray<double> Dashes { get; init; } = [];
}

/// <summary>The marks of a pattern.</summary>
public enum HatchKind
{
    /// <summary>Lines that rise to the right.</summary>
    Rising,

    /// <summary>Lines that fall to the right.</summary>
    Falling,

    /// <summary>Lines both ways.</summary>
    Crossed,

    /// <summary>Short waves: water.</summary>
    Waves,

    /// <summary>Little firs: woodland.</summary>
    Firs,

    /// <summary>Little gables: buildings.</summary>
    Gables,

    /// <summary>Short blades: pasture.</summary>
    Blades,

    /// <summary>Dots: anything else.</summary>
    Dots,
}
