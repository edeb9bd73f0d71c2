using System.Globalization;
using System.Text;

namespace Mastwright.Pictures.Fonts;

/// <summary>What of a text is drawn: control characters fall away, broken surrogates become U+FFFD.</summary>
internal static class PlainText
{
    /// <summary>The characters to draw.</summary>
    public static IEnumerable<Rune> Runes(string text)
    {
        foreach (Rune rune in text.EnumerateRunes())
        {
            // U+FFFE and U+FFFF are no characters, and XML does not allow them.
            if (Rune.GetUnicodeCategory(rune) != UnicodeCategory.Control && (rune.Value & 0xFFFE) != 0xFFFE)
            {
                yield return rune;
            }
        }
    }

    /// <summary>The characters to draw, as text.</summary>
    public static string Of(string text)
    {
        StringBuilder kept = new(text.Length);
        foreach (Rune rune in Runes(text))
        {
            kept.Append(rune.ToString());
        }

        return kept.ToString();
    }

    /// <summary>The characters to draw, with a question mark for each that the font cannot show.</summary>
    public static string ShownBy(FontFile font, string text)
    {
        StringBuilder kept = new(text.Length);
        foreach (Rune rune in Runes(text))
        {
            kept.Append(font.Has(rune) ? rune.ToString() : "?");
        }

        return kept.ToString();
    }
}
