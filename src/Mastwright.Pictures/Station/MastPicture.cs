using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Station.Mast;

namespace Mastwright.Pictures.Station;

/// <summary>A mast drawn to scale, and beside it, at the same heights, the bending moment against the strength and the way across.</summary>
/// <remarks>The leaning mast is drawn to scale too. Tubes thinner than three pixels are drawn three pixels wide.</remarks>
public static class MastPicture
{
    private const double PlotHeight = 420;
    private const double Axis = 40;

    /// <summary>Draws a mast.</summary>
    /// <param name="name">What station and fit-out.</param>
    /// <param name="mast">The mast.</param>
    /// <param name="width">Pixels across, <see cref="StationSheet.LeastWidth"/> to <see cref="StationSheet.MostWidth"/>.</param>
    /// <param name="theme">Light or dark.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is outside its range.</exception>
    public static Drawing Draw(string name, MastFigure mast, int width, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(mast);
        StationSheet.Checked(width);
        Palette palette = Palette.Of(theme);
        string title = $"{name}: mast";
        string words = Words(mast);
        GroupShape head = StationSheet.Head(title, words, width, palette, out double top);
        double tip = Math.Max(mast.FreeLengthMetres, (mast.AntennaFootMetres ?? mast.FreeLengthMetres) + (mast.AntennaLengthMetres ?? 0));
        double foot = -Math.Max(mast.BracketSpacingMetres ?? 0.3, 0.3) - 0.2;
        double left = StationSheet.Margin + Axis;
        double right = width - StationSheet.Margin;
        double wide = right - left;
        double columns = mast.Bending is null ? 1 : width < 520 ? 0.52 : 0.4;
        double plotTop = top + 40;
        Plot figure = new(new(left, plotTop, left + (wide * columns), plotTop + PlotHeight), 0, 1, foot, tip * 1.03, palette);
        List<Shape> shapes = [head, new GroupShape("figure", MastFigureShapes.Draw(mast, figure))];
        if (mast.Bending is { } bending)
        {
            double second = figure.Box.Right + 12;
            double middle = second + ((right - second) * 0.54);
            Plot moment = figure with { Box = figure.Box with { Left = second, Right = middle - 16 }, FromX = 0, ToX = 1.1 * bending.Points.Max(point => Math.Max(point.MomentNewtonMetres, point.StrengthNewtonMetres)) };
            Plot way = figure with { Box = figure.Box with { Left = middle + 12, Right = right - 8 }, FromX = Math.Min(0, 1200 * bending.Points.Min(point => point.DeflectionMetres)), ToX = 1200 * Math.Max(0.001, bending.Points.Max(point => point.DeflectionMetres)) };
            shapes.Add(new GroupShape("moment", Moment(bending, moment, palette)));
            shapes.Add(new GroupShape("deflection", Deflection(bending, way, palette)));
        }

        List<Shape> notes = [];
        double bottom = StationSheet.Words(notes, Foot(mast), figure.Box.Bottom + 22, width, palette);
        shapes.Add(new GroupShape("foot", [.. notes]));
        return new()
        {
            WidthPixels = width,
            HeightPixels = (int)Math.Ceiling(bottom + StationSheet.Margin),
            Title = title,
            Description = words + " " + Foot(mast),
            Paper = palette.Paper,
            Shapes = [.. shapes],
        };
    }

