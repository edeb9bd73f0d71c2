using System.Text;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Fonts;

/// <summary>How wide text is, by the embedded font's own advance widths; needs no native library.</summary>
/// <remarks>No kerning: no output kerns, so that all agree (see docs/decisions/2026-11-25-one-drawing.md).</remarks>
public static class TextRuler
{
    /// <summary>Width of a line of text in pixels at scale 1.</summary>
    /// <exception cref="InvalidOperationException">The fonts are missing from the program.</exception>
    public static double WidthPixels(string text, double sizePixels, TextWeight weight = TextWeight.Regular)
    {
        ArgumentNullException.ThrowIfNull(text);
        FontFile font = FontShelf.Of(weight);
        int question = font.GlyphOf(new Rune('?'));
        long units = 0;
        foreach (Rune rune in PlainText.Runes(text))
        {
            units += font.AdvanceUnits(font.Has(rune) ? font.GlyphOf(rune) : question);
        }

        return units * sizePixels / font.UnitsPerEm;
    }

    /// <summary>The text, or as much of it as fits with an ellipsis at its end.</summary>
    public static string Fit(string text, double widthPixels, double sizePixels, TextWeight weight = TextWeight.Regular)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (WidthPixels(text, sizePixels, weight) <= widthPixels)
        {
            return text;
        }

        Rune[] runes = [.. PlainText.Runes(text)];
        int low = 0;
        int high = runes.Length;
        while (low < high)
        {
            int middle = (low + high + 1) / 2;
            if (WidthPixels(Shortened(runes, middle), sizePixels, weight) <= widthPixels)
            {
                low = middle;
            }
            else
            {
                high = middle - 1;
            }
        }

        return Shortened(runes, low);
    }

    private static string Shortened(Rune[] runes, int count) =>
        string.Concat(runes.Take(count).Select(rune => rune.ToString())).TrimEnd() + "…";
}
