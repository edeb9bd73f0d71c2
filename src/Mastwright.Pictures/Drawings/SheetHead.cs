using System.Collections.Immutable;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Drawings;

/// <summary>Title and sentence at the head of a picture of fixed width, cut to a line each.</summary>
internal static class SheetHead
{
    private const double Margin = 18;
    private const double TitlePixels = 17;
    private const double TextPixels = 13;

    /// <summary>The two lines.</summary>
    /// <param name="title">The title.</param>
    /// <param name="words">The sentence under it.</param>
    /// <param name="widthPixels">Width of the picture.</param>
    /// <param name="palette">The colours.</param>
    internal static ImmutableArray<Shape> Of(string title, string words, int widthPixels, Palette palette) =>
    [
        new TextShape(new(Margin, 36), TextRuler.Fit(title, widthPixels - (2 * Margin), TitlePixels, TextWeight.SemiBold), TitlePixels, palette.Ink) { Weight = TextWeight.SemiBold },
        new TextShape(new(Margin, 58), TextRuler.Fit(words, widthPixels - (2 * Margin), TextPixels), TextPixels, palette.Muted),
    ];
}
