using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Station;

/// <summary>A small plot: a box with a scale on each side, and lines in it.</summary>
/// <param name="Box">Where it is.</param>
/// <param name="FromX">Value at its left edge.</param>
/// <param name="ToX">Value at its right edge.</param>
/// <param name="FromY">Value at its foot.</param>
/// <param name="ToY">Value at its top.</param>
/// <param name="Palette">The colours.</param>
internal sealed record Plot(Box Box, double FromX, double ToX, double FromY, double ToY, Palette Palette)
{
    internal double X(double value) => Box.Left + ((value - FromX) / (ToX - FromX) * Box.Width);

    internal double Y(double value) => Box.Bottom - ((value - FromY) / (ToY - FromY) * Box.Height);

    internal Spot At(double x, double y) => new(X(x), Y(y));

    /// <summary>Lines across at round values, each with its number and unit at the left.</summary>
    internal IEnumerable<Shape> Levels(int most, string unit)
    {
        Ticks ticks = Ticks.Between(FromY, ToY, most);
        foreach (double value in ticks.Values)
        {
            yield return new LineShape([At(FromX, value), At(ToX, value)], new(Palette.Faint, 1));
            yield return new TextShape(new(Box.Left - 6, Y(value) + 4), ticks.Text(value) + unit, StationSheet.SmallPixels, Palette.Muted) { Anchor = TextAnchor.End };
        }
    }

    /// <summary>Short strokes under the foot at round values, each with its number.</summary>
    internal IEnumerable<Shape> Steps(int most, string unit)
    {
        Ticks ticks = Ticks.Between(FromX, ToX, most);
        foreach (double value in ticks.Values)
        {
            yield return new LineShape([new(X(value), Box.Bottom), new(X(value), Box.Bottom + 4)], new(Palette.Muted, 1));
            yield return new TextShape(new(X(value), Box.Bottom + 17), ticks.Text(value) + unit, StationSheet.SmallPixels, Palette.Muted) { Anchor = TextAnchor.Middle };
        }
    }

    internal LineShape Line(IEnumerable<(double X, double Y)> points, Stroke stroke) => new([.. points.Select(point => At(point.X, point.Y))], stroke);

    /// <summary>A value that something is held against, as a dashed line across with its words over it.</summary>
    internal IEnumerable<Shape> Limit(double value, string words)
    {
        yield return new LineShape([At(FromX, value), At(ToX, value)], new(Palette.Fails, 1.4) { Dashes = [6, 4] });
        yield return new TextShape(new(Box.Right, Y(value) - 5), words, StationSheet.SmallPixels, Palette.Fails) { Anchor = TextAnchor.End, Halo = Palette.Paper };
    }

    /// <summary>Samples of lines with what they mean, one after another and on as many rows as the width asks for.</summary>
    internal static double Legend(List<Shape> shapes, double top, int width, Palette palette, params ReadOnlySpan<(Stroke Stroke, string Words)> entries)
    {
        double x = StationSheet.Margin;
        double y = top + 16;
        foreach ((Stroke stroke, string words) in entries)
        {
            double wide = 32 + Fonts.TextRuler.WidthPixels(words, StationSheet.SmallPixels);
            if (x + wide > width - StationSheet.Margin && x > StationSheet.Margin)
            {
                x = StationSheet.Margin;
                y += 18;
            }

            shapes.Add(new LineShape([new(x, y - 4), new(x + 24, y - 4)], stroke));
            shapes.Add(new TextShape(new(x + 30, y), words, StationSheet.SmallPixels, palette.Muted));
            x += wide + 16;
        }

        return y;
    }

    /// <summary>Stretches of whole steps in which something is so, hatched from top to foot.</summary>
    internal ImmutableArray<Shape> Hatched(IReadOnlyList<bool> isSo, Ink ink)
    {
        List<Shape> shapes = [];
        for (int from = 0; from < isSo.Count; from++)
        {
            int to = from;
            while (to < isSo.Count && isSo[to])
            {
                to++;
            }

            if (to > from)
            {
                shapes.Add(AreaShape.Of(new(X(from), Box.Top, X(to), Box.Bottom), new(ink.Veil(0.08), new(HatchKind.Rising, ink.Veil(0.5)))));
                from = to;
            }
        }

        return [.. shapes];
    }
}
