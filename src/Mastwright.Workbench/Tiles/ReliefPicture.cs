using System.Runtime.CompilerServices;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Workbench.Tiles;

/// <summary>The light on the ground's slopes.</summary>
internal static class ReliefPicture
{
    private const double Exaggeration = 1.8;
    private const double MostShine = 0.6;

    /// <summary>Light, less that of a level place, at which shadow and shine are at their full: the range of <see cref="SlopeLight"/>, but for the steepest slopes in shine.</summary>
    private const double MostBelow = 0.71;
    private const double MostAbove = 0.45;

    /// <summary>Slopes look flatter the farther away they are seen from; from this size of a pixel on they are raised by its square root.</summary>
    private const double PlainPixelMetres = 60;

    /// <summary>Lays it over a picture.</summary>
    /// <param name="heightsMetres">Height of each pixel, row by row; NaN where nothing is known.</param>
    /// <param name="side">Pixels a side.</param>
    /// <param name="pixelMetres">Side of a pixel on the ground.</param>
    /// <param name="theme">Light or dark.</param>
    /// <param name="pixels">Four bytes a pixel. What is opaque is mixed with light and shade; what is transparent becomes their colour.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void Draw(ReadOnlySpan<float> heightsMetres, int side, double pixelMetres, Theme theme, Span<byte> pixels)
    {
        (Ink shadow, Ink shine, double mostShadow) = theme == Theme.Dark ? (Ink.Of(0x04060A), Ink.Of(0xB4AFB8), 0.42) : (Ink.Of(0x4A3F55), Ink.Of(0xFFFDF6), 0.6);
        double scale = Exaggeration * Math.Sqrt(Math.Max(1, pixelMetres / PlainPixelMetres)) / pixelMetres;
        for (int row = 0; row < side; row++)
        {
            for (int column = 0; column < side; column++)
            {
                int at = (row * side) + column;
                double light = SlopeLight.Of(scale * Rise(heightsMetres, at, column, side, 1), -scale * Rise(heightsMetres, at, row, side, side));
                Ink ink = light < 0 ? shadow : shine;
                double share = Math.Min(1, light < 0 ? -light / MostBelow : light / MostAbove) * (light < 0 ? mostShadow : MostShine);
                Lay(pixels.Slice(4 * at, 4), ink, share);
            }
        }
    }

    /// <summary>Rise by pixel along a row or a column: at an edge as of a parabola through the edge and the two beside it, so that tiles meet without a seam.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Rise(ReadOnlySpan<float> heights, int at, int place, int side, int step) =>
        place == 0 ? ((4 * heights[at + step]) - (3 * heights[at]) - heights[at + (2 * step)]) / 2.0
        : place == side - 1 ? ((3 * heights[at]) - (4 * heights[at - step]) + heights[at - (2 * step)]) / 2.0
        : (heights[at + step] - heights[at - step]) / 2.0;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Lay(Span<byte> pixel, Ink ink, double share)
    {
        if (pixel[3] == 0)
        {
            (pixel[0], pixel[1], pixel[2], pixel[3]) = (ink.Red, ink.Green, ink.Blue, (byte)Math.Round(255 * share));
            return;
        }

        Ink mixed = new Ink(pixel[0], pixel[1], pixel[2], 255).Towards(ink, share);
        (pixel[0], pixel[1], pixel[2]) = (mixed.Red, mixed.Green, mixed.Blue);
    }
}
