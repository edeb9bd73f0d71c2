using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Shadow;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Plans;

namespace Mastwright.Pictures.Network;

/// <summary>What a station does not reach directly, by cause; hatched where relays reach it; with the ridges that throw the shadow.</summary>
public static class ShadowPicture
{
    private const double Margin = 18;
    private const double SmallPixels = 11.5;
    private const double TextPixels = 13;
    private const int Width = 1000;
    private const int Height = 800;
    private const int SidePixels = 660;
    private const int HatchPixels = 6;

    /// <summary>Draws the picture.</summary>
    /// <param name="report">The shadow.</param>
    /// <param name="theme">Light or dark.</param>
    public static Drawing Draw(ShadowReport report, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(report);
        Palette palette = Palette.Of(theme);
        GridFrame frame = report.Shadow.Map.Field.Frame;
        double scale = SidePixels / (double)Math.Max(frame.Columns, frame.Rows);
        Box box = new(Margin, 84, Margin + (frame.Columns * scale), 84 + (frame.Rows * scale));
        double shadow = report.Parts.Where(part => part.Cause != ShadowCause.Reached).Sum(part => part.AreaSquareMetres);
        double opened = report.Parts.Where(part => part.Cause != ShadowCause.Reached).Sum(part => part.ByHops.Sum());
        string title = $"{report.Setup.Station.Name}: shadow";
        string words = Text($"{shadow / 1e6:0.0} km² are not reached directly; relays reach {opened / 1e6:0.0} km² of them within {report.HopLimit} hops (hatched).");
        return new()
        {
            WidthPixels = Width,
            HeightPixels = Height,
            Title = title,
            Description = words + " " + string.Join("; ", report.Parts.Select(part => Text($"{ShadowExamination.Words(part.Cause)}: {part.AreaSquareMetres / 1e6:0.0} km²"))) + ".",
            Paper = palette.Paper,
            Shapes =
            [
                .. SheetHead.Of(title, words, Width, palette),
                new ImageShape(box, Image(report.Shadow, palette, report.HopLimit, (int)Math.Round(box.Width), (int)Math.Round(box.Height))),
                new GroupShape("ridge", [.. report.Ridge.Select(point => (Shape)Dot(At(frame, box, scale, point.Place), 2.4, palette.Ink, palette.Paper))]),
                new GroupShape("stations", Stations(report, frame, box, scale, palette)),
                new GroupShape("legend", Legend(report, palette, box.Right + 22)),
            ],
        };
    }

    private static PixelImage Image(ShadowMap shadow, Palette palette, int hopLimit, int width, int height)
    {
        GridFrame frame = shadow.Map.Field.Frame;
        byte[] pixels = new byte[4 * width * height];
        for (int y = 0; y < height; y++)
        {
            for (int x = 0; x < width; x++)
            {
                int cell = (y * frame.Rows / height * frame.Columns) + (x * frame.Columns / width);
                ShadowCause cause = shadow.Causes[cell];
                if (cause == ShadowCause.Unknown)
                {
                    continue;
                }

                bool isOpened = cause != ShadowCause.Reached && shadow.Hops[cell] >= 2 && shadow.Hops[cell] <= hopLimit;
                Ink ink = isOpened && (x + y) % HatchPixels < 2 ? palette.Paper : InkOf(cause, palette);
                (pixels[4 * ((y * width) + x)], pixels[(4 * ((y * width) + x)) + 1], pixels[(4 * ((y * width) + x)) + 2], pixels[(4 * ((y * width) + x)) + 3]) = (ink.Red, ink.Green, ink.Blue, 255);
            }
        }

        return PixelImage.FromPixels(width, height, pixels);
    }

    /// <summary>One lightness apart each, so that they are told apart without colour.</summary>
    private static Ink InkOf(ShadowCause cause, Palette palette) => cause switch
    {
        ShadowCause.Reached => palette.Water,
        ShadowCause.TooFar => palette.Other,
        ShadowCause.Curve => palette.WaterMarks,
        ShadowCause.Ground => palette.GroundEdge,
        _ => palette.Trees,
    };

    private static ImmutableArray<Shape> Stations(ShadowReport report, GridFrame frame, Box box, double scale, Palette palette)
    {
        List<Shape> shapes = [];
        foreach ((LinkStation station, bool isRelay) in report.Relays.Select(relay => (relay.Station, true)).Append((report.Setup.Station, false)))
        {
            Spot at = At(frame, box, scale, station.Position.Point);
            if (at.X < box.Left || at.X > box.Right || at.Y < box.Top || at.Y > box.Bottom)
            {
                continue;
            }

            shapes.Add(Dot(at, isRelay ? 4 : 6, isRelay ? palette.Paper : palette.Ink, palette.Ink));
            bool isRight = at.X > box.Right - 120;
            shapes.Add(new TextShape(new(at.X + (isRight ? -9 : 9), at.Y - 6), station.Name, SmallPixels, palette.Ink) { Halo = palette.Paper, Anchor = isRight ? TextAnchor.End : TextAnchor.Start });
        }

        return [.. shapes];
    }

    private static ImmutableArray<Shape> Legend(ShadowReport report, Palette palette, double left)
    {
        List<Shape> shapes = [];
        double y = 100;
        double wide = Width - Margin - left - 26;
        foreach (ShadowPart part in report.Parts)
        {
            shapes.Add(AreaShape.Of(new(left, y - 11, left + 18, y + 3), new(InkOf(part.Cause, palette)), new(palette.Muted, 0.8)));
            shapes.Add(new TextShape(new(left + 26, y), Text($"{part.AreaSquareMetres / 1e6:0.0} km²"), TextPixels, palette.Ink) { Weight = TextWeight.SemiBold });
            y = Lines(shapes, ShadowExamination.Words(part.Cause), left + 26, y + 17, wide, palette);
            for (int i = 0; i < part.ByHops.Count && part.Cause != ShadowCause.Reached; i++)
            {
                if (part.ByHops[i] > 0)
                {
                    y = Lines(shapes, Text($"of it over {i + 2} hops: {part.ByHops[i] / 1e6:0.0} km²"), left + 26, y, wide, palette);
                }
            }

            y += 14;
        }

        shapes.Add(Dot(new(left + 9, y - 4), 2.4, palette.Ink, palette.Paper));
        Lines(shapes, "ridge that throws the shadow", left + 26, y, wide, palette);
        shapes.Add(AreaShape.Of(new(left, y + 17, left + 18, y + 31), new(palette.GroundEdge, new(HatchKind.Falling, palette.Paper)), new(palette.Muted, 0.8)));
        Lines(shapes, "reached over relays", left + 26, y + 28, wide, palette);
        return [.. shapes];
    }

    private static double Lines(List<Shape> shapes, string words, double x, double y, double wide, Palette palette)
    {
        foreach (string line in TextRuler.Wrap(words, wide, 3, SmallPixels))
        {
            shapes.Add(new TextShape(new(x, y), line, SmallPixels, palette.Muted));
            y += 16;
        }

        return y;
    }

    private static AreaShape Dot(Spot at, double half, Ink ink, Ink edge) => new(
        [.. Enumerable.Range(0, 12).Select(i => new Spot(at.X + (half * Math.Cos(i * Math.PI / 6)), at.Y + (half * Math.Sin(i * Math.PI / 6))))], new(ink), new(edge, 1));

    private static Spot At(GridFrame frame, Box box, double scale, GeoPoint place)
    {
        (double column, double row) = frame.Locate(place);
        return new(box.Left + ((column + 0.5) * scale), box.Top + ((row + 0.5) * scale));
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
