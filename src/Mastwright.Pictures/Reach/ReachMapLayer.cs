using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Reach;

/// <summary>What lies over the pixels of the map: rings, places, the station, scale and north.</summary>
internal static class ReachMapLayer
{
    private const double LabelPixels = 12.5;

    /// <summary>Draws it.</summary>
    public static GroupShape Draw(MapMarks marks, ReachFrame frame, Palette palette)
    {
        List<Shape> shapes = [];
        List<Box> taken = [frame.Box with { Right = frame.Box.Left + 190, Top = frame.Box.Bottom - 52 }];
        if (marks.RadiusMetres is { } radius)
        {
            Rings(radius, frame.At(marks.Stations[0]), frame, palette, shapes, taken);
        }

        (string Name, Spot At)[] places = [.. marks.Places.Select(mark => (mark.Name, frame.At(mark.EastingMetres, mark.NorthingMetres))).Where(place => IsOn(frame, place.Item2))];
        foreach ((_, Spot at) in places)
        {
            shapes.Add(new AreaShape([new(at.X, at.Y - 5.5), new(at.X + 5.5, at.Y), new(at.X, at.Y + 5.5), new(at.X - 5.5, at.Y)], new(palette.Paper), new(palette.Ink, 1.6)));
            taken.Add(new(at.X - 5, at.Y - 5, at.X + 5, at.Y + 5));
        }

        // Labels after all marks, so that none lies under one.
        foreach (MapStation station in marks.Stations)
        {
            Station(station, frame.At(station), palette, shapes, taken);
        }

        bool isAlone = marks.Stations.Length == 1;
        foreach (MapStation station in marks.Stations)
        {
            Label(station.Name, frame.At(station), 13, isAlone ? 15 : LabelPixels, TextWeight.SemiBold, frame, palette, shapes, taken);
        }

        foreach ((string name, Spot at) in places)
        {
            Label(name, at, 8, LabelPixels, TextWeight.Regular, frame, palette, shapes, taken);
        }

        Scale(frame, palette, shapes);
        North(frame, palette, shapes);
        shapes.Add(AreaShape.Of(frame.Box, new(palette.Paper with { Opacity = 0 }), new(palette.Muted, 1)));
        return new("map-marks", [.. shapes], frame.Box);
    }

    private static bool IsOn(ReachFrame frame, Spot at) =>
        frame.Box.Grown(-8) is Box inner && at.X > inner.Left && at.X < inner.Right && at.Y > inner.Top && at.Y < inner.Bottom;

    private static void Rings(double radius, Spot centre, ReachFrame frame, Palette palette, List<Shape> shapes, List<Box> taken)
    {
        Ticks ticks = Ticks.Between(0, radius, 4);
        foreach (double ring in ticks.Values.Where(value => value > 0 && value < radius * 0.97).Append(radius))
        {
            bool isEdge = ring == radius;
            double pixels = ring * frame.PixelsPerMetre;
            shapes.Add(new LineShape(Circle(centre, pixels), new(palette.Ink.Veil(isEdge ? 0.75 : 0.45), isEdge ? 1.4 : 0.9) { Dashes = isEdge ? [] : [5, 4] }));
            Spot at = new(centre.X, centre.Y + pixels);
            string text = ring < 1000
                ? string.Create(CultureInfo.InvariantCulture, $"{ring:0.#} m")
                : string.Create(CultureInfo.InvariantCulture, $"{ring / 1000:0.##} km");
            double width = TextRuler.WidthPixels(text, 11.5);
            shapes.Add(new TextShape(new(at.X, at.Y + 4), text, 11.5, palette.Ink) { Anchor = TextAnchor.Middle, Halo = palette.Paper });
            taken.Add(new(at.X - (width / 2) - 3, at.Y - 9, at.X + (width / 2) + 3, at.Y + 7));
        }
    }

    /// <summary>A dot, or a disc with its number where there are several.</summary>
    private static void Station(MapStation station, Spot at, Palette palette, List<Shape> shapes, List<Box> taken)
    {
        shapes.Add(new AreaShape(VerdictMark.Disc(at, 9), new(palette.Paper), new(palette.Ink, 1)));
        if (station.Number == 0)
        {
            shapes.Add(new AreaShape(VerdictMark.Disc(at, 5.5), new(palette.Blocked)));
        }
        else
        {
            string number = station.Number.ToString(CultureInfo.InvariantCulture);
            shapes.Add(new TextShape(new(at.X, at.Y + 3.6), number, number.Length > 2 ? 8 : 10, palette.Ink) { Anchor = TextAnchor.Middle, Weight = TextWeight.SemiBold });
        }

        taken.Add(new(at.X - 10, at.Y - 10, at.X + 10, at.Y + 10));
    }

