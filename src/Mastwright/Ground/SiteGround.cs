using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Geodesy;
using Mastwright.Quantities;

namespace Mastwright.Ground;

/// <summary>The height of the bare ground at a site, and what was assumed to find it.</summary>
/// <param name="HeightMetres">Height in metres above the source's datum, or as the plan gives it; null when nothing is known.</param>
/// <param name="Source">Where it comes from: "plan", the name of a source, or "sea by tile index".</param>
/// <param name="Datum">Vertical datum of the height; empty when nobody said.</param>
/// <param name="Assumptions">What was assumed.</param>
public sealed record SiteGround(Estimate? HeightMetres, string Source, string Datum, ImmutableArray<Assumption> Assumptions)
{
    /// <summary>Radius of the neighbourhood that the bare ground under a surface model is looked for in, in metres.</summary>
    public const double NeighbourhoodMetres = 100;

    /// <summary>Share of the neighbourhood that is taken to lie below the bare ground by noise alone.</summary>
    public const double NeighbourhoodShare = 0.1;

    private const int HalfGrid = 4;

    /// <summary>Finds the bare ground at a site.</summary>
    /// <param name="mosaic">The ground.</param>
    /// <param name="site">Where.</param>
    /// <param name="givenMetres">Height of the bare ground as the plan gives it; null when it does not.</param>
    /// <param name="planPath">Plan path of the site, for the assumptions.</param>
    /// <remarks>
    /// <para>
    /// The plan's own height comes first. A bare-earth source is read as it stands. Under a surface source, which holds the site's own
    /// building and trees, the ground is found by a neighbourhood rule (common practice, and listed as assumed): a plane is laid through
    /// the heights within 100 m, and the site gets the plane's height plus the lowest tenth of what is left. On an even slope nothing is
    /// left and the rule gives the slope itself; a house or some trees stand above the lowest tenth and drop out. In closed woodland or a
    /// built-up street it stays too high: give the height in the plan there.
    /// </para>
    /// </remarks>
    public static SiteGround Resolve(GroundMosaic mosaic, GeoPoint site, Estimate? givenMetres, string planPath)
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        ArgumentNullException.ThrowIfNull(planPath);
        GroundHeight height = mosaic.HeightAt(site);
        if (givenMetres is { } given)
        {
            return new(given, "plan", height.Window?.Datum ?? "", []);
        }

        if (double.IsNaN(height.Metres))
        {
            return new(null, "", "", []);
        }

        if (height.Window is not { } window)
        {
            return new(Estimate.Exactly(height.Metres), "sea by tile index", "", []);
        }

