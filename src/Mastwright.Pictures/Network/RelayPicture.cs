using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Links;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Pictures.Reach;
using Mastwright.Plans;

namespace Mastwright.Pictures.Network;

/// <summary>Relays of a choice on a map: what is reached now, what nobody reaches, and what each of them opens; with their links and what was ranked.</summary>
public static class RelayPicture
{
    private const double Margin = 18;
    private const double SmallPixels = 11.5;
    private const double TextPixels = 13;
    private const int Width = 1000;
    private const int Height = 800;
    private const int SidePixels = 660;
    private const byte FirstMark = 3;

    /// <summary>Draws the picture.</summary>
    /// <param name="report">The search.</param>
    /// <param name="theme">Light or dark.</param>
    public static Drawing Draw(RelayReport report, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(report);
        Palette palette = Palette.Of(theme);
        Box box = new(Margin, 84, Margin + SidePixels, 84 + SidePixels);
        Func<GeoPoint, Spot> at = report.Frame is { } frame ? place => OnGrid(frame, box, place) : OnMap(report, box);
        string title = $"{report.Home.Name}: {(report.Chosen.Length == 1 ? "a relay" : "relays")}, {RelayFindings.GoalWords(report.Goal)}";
        string words = report.Chosen.IsEmpty
            ? "No relay helps."
            : Text($"{string.Join(", ", report.Chosen.Select(relay => relay.Candidate.Name))}: {RelayFindings.Value(report, report.Choice.Value)} of {RelayFindings.Value(report, report.Open)} that are open.");
        return new()
        {
            WidthPixels = Width,
            HeightPixels = Height,
            Title = title,
            Description = words + " " + string.Join("; ", report.Chosen.Select(relay => Text($"{relay.Candidate.Name}: {RelayFindings.Value(report, relay.Gain)}"))) + ".",
            Paper = palette.Paper,
            Shapes =
            [
                .. SheetHead.Of(title, words, Width, palette),
                .. report.Frame is { } grid ? [new ImageShape(box, Image(report, grid, palette))] : ImmutableArray<Shape>.Empty,
                AreaShape.Of(box, new(default(Ink)), new(palette.Muted, 0.8)),
                new GroupShape("links", [.. report.Chosen.SelectMany(relay => relay.Parents).Select(link => (Shape)new LineShape([at(link.From.Position.Point), at(link.To.Position.Point)], new(palette.Ink, 1.2) { Dashes = [5, 3] }))]),
                new GroupShape("ranking", [.. report.Ranking.Where(one => report.Chosen.All(relay => relay.Candidate != one.Candidate)).Select(one => at(one.Candidate.Place)).Where(spot => IsIn(box, spot)).Select(spot => (Shape)Dot(spot, 3, palette.Paper, palette.Ink))]),
                new GroupShape("stations", Stations(report, box, at, palette)),
                new GroupShape("relays", Relays(report, box, at, palette)),
                new GroupShape("legend", Legend(report, palette, box.Right + 22)),
            ],
        };
    }

    private static PixelImage Image(RelayReport report, GridFrame frame, Palette palette)
    {
        byte[] pixels = new byte[4 * SidePixels * SidePixels];
        for (int y = 0; y < SidePixels; y++)
        {
            for (int x = 0; x < SidePixels; x++)
            {
                byte cell = report.Cells[(y * frame.Rows / SidePixels * frame.Columns) + (x * frame.Columns / SidePixels)];
                if (cell == 0)
                {
                    continue;
                }

                Ink ink = InkOf(cell, palette);
                int at = 4 * ((y * SidePixels) + x);
                (pixels[at], pixels[at + 1], pixels[at + 2], pixels[at + 3]) = (ink.Red, ink.Green, ink.Blue, 255);
            }
        }

        return PixelImage.FromPixels(SidePixels, SidePixels, pixels);
    }

    private static Ink InkOf(byte cell, Palette palette) => cell switch
    {
        1 => palette.Water,
        2 => palette.GroundEdge,
        _ => ServerStyles.InkOf(cell - FirstMark),
    };

    private static Spot OnGrid(GridFrame frame, Box box, GeoPoint place)
    {
        (double column, double row) = frame.Locate(place);
        return new(box.Left + ((column + 0.5) * box.Width / frame.Columns), box.Top + ((row + 0.5) * box.Height / frame.Rows));
    }

    private static Func<GeoPoint, Spot> OnMap(RelayReport report, Box box)
    {
        IEnumerable<GeoPoint> places = report.Stations.Select(one => one.Station.Position.Point).Concat(report.Chosen.Select(one => one.Candidate.Place)).Concat(report.Ranking.Select(one => one.Candidate.Place));
        NetworkMap map = new([.. places.Select(place => new MatrixStation("", "", "", place, false))], new(box.Left + 30, box.Top + 30, box.Right - 60, box.Bottom - 30));
        return map.At;
    }

    private static ImmutableArray<Shape> Stations(RelayReport report, Box box, Func<GeoPoint, Spot> at, Palette palette)
    {
        List<Shape> shapes = [];
        foreach ((LinkStation station, bool isJoined) in report.Stations)
        {
            Spot spot = at(station.Position.Point);
            if (IsIn(box, spot))
            {
                double half = station.Key == report.Home.Key ? 6 : 4;
                shapes.Add(AreaShape.Of(new(spot.X - half, spot.Y - half, spot.X + half, spot.Y + half), new(isJoined ? palette.Ink : palette.Paper), new(palette.Ink, 1.2)));
                shapes.Add(Label(spot, station.Name, box, palette));
            }
        }

        return [.. shapes];
    }

