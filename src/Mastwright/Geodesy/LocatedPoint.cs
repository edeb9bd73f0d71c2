namespace Mastwright.Geodesy;

/// <summary>A place and how far off it may be.</summary>
/// <param name="Point">The best guess, such as the middle of a locator's square.</param>
/// <param name="RadiusMetres">The true place is within this distance, in metres: zero or more.</param>
public readonly record struct LocatedPoint(GeoPoint Point, double RadiusMetres)
{
    /// <summary>The point, and its radius when it has one.</summary>
    public override string ToString() => RadiusMetres == 0
        ? Point.ToString()
        : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Point} ± {RadiusMetres:0} m");
}
