using Mastwright.Findings;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Tests.Drawings;

public sealed class PaletteTests
{
    [Theory, InlineData(Theme.Light), InlineData(Theme.Dark)]
    public void Text_stands_out_from_the_paper(Theme theme)
    {
        // WCAG 2, success criterion 1.4.3: 4.5 : 1 for text of ordinary size.
        Palette palette = Palette.Of(theme);
        Ink[] inks = [palette.Ink, palette.Muted, palette.Blocked, .. Enum.GetValues<Verdict>().Select(palette.Of)];
        Assert.All(inks, ink => Assert.InRange(Contrast(ink, palette.Paper), 4.5, 21));
    }

    [Fact]
    public void The_contrast_of_black_on_white_is_21_as_published() =>
        Assert.Equal(21, Contrast(Ink.Of(0x000000), Ink.Of(0xFFFFFF)), 1e-9);

    [Theory, InlineData(Theme.Light), InlineData(Theme.Dark)]
    public void Verdicts_differ_in_lightness_or_hue_and_always_in_shape(Theme theme)
    {
        Palette palette = Palette.Of(theme);
        string[] shapes = [.. Enum.GetValues<Verdict>().Select(verdict => VerdictMark.Draw(verdict, new(0, 0), 10, palette))
            .Select(mark => string.Join('|', mark.Members.Select(shape => shape is AreaShape area ? string.Join(' ', area.Outline) : shape.GetType().Name)))];
        Assert.Equal(shapes.Length, shapes.Distinct().Count());
        Assert.Equal(shapes.Length, Enum.GetValues<Verdict>().Select(palette.Of).Distinct().Count());
    }

    /// <summary>Contrast ratio by WCAG 2's definition of relative luminance.</summary>
    private static double Contrast(Ink one, Ink other)
    {
        double a = Luminance(one);
        double b = Luminance(other);
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(Ink ink) => (0.2126 * Linear(ink.Red)) + (0.7152 * Linear(ink.Green)) + (0.0722 * Linear(ink.Blue));

    private static double Linear(byte part) => part / 255.0 is double c && c <= 0.04045 ? c / 12.92 : Math.Pow(((part / 255.0) + 0.055) / 1.055, 2.4);
}
