using System.Runtime.CompilerServices;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>The pixels of a map: relief, sea and coast, and over them what the map says of each place.</summary>
internal static class MapImage
{
    private const double HatchPeriod = 11;
    private const double HatchWidth = 2.2;
    private const double DotPeriod = 9;
    private const double Exaggeration = 2.5;

    /// <summary>Relief without reach is paler, so that no shadow passes for a class.</summary>
    private const double BareRelief = 0.55;

    /// <summary>Draws the square of a relief, one pixel a point.</summary>
    /// <param name="relief">The relief.</param>
    /// <param name="scale">The colours.</param>
    /// <param name="at">What the map says of a place, by its easting and northing; asked from many threads.</param>
    /// <param name="reliefOverColour">How strongly relief shows through a colour, 0 to 1.</param>
    internal static PixelImage Draw(ReachRelief relief, ReachScale scale, Func<double, double, MapPixel> at, double reliefOverColour = 1)
    {
        GridFrame frame = relief.Frame;
        byte[] pixels = new byte[frame.Columns * frame.Rows * 4];
        Parallel.For(0, frame.Rows, row => DrawRow(relief, scale, at, reliefOverColour, row, pixels.AsSpan(row * frame.Columns * 4, frame.Columns * 4)));
        return PixelImage.FromPixels(frame.Columns, frame.Rows, pixels);
    }

    private static void DrawRow(ReachRelief relief, ReachScale scale, Func<double, double, MapPixel> at, double reliefOverColour, int row, Span<byte> pixels)
    {
        GridFrame frame = relief.Frame;
        ReadOnlySpan<float> heights = relief.HeightsMetres;
        ReadOnlySpan<bool> sea = relief.IsSea;
        double y = frame.OriginY - (row * frame.StepY);
        for (int column = 0; column < frame.Columns; column++)
        {
            int here = (row * frame.Columns) + column;
            bool isLand = !sea[here] && !float.IsNaN(heights[here]);
            Ink ink = isLand && IsCoast(sea, frame, column, row)
                ? scale.Coast
                : Pixel(heights, sea, frame, scale, at(frame.OriginX + (column * frame.StepX), y), column, row, reliefOverColour);
            (pixels[column * 4], pixels[(column * 4) + 1], pixels[(column * 4) + 2], pixels[(column * 4) + 3]) = (ink.Red, ink.Green, ink.Blue, 255);
        }
    }

    /// <summary>One pixel. Compiled at its best at once: the work is over before the runtime would have found it worth the while.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static Ink Pixel(
        ReadOnlySpan<float> heights, ReadOnlySpan<bool> sea, GridFrame frame, ReachScale scale, MapPixel pixel, int column, int row, double reliefOverColour)
    {
        int at = (row * frame.Columns) + column;
        bool isSea = sea[at];
        bool isKnown = !float.IsNaN(heights[at]);
        double shade = isKnown && !isSea ? Shade(heights, frame, column, row) : 0;
        Ink bare = !isKnown ? scale.Unknown : isSea ? scale.Sea : Shaded(scale, scale.Land, BareRelief * shade);
        if (pixel.Kind == MapPixelKind.Outside)
        {
            return bare.Towards(scale.Outside, 0.55);
        }

        if (pixel.Kind == MapPixelKind.Missing || !isKnown)
        {
            return bare.Towards(scale.Hatch, 0.75 * Math.Max(Line(column + row), Line(column - row)));
        }

        if (pixel.Kind == MapPixelKind.Below)
        {
            return bare.Towards(scale.Hatch, 0.42 * Line(column + row));
        }

        Ink colour = isSea ? pixel.Ink.Towards(scale.Sea, 0.13) : Shaded(scale, pixel.Ink, reliefOverColour * shade);
        return pixel.Hatch is { } hatch ? colour.Towards(ReachScale.MarksOn(pixel.Ink), 0.62 * Covered(hatch, column, row)) : colour;
    }

    /// <summary>How much of a pixel the marks of a pattern cover, 0 to 1.</summary>
    private static double Covered(HatchKind hatch, int column, int row) => hatch switch
    {
        HatchKind.Rising => Line(column + row),
        HatchKind.Falling => Line(column - row),
        HatchKind.Dots => Dot(column, row),
        _ => Math.Max(Line(column + row), Line(column - row)),
    };

    /// <summary>How much of a pixel a line of the hatch covers, 0 to 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Line(int along) => Math.Clamp((HatchWidth / 2) - Math.Abs(Math.IEEERemainder(along, HatchPeriod)) + 0.5, 0, 1);

    private static double Dot(int column, int row)
    {
        double shift = Math.Abs((int)Math.Round(row / DotPeriod)) % 2 == 0 ? 0 : DotPeriod / 2;
        double x = Math.IEEERemainder(column + shift, DotPeriod);
        double y = Math.IEEERemainder(row, DotPeriod);
        return Math.Clamp(2.3 - Math.Sqrt((x * x) + (y * y)), 0, 1);
    }

    /// <summary>Whether a point of land touches the sea.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool IsCoast(ReadOnlySpan<bool> sea, GridFrame frame, int column, int row)
    {
        int columns = frame.Columns;
        int at = (row * columns) + column;
        return (column > 0 && sea[at - 1]) || (column < columns - 1 && sea[at + 1])
            || (row > 0 && sea[at - columns]) || (row < frame.Rows - 1 && sea[at + columns]);
    }

    /// <summary>Light on a point of the relief; 0 is a level place.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Shade(ReadOnlySpan<float> heights, GridFrame frame, int column, int row)
    {
        int columns = frame.Columns;
        float west = heights[(row * columns) + Math.Max(0, column - 1)];
        float east = heights[(row * columns) + Math.Min(columns - 1, column + 1)];
        float north = heights[(Math.Max(0, row - 1) * columns) + column];
        float south = heights[(Math.Min(frame.Rows - 1, row + 1) * columns) + column];
        double eastward = Exaggeration * (east - west) / (2 * frame.StepX);
        double northward = Exaggeration * (north - south) / (2 * frame.StepY);
        return SlopeLight.Of(eastward, northward);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Ink Shaded(ReachScale scale, Ink ink, double shade) => shade < 0
        ? ink.Towards(scale.Shadow, Math.Min(0.6, -shade * 0.75))
        : ink.Towards(Ink.Of(0xFFFFFF), Math.Min(scale.HighLight, shade * 1.8 * scale.HighLight));
}
