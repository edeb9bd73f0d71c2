using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Station;

/// <summary>What the pictures of a station share: their widths, their type and the head of the sheet.</summary>
public static class StationSheet
{
    /// <summary>The least width in pixels: a phone's, whose text is still drawn at its full size.</summary>
    public const int LeastWidth = 340;

    /// <summary>The most width in pixels.</summary>
    public const int MostWidth = 2000;

    /// <summary>Pixels across for a page or a printed sheet.</summary>
    public const int UsualWidth = 720;

    internal const double Margin = 16;
    internal const double TitlePixels = 16;
    internal const double TextPixels = 13;
    internal const double SmallPixels = 12;
    private const double LinePixels = 18;

    /// <summary>Title and words at the head, wrapped to the width; <paramref name="bottom"/> is where they end.</summary>
    internal static GroupShape Head(string title, string words, int width, Palette palette, out double bottom)
    {
        List<Shape> shapes = [];
        double y = 14;
        foreach (string line in TextRuler.Wrap(title, width - (2 * Margin), 2, TitlePixels, TextWeight.SemiBold))
        {
            y += 20;
            shapes.Add(new TextShape(new(Margin, y), line, TitlePixels, palette.Ink) { Weight = TextWeight.SemiBold });
        }

        bottom = Words(shapes, words, y + 4, width, palette);
        return new("head", [.. shapes]);
    }

    /// <summary>Sentences under a picture, wrapped to the width; the value is where they end.</summary>
    internal static double Words(List<Shape> shapes, string words, double top, int width, Palette palette)
    {
        double y = top;
        if (words.Length > 0)
        {
            foreach (string line in TextRuler.Wrap(words, width - (2 * Margin), 8, SmallPixels))
            {
                y += LinePixels;
                shapes.Add(new TextShape(new(Margin, y), line, SmallPixels, palette.Muted));
            }
        }

        return y;
    }

    internal static int Checked(int width)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(width, LeastWidth);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(width, MostWidth);
        return width;
    }

    internal static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture).Replace(" -", " −", StringComparison.Ordinal);
}
