using Mastwright.Pictures.Drawings;
using SkiaSharp;

namespace Mastwright.Pictures.Writers;

/// <summary>Writes a drawing as a PNG picture.</summary>
/// <remarks>The native drawing library is loaded by the first call, and by nothing else.</remarks>
public static class PngWriter
{
    private const int MostPixels = 100_000_000;

    /// <summary>
    /// No filter and little searching: flat colours pack best as they are. Measured on a map of 2404 × 1872 pixels: 0.13 s and 2.35 MB; the
    /// library's usual choice takes 0.74 s for 2.39 MB.
    /// </summary>
    private static readonly SKPngEncoderOptions Packing = new(SKPngEncoderFilterFlags.None, zLibLevel: 4);

    /// <summary>The drawing as the bytes of a PNG file.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="scale">Pixels of the file for each pixel of the drawing, more than 0 and at most 8.</param>
    /// <exception cref="ArgumentOutOfRangeException">The scale is outside its range, or the picture would pass 100 million pixels.</exception>
    /// <exception cref="InvalidOperationException">The fonts are missing from the program.</exception>
    public static byte[] Write(Drawing drawing, double scale = 2)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        if (!(scale > 0 && scale <= 8))
        {
            throw new ArgumentOutOfRangeException(nameof(scale), scale, "A picture is scaled by more than 0 and at most 8.");
        }

        double width = Math.Max(1, Math.Round(drawing.WidthPixels * scale));
        double height = Math.Max(1, Math.Round(drawing.HeightPixels * scale));
        if (width * height > MostPixels)
        {
            throw new ArgumentOutOfRangeException(nameof(scale), scale, "The picture would have more than 100 million pixels.");
        }

        using SKBitmap bitmap = new(new SKImageInfo((int)width, (int)height, SKColorType.Rgba8888, SKAlphaType.Premul));
        using SKCanvas canvas = new(bitmap);
        canvas.Clear(SkiaPen.Colour(drawing.Paper));
        canvas.Scale((float)scale);
        SkiaPen.Draw(canvas, drawing.Shapes);
        canvas.Flush();
        using SKPixmap pixels = bitmap.PeekPixels();
        using SKData data = pixels.Encode(Packing)
            ?? throw new InvalidOperationException("The picture could not be written as PNG.");
        return data.ToArray();
    }
}
