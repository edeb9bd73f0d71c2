using System.Collections.Immutable;
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
        ImmutableArray<double> edges = ReachClasses.Edges(map.Budget.Wanted.MarginDb);
        byte[] pixels = new byte[frame.Columns * frame.Rows * 4];
        Parallel.For(0, frame.Rows, row =>
        {
            for (int column = 0; column < frame.Columns; column++)
            {
                Ink ink = Pixel(map.Field, margins, edges, relief, column, row);
                int at = ((row * frame.Columns) + column) * 4;
                (pixels[at], pixels[at + 1], pixels[at + 2], pixels[at + 3]) = (ink.Red, ink.Green, ink.Blue, 255);
            }
        });
        return PixelImage.FromPixels(frame.Columns, frame.Rows, pixels);
    }

    /// <summary>The margin at a place of the field's grid: bilinear where all four cells around it have one, else that of the cell it lies in.</summary>
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

    private static Ink Pixel(ReachField field, float[] margins, ImmutableArray<double> edges, ReachRelief relief, int column, int row)
    {
        GridFrame frame = relief.Frame;
        int at = (row * frame.Columns) + column;
        bool isSea = relief.IsSea[at];
        bool isKnown = !float.IsNaN(relief.HeightsMetres[at]);
        if (IsCoast(relief, column, row))
        {
            return Ink.Of(0x4A545D);
        }

        Ink bare = !isKnown ? ReachScale.Unknown : isSea ? ReachScale.Sea : Shaded(ReachScale.Land, BareRelief * Shade(relief, column, row));
        double x = frame.OriginX + (column * frame.StepX);
        double y = frame.OriginY - (row * frame.StepY);
        (double margin, ReachFlags flags) = MarginAt(field, margins, (x - field.Frame.OriginX) / field.Frame.StepX, (field.Frame.OriginY - y) / field.Frame.StepY);
        if ((flags & ReachFlags.Outside) != ReachFlags.None)
        {
            return Mixed(bare, Ink.Of(0xFBFAF6), 0.55);
        }

        if (double.IsNaN(margin) || !isKnown)
        {
            return Mixed(bare, ReachScale.Hatch, 0.75 * Math.Max(Line(column + row), Line(column - row)));
        }

        int index = ReachClasses.IndexOf(edges, margin);
        if (index == 0)
        {
            return Mixed(bare, ReachScale.Hatch, 0.42 * Line(column + row));
        }

        Ink colour = ReachScale.Of(index - 1);
        return isSea ? Mixed(colour, ReachScale.Sea, 0.13) : Shaded(colour, Shade(relief, column, row));
    }

    /// <summary>How much of a pixel a line of the hatch covers, 0 to 1.</summary>
    private static double Line(int along)
    {
        double off = Math.Abs(Math.IEEERemainder(along, HatchPeriod));
        return Math.Clamp((HatchWidth / 2) - off + 0.5, 0, 1);
    }

    private static bool IsCoast(ReachRelief relief, int column, int row)
    {
        int columns = relief.Frame.Columns;
        int at = (row * columns) + column;
        return !relief.IsSea[at] && !float.IsNaN(relief.HeightsMetres[at])
            && ((column > 0 && relief.IsSea[at - 1]) || (column < columns - 1 && relief.IsSea[at + 1])
                || (row > 0 && relief.IsSea[at - columns]) || (row < relief.Frame.Rows - 1 && relief.IsSea[at + columns]));
    }

    /// <summary>Light on a slope from the north-west, 45° high; 0 is a level place.</summary>
    private static double Shade(ReachRelief relief, int column, int row)
    {
        int columns = relief.Frame.Columns;
        int rows = relief.Frame.Rows;
        float west = relief.HeightsMetres[(row * columns) + Math.Max(0, column - 1)];
        float east = relief.HeightsMetres[(row * columns) + Math.Min(columns - 1, column + 1)];
        float north = relief.HeightsMetres[(Math.Max(0, row - 1) * columns) + column];
        float south = relief.HeightsMetres[(Math.Min(rows - 1, row + 1) * columns) + column];
        double eastward = Exaggeration * (east - west) / (2 * relief.Frame.StepX);
        double northward = Exaggeration * (north - south) / (2 * relief.Frame.StepY);
        double light = (1 + ((eastward - northward) / Math.Sqrt(2))) / Math.Sqrt(2 * (1 + (eastward * eastward) + (northward * northward)));
        double shade = light - Math.Sqrt(0.5);
        return double.IsNaN(shade) ? 0 : shade;
    }

    private static Ink Shaded(Ink ink, double shade) => shade < 0
        ? Mixed(ink, Ink.Of(0x1B2430), Math.Min(0.6, -shade * 0.75))
        : Mixed(ink, Ink.Of(0xFFFFFF), Math.Min(0.5, shade * 0.9));

    private static Ink Mixed(Ink ink, Ink other, double share) => new(
        (byte)Math.Round(ink.Red + ((other.Red - ink.Red) * share)),
        (byte)Math.Round(ink.Green + ((other.Green - ink.Green) * share)),
        (byte)Math.Round(ink.Blue + ((other.Blue - ink.Blue) * share)),
        255);
}
