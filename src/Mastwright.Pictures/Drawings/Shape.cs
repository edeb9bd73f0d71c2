using System.Collections.Immutable;

namespace Mastwright.Pictures.Drawings;

/// <summary>One thing on a drawing. Later shapes lie over earlier ones.</summary>
public abstract record Shape;

/// <summary>A closed area, filled and perhaps edged.</summary>
/// <param name="Outline">Its corners in order; the last joins the first.</param>
/// <param name="Fill">What it is filled with.</param>
/// <param name="Edge">The line around it; null for none.</param>
public sealed record AreaShape(ImmutableArray<Spot> Outline, Fill Fill, Stroke? Edge = null) : Shape
{
    /// <summary>A rectangle.</summary>
    public static AreaShape Of(Box box, Fill fill, Stroke? edge = null) =>
        new([new(box.Left, box.Top), new(box.Right, box.Top), new(box.Right, box.Bottom), new(box.Left, box.Bottom)], fill, edge);
}

/// <summary>An open line through points.</summary>
/// <param name="Points">The points in order.</param>
/// <param name="Stroke">How it is drawn.</param>
public sealed record LineShape(ImmutableArray<Spot> Points, Stroke Stroke) : Shape;

/// <summary>One line of text.</summary>
/// <param name="At">Where its anchor stands on the baseline.</param>
/// <param name="Text">The words; control characters are not shown.</param>
/// <param name="SizePixels">Height of the type (em), in pixels at scale 1.</param>
/// <param name="Ink">Colour of the letters.</param>
public sealed record TextShape(Spot At, string Text, double SizePixels, Ink Ink) : Shape
{
    /// <summary>How heavy the letters are.</summary>
    public TextWeight Weight { get; init; }

    /// <summary>Which part of the line stands at <see cref="At"/>.</summary>
    public TextAnchor Anchor { get; init; }

    /// <summary>Turn about <see cref="At"/> in degrees, clockwise on the screen.</summary>
    public double RotationDegrees { get; init; }

    /// <summary>Colour of a rim around the letters that keeps them readable over lines; null for none.</summary>
    public Ink? Halo { get; init; }
}

/// <summary>A picture made of pixels, stretched over a rectangle.</summary>
/// <param name="Box">The rectangle.</param>
/// <param name="Image">The picture.</param>
public sealed record ImageShape(Box Box, PixelImage Image) : Shape;

/// <summary>Shapes that belong together.</summary>
/// <param name="Name">What they are, kebab-case, such as "ground"; it is written into the output, so tests and style sheets can find it.</param>
/// <param name="Members">The shapes.</param>
/// <param name="Clip">Nothing is drawn outside of it; null for no limit.</param>
public sealed record GroupShape(string Name, ImmutableArray<Shape> Members, Box? Clip = null) : Shape;

/// <summary>How heavy letters are. The default is <see cref="Regular"/>.</summary>
public enum TextWeight
{
    /// <summary>Weight 400.</summary>
    Regular,

    /// <summary>Weight 600.</summary>
    SemiBold,
}

/// <summary>Which part of a line of text stands at its place. The default is <see cref="Start"/>.</summary>
public enum TextAnchor
{
    /// <summary>The left end.</summary>
    Start,

    /// <summary>The middle.</summary>
    Middle,

    /// <summary>The right end.</summary>
    End,
}
