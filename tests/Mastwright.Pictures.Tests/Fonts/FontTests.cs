using System.Text;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using SkiaSharp;

namespace Mastwright.Pictures.Tests.Fonts;

public sealed class FontTests
{
    public static TheoryData<TextWeight> Weights => [TextWeight.Regular, TextWeight.SemiBold];

    [Theory, MemberData(nameof(Weights))]
    public void Glyphs_and_widths_equal_what_another_library_reads(TextWeight weight)
    {
        FontFile font = FontShelf.Of(weight);
        using SKTypeface face = Face(font.Bytes.ToArray());
        using SKFont pen = new(face, 1000) { LinearMetrics = true, Hinting = SKFontHinting.None };
        for (int code = 32; code < 0x2300; code++)
        {
            if (!Rune.TryCreate(code, out Rune rune))
            {
                continue;
            }

            Assert.Equal(face.GetGlyph(code), (ushort)font.GlyphOf(rune));
            if (font.Has(rune))
            {
                // The other library keeps widths in single precision at 26.6 fixed point.
                Assert.Equal(pen.GetGlyphWidths([(ushort)font.GlyphOf(rune)])[0], font.AdvanceUnits(font.GlyphOf(rune)) * 1000.0 / font.UnitsPerEm, 0.02);
            }
        }
    }

    [Theory, MemberData(nameof(Weights))]
    public void The_pictures_own_signs_are_in_the_font(TextWeight weight) =>
        Assert.All("→−·×±…°µ²√≤≥–“”Üéøß".EnumerateRunes(), rune => Assert.True(FontShelf.Of(weight).Has(rune), rune.ToString()));

    [Theory, MemberData(nameof(Weights))]
    public void A_subset_opens_in_another_library_with_the_same_widths_and_outlines(TextWeight weight)
    {
        FontFile font = FontShelf.Of(weight);
        Rune[] runes = [.. "Ferry House → Lantern Bay: −23.4 dB é ü Å".EnumerateRunes().Distinct()];
        byte[] bytes = FontSubset.Of(font, runes);
        Assert.InRange(bytes.Length, 1_000, 20_000);
        using SKTypeface whole = Face(font.Bytes.ToArray());
        using SKTypeface part = Face(bytes);
        Assert.Equal("Mastwright Text", part.FamilyName);
        using SKFont wholePen = new(whole, 64) { Hinting = SKFontHinting.None, LinearMetrics = true };
        using SKFont partPen = new(part, 64) { Hinting = SKFontHinting.None, LinearMetrics = true };
        foreach (Rune rune in runes)
        {
            Assert.NotEqual(0, part.GetGlyph(rune.Value));
            Assert.Equal(wholePen.MeasureText(rune.ToString()), partPen.MeasureText(rune.ToString()));
            using SKPath? wholePath = wholePen.GetGlyphPath(whole.GetGlyph(rune.Value));
            using SKPath? partPath = partPen.GetGlyphPath(part.GetGlyph(rune.Value));
            Assert.Equal(wholePath?.ToSvgPathData(), partPath?.ToSvgPathData());
        }

        Assert.Equal(0, part.GetGlyph('Q'));
    }

    [Fact]
    public void A_subset_is_read_back_by_our_own_reader()
    {
        FontFile part = FontFile.Parse(FontSubset.Of(FontShelf.Of(TextWeight.Regular), "Åb".EnumerateRunes()));
        Assert.True(part.Has(new Rune('Å')));
        Assert.False(part.Has(new Rune('c')));
        Assert.Equal(FontShelf.Of(TextWeight.Regular).AdvanceUnits(FontShelf.Of(TextWeight.Regular).GlyphOf(new Rune('b'))), part.AdvanceUnits(part.GlyphOf(new Rune('b'))));
    }

    [Fact]
    public void A_program_without_its_fonts_refuses_to_draw_text()
    {
        InvalidOperationException refusal = Assert.Throws<InvalidOperationException>(() => FontShelf.Read("fonts/none.ttf"));
        Assert.Contains("fonts/none.ttf", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Something_else_than_a_font_is_refused() =>
        Assert.Throws<InvalidDataException>(() => FontFile.Parse("not a font at all"u8.ToArray()));

    [Fact]
    public void Fitted_text_is_never_wider_than_its_room() =>
        Gen.Select(Gen.String[Gen.Char[' ', '~'], 0, 60], Gen.Double[20, 400]).Sample((text, room) =>
        {
            string fitted = TextRuler.Fit(text, room, 12);
            return TextRuler.WidthPixels(fitted, 12) <= room && (fitted == text || fitted.EndsWith('…'));
        });

    private static SKTypeface Face(byte[] bytes)
    {
        using SKData data = SKData.CreateCopy(bytes);
        return SKTypeface.FromData(data);
    }
}
