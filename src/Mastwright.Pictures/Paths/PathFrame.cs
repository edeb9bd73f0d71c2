using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Paths;

/// <summary>The plot's place on the sheet, and the scales that turn metres into pixels.</summary>
/// <param name="Plot">The plot's box.</param>
/// <param name="LengthMetres">Length of the path, over the box's width.</param>
/// <param name="LowMetres">Height at the box's bottom.</param>
/// <param name="HighMetres">Height at the box's top.</param>
internal sealed record PathFrame(Box Plot, double LengthMetres, double LowMetres, double HighMetres)
{
    /// <summary>Least height a plot spans, so that a flat path is not drawn as mountains.</summary>
    private const double LeastSpanMetres = 8;

    /// <summary>How many times larger a metre of height is drawn than a metre of distance.</summary>
    public double Exaggeration => Plot.Height / (HighMetres - LowMetres) / (Plot.Width / LengthMetres);

    /// <summary>A frame that shows all of the curves, with room for labels above them and a body of ground below.</summary>
    public static PathFrame Around(Box plot, PathGeometry geometry, double? lowKFactor, double labelPixels)
    {
        double[] highest = [.. Highest(geometry, lowKFactor)];
        double high = highest.DefaultIfEmpty(0).Max();
        double low = geometry.RaisedGround.Where((_, i) => !geometry.Missing[i]).DefaultIfEmpty(high).Min();

        double lacking = Math.Max(0, LeastSpanMetres - (high - low));
        double metresPerPixel = (high + lacking - low) / Math.Max(1, (plot.Height * 0.86) - labelPixels);
        return new(plot, geometry.LengthMetres, low - (plot.Height * 0.14 * metresPerPixel), high + lacking + (labelPixels * metresPerPixel));
    }

    /// <summary>What must be seen whole: known ground with its cover, the zone above the ray, and the ground in the air of the low k-factor.</summary>
    private static IEnumerable<double> Highest(PathGeometry geometry, double? lowKFactor)
    {
        IEnumerable<double> known = geometry.Top.Where((_, i) => !geometry.Missing[i]).Concat(geometry.Ray.Zip(geometry.Fresnel, (ray, radius) => ray + radius));
        return lowKFactor is double k ? known.Concat(geometry.GroundAt(k).Where((_, i) => !geometry.Missing[i])) : known;
    }

    /// <summary>Pixels across for a distance.</summary>
    public double X(double distanceMetres) => Plot.Left + (distanceMetres / LengthMetres * Plot.Width);

    /// <summary>Pixels down for a height.</summary>
    public double Y(double heightMetres) => Plot.Bottom - ((heightMetres - LowMetres) / (HighMetres - LowMetres) * Plot.Height);

    /// <summary>A place on the sheet.</summary>
    public Spot At(double distanceMetres, double heightMetres) => new(X(distanceMetres), Y(heightMetres));

    /// <summary>A curve on the sheet, without points that make no difference to the eye.</summary>
    public ImmutableArray<Spot> Curve(IEnumerable<double> distances, IEnumerable<double> heights) =>
        PlainCurve.Of([.. distances.Zip(heights, At)]);
}
