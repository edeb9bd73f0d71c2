using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Station.Mast;

namespace Mastwright.Pictures.Station;

/// <summary>The mast itself: brackets, tubes, box, cable, guys, antenna, and the line to which the wind bends it.</summary>
internal static class MastFigureShapes
{
    private const double LeastPixels = 3;
    private const double Leader = 8;

    internal static ImmutableArray<Shape> Draw(MastFigure mast, Plot plot)
    {
        Palette palette = plot.Palette;
        double scale = plot.Box.Height / (plot.ToY - plot.FromY);
        double axis = plot.Box.Left + Math.Max(26, plot.Box.Width * 0.2);
        Stroke edge = new(palette.Ink, 1.2);
        List<Shape> shapes = [.. plot.Levels(6, " m"), .. Wall(mast, plot, axis)];
        List<(double Height, string Words)> labels = [];
        if (mast.Guys is { } guys)
        {
            double reach = Math.Min(axis - plot.Box.Left, guys.LengthMetres * Math.Cos(double.DegreesToRadians(guys.AngleDegrees)) * scale);
            double drop = reach * Math.Tan(double.DegreesToRadians(guys.AngleDegrees));
            foreach (double side in (double[])[-1, 1])
            {
                shapes.Add(new LineShape([new(axis, plot.Y(guys.HeightMetres)), new(axis + (side * reach), Math.Min(plot.Box.Bottom, plot.Y(guys.HeightMetres) + drop))], new(palette.Missing, 1.2)));
            }

            labels.Add((guys.HeightMetres, StationSheet.Text($"{guys.Count ?? GuyLevel.UsualCount} guys, {guys.AngleDegrees:0}°")));
        }

        foreach (FigureTube tube in mast.Tubes)
        {
            double half = Math.Max(LeastPixels, tube.DiameterMetres * scale) / 2;
            double low = tube.Number == 1 ? -(mast.BracketSpacingMetres ?? 0.2) - 0.1 : tube.FootMetres;
            shapes.Add(AreaShape.Of(new(axis - half, plot.Y(tube.TopMetres), axis + half, plot.Y(low)), new(palette.Other), edge));
            labels.Add(((tube.FootMetres + tube.TopMetres) / 2, tube.Measures));
        }

        if (mast.Cable is { } cable)
        {
            double top = Math.Min(cable.LengthMetres ?? mast.FreeLengthMetres, mast.FreeLengthMetres);
            double x = axis + 5;
            shapes.Add(new LineShape([new(x, plot.Y(plot.FromY)), new(x, plot.Y(top))], new(palette.GroundEdge, 1.4)));
        }

        if (mast.Box is { } box)
        {
            double half = Math.Max(4, box.WidthMetres * scale / 2);
            shapes.Add(AreaShape.Of(new(axis - half, plot.Y(box.CentreMetres + (box.HeightMetres / 2)), axis + half, plot.Y(box.CentreMetres - (box.HeightMetres / 2))), new(palette.Ground), edge));
            labels.Add((box.CentreMetres, StationSheet.Text($"box{(box.MassKilograms is { } mass ? StationSheet.Text($", {mass:0.#} kg") : "")}")));
        }

        if (mast.AntennaFootMetres is { } foot && mast.AntennaLengthMetres is { } length)
        {
            double half = Math.Max(LeastPixels, (mast.AntennaDiameterMetres ?? 0.02) * scale) / 2;
            double x = axis + (mast.SideMountMetres is { } away ? Math.Max(10, away * scale) : 0);
            shapes.Add(AreaShape.Of(new(x - half, plot.Y(foot + length), x + half, plot.Y(foot)), new(palette.Water), edge));
            labels.Add((foot + (length / 2), StationSheet.Text($"antenna {length:0.##} m")));
        }

        if (mast.Bending is { } bending)
        {
            shapes.Add(new LineShape([.. bending.Points.Select(point => new Spot(axis + (point.DeflectionMetres * scale), plot.Y(point.HeightMetres)))], new(palette.Fresnel, 1.8) { Dashes = [4, 3] }));
        }

        labels.Add((0, mast.BracketHeightMetres is { } height ? StationSheet.Text($"bracket, {height:0.#} m up") : "upper bracket"));
        return [.. shapes, .. Labels(labels, plot, axis)];
    }

    /// <summary>The wall or post that the brackets hold to, and the brackets.</summary>
    private static IEnumerable<Shape> Wall(MastFigure mast, Plot plot, double axis)
    {
        Palette palette = plot.Palette;
        Box wall = new(plot.Box.Left, plot.Y(0.12), axis - 12, plot.Box.Bottom);
        yield return AreaShape.Of(wall, new(palette.Ground.Veil(0.6), new(HatchKind.Falling, palette.GroundEdge.Veil(0.5))));
        foreach (double height in (double[])[0, -(mast.BracketSpacingMetres ?? 0.2)])
        {
            yield return new LineShape([new(wall.Right, plot.Y(height)), new(axis + 6, plot.Y(height))], new(palette.Ink, 3));
        }
    }

    /// <summary>Labels at the right, pushed apart where they would lie on each other.</summary>
    private static IEnumerable<Shape> Labels(List<(double Height, string Words)> labels, Plot plot, double axis)
    {
        double x = axis + Math.Max(24, plot.Box.Width * 0.2);
        double last = double.NegativeInfinity;
        foreach ((double height, string words) in labels.OrderByDescending(label => label.Height))
        {
            double y = Math.Max(plot.Y(height) + 4, last + 16);
            last = y;
            yield return new LineShape([new(axis + 12, plot.Y(height)), new(x - Leader, y - 4), new(x - 3, y - 4)], new(plot.Palette.Faint, 1));
            yield return new TextShape(new(x, y), Fitting(words, plot.Box.Right - x), StationSheet.SmallPixels, plot.Palette.Ink) { Halo = plot.Palette.Paper };
        }
    }

    /// <summary>The whole label or, where there is no room, what stands before its comma.</summary>
    private static string Fitting(string words, double width) => TextRuler.WidthPixels(words, StationSheet.SmallPixels) <= width
        ? words
        : TextRuler.Fit(words.Split(',')[0], width, StationSheet.SmallPixels);
}