    /// <summary>A label on whichever side of its place has room; none where no side has.</summary>
    private static void Label(string text, Spot at, double off, double pixels, TextWeight weight, ReachFrame frame, Palette palette, List<Shape> shapes, List<Box> taken)
    {
        double width = TextRuler.WidthPixels(text, pixels, weight);
        (double X, double Y)[] starts =
        [
            (at.X + off, at.Y + (pixels * 0.35)), (at.X - off - width, at.Y + (pixels * 0.35)),
            (at.X - (width / 2), at.Y - off), (at.X - (width / 2), at.Y + off + (pixels * 0.7)),
        ];
        foreach ((double x, double y) in starts)
        {
            Box box = new(x - 2, y - pixels, x + width + 2, y + 3);
            bool isInside = box.Left > frame.Box.Left && box.Right < frame.Box.Right && box.Top > frame.Box.Top && box.Bottom < frame.Box.Bottom;
            if (isInside && !taken.Exists(box.Overlaps))
            {
                taken.Add(box);
                shapes.Add(new TextShape(new(x, y), text, pixels, palette.Ink) { Weight = weight, Halo = palette.Paper });
                return;
            }
        }
    }

    private static void Scale(ReachFrame frame, Palette palette, List<Shape> shapes)
    {
        double metres = Ticks.Between(0, 170 / frame.PixelsPerMetre, 1).Step;
        metres = metres * frame.PixelsPerMetre > 165 ? metres / 2 : metres;
        double width = metres * frame.PixelsPerMetre;
        double left = frame.Box.Left + 14;
        double y = frame.Box.Bottom - 16;
        string text = metres < 1000 ? string.Create(CultureInfo.InvariantCulture, $"{metres:0.#} m") : string.Create(CultureInfo.InvariantCulture, $"{metres / 1000:0.##} km");
        shapes.Add(AreaShape.Of(new(left - 8, y - 24, left + width + 8, y + 9), new(palette.Paper.Veil(0.85))));
        shapes.Add(AreaShape.Of(new(left, y - 4, left + (width / 2), y + 1), new(palette.Ink), new(palette.Ink, 1)));
        shapes.Add(AreaShape.Of(new(left + (width / 2), y - 4, left + width, y + 1), new(palette.Paper), new(palette.Ink, 1)));
        shapes.Add(new TextShape(new(left, y - 9), "0", 11, palette.Ink));
        shapes.Add(new TextShape(new(left + width, y - 9), text, 11, palette.Ink) { Anchor = TextAnchor.End });
    }

    /// <summary>An arrow to true north, which the grid's own north misses by a degree or two.</summary>
    private static void North(ReachFrame frame, Palette palette, List<Shape> shapes)
    {
        UtmPosition here = frame.Middle;
        UtmPosition there = UniversalTransverseMercator.FromGeo(Geodesic.Direct(UniversalTransverseMercator.ToGeo(here), 0, 1000), here.Zone, here.North);
        double turn = Math.Atan2(there.EastingMetres - here.EastingMetres, there.NorthingMetres - here.NorthingMetres);
        Spot centre = new(frame.Box.Right - 30, frame.Box.Top + 38);
        shapes.Add(new AreaShape(VerdictMark.Disc(centre, 23), new(palette.Paper.Veil(0.85))));
        shapes.Add(new AreaShape([At(0, 17), At(6, -9), At(0, -4)], new(palette.Ink), new(palette.Ink, 1)));
        shapes.Add(new AreaShape([At(0, 17), At(-6, -9), At(0, -4)], new(palette.Paper), new(palette.Ink, 1)));
        shapes.Add(new TextShape(new(centre.X, centre.Y + 21), "N", 12, palette.Ink) { Anchor = TextAnchor.Middle, Weight = TextWeight.SemiBold });

        Spot At(double right, double up) => new(
            centre.X + (right * Math.Cos(turn)) + (up * Math.Sin(turn)),
            centre.Y - (up * Math.Cos(turn)) + (right * Math.Sin(turn)) - 3);
    }

    private static System.Collections.Immutable.ImmutableArray<Spot> Circle(Spot centre, double radius)
    {
        const int Corners = 180;
        return
        [
            .. Enumerable.Range(0, Corners + 1).Select(i => Math.SinCos(2 * Math.PI * i / Corners))
                .Select(turn => new Spot(centre.X + (radius * turn.Cos), centre.Y + (radius * turn.Sin))),
        ];
    }
}
