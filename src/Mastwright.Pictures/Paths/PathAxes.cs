using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Ground;

namespace Mastwright.Pictures.Paths;

/// <summary>Height lines, distances and the strip of zones.</summary>
internal static class PathAxes
{
    /// <summary>Height of the strip of zones, in pixels.</summary>
    public const double StripPixels = 13;

    /// <summary>Lines of equal height above the sea. They bend with the earth, so a height read at mid-path is right too.</summary>
    public static GroupShape DrawHeightLines(PathPictureModel model, PathGeometry geometry, PathFrame frame, Palette palette)
    {
        List<Shape> lines = [];
        foreach (double height in HeightTicks(frame).Values)
        {
            lines.Add(new LineShape(
                frame.Curve(geometry.Distances, geometry.Distances.Select(distance => height + geometry.BulgeMetres(distance, model.KFactor))),
                new(palette.Faint, 1)));
        }

        return new("height-lines", [.. lines], frame.Plot);
    }

    /// <summary>The axes with their numbers and names.</summary>
    public static GroupShape Draw(PathPictureModel model, PathFrame frame, Palette palette, double textPixels, double below, double nameRoom)
    {
        List<Shape> shapes = [];
        Box plot = frame.Plot;
        Stroke thin = new(palette.Muted, 1);
        Ticks heights = HeightTicks(frame);
        double heightUnit = HeightUnit(frame);
        Ticks numbers = heights with { Step = heights.Step / heightUnit };
        double widest = 0;
        foreach (double height in heights.Values)
        {
            double y = frame.Y(height);
            string number = numbers.Text(height / heightUnit);
            widest = Math.Max(widest, TextRuler.WidthPixels(number, textPixels));
            shapes.Add(new LineShape([new(plot.Left - 5, y), new(plot.Left, y)], thin));
            shapes.Add(new TextShape(new(plot.Left - 9, y + (textPixels * 0.36)), number, textPixels, palette.Muted) { Anchor = TextAnchor.End });
        }

        bool inMetres = frame.LengthMetres < 2000;
        double unit = inMetres ? 1 : 1000;
        Ticks distances = Ticks.Between(0, frame.LengthMetres / unit, (int)(plot.Width / 90));
        foreach (double distance in distances.Values)
        {
            double x = frame.X(distance * unit);
            shapes.Add(new LineShape([new(x, below), new(x, below + 5)], thin));
            shapes.Add(new TextShape(new(x, below + textPixels + 6), distances.Text(distance), textPixels, palette.Muted) { Anchor = TextAnchor.Middle });
        }

        shapes.Add(new LineShape([new(plot.Left, plot.Top), new(plot.Left, below), new(plot.Right, below), new(plot.Right, plot.Top)], thin));
        double beside = Math.Max(46, 9 + widest + 6);
        shapes.Add(new TextShape(new(plot.Left - beside, (plot.Top + plot.Bottom) / 2), $"height above sea level, {(heightUnit == 1 ? "m" : "km")}", textPixels, palette.Muted) { Anchor = TextAnchor.Middle, RotationDegrees = -90 });
        shapes.Add(new TextShape(new(plot.Left, below + (textPixels * 2) + 11), DistanceName(model, inMetres, textPixels, nameRoom), textPixels, palette.Muted));
        return new("axes", [.. shapes]);
    }

    /// <summary>The zones of the path as a strip under the plot, each named where it has room.</summary>
    public static GroupShape DrawZones(PathPictureModel model, PathGeometry geometry, PathFrame frame, Palette palette)
    {
        List<Shape> shapes = [];
        ImmutableArray<Zone?> zones = [.. geometry.Source.Select((source, i) => geometry.Missing[i] ? (Zone?)null : model.Zones[source])];
        foreach ((Zone? zone, int first, int last) in Bands.Stretches(zones))
        {
            double left = frame.X(first == 0 ? 0 : Border(first - 1, first));
            double right = frame.X(last == zones.Length - 1 ? geometry.LengthMetres : Border(last, last + 1));
            Fill fill = zone switch
            {
                null => new(palette.Paper, new(HatchKind.Crossed, palette.Missing.Veil(0.5))),
                Zone.Sea => new(palette.Water),
                Zone.Coast => new(palette.Ground.Veil(0.5), new(HatchKind.Dots, palette.GroundEdge.Veil(0.3))),
                _ => new(palette.Ground),
            };
            string name = zone switch { null => MissingLayer.Words, Zone.Sea => "sea", Zone.Coast => "coastal land", _ => "inland" };
            double top = frame.Plot.Bottom;
            double bottom = top + StripPixels;
            shapes.Add(AreaShape.Of(new(left, top, right, bottom), fill, new(palette.Paper, 1)));
            if (TextRuler.WidthPixels(name, 10) + 8 < right - left)
            {
                shapes.Add(new TextShape(new((left + right) / 2, bottom - 3.2), name, 10, palette.Ink) { Anchor = TextAnchor.Middle, Halo = zone is null ? palette.Paper : null });
            }
        }

        return new("zones", [.. shapes]);

        double Border(int before, int after) =>
            geometry.Missing[before] ? geometry.Distances[after]
            : geometry.Missing[after] ? geometry.Distances[before]
            : (geometry.Distances[before] + geometry.Distances[after]) / 2;
    }

    private static string DistanceName(PathPictureModel model, bool inMetres, double textPixels, double room)
    {
        string unit = inMetres ? "m" : "km";
        double bare = TextRuler.WidthPixels($"distance from , {unit}", textPixels);
        return $"distance from {TextRuler.Fit(model.TransmitterName, room - bare, textPixels)}, {unit}";
    }

    /// <summary>Metres to a unit of the height axis: kilometres where metres would take five figures.</summary>
    private static double HeightUnit(PathFrame frame) => Math.Max(Math.Abs(frame.LowMetres), Math.Abs(frame.HighMetres)) >= 10_000 ? 1000 : 1;

    private static Ticks HeightTicks(PathFrame frame) => Ticks.Between(frame.LowMetres, frame.HighMetres, (int)Math.Max(3, frame.Plot.Height / 42));
}
