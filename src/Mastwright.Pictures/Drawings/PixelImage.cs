namespace Mastwright.Pictures.Drawings;

/// <summary>A picture made of pixels: red, green, blue and opacity of each, row by row from the top left, one byte each.</summary>
/// <remarks>Immutable and safe from many threads.</remarks>
public sealed class PixelImage
{
    private readonly byte[] pixels;

    private PixelImage(int width, int height, byte[] pixels)
    {
        Width = width;
        Height = height;
        this.pixels = pixels;
    }

    /// <summary>Pixels across.</summary>
    public int Width { get; }

    /// <summary>Pixels down.</summary>
    public int Height { get; }

    /// <summary>Four bytes a pixel; the colours are not multiplied by the opacity.</summary>
    public ReadOnlySpan<byte> Pixels => pixels;

    /// <summary>Takes over the bytes of a picture; they must not be changed afterwards.</summary>
    /// <exception cref="ArgumentException">There are not four bytes for each pixel, or there is no pixel.</exception>
    public static PixelImage FromPixels(int width, int height, byte[] pixels)
    {
        ArgumentNullException.ThrowIfNull(pixels);
        if (width < 1 || height < 1 || pixels.Length != 4L * width * height)
        {
            throw new ArgumentException($"A picture of {width} × {height} pixels has four bytes for each of them, not {pixels.Length} bytes.", nameof(pixels));
        }

        return new(width, height, pixels);
    }
}
