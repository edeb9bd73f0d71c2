using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>The pixels of a reach map: relief, sea, classes of margin over it, a hatch where the margin is below the limit.</summary>
public static class ReachImage
{
    /// <summary>Draws the square of a relief, one pixel a point.</summary>
    /// <param name="map">The map, in the relief's own zone.</param>
    /// <param name="direction">Which way its margins count.</param>
    /// <param name="relief">The relief.</param>
    /// <param name="theme">Light or dark.</param>
    public static PixelImage Draw(ReachMap map, ReachDirection direction, ReachRelief relief, Theme theme = Theme.Light)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(relief);
        ReachScale scale = ReachScale.For(theme);
        float[] margins = map.MarginsDb(direction);
        ImmutableArray<double> edges = ReachClasses.Edges(map.Budget.Wanted.MarginDb);
        return MapImage.Draw(relief, scale, (x, y) =>
        {
            (double margin, ReachFlags flags) = MarginAt(map.Field, margins, x, y);
            if (double.IsNaN(margin))
            {
                return new((flags & ReachFlags.Outside) != ReachFlags.None ? MapPixelKind.Outside : MapPixelKind.Missing);
            }

            int index = ReachClasses.IndexOf(edges, margin);
            return index == 0 ? new(MapPixelKind.Below) : new(MapPixelKind.Coloured, scale.Of(index - 1));
        });
    }

    /// <summary>The margin at a place of the field's zone: bilinear where all four cells around it have one, else that of the cell it lies in.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static (double MarginDb, ReachFlags Flags) MarginAt(ReachField field, float[] margins, double eastingMetres, double northingMetres)
    {
        double column = (eastingMetres - field.Frame.OriginX) / field.Frame.StepX;
        double row = (field.Frame.OriginY - northingMetres) / field.Frame.StepY;
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
        double between = (((margins[i] * (1 - fc)) + (margins[i + 1] * fc)) * (1 - fr)) + (((margins[j] * (1 - fc)) + (margins[j + 1] * fc)) * fr);
        return (double.IsNaN(between) ? margins[nearest] : between, field.Flags[nearest]);
    }
}
