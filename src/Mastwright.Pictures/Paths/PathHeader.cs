using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Paths;

/// <summary>The line over the plot: one end, the verdict, the other end; and why.</summary>
internal static class PathHeader
{
    /// <summary>Draws it from the sheet's top.</summary>
    /// <param name="model">The model.</param>
    /// <param name="geometry">Its curves.</param>
    /// <param name="type">Sizes of type.</param>
    /// <param name="palette">Colours.</param>
    /// <param name="sheet">Left and right limits, and the top.</param>
    /// <param name="bottom">Where the header ends.</param>
    public static GroupShape Draw(PathPictureModel model, PathGeometry geometry, TypeSizes type, Palette palette, Box sheet, out double bottom)
    {
        List<Shape> shapes = [];
        double line = sheet.Top + type.Title;
        string sentence = VerdictMark.Sentence(model.Verdict, model.MarginDb, model.MarginLowDb, model.MarginHighDb);
        double radius = type.Title * 0.55;
        double verdictWidth = TextRuler.WidthPixels(sentence, type.Title, TextWeight.SemiBold) + (radius * 2) + 8;
        double middle = (sheet.Left + sheet.Right) / 2;
        double room = (sheet.Width - verdictWidth) / 2 - 40;

        string left = TextRuler.Fit(model.TransmitterName, room, type.Title, TextWeight.SemiBold);
        string right = TextRuler.Fit(model.ReceiverName, room, type.Title, TextWeight.SemiBold);
        shapes.Add(new TextShape(new(sheet.Left, line), left, type.Title, palette.Ink) { Weight = TextWeight.SemiBold });
        shapes.Add(new TextShape(new(sheet.Right, line), right, type.Title, palette.Ink) { Weight = TextWeight.SemiBold, Anchor = TextAnchor.End });

        double start = middle - (verdictWidth / 2);
        double y = line - (type.Title * 0.35);
        shapes.Add(VerdictMark.Draw(model.Verdict, new(start + radius, y), radius, palette));
        shapes.Add(new TextShape(new(start + (radius * 2) + 8, line), sentence, type.Title, palette.Of(model.Verdict)) { Weight = TextWeight.SemiBold });
        Stroke link = new(palette.Of(model.Verdict).Veil(0.7), 1.4) { Dashes = [1.5, 4] };
        AddLink(sheet.Left + TextRuler.WidthPixels(left, type.Title, TextWeight.SemiBold) + 14, start - 14);
        AddLink(start + verdictWidth + 14, sheet.Right - TextRuler.WidthPixels(right, type.Title, TextWeight.SemiBold) - 14);

        double second = line + (type.Small * 1.55);
        string facts = $"{Wording.Distance(geometry.LengthMetres)} at {Wording.Frequency(model.FrequencyHz)}";
        shapes.Add(new TextShape(new(middle, second), facts, type.Small, palette.Muted) { Anchor = TextAnchor.Middle });
        double half = ((sheet.Width - TextRuler.WidthPixels(facts, type.Small)) / 2) - 12;
        shapes.Add(new TextShape(new(sheet.Left, second), Heights(model.TransmitterHeightMetres, geometry.LeftAntennaMetres, half), type.Small, palette.Muted));
        shapes.Add(new TextShape(new(sheet.Right, second), Heights(model.ReceiverHeightMetres, geometry.RightAntennaMetres, half), type.Small, palette.Muted) { Anchor = TextAnchor.End });
        bottom = second + 6;
        if (model.Headline.Length > 0)
        {
            double third = second + (type.Text * 0.3);
            foreach (string words in TextRuler.Wrap(model.Headline, sheet.Width, 2, type.Text, TextWeight.SemiBold))
            {
                third += type.Text * 1.3;
                shapes.Add(new TextShape(new(middle, third), words, type.Text, palette.Ink) { Weight = TextWeight.SemiBold, Anchor = TextAnchor.Middle });
            }

            bottom = third + 8;
        }

        return new("header", [.. shapes]);

        void AddLink(double from, double to)
        {
            if (to - from > 12)
            {
                shapes.Add(new LineShape([new(from, y), new(to, y)], link));
            }
        }

        string Heights(double? aboveGround, double? aboveSea, double width) =>
            TextRuler.Fit($"antenna {Wording.Antenna(aboveGround, aboveSea)}", width, type.Small);
    }
}

/// <summary>Sizes of type on a sheet, in pixels.</summary>
/// <param name="Title">Names and verdict.</param>
/// <param name="Text">Sentences.</param>
/// <param name="Small">Axes, legend, labels.</param>
internal readonly record struct TypeSizes(double Title, double Text, double Small)
{
    /// <summary>The sizes for a sheet.</summary>
    public static TypeSizes For(PictureSize size) => size is { WidthPixels: >= 1000, HeightPixels: >= 460 } ? new(18, 14, 12) : new(15, 12.5, 11);
}
