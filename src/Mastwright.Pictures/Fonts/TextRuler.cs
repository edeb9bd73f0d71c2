using System.Collections.Immutable;
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

    /// <summary>The text in as few lines as it takes, broken at spaces; the last one allowed ends in an ellipsis when words are left.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No line is allowed.</exception>
    public static ImmutableArray<string> Wrap(string text, double widthPixels, int mostLines, double sizePixels, TextWeight weight = TextWeight.Regular)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentOutOfRangeException.ThrowIfLessThan(mostLines, 1);
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        List<string> lines = [];
        for (int i = 0; i < words.Length;)
        {
            if (lines.Count == mostLines - 1)
            {
                lines.Add(Fit(string.Join(' ', words[i..]), widthPixels, sizePixels, weight));
                break;
            }

            string line = words[i++];
            while (i < words.Length && WidthPixels($"{line} {words[i]}", sizePixels, weight) <= widthPixels)
            {
                line = $"{line} {words[i++]}";
            }

            lines.Add(Fit(line, widthPixels, sizePixels, weight));
        }

        return [.. lines];
    }

    private static string Shortened(Rune[] runes, int count) =>
        string.Concat(runes.Take(count).Select(rune => rune.ToString())).TrimEnd() + "…";
}
