using System.Runtime.CompilerServices;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>The pixels of a reach map: relief, sea, classes of margin over it, a hatch where the margin is below the limit.</summary>
public static class ReachImage
{
    private const double HatchPeriod = 11;
    private const double HatchWidth = 2.2;
    private const double Exaggeration = 2.5;

    /// <summary>Relief without reach is paler, so that no shadow passes for a class.</summary>
    private const double BareRelief = 0.55;

    private static readonly Ink Coast = Ink.Of(0x4A545D);
    private static readonly Ink Beyond = Ink.Of(0xFBFAF6);
    private static readonly Ink Shadow = Ink.Of(0x1B2430);
    private static readonly Ink Light = Ink.Of(0xFFFFFF);

    /// <summary>Draws the square of a relief, one pixel a point.</summary>
    /// <param name="map">The map, in the relief's own zone.</param>
    /// <param name="direction">Which way its margins count.</param>
    /// <param name="relief">The relief.</param>
    public static PixelImage Draw(ReachMap map, ReachDirection direction, ReachRelief relief)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(relief);
        GridFrame frame = relief.Frame;
        float[] margins = map.MarginsDb(direction);
        double[] edges = [.. ReachClasses.Edges(map.Budget.Wanted.MarginDb)];
        byte[] pixels = new byte[frame.Columns * frame.Rows * 4];
        Parallel.For(0, frame.Rows, row => DrawRow(map.Field, margins, edges, relief, row, pixels.AsSpan(row * frame.Columns * 4, frame.Columns * 4)));
        return PixelImage.FromPixels(frame.Columns, frame.Rows, pixels);
    }

    /// <summary>The margin at a place of the field's grid: bilinear where all four cells around it have one, else that of the cell it lies in.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static (double MarginDb, ReachFlags Flags) MarginAt(ReachField field, float[] margins, double column, double row)
    {
        int c = (int)Math.Round(column);
        int r = (int)Math.Round(row);
        if (c < 0 || r < 0 || c >= field.Frame.Columns || r >= field.Frame.Rows)
        {
            return (double.NaN, ReachFlags.Outside);
        }

        int nearest = (r * field.Frame.Columns) + c;
        if (double.IsNaN(margins[nearest]))
        {
            return (double.NaN, field.Flags[nearest]);
        }

        int c0 = Math.Clamp((int)Math.Floor(column), 0, field.Frame.Columns - 2);
        int r0 = Math.Clamp((int)Math.Floor(row), 0, field.Frame.Rows - 2);
        double fc = Math.Clamp(column - c0, 0, 1);
        double fr = Math.Clamp(row - r0, 0, 1);
        int i = (r0 * field.Frame.Columns) + c0;
        int j = i + field.Frame.Columns;
        double between = ((margins[i] * (1 - fc)) + (margins[i + 1] * fc)) * (1 - fr) + (((margins[j] * (1 - fc)) + (margins[j + 1] * fc)) * fr);
        return (double.IsNaN(between) ? margins[nearest] : between, field.Flags[nearest]);
    }

    private static void DrawRow(ReachField field, float[] margins, double[] edges, ReachRelief relief, int row, Span<byte> pixels)
    {
        GridFrame frame = relief.Frame;
        ReadOnlySpan<float> heights = relief.HeightsMetres;
        ReadOnlySpan<bool> sea = relief.IsSea;
        for (int column = 0; column < frame.Columns; column++)
        {
            Ink ink = Pixel(field, margins, edges, heights, sea, frame, column, row);
            (pixels[column * 4], pixels[(column * 4) + 1], pixels[(column * 4) + 2], pixels[(column * 4) + 3]) = (ink.Red, ink.Green, ink.Blue, 255);
        }
    }

    /// <summary>One pixel. Compiled at its best at once: the work is over before the runtime would have found it worth the while.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static Ink Pixel(ReachField field, float[] margins, ReadOnlySpan<double> edges, ReadOnlySpan<float> heights, ReadOnlySpan<bool> sea, GridFrame frame, int column, int row)
    {
        int at = (row * frame.Columns) + column;
        bool isSea = sea[at];
        bool isKnown = !float.IsNaN(heights[at]);
        if (isKnown && !isSea && IsCoast(sea, frame, column, row))
        {
            return Coast;
        }

        double shade = isKnown && !isSea ? Shade(heights, frame, column, row) : 0;
        Ink bare = !isKnown ? ReachScale.Unknown : isSea ? ReachScale.Sea : Shaded(ReachScale.Land, BareRelief * shade);
        double x = frame.OriginX + (column * frame.StepX);
        double y = frame.OriginY - (row * frame.StepY);
        (double margin, ReachFlags flags) = MarginAt(field, margins, (x - field.Frame.OriginX) / field.Frame.StepX, (field.Frame.OriginY - y) / field.Frame.StepY);
        if ((flags & ReachFlags.Outside) != ReachFlags.None)
        {
            return Mixed(bare, Beyond, 0.55);
        }

        if (double.IsNaN(margin) || !isKnown)
        {
            return Mixed(bare, ReachScale.Hatch, 0.75 * Math.Max(Line(column + row), Line(column - row)));
        }

        int index = 0;
        while (index < edges.Length && margin >= edges[index])
        {
            index++;
        }

        if (index == 0)
        {
            return Mixed(bare, ReachScale.Hatch, 0.42 * Line(column + row));
        }

        Ink colour = ReachScale.Of(index - 1);
        return isSea ? Mixed(colour, ReachScale.Sea, 0.13) : Shaded(colour, shade);
    }

    /// <summary>How much of a pixel a line of the hatch covers, 0 to 1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Line(int along)
    {
        double off = Math.Abs(Math.IEEERemainder(along, HatchPeriod));
        return Math.Clamp((HatchWidth / 2) - off + 0.5, 0, 1);
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

    /// <summary>Light on a slope from the north-west, 45° high; 0 is a level place.</summary>
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
        double light = (1 + ((eastward - northward) / Math.Sqrt(2))) / Math.Sqrt(2 * (1 + (eastward * eastward) + (northward * northward)));
        double shade = light - Math.Sqrt(0.5);
        return double.IsNaN(shade) ? 0 : shade;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Ink Shaded(Ink ink, double shade) => shade < 0
        ? Mixed(ink, Shadow, Math.Min(0.6, -shade * 0.75))
        : Mixed(ink, Light, Math.Min(0.5, shade * 0.9));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Ink Mixed(Ink ink, Ink other, double share) => new(
        (byte)Math.Round(ink.Red + ((other.Red - ink.Red) * share)),
        (byte)Math.Round(ink.Green + ((other.Green - ink.Green) * share)),
        (byte)Math.Round(ink.Blue + ((other.Blue - ink.Blue) * share)),
        255);
}
