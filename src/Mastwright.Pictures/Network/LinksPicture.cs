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

    /// <summary>From these on a link is more likely to work than not, likely, all but sure.</summary>
    private static readonly ImmutableArray<double> Confidences = [0.5, 0.8, 0.95, 0.99];

    /// <summary>Less likely than this a link is not drawn.</summary>
    private const double LeastConfidence = 0.05;

    /// <summary>Draws the links by their margin.</summary>
    /// <param name="name">Name of the plan.</param>
    /// <param name="matrix">The links.</param>
    /// <param name="wantedDb">Wanted margin in dB.</param>
    /// <param name="theme">Light or dark.</param>
    public static Drawing Draw(string name, LinkMatrix matrix, double wantedDb, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(matrix);
        ImmutableArray<double> edges = ReachClasses.Edges(wantedDb);
        LinkPair[] heard = [.. matrix.Pairs.ToArray().Where(pair => pair.Out.MarginDb is { Median: >= 0 } || pair.Back.MarginDb is { Median: >= 0 })];
        int both = heard.Count(pair => pair.LeastMarginDb >= 0);
        int unknown = matrix.Pairs.ToArray().Count(pair => pair.LeastMarginDb is null);
        return Draw(name, matrix, theme, heard, new(
            edges,
            pair => pair.LeastMarginDb,
            Text($"{Pairs(matrix)}: {both} are heard both ways at the best guess, {heard.Length - both} one way only (dashed), {unknown} unknown; the rest are not drawn."),
            i => i + 1 < edges.Length ? Text($"{edges[i]:0.#} to {edges[i + 1]:0.#} dB") : Text($"{edges[i]:0.#} dB and more"),
            "one way only",
            "Margin of the weaker direction at the best guess."));
    }

    /// <summary>Draws the links by the confidence that they work both ways.</summary>
    /// <param name="name">Name of the plan.</param>
    /// <param name="matrix">The links.</param>
    /// <param name="theme">Light or dark.</param>
    public static Drawing DrawConfidence(string name, LinkMatrix matrix, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(matrix);
        LinkPair[] possible = [.. matrix.Pairs.ToArray().Where(pair => pair.WorksBothWays >= LeastConfidence)];
        int likely = possible.Count(pair => pair.WorksBothWays >= Confidences[1]);
        int even = possible.Count(pair => pair.WorksBothWays >= Confidences[0]);
        int unknown = matrix.Pairs.ToArray().Count(pair => pair.WorksBothWays is null);
        return Draw(name, matrix, theme, possible, new(
            Confidences,
            pair => pair.WorksBothWays,
            Text($"{Pairs(matrix)}: {likely} work both ways with a confidence of {100 * Confidences[1]:0} % or more, {even - likely} of {100 * Confidences[0]:0} to {100 * Confidences[1]:0} %, {possible.Length - even} of less (dashed), {unknown} unknown; those under {100 * LeastConfidence:0} % are not drawn."),
            i => i + 1 < Confidences.Length ? Text($"{100 * Confidences[i]:0} to {100 * Confidences[i + 1]:0} %") : Text($"{100 * Confidences[i]:0} % and more"),
            Text($"{100 * LeastConfidence:0} to {100 * Confidences[0]:0} %"),
            "Confidence that the weaker direction works at all."));
    }

    private static Drawing Draw(string name, LinkMatrix matrix, Theme theme, LinkPair[] drawn, Shading shading)
    {
        Palette palette = Palette.Of(theme);
        ReachScale scale = ReachScale.For(theme);
        NetworkMap map = new(matrix.Stations, new(Margin + 60, 110, Width - Margin - 90, Height - 90));
        return new()
        {
            WidthPixels = Width,
            HeightPixels = Height,
            Title = $"{name}: links",
            Description = shading.Words,
            Paper = palette.Paper,
            Shapes =
            [
                .. SheetHead.Of($"{name}: links", shading.Words, Width, palette),
                new GroupShape("links", [.. drawn.OrderBy(pair => shading.Value(pair) ?? double.NegativeInfinity).Select(pair => Line(matrix, pair, map, shading, scale, palette))]),
                new GroupShape("stations", Stations(matrix.Stations, map, palette)),
                new GroupShape("legend", Legend(shading, scale, palette)),
            ],
        };
    }

    private static LineShape Line(LinkMatrix matrix, LinkPair pair, NetworkMap map, Shading shading, ReachScale scale, Palette palette)
    {
        ImmutableArray<Spot> ends = [map.At(matrix.Stations[pair.From].Place), map.At(matrix.Stations[pair.To].Place)];
        int index = shading.Value(pair) is { } value ? ReachClasses.IndexOf(shading.Edges, value) : 0;
        return index > 0
            ? new(ends, new(scale.Of(index - 1), 1 + (0.8 * index)))
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

    private static ImmutableArray<Shape> Legend(Shading shading, ReachScale scale, Palette palette)
    {
        List<Shape> shapes = [];
        double x = Margin;
        double y = Height - 40;
        for (int i = 0; i < shading.Edges.Length; i++)
        {
            string text = shading.Class(i);
            shapes.Add(new LineShape([new(x, y), new(x + 26, y)], new(scale.Of(i), 1 + (0.8 * (i + 1)))));
            shapes.Add(new TextShape(new(x + 33, y + 4), text, SmallPixels, palette.Muted));
            x += 45 + TextRuler.WidthPixels(text, SmallPixels);
        }

        shapes.Add(new LineShape([new(x, y), new(x + 26, y)], new(palette.Missing, 1.2) { Dashes = [5, 4] }));
        shapes.Add(new TextShape(new(x + 33, y + 4), shading.Below, SmallPixels, palette.Muted));
        shapes.Add(new TextShape(new(Margin, Height - 16), $"{shading.What} Square: own site; diamond: neighbour. North is up.", SmallPixels, palette.Muted));
        return [.. shapes];
    }

    private static string Pairs(LinkMatrix matrix) => Text($"{matrix.Pairs.Length} pairs of {matrix.Stations.Length} stations");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>What a line's colour and width tell.</summary>
    /// <param name="Edges">From where each class begins; a link below the first is dashed.</param>
    /// <param name="Value">A link's value; null when unknown.</param>
    /// <param name="Words">The picture in a sentence.</param>
    /// <param name="Class">A class in words.</param>
    /// <param name="Below">What the dashed lines are.</param>
    /// <param name="What">What the value is.</param>
    private sealed record Shading(ImmutableArray<double> Edges, Func<LinkPair, double?> Value, string Words, Func<int, string> Class, string Below, string What);
}
