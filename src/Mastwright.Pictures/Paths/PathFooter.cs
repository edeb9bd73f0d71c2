using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Paths;

/// <summary>What stands under the plot: both directions, notes and the legend.</summary>
internal static class PathFooter
{
    /// <summary>Lines that notes may take where there is room.</summary>
    public const int MostNoteLines = 4;

    private const int MostNotes = 3;
    private const double SamplePixels = 26;

    /// <summary>Draws it from a top edge down, and says where it ends.</summary>
    public static GroupShape Draw(PathPictureModel model, ImmutableArray<LegendEntry> legend, TypeSizes type, Palette palette, int mostNoteLines, Box sheet, out double bottom)
    {
        List<Shape> shapes = [];
        double line = type.Small * 1.5;
        double y = sheet.Top;
        double column = sheet.Width / 2;
        PathDirection[] directions = [.. model.Directions.Take(2)];
        if (directions.Length > 0)
        {
            bool besideEachOther = directions.All(direction => TextRuler.WidthPixels(Wording.Direction(direction), type.Small, TextWeight.SemiBold) + 30 < column);
            for (int i = 0; i < directions.Length; i++)
            {
                double left = besideEachOther && i == 1 ? sheet.Left + column : sheet.Left;
                y += i == 0 || !besideEachOther ? line : 0;
                shapes.Add(VerdictMark.Draw(directions[i].Verdict, new(left + 6, y - (type.Small * 0.35)), 5.5, palette));
                shapes.Add(new TextShape(new(left + 18, y), Fitted(directions[i], sheet.Width - 18, type.Small), type.Small, palette.Ink) { Weight = TextWeight.SemiBold });
            }

            y += 2;
        }

        foreach (string words in model.Notes.Take(MostNotes).SelectMany(note => TextRuler.Wrap(note, sheet.Width, 2, type.Small)).Take(mostNoteLines))
        {
            y += line;
            shapes.Add(new TextShape(new(sheet.Left, y), words, type.Small, palette.Ink));
        }

        double x = sheet.Left;
        y += line + 1;
        foreach (LegendEntry entry in legend)
        {
            double width = SamplePixels + 6 + TextRuler.WidthPixels(entry.Text, type.Small);
            if (x > sheet.Left && x + width > sheet.Right)
            {
                x = sheet.Left;
                y += line;
            }

            shapes.Add(new GroupShape("legend-entry", [.. entry.Sample(new(x, y - type.Small + 1, x + SamplePixels, y + 1.5)), new TextShape(new(x + SamplePixels + 6, y), entry.Text, type.Small, palette.Muted)]));
            x += width + 18;
        }

        bottom = y + 4;
        return new("footer", [.. shapes]);
    }

    /// <summary>A direction in one line: names are shortened before the verdict is.</summary>
    private static string Fitted(PathDirection direction, double room, double textPixels)
    {
        string whole = Wording.Direction(direction);
        if (TextRuler.WidthPixels(whole, textPixels, TextWeight.SemiBold) <= room)
        {
            return whole;
        }

        double names = room - TextRuler.WidthPixels(Wording.Direction(direction with { From = "", To = "" }), textPixels, TextWeight.SemiBold);
        return Wording.Direction(direction with
        {
            From = TextRuler.Fit(direction.From, names / 2, textPixels, TextWeight.SemiBold),
            To = TextRuler.Fit(direction.To, names / 2, textPixels, TextWeight.SemiBold),
        });
    }
}

/// <summary>One entry of a legend.</summary>
/// <param name="Text">What it means.</param>
/// <param name="Sample">Draws a sample in a box.</param>
internal sealed record LegendEntry(string Text, Func<Box, IEnumerable<Shape>> Sample)
{
    /// <summary>A sample of a line.</summary>
    public static LegendEntry Line(string text, Stroke stroke) =>
        new(text, box => [new LineShape([new(box.Left, Middle(box)), new(box.Right, Middle(box))], stroke)]);

    /// <summary>A sample of an area.</summary>
    public static LegendEntry Area(string text, Fill fill, Ink edge) =>
        new(text, box => [AreaShape.Of(box, fill, new(edge, 1))]);

    private static double Middle(Box box) => (box.Top + box.Bottom) / 2;
}