    private static string Words(MastFigure mast)
    {
        string stands = StationSheet.Text($"{mast.FreeLengthMetres:0.##} m free above the upper bracket{(mast.BracketHeightMetres is { } height ? StationSheet.Text($", which is {height:0.#} m above the ground") : "")}.");
        return mast.Bending is not { } bending
            ? stands + " How the wind bends it is not known."
            : stands + StationSheet.Text($" Wind {bending.Name}: {100 * bending.Utilisation:0} % of the strength is used {bending.Worst}, and the top moves {bending.TopMetres * 1000:0} mm.");
    }

    private static string Foot(MastFigure mast) => mast.Bending is not { } bending
        ? "To scale. A calculation is no structural approval: someone licensed for masts decides."
        : $"To scale, the dashed line too. Moment and strength are design values, the way across is that of the {bending.WindName}. A calculation is no structural approval: someone licensed for masts decides.";

    private static ImmutableArray<Shape> Moment(MastBending bending, Plot plot, Palette palette)
    {
        ImmutableArray<BendingPoint> points = bending.Points;
        bool isOver = points.Any(point => point.MomentNewtonMetres > point.StrengthNewtonMetres);
        Ink ink = isOver ? palette.Fails : palette.Ok;
        BendingPoint worst = points.MinBy(point => Math.Abs(point.HeightMetres - bending.WorstMetres));
        string[] held = [StationSheet.Text($"{worst.MomentNewtonMetres:0}"), StationSheet.Text($"of {worst.StrengthNewtonMetres:0}")];
        return
        [
            .. Heading("Moment", "N·m", plot, palette),
            .. plot.Steps(plot.Box.Width < 140 ? 1 : 2, ""),
            new LineShape([plot.At(0, 0), plot.At(0, points[^1].HeightMetres)], new(palette.Muted, 1)),
            new AreaShape([plot.At(0, points[0].HeightMetres), .. points.Select(point => plot.At(point.MomentNewtonMetres, point.HeightMetres)), plot.At(0, points[^1].HeightMetres)], new(ink.Veil(0.2), isOver ? new(HatchKind.Rising, ink) : null), new(ink, 1.8)),
            plot.Line(points.Select(point => (point.StrengthNewtonMetres, point.HeightMetres)), new(palette.Fails, 1.6) { Dashes = [6, 4] }),
            .. Lines(held, plot, plot.Y(bending.WorstMetres) + 16, palette),
            new TextShape(new(plot.X(points[^1].StrengthNewtonMetres), plot.Y(points[^1].HeightMetres) - 6), "strength", StationSheet.SmallPixels, palette.Fails) { Anchor = TextAnchor.Middle },
        ];
    }

    private static ImmutableArray<Shape> Deflection(MastBending bending, Plot plot, Palette palette)
    {
        BendingPoint top = bending.Points[^1];
        return
        [
            .. Heading("Across", "mm", plot, palette),
            .. plot.Steps(plot.Box.Width < 140 ? 1 : 2, ""),
            new LineShape([plot.At(0, 0), plot.At(0, top.HeightMetres)], new(palette.Muted, 1)),
            plot.Line(bending.Points.Select(point => (1000 * point.DeflectionMetres, point.HeightMetres)), new(palette.Fresnel, 2.2)),
            new TextShape(new(plot.X(1000 * top.DeflectionMetres), plot.Y(top.HeightMetres) - 6), StationSheet.Text($"{1000 * top.DeflectionMetres:0}"), StationSheet.SmallPixels, palette.Ink) { Anchor = TextAnchor.Middle },
        ];
    }

    /// <summary>Words in one line where the column has room for it, else one under the other.</summary>
    private static IEnumerable<Shape> Lines(string[] words, Plot plot, double y, Palette palette)
    {
        string one = string.Join(' ', words);
        string[] lines = TextRuler.WidthPixels(one, StationSheet.SmallPixels) <= plot.Box.Width ? [one] : words;
        for (int i = 0; i < lines.Length; i++)
        {
            yield return new TextShape(new(plot.Box.Left + 2, y + (15 * i)), lines[i], StationSheet.SmallPixels, palette.Ink) { Halo = palette.Paper };
        }
    }

    private static IEnumerable<Shape> Heading(string words, string unit, Plot plot, Palette palette)
    {
        yield return new TextShape(new(plot.Box.Left, plot.Box.Top - 20), words, StationSheet.SmallPixels, palette.Ink) { Weight = TextWeight.SemiBold };
        yield return new TextShape(new(plot.Box.Left, plot.Box.Top - 5), unit, StationSheet.SmallPixels, palette.Muted);
    }
}
