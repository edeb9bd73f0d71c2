using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Reach;

/// <summary>What stands beside a map, written from the top down.</summary>
internal sealed class MapPanel
{
    internal const double Text = 12.5;
    internal const double Small = 11;
    private const double Swatch = 34;

    private readonly Box box = MapSheet.PanelBox;
    private readonly Palette palette;
    private readonly ReachScale scale;
    private readonly List<Shape> shapes = [];
    private double y;

    internal MapPanel(Theme theme)
    {
        palette = Palette.Of(theme);
        scale = ReachScale.For(theme);
        y = box.Top;
    }

    /// <summary>What was written so far.</summary>
    internal ImmutableArray<Shape> Shapes => [.. shapes];

    /// <summary>Pixels left below.</summary>
    internal double Left => box.Bottom - y;

    /// <summary>The answer in a few large words.</summary>
    internal void Answer(string text)
    {
        y += 17;
        shapes.Add(new TextShape(new(box.Left, y), TextRuler.Fit(text, box.Width, 18, TextWeight.SemiBold), 18, palette.Ink) { Weight = TextWeight.SemiBold });
    }

    /// <summary>A sentence of up to three lines.</summary>
    internal void Sentence(string text)
    {
        // A number and its unit stay on one line.
        foreach (string words in TextRuler.Wrap(text.Replace(" km²", "\u00A0km²", StringComparison.Ordinal), box.Width, 3, Text))
        {
            y += Text * 1.4;
            shapes.Add(new TextShape(new(box.Left, y), words, Text, palette.Ink));
        }
    }

    /// <summary>A rule with a heading below it, and something at the right.</summary>
    internal void Heading(string text, string right = "", double above = 14, bool isTotal = false)
    {
        y += above;
        shapes.Add(new LineShape([new(box.Left, y), new(box.Right, y)], new(palette.Faint, 1)));
        y += 20;
        shapes.Add(new TextShape(new(box.Left, y), text, Text, palette.Ink) { Weight = TextWeight.SemiBold });
        shapes.Add(isTotal
            ? new TextShape(new(box.Right, y), right, Text, palette.Ink) { Anchor = TextAnchor.End, Weight = TextWeight.SemiBold }
            : new TextShape(new(box.Right, y), right, Small, palette.Muted) { Anchor = TextAnchor.End });
    }

    /// <summary>Leaves some room.</summary>
    internal void Gap(double pixels) => y += pixels;

    /// <summary>A swatch with what it means, a line below that, and something at the right.</summary>
    internal void Tall(Fill fill, string title, string below, string right)
    {
        shapes.Add(AreaShape.Of(new(box.Left, y, box.Left + Swatch, y + 30), fill, new(palette.Muted, 0.8)));
        shapes.Add(new TextShape(new(box.Left + Swatch + 10, y + 13), title, Text, palette.Ink) { Weight = TextWeight.SemiBold });
        shapes.Add(new TextShape(new(box.Right, y + 13), right, Text, palette.Ink) { Anchor = TextAnchor.End });
        shapes.Add(new TextShape(new(box.Left + Swatch + 10, y + 27), TextRuler.Fit(below, box.Width - Swatch - 10, Small), Small, palette.Muted));
        y += 34;
    }

    /// <summary>A swatch with what it means and something at the right, in one line.</summary>
    internal void Flat(Fill fill, string title, string right)
    {
        shapes.Add(AreaShape.Of(new(box.Left, y, box.Left + Swatch, y + 20), fill, new(palette.Muted, 0.8)));
        shapes.Add(new TextShape(new(box.Left + Swatch + 10, y + 14), TextRuler.Fit(title, box.Width - Swatch - 80, Text), Text, palette.Ink));
        shapes.Add(new TextShape(new(box.Right, y + 14), right, Text, palette.Ink) { Anchor = TextAnchor.End });
        y += 24;
    }

    /// <summary>The swatch of what is below the limit, in full.</summary>
    internal void Below(string title, string below, string right) =>
        Tall(new(scale.Land, new(HatchKind.Rising, scale.Hatch.Veil(0.55))), title, below, right);

