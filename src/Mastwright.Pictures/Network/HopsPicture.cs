using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Network;
using Mastwright.Network.Links;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Pictures.Reach;
using Mastwright.Plans;

namespace Mastwright.Pictures.Network;

/// <summary>How the stations of a plan are reached from one of them: the most probable routes, the hops and how sure, and the relays that others hang on.</summary>
public static class HopsPicture
{
    private const double Margin = 18;
    private const double SmallPixels = 11;
    private const int Width = 1000;
    private const int Height = 760;
    private const int MostNames = 60;

    /// <summary>Draws the picture.</summary>
    /// <param name="report">How they are reached.</param>
    /// <param name="theme">Light or dark.</param>
    public static Drawing Draw(HopReport report, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(report);
        Palette palette = Palette.Of(theme);
        LinkMatrix matrix = report.Links.Matrix;
        NetworkMap map = new(matrix.Stations, new(Margin + 60, 110, Width - Margin - 130, Height - 90));
        string title = $"{report.Links.Plan.Name}: hops from {matrix.Stations[report.From].Name}";
        int likely = report.Stations.Count(one => one.Flooded.Confidence >= 0.9);
        string words = Text($"Over at most {report.Settings.HopLimit} hops {likely} of {report.Stations.Length} stations are reached with 90 % confidence or more, {report.Stations.Count(one => one.Route is null)} have no route at all.");
        return new()
        {
            WidthPixels = Width,
            HeightPixels = Height,
            Title = title,
            Description = words + " " + string.Join("; ", report.Stations.Take(MostNames).Select(one => Text($"{matrix.Stations[one.Flooded.Station].Name}: {Hops(one)}"))) + ".",
            Paper = palette.Paper,
            Shapes =
            [
                .. SheetHead.Of(title, words, Width, palette),
                new GroupShape("routes", Routes(report, map)),
                new GroupShape("relays", [.. report.WeakPoints.Stations.Where(cut => cut.Station != report.From).Select(cut => Ring(map.At(matrix.Stations[cut.Station].Place), palette))]),
                new GroupShape("stations", Stations(report, map, palette)),
                new GroupShape("legend", Legend(report, palette)),
            ],
        };
    }

    /// <summary>Each link that a most probable route goes over once, in the colour of the hop that it is first used for.</summary>
    private static ImmutableArray<Shape> Routes(HopReport report, NetworkMap map)
    {
        Dictionary<(int, int), int> links = [];
        foreach (StationHops station in report.Stations)
        {
            for (int hop = 1; hop < (station.Route?.Stations.Length ?? 0); hop++)
            {
                links.TryAdd((station.Route!.Stations[hop - 1], station.Route.Stations[hop]), hop);
            }
        }

        return [.. links.OrderBy(link => link.Key).Select(link => (Shape)new LineShape([map.At(report.Links.Matrix.Stations[link.Key.Item1].Place), map.At(report.Links.Matrix.Stations[link.Key.Item2].Place)], new(InkOf(link.Value), 2.2)))];
    }

    private static ImmutableArray<Shape> Stations(HopReport report, NetworkMap map, Palette palette)
    {
        List<Shape> shapes = [];
        LinkMatrix matrix = report.Links.Matrix;
        bool named = matrix.Stations.Length <= MostNames;
        Dictionary<int, StationHops> hops = report.Stations.ToDictionary(one => one.Flooded.Station);
        for (int i = 0; i < matrix.Stations.Length; i++)
        {
            Spot at = map.At(matrix.Stations[i].Place);
            StationHops? reached = hops.GetValueOrDefault(i);
            double half = i == report.From ? 7 : 5;
            Ink fill = reached is null ? palette.Ink : reached.Route is null ? palette.Paper : InkOf(reached.Route.Hops);
            shapes.Add(AreaShape.Of(new(at.X - half, at.Y - half, at.X + half, at.Y + half), new(fill), new(palette.Ink, 1.4)));
            if (named)
            {
                string label = reached is null ? matrix.Stations[i].Name : Text($"{matrix.Stations[i].Name}: {Hops(reached)}");
                bool isRight = at.X > Width - 240;
                shapes.Add(new TextShape(new(at.X + (isRight ? -10 : 10), at.Y - 7), label, SmallPixels + 1, palette.Ink) { Halo = palette.Paper, Anchor = isRight ? TextAnchor.End : TextAnchor.Start });
            }
        }

        return [.. shapes];
    }

    private static ImmutableArray<Shape> Legend(HopReport report, Palette palette)
    {
        List<Shape> shapes = [];
        double x = Margin;
        double y = Height - 40;
        int most = report.Stations.Max(one => (int?)(one.Route?.Hops ?? 0)) ?? 0;
        for (int hop = 1; hop <= most; hop++)
        {
            string text = hop == 1 ? "1 hop" : Text($"{hop} hops");
            shapes.Add(new LineShape([new(x, y), new(x + 26, y)], new(InkOf(hop), 2.2)));
            shapes.Add(new TextShape(new(x + 33, y + 4), text, SmallPixels, palette.Muted));
            x += 45 + TextRuler.WidthPixels(text, SmallPixels);
        }

        shapes.Add(AreaShape.Of(new(x, y - 5, x + 10, y + 5), new(palette.Paper), new(palette.Ink, 1.4)));
        shapes.Add(new TextShape(new(x + 17, y + 4), "no route", SmallPixels, palette.Muted));
        x += 80;
        shapes.Add(Ring(new(x + 8, y), palette));
        shapes.Add(new TextShape(new(x + 24, y + 4), "others hang on it alone", SmallPixels, palette.Muted));
        shapes.Add(new TextShape(new(Margin, Height - 16), "Lines: the most probable routes. Percent: share of the worlds tried in which flooding gets there within the hop limit. North is up.", SmallPixels, palette.Muted));
        return [.. shapes];
    }

    private static string Hops(StationHops station) => station.Route is { } route
        ? Text($"{route.Hops} {(route.Hops == 1 ? "hop" : "hops")}, {LinkOdds.Percent(station.Flooded.Confidence)}")
        : Text($"no route, {LinkOdds.Percent(station.Flooded.Confidence)}");

    private static Ink InkOf(int hop) => ServerStyles.InkOf(hop - 1);

    private static AreaShape Ring(Spot at, Palette palette) => new(
        [.. Enumerable.Range(0, 20).Select(i => new Spot(at.X + (11 * Math.Cos(i * Math.PI / 10)), at.Y + (11 * Math.Sin(i * Math.PI / 10))))], new(default(Ink)), new(palette.Fails, 2.4));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
