using System.Globalization;

namespace Mastwright.Pictures.Drawings;

/// <summary>A place on a drawing, in pixels at scale 1 from its top left corner; y grows downwards.</summary>
/// <param name="X">Pixels to the right.</param>
/// <param name="Y">Pixels down.</param>
public readonly record struct Spot(double X, double Y)
{
    /// <summary>Both numbers, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{X:0.##} {Y:0.##}");
}

/// <summary>An upright rectangle on a drawing, in pixels at scale 1.</summary>
/// <param name="Left">Left edge.</param>
/// <param name="Top">Top edge.</param>
/// <param name="Right">Right edge.</param>
/// <param name="Bottom">Bottom edge.</param>
public readonly record struct Box(double Left, double Top, double Right, double Bottom)
{
    /// <summary>Pixels across.</summary>
    public double Width => Right - Left;

    /// <summary>Pixels down.</summary>
    public double Height => Bottom - Top;

    /// <summary>Whether the two share any area.</summary>
    public bool Overlaps(Box other) =>
        Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

    /// <summary>The box grown by the same amount on every side.</summary>
    public Box Grown(double pixels) => new(Left - pixels, Top - pixels, Right + pixels, Bottom + pixels);

    /// <summary>The four edges, in the invariant culture.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Left:0.##} {Top:0.##} {Right:0.##} {Bottom:0.##}");
}
