using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Writers;
using SkiaSharp;

namespace Mastwright.Pictures.Tests.Writers;

public sealed class PixelPngTests
{
    /// <summary>Against another decoder: the native drawing library's.</summary>
    [Fact]
    public void Another_decoder_reads_the_same_pixels() =>
        Gen.Select(Gen.Int[1, 40], Gen.Int[1, 40], Gen.Byte.Array[40 * 40 * 4]).Sample(
            (width, height, noise) =>
            {
                byte[] pixels = noise[..(width * height * 4)];
                using SKCodec codec = SKCodec.Create(new MemoryStream(PixelPng.Write(PixelImage.FromPixels(width, height, pixels))));
                Assert.NotNull(codec);
                using SKBitmap read = new(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Unpremul));
                Assert.Equal(SKCodecResult.Success, codec.GetPixels(read.Info, read.GetPixels()));
                Assert.True(read.Bytes.AsSpan().SequenceEqual(pixels));
            },
            iter: 30);

    [Fact]
    public void Pixels_that_do_not_fill_the_picture_are_refused()
    {
        Assert.Throws<ArgumentException>(() => PixelImage.FromPixels(2, 2, new byte[15]));
        Assert.Throws<ArgumentException>(() => PixelImage.FromPixels(0, 2, []));
    }

    [Fact]
    public void A_drawing_shows_its_image_in_every_kind_of_output()
    {
        PixelImage image = PixelImage.FromPixels(2, 1, [200, 10, 20, 255, 10, 20, 200, 255]);
        Drawing drawing = new()
        {
            WidthPixels = 80,
            HeightPixels = 60,
            Title = "t",
            Description = "d",
            Paper = Ink.Of(0xFFFFFF),
            Shapes = [new ImageShape(new(20, 20, 60, 40), image)],
        };
        using SKBitmap png = SKBitmap.Decode(PngWriter.Write(drawing, 1));
        Assert.Equal(new SKColor(255, 255, 255), png.GetPixel(10, 30));
        Assert.Equal(new SKColor(200, 10, 20), png.GetPixel(24, 30));
        Assert.Equal(new SKColor(10, 20, 200), png.GetPixel(56, 30));
        string svg = SvgWriter.Write(drawing);
        Assert.Contains("<image x=\"20\" y=\"20\" width=\"40\" height=\"20\"", svg, StringComparison.Ordinal);
        Assert.Contains(Convert.ToBase64String(PixelPng.Write(image)), svg, StringComparison.Ordinal);
    }
}
