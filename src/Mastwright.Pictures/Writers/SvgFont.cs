using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Writers;

/// <summary>The embedded letters of an SVG picture.</summary>
internal static class SvgFont
{
    /// <summary>A family name that belongs to this choice of letters: two pictures in one page do not take each other's.</summary>
    public static string FamilyOf(Drawing drawing)
    {
        StringBuilder letters = new();
        foreach (TextWeight weight in Enum.GetValues<TextWeight>())
        {
            letters.Append('|').AppendJoin("", Letters(drawing, weight));
        }

        byte[] hash = SHA256.HashData(Encoding.UTF8.GetBytes(letters.ToString()));
        return string.Create(CultureInfo.InvariantCulture, $"Mastwright-{Convert.ToHexStringLower(hash.AsSpan(0, 4))}");
    }

    /// <summary>The style element that brings the letters; empty when the drawing has no text.</summary>
    public static string Style(Drawing drawing, string family)
    {
        StringBuilder style = new();
        foreach (TextWeight weight in Enum.GetValues<TextWeight>())
        {
            Rune[] letters = Letters(drawing, weight);
            if (letters.Length > 0)
            {
                string data = Convert.ToBase64String(FontSubset.Of(FontShelf.Of(weight), letters));
                style.Append("@font-face{font-family:").Append(family).Append(";font-weight:").Append(weight == TextWeight.SemiBold ? "600" : "400")
                    .Append(";src:url(data:font/ttf;base64,").Append(data).Append(")}\n");
            }
        }

        return style.Length == 0 ? "" : $"<style>\n{style}</style>\n";
    }

    private static Rune[] Letters(Drawing drawing, TextWeight weight) =>
        [.. drawing.Texts().Where(text => text.Weight == weight).SelectMany(text => PlainText.Runes(text.Text)).Distinct().Order()];
}