    private static ImmutableArray<Shape> Relays(RelayReport report, Box box, Func<GeoPoint, Spot> at, Palette palette)
    {
        List<Shape> shapes = [];
        for (int i = report.Chosen.Length - 1; i >= 0; i--)
        {
            Spot spot = at(report.Chosen[i].Candidate.Place);
            shapes.Add(new AreaShape([new(spot.X, spot.Y - 10), new(spot.X + 9, spot.Y + 6), new(spot.X - 9, spot.Y + 6)], new(ServerStyles.InkOf(i)), new(palette.Ink, 1.6)));
            shapes.Add(Label(new(spot.X, spot.Y - 6), Text($"{i + 1} {report.Chosen[i].Candidate.Name}"), box, palette, TextWeight.SemiBold));
        }

        return [.. shapes];
    }

    private static ImmutableArray<Shape> Legend(RelayReport report, Palette palette, double left)
    {
        List<Shape> shapes = [];
        double wide = Width - Margin - left - 26;
        double y = 100;
        for (int i = 0; i < report.Chosen.Length; i++)
        {
            ChosenRelay relay = report.Chosen[i];
            shapes.Add(AreaShape.Of(new(left, y - 11, left + 18, y + 3), new(ServerStyles.InkOf(i)), new(palette.Muted, 0.8)));
            shapes.Add(new TextShape(new(left + 26, y), TextRuler.Fit(Text($"{i + 1} {relay.Candidate.Name}"), wide, TextPixels, TextWeight.SemiBold), TextPixels, palette.Ink) { Weight = TextWeight.SemiBold });
            string sure = relay.OpenedWorks is { } works ? Text($", confidence {works * 100:0} % on average") : "";
            y = Lines(shapes, Text($"adds {RelayFindings.Value(report, relay.Gain)}{sure}; mast {relay.Candidate.MastMetres:0.#} m"), left + 26, y + 17, wide, palette);
            LinkReport parent = relay.Parents[0];
            y = Lines(shapes, Text($"held by {parent.To.Name} with {parent.Weaker.MarginDb!.Value.Median:0.0} dB both ways, {parent.Segment.DistanceMetres / 1000:0.0} km"), left + 26, y, wide, palette) + 14;
        }

        foreach ((byte cell, string words) in report.Frame is null ? [] : new[] { ((byte)1, Text($"reached now: {RelayFindings.Value(report, report.Before)}")), ((byte)2, Text($"still reached by nobody: {RelayFindings.Value(report, report.Open - report.Choice.Value)}")) })
        {
            shapes.Add(AreaShape.Of(new(left, y - 11, left + 18, y + 3), new(InkOf(cell, palette)), new(palette.Muted, 0.8)));
            y = Lines(shapes, words, left + 26, y, wide, palette) + 8;
        }

        shapes.Add(AreaShape.Of(new(left + 5, y - 8, left + 13, y), new(palette.Ink), new(palette.Ink, 1.2)));
        y = Lines(shapes, "station in the network", left + 26, y, wide, palette) + 4;
        shapes.Add(AreaShape.Of(new(left + 5, y - 8, left + 13, y), new(palette.Paper), new(palette.Ink, 1.2)));
        y = Lines(shapes, "station outside", left + 26, y, wide, palette) + 4;
        shapes.Add(Dot(new(left + 9, y - 4), 3, palette.Paper, palette.Ink));
        y = Lines(shapes, "next best as the only relay", left + 26, y, wide, palette) + 4;
        shapes.Add(new LineShape([new(left, y - 4), new(left + 18, y - 4)], new(palette.Ink, 1.2) { Dashes = [5, 3] }));
        Lines(shapes, Text($"link that keeps {report.Settings.Wanted.MarginDb:0.#} dB both ways"), left + 26, y, wide, palette);
        return [.. shapes];
    }

    private static TextShape Label(Spot at, string words, Box box, Palette palette, TextWeight weight = TextWeight.Regular)
    {
        bool isRight = at.X > box.Right - 140;
        return new(new(at.X + (isRight ? -11 : 11), at.Y - 5), words, SmallPixels, palette.Ink) { Halo = palette.Paper, Anchor = isRight ? TextAnchor.End : TextAnchor.Start, Weight = weight };
    }

    private static double Lines(List<Shape> shapes, string words, double x, double y, double wide, Palette palette)
    {
        foreach (string line in TextRuler.Wrap(words, wide, 4, SmallPixels))
        {
            shapes.Add(new TextShape(new(x, y), line, SmallPixels, palette.Muted));
            y += 16;
        }

        return y;
    }

    private static bool IsIn(Box box, Spot spot) => spot.X >= box.Left && spot.X <= box.Right && spot.Y >= box.Top && spot.Y <= box.Bottom;

    private static AreaShape Dot(Spot at, double half, Ink ink, Ink edge) => new(
        [.. Enumerable.Range(0, 12).Select(i => new Spot(at.X + (half * Math.Cos(i * Math.PI / 6)), at.Y + (half * Math.Sin(i * Math.PI / 6))))], new(ink), new(edge, 1));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
