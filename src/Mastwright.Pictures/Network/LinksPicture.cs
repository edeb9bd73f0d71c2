using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Network.Links;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Pictures.Reach;

namespace Mastwright.Pictures.Network;

/// <summary>The stations of a plan and the links between them that are heard at least one way.</summary>
public static class LinksPicture
{
    private const double Margin = 18;
    private const double SmallPixels = 11;
    private const int Width = 1000;
    private const int Height = 760;
    private const int MostNames = 60;

    /// <summary>Draws the picture.</summary>
    /// <param name="name">Name of the plan.</param>
    /// <param name="matrix">The links.</param>
    /// <param name="wantedDb">Wanted margin in dB.</param>
    /// <param name="theme">Light or dark.</param>
    public static Drawing Draw(string name, LinkMatrix matrix, double wantedDb, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(matrix);
        Palette palette = Palette.Of(theme);
        ReachScale scale = ReachScale.For(theme);
        NetworkMap map = new(matrix.Stations, new(Margin + 60, 110, Width - Margin - 90, Height - 90));
        ImmutableArray<double> edges = ReachClasses.Edges(wantedDb);
        LinkPair[] heard = [.. matrix.Pairs.ToArray().Where(pair => pair.Out.MarginDb is { Median: >= 0 } || pair.Back.MarginDb is { Median: >= 0 })];
        int both = heard.Count(pair => pair.LeastMarginDb >= 0);
        int unknown = matrix.Pairs.ToArray().Count(pair => pair.LeastMarginDb is null);
        string words = Text($"{matrix.Pairs.Length} pairs of {matrix.Stations.Length} stations: {both} are heard both ways at the best guess, {heard.Length - both} one way only (dashed), {unknown} unknown; the rest are not drawn.");
        return new()
        {
            WidthPixels = Width,
            HeightPixels = Height,
            Title = $"{name}: links",
            Description = words,
            Paper = palette.Paper,
            Shapes =
            [
                .. SheetHead.Of($"{name}: links", words, Width, palette),
                new GroupShape("links", [.. heard.OrderBy(pair => pair.LeastMarginDb ?? double.NegativeInfinity).Select(pair => Line(matrix, pair, map, edges, scale, palette))]),
                new GroupShape("stations", Stations(matrix.Stations, map, palette)),
                new GroupShape("legend", Legend(edges, scale, palette)),
            ],
        };
    }

    private static LineShape Line(LinkMatrix matrix, LinkPair pair, NetworkMap map, ImmutableArray<double> edges, ReachScale scale, Palette palette)
    {
        ImmutableArray<Spot> ends = [map.At(matrix.Stations[pair.From].Place), map.At(matrix.Stations[pair.To].Place)];
        return pair.LeastMarginDb is { } margin && margin >= 0
            ? new(ends, new(scale.Of(ReachClasses.IndexOf(edges, margin) - 1), 1 + (0.8 * ReachClasses.IndexOf(edges, margin))))
            : new(ends, new(palette.Missing, 1.2) { Dashes = [5, 4] });
    }

    /// <summary>Marks and names of the stations.</summary>
    internal static ImmutableArray<Shape> Stations(IReadOnlyList<MatrixStation> stations, NetworkMap map, Palette palette)
    {
        List<Shape> shapes = [];
        bool named = stations.Count <= MostNames;
        foreach (MatrixStation station in stations)
        {
            Spot at = map.At(station.Place);
            double half = station.IsSite ? 5 : 4;
            ImmutableArray<Spot> outline = station.IsSite
                ? [new(at.X - half, at.Y - half), new(at.X + half, at.Y - half), new(at.X + half, at.Y + half), new(at.X - half, at.Y + half)]
                : [new(at.X, at.Y - half - 1), new(at.X + half + 1, at.Y), new(at.X, at.Y + half + 1), new(at.X - half - 1, at.Y)];
            shapes.Add(new AreaShape(outline, new(station.IsSite ? palette.Ink : palette.Paper), new(palette.Ink, 1.4)));
            if (named)
            {
                bool isRight = at.X > Width - 160;
                shapes.Add(new TextShape(new(at.X + (isRight ? -9 : 9), at.Y - 6), station.Name, SmallPixels + 1, palette.Ink) { Halo = palette.Paper, Anchor = isRight ? TextAnchor.End : TextAnchor.Start });
            }
        }

        return [.. shapes];
    }

    private static ImmutableArray<Shape> Legend(ImmutableArray<double> edges, ReachScale scale, Palette palette)
    {
        List<Shape> shapes = [];
        double x = Margin;
        double y = Height - 40;
        for (int i = 0; i < edges.Length; i++)
        {
            string text = i + 1 < edges.Length ? Text($"{edges[i]:0.#} to {edges[i + 1]:0.#} dB") : Text($"{edges[i]:0.#} dB and more");
            shapes.Add(new LineShape([new(x, y), new(x + 26, y)], new(scale.Of(i), 1 + (0.8 * (i + 1)))));
            shapes.Add(new TextShape(new(x + 33, y + 4), text, SmallPixels, palette.Muted));
            x += 45 + TextRuler.WidthPixels(text, SmallPixels);
        }

        shapes.Add(new LineShape([new(x, y), new(x + 26, y)], new(palette.Missing, 1.2) { Dashes = [5, 4] }));
        shapes.Add(new TextShape(new(x + 33, y + 4), "one way only", SmallPixels, palette.Muted));
        shapes.Add(new TextShape(new(Margin, Height - 16), "Margin of the weaker direction at the best guess. Square: own site; diamond: neighbour. North is up.", SmallPixels, palette.Muted));
        return [.. shapes];
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