        string source = window.SourceName.Length > 0 ? window.SourceName : window.Name;
        string path = planPath + "/ground-height";
        return window.Kind switch
        {
            HeightKind.Surface when BareHeight(mosaic, site) is double bare && !double.IsNaN(bare) => new(
                Estimate.Exactly(Math.Min(bare, height.Metres)), source, window.Datum, [Cleared(source, height.Metres, Math.Min(bare, height.Metres), path)]),
            HeightKind.Unknown => new(Estimate.Exactly(height.Metres), source, window.Datum, [TakenAsBare(source, path)]),
            _ => new(Estimate.Exactly(height.Metres), source, window.Datum, []),
        };
    }

    /// <summary>The bare ground under a surface model by the neighbourhood rule of <see cref="Resolve"/>; NaN when too little is known around the place.</summary>
    public static double BareHeight(GroundMosaic mosaic, GeoPoint site)
    {
        ArgumentNullException.ThrowIfNull(mosaic);
        double stepNorth = NeighbourhoodMetres / HalfGrid / GridFrame.MetresPerDegreeOfLatitude(site.LatitudeDegrees);
        double stepEast = stepNorth / Math.Max(0.01, Math.Cos(double.DegreesToRadians(site.LatitudeDegrees)));
        List<(int X, int Y, double Height)> around = [];
        for (int y = -HalfGrid; y <= HalfGrid; y++)
        {
            for (int x = -HalfGrid; x <= HalfGrid; x++)
            {
                double latitude = site.LatitudeDegrees + (y * stepNorth);
                if ((x * x) + (y * y) <= HalfGrid * HalfGrid && Math.Abs(latitude) <= 90)
                {
                    double height = mosaic.HeightAt(new GeoPoint(latitude, site.LongitudeDegrees + (x * stepEast))).Metres;
                    if (!double.IsNaN(height))
                    {
                        around.Add((x, y, height));
                    }
                }
            }
        }

        return around.Count < 2 * HalfGrid ? double.NaN : LowPlane(around);
    }

    /// <summary>Source, height and number of assumptions, in the invariant culture.</summary>
    public override string ToString() => HeightMetres is { } height
        ? string.Create(CultureInfo.InvariantCulture, $"{height.Median:0.#} m ({Source})")
        : "unknown";

    /// <summary>Least-squares plane through the heights, evaluated in the middle, plus the lowest tenth of the residuals.</summary>
    /// <remarks>
    /// Points above the plane are building or tree more often than ground, and would lift it: each round leaves out those that stand more
    /// than 2 m over the plane of the last, as long as half of all points remain.
    /// </remarks>
    private static double LowPlane(List<(int X, int Y, double Height)> around)
    {
        List<(int X, int Y, double Height)> kept = around;
        (double Height, double East, double North) plane = Plane(kept);
        for (int round = 0; round < 8; round++)
        {
            List<(int X, int Y, double Height)> next = [.. kept.Where(point => point.Height - At(plane, point) <= 2)];
            if (next.Count == kept.Count || next.Count < around.Count / 2)
            {
                break;
            }

            kept = next;
            plane = Plane(kept);
        }

        double[] left = [.. kept.Select(point => point.Height - At(plane, point)).Order()];
        return plane.Height + left[(int)(NeighbourhoodShare * (left.Length - 1))];
    }

    private static double At((double Height, double East, double North) plane, (int X, int Y, double Height) point) =>
        plane.Height + (plane.East * point.X) + (plane.North * point.Y);

    private static (double Height, double East, double North) Plane(List<(int X, int Y, double Height)> points)
    {
        double n = points.Count, sx = 0, sy = 0, sxx = 0, sxy = 0, syy = 0, sh = 0, sxh = 0, syh = 0;
        foreach ((int x, int y, double height) in points)
        {
            sx += x;
            sy += y;
            sxx += x * x;
            sxy += x * y;
            syy += y * y;
            sh += height;
            sxh += x * height;
            syh += y * height;
        }

        // Normal equations of h = a + b·x + c·y by Cramer's rule.
        double det = Det(n, sx, sy, sx, sxx, sxy, sy, sxy, syy);
        return Math.Abs(det) < 1e-9
            ? (sh / n, 0, 0)
            : (Det(sh, sx, sy, sxh, sxx, sxy, syh, sxy, syy) / det,
                Det(n, sh, sy, sx, sxh, sxy, sy, syh, syy) / det,
                Det(n, sx, sh, sx, sxx, sxh, sy, sxy, syh) / det);
    }

    private static double Det(double a, double b, double c, double d, double e, double f, double g, double h, double i) =>
        (a * ((e * i) - (f * h))) - (b * ((d * i) - (f * g))) + (c * ((d * h) - (e * g)));

    private static Assumption Cleared(string source, double surface, double bare, string planPath) => new(
        "ground-under-surface",
        string.Create(
            CultureInfo.InvariantCulture,
            $"Bare ground at {bare:0.#} m: '{source}' is a surface model and reads {surface:0.#} m; its lowest tenth within {NeighbourhoodMetres:0} m, slope allowed for, is taken."),
        "common practice",
        planPath);

    private static Assumption TakenAsBare(string source, string planPath) => new(
        "ground-kind",
        $"The heights of '{source}' are taken as bare earth; the plan does not say whether they are bare earth or surface.",
        "common practice",
        planPath);
}
