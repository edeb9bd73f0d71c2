using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Ground;

namespace Mastwright.Pictures.Paths;

/// <summary>Ground, water and what stands on the ground.</summary>
internal static class GroundLayer
{
    /// <summary>How deep a lake or a meadow is drawn below its surface, in pixels: a picture of the surface, not a sounding.</summary>
    private const double SkinPixels = 8;

    /// <summary>Least height that standing cover is drawn with, so that it is seen at all.</summary>
    private const double LeastCoverPixels = 3;

    /// <summary>The layer's groups.</summary>
    public static IEnumerable<Shape> Draw(PathPictureModel model, PathGeometry geometry, PathFrame frame, Palette palette)
    {
        ImmutableArray<ImmutableArray<Spot>> surfaces = Curves(geometry.RaisedGround);
        yield return new GroupShape("ground", [.. surfaces.Select(surface => new AreaShape([.. surface, new(surface[^1].X, frame.Plot.Bottom), new(surface[0].X, frame.Plot.Bottom)], new(palette.Ground)))], frame.Plot);

        CoverKind[] kinds = [.. geometry.Source.Select(source => model.CoverKinds.IsDefaultOrEmpty ? CoverKind.None : model.CoverKinds[source])];
        bool[] sea = [.. geometry.Source.Select((source, i) => IsSea(model, source, kinds[i]))];
        List<Shape> cover = [];
        foreach (((CoverKind kind, bool isSea, bool isMissing), int first, int last) in Bands.Stretches([.. kinds.Zip(sea, geometry.Missing)]))
        {
            if (!isMissing && (kind != CoverKind.None || isSea))
            {
                cover.Add(Stretch(isSea ? CoverKind.Water : kind, isSea, first, last, geometry, frame, palette));
            }
        }

        yield return new GroupShape("cover", [.. cover], frame.Plot);
        yield return new GroupShape("ground-line", [.. surfaces.Select(surface => new LineShape(surface, new(palette.GroundEdge, 1.4)))], frame.Plot);
        if (model.LowKFactor is double low)
        {
            Stroke faint = new(palette.GroundEdge.Veil(0.75), 1.1) { Dashes = [2, 3] };
            yield return new GroupShape("ground-low-k", [.. Curves([.. geometry.GroundAt(low)]).Select(curve => new LineShape(curve, faint))], frame.Plot);
        }

        ImmutableArray<ImmutableArray<Spot>> Curves(ImmutableArray<double> heights) =>
            [.. geometry.Known.Select(stretch => frame.Curve(stretch.Of(geometry.Distances), stretch.Of(heights)))];
    }

    /// <summary>Whether a point is drawn as sea, down to the sheet's edge. Without zones, water within a metre of sea level is taken for it.</summary>
    public static bool IsSea(PathPictureModel model, int point, CoverKind kind) => model.Zones.IsDefaultOrEmpty
        ? kind == CoverKind.Water && Math.Abs(model.GroundMetres[point]) <= 1
        : model.Zones[point] == Zone.Sea && kind is (CoverKind.Water or CoverKind.None);

    private static GroupShape Stretch(CoverKind kind, bool isSea, int first, int last, PathGeometry geometry, PathFrame frame, Palette palette)
    {
        List<Spot> top = [];
        List<Spot> bottom = [];
        Add(first, Middle(first - 1, first));
        for (int i = first; i <= last; i++)
        {
            Add(i, frame.X(geometry.Distances[i]));
        }

        Add(last, Middle(last, last + 1));
        bottom.Reverse();
        Stroke edge = new(CoverStyle.EdgeOf(kind, palette), 1);
        List<Shape> shapes = [new AreaShape([.. PlainCurve.Of(top), .. PlainCurve.Of(bottom)], CoverStyle.FillOf(kind, palette))];
        if (kind is CoverKind.Trees or CoverKind.Buildings or CoverKind.Other)
        {
            shapes.Add(new LineShape([new(top[0].X, bottom[^1].Y), .. PlainCurve.Of(top), new(top[^1].X, bottom[0].Y)], edge));
        }

        return new($"cover-{(isSea ? "sea" : CoverStyle.NameOf(kind).Replace(' ', '-'))}", [.. shapes]);

        void Add(int i, double x)
        {
            double ground = frame.Y(geometry.RaisedGround[i]);
            double summit = frame.Y(geometry.Top[i]);
            bool lies = kind is CoverKind.Water or CoverKind.Grass;
            top.Add(new(x, lies ? summit : Math.Min(summit, ground - LeastCoverPixels)));
            bottom.Add(new(x, isSea ? frame.Plot.Bottom : lies ? Math.Min(ground + SkinPixels, frame.Plot.Bottom) : ground));
        }

        double Middle(int before, int after) => frame.X(
            before < 0 ? geometry.Distances[0]
            : after >= geometry.Distances.Length ? geometry.Distances[^1]
            : geometry.Missing[before] ? geometry.Distances[after]
            : geometry.Missing[after] ? geometry.Distances[before]
            : (geometry.Distances[before] + geometry.Distances[after]) / 2);
    }
}