    /// <summary>The swatch of ground that is missing, where it is.</summary>
    internal void Missing(double squareMetres)
    {
        if (squareMetres > 0)
        {
            Flat(new(scale.Unknown, new(HatchKind.Crossed, scale.Hatch)), "no ground data on the way", Area(squareMetres));
        }
    }

    /// <summary>What the marks on the map are.</summary>
    internal void Marks(string station, bool hasPlaces)
    {
        y += 10;
        shapes.Add(new AreaShape(VerdictMark.Disc(new(box.Left + (Swatch / 2), y + 6), 7), new(palette.Paper), new(palette.Ink, 1)));
        shapes.Add(new AreaShape(VerdictMark.Disc(new(box.Left + (Swatch / 2), y + 6), 4.2), new(palette.Blocked)));
        shapes.Add(new TextShape(new(box.Left + Swatch + 10, y + 10), station, Small + 0.5, palette.Ink));
        if (hasPlaces)
        {
            Places(box.Left + Swatch + 10 + TextRuler.WidthPixels(station, Small + 0.5) + 22);
        }

        y += 14;
    }

    /// <summary>What the diamonds are, alone.</summary>
    internal void Places()
    {
        y += 6;
        Places(box.Left + (Swatch / 2));
        y += 14;
    }

    /// <summary>A line of a sum.</summary>
    internal void Line(string label, string value)
    {
        y += Small * 1.36;
        shapes.Add(new TextShape(new(box.Left, y), TextRuler.Fit(label, box.Width - 60, Small), Small, palette.Muted));
        shapes.Add(new TextShape(new(box.Right, y), value, Small, palette.Muted) { Anchor = TextAnchor.End });
    }

    /// <summary>Small words in one line.</summary>
    internal void Note(string text)
    {
        y += Small * 1.36;
        shapes.Add(new TextShape(new(box.Left, y), TextRuler.Fit(text, box.Width, Small), Small, palette.Muted));
    }

    /// <summary>What was assumed, as far as there is room; the rest is counted.</summary>
    internal void Assumptions(ImmutableArray<string> assumptions)
    {
        Heading("What was assumed");
        y += 3;
        double line = Small * 1.32;
        for (int i = 0; i < assumptions.Length; i++)
        {
            ImmutableArray<string> words = TextRuler.Wrap(assumptions[i], box.Width - 10, 3, Small);
            bool isLast = i == assumptions.Length - 1;
            if (y + (line * words.Length) + 3 > box.Bottom - (isLast ? 0 : line))
            {
                string left = string.Create(CultureInfo.InvariantCulture, $"… and {assumptions.Length - i} more, which the text and --json list");
                shapes.Add(new TextShape(new(box.Left + 10, y + line + 1), left, Small, palette.Muted));
                return;
            }

            shapes.Add(new TextShape(new(box.Left, y + line), "·", Small, palette.Muted) { Weight = TextWeight.SemiBold });
            foreach (string one in words)
            {
                y += line;
                shapes.Add(new TextShape(new(box.Left + 10, y), one, Small, palette.Muted));
            }

            y += 2;
        }
    }

    /// <summary>An area, to three figures.</summary>
    internal static string Area(double squareMetres) => squareMetres < 9.95e5
        ? string.Create(CultureInfo.InvariantCulture, $"{squareMetres / 1e6:0.00} km²")
        : squareMetres < 9.95e7
            ? string.Create(CultureInfo.InvariantCulture, $"{squareMetres / 1e6:0.0} km²")
            : string.Create(CultureInfo.InvariantCulture, $"{squareMetres / 1e6:#,0} km²");

    private void Places(double x)
    {
        shapes.Add(new AreaShape([new(x, y + 1), new(x + 5, y + 6), new(x, y + 11), new(x - 5, y + 6)], new(palette.Paper), new(palette.Ink, 1.4)));
        shapes.Add(new TextShape(new(x + 11, y + 10), "other places of the plan", Small + 0.5, palette.Ink));
    }
}
