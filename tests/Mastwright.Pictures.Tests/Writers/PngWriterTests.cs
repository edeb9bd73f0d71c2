using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Pictures.Paths;
using Mastwright.Pictures.Tests.Paths;
using Mastwright.Pictures.Writers;
using SkiaSharp;

namespace Mastwright.Pictures.Tests.Writers;

public sealed class PngWriterTests
{
    [Fact]
    public void It_has_the_scaled_size_and_shows_the_paper()
    {
        using SKBitmap picture = Read(PngWriter.Write(PathPicture.Draw(SkerrinPaths.ClearSea, PictureSize.Wide, Theme.Light), 1.5));
        Assert.Equal((1800, 780), (picture.Width, picture.Height));
        Assert.Equal(new SKColor(0xFB, 0xFA, 0xF6), picture.GetPixel(2, 2));
    }

    [Fact]
    public void Ground_ray_and_what_blocks_it_have_their_colours_where_they_belong()
    {
        PathPictureModel wall = SkerrinPaths.Path("Creamery", "Wind Shed", 10_000, 1_001, distance => distance is > 3_000 and < 7_000 ? 60 : 0, _ => (CoverKind.None, 0)) with { Zones = [] };
        Drawing drawing = PathPicture.Draw(wall, PictureSize.Wide, Theme.Light);
        using SKBitmap picture = Read(PngWriter.Write(drawing, 1));
        Box plot = drawing.Group("ground")!.Clip!.Value;
        Box blocked = Around(drawing.Group("stands-in-the-ray")!);
        Assert.Equal(new SKColor(0xDD, 0xD0, 0xBB), picture.GetPixel((int)plot.Left + 60, (int)plot.Bottom - 8));
        SKColor inTheWay = picture.GetPixel((int)((blocked.Left * 0.8) + (blocked.Right * 0.2)), (int)((blocked.Top * 0.6) + (blocked.Bottom * 0.4)));
        Assert.True(inTheWay.Red > inTheWay.Green + 60 && inTheWay.Red > inTheWay.Blue + 60, $"{inTheWay}");
        LineShape ray = drawing.Group("ray")!.Members.OfType<LineShape>().Single();
        SKColor onTheRay = picture.GetPixel((int)plot.Left + 150, (int)Math.Floor(ray.Points[0].Y));
        Assert.True(onTheRay.Red < 120 && onTheRay.Blue < 120, $"{onTheRay}");
    }

    [Fact]
    public void Every_text_leaves_ink_where_it_stands()
    {
        Drawing drawing = PathPicture.Draw(SkerrinPaths.RidgeInTheWay, PictureSize.Wide, Theme.Light);
        using SKBitmap with = Read(PngWriter.Write(drawing, 1));
        using SKBitmap without = Read(PngWriter.Write(drawing with { Shapes = WithoutText(drawing.Shapes) }, 1));
        foreach (TextShape text in drawing.Texts().Where(text => text.RotationDegrees == 0))
        {
            double wide = TextRuler.WidthPixels(text.Text, text.SizePixels, text.Weight);
            double left = text.Anchor switch { TextAnchor.Middle => text.At.X - (wide / 2), TextAnchor.End => text.At.X - wide, _ => text.At.X };
            int changed = 0;
            for (int x = (int)left; x < left + wide; x++)
            {
                for (int y = (int)(text.At.Y - text.SizePixels); y <= text.At.Y; y++)
                {
                    changed += with.GetPixel(x, y) == without.GetPixel(x, y) ? 0 : 1;
                }
            }

            // Letters ink about a fifth of their box; a dash or a 1 alone less.
            Assert.True(changed > wide * text.SizePixels * 0.04, $"'{text.Text}' left {changed} pixels");
        }
    }

    [Fact]
    public void Text_is_as_wide_as_it_was_measured()
    {
        const string Words = "Lantern Bay, 21.3 km → 868 MHz";
        Drawing drawing = SvgWriterTests.Sheet(new TextShape(new(4, 30), Words, 12, Ink.Of(0)));
        using SKBitmap picture = Read(PngWriter.Write(drawing, 4));
        int right = Enumerable.Range(0, picture.Width).Last(x => Enumerable.Range(0, picture.Height).Any(y => picture.GetPixel(x, y).Red < 128));

        // The last letter's own side bearing, under a pixel, lies between its ink and its advance.
        Assert.Equal(4 + TextRuler.WidthPixels(Words, 12), right / 4.0, 1.2);
    }

    [Fact]
    public void The_letter_a_font_lacks_is_a_question_mark_and_no_box()
    {
        byte[] lacking = PngWriter.Write(SvgWriterTests.Sheet(new TextShape(new(4, 30), "島", 12, Ink.Of(0))), 2);
        byte[] question = PngWriter.Write(SvgWriterTests.Sheet(new TextShape(new(4, 30), "?", 12, Ink.Of(0))), 2);
        Assert.Equal(question, lacking);
    }

    [Fact]
    public void The_same_drawing_gives_the_same_bytes()
    {
        Drawing drawing = PathPicture.Draw(SkerrinPaths.Woodland, PictureSize.Small, Theme.Dark);
        Assert.Equal(PngWriter.Write(drawing, 2), PngWriter.Write(drawing, 2));
    }

    [Theory, InlineData(0), InlineData(-1), InlineData(8.5), InlineData(double.NaN)]
    public void A_scale_out_of_range_is_refused(double scale) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PngWriter.Write(SvgWriterTests.Sheet(), scale));

    private static ImmutableArray<Shape> WithoutText(ImmutableArray<Shape> shapes) =>
        [.. shapes.Where(shape => shape is not TextShape).Select(shape => shape is GroupShape group ? group with { Members = WithoutText(group.Members) } : shape)];

    private static Box Around(GroupShape group)
    {
        Spot[] spots = [.. group.Members.OfType<AreaShape>().SelectMany(area => area.Outline)];
        return new(spots.Min(spot => spot.X), spots.Min(spot => spot.Y), spots.Max(spot => spot.X), spots.Max(spot => spot.Y));
    }

    private static SKBitmap Read(byte[] png) => SKBitmap.Decode(png);
}
