using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>The classes of a reach map alone, see-through and upright in degrees, to be laid over somebody else's map.</summary>
/// <param name="Image">The pixels, evenly spaced in longitude and latitude.</param>
/// <param name="Legend">What the colours mean.</param>
/// <param name="WestDegrees">Western edge.</param>
/// <param name="SouthDegrees">Southern edge.</param>
/// <param name="EastDegrees">Eastern edge; beyond 180 where the map runs past it.</param>
/// <param name="NorthDegrees">Northern edge.</param>
public sealed record ReachOverlay(PixelImage Image, Drawing Legend, double WestDegrees, double SouthDegrees, double EastDegrees, double NorthDegrees)
{
    private const int Side = 1024;
    private const double ClassVeil = 0.68;
    private const double HatchVeil = 0.55;
    private const double HatchPeriod = 9;

    /// <summary>Draws it.</summary>
    public static ReachOverlay Draw(ReachMap map, ReachDirection direction)
    {
        ArgumentNullException.ThrowIfNull(map);
        GeoBounds bounds = GeoBounds.Of(map.Field.Input.Station).Expanded(map.Field.Input.RadiusMetres);
        double height = bounds.NorthDegrees - bounds.SouthDegrees;
        GridFrame grid = map.Field.Frame;
        float[] margins = map.MarginsDb(direction);
        ImmutableArray<double> edges = ReachClasses.Edges(map.Budget.Wanted.MarginDb);
        byte[] pixels = new byte[Side * Side * 4];
        Parallel.For(0, Side, row =>
        {
            double latitude = bounds.NorthDegrees - ((row + 0.5) / Side * height);
            for (int column = 0; column < Side; column++)
            {
                double longitude = bounds.WestDegrees + ((column + 0.5) / Side * bounds.WidthDegrees);
                UniversalTransverseMercator.Forward(latitude, longitude, grid.UtmZone, grid.IsNorth, out double x, out double y);
                (double margin, ReachFlags flags) = ReachImage.MarginAt(map.Field, margins, x, y);
                Ink ink = Of(margin, flags, edges, column, row);
                int at = ((row * Side) + column) * 4;
                (pixels[at], pixels[at + 1], pixels[at + 2], pixels[at + 3]) = (ink.Red, ink.Green, ink.Blue, ink.Opacity);
            }
        });
        return new(
            PixelImage.FromPixels(Side, Side, pixels),
            DrawLegend(edges),
            bounds.WestDegrees,
            bounds.SouthDegrees,
            bounds.WestDegrees + bounds.WidthDegrees,
            bounds.NorthDegrees);
    }

    private static Ink Of(double margin, ReachFlags flags, ImmutableArray<double> edges, int column, int row)
    {
        if ((flags & ReachFlags.Outside) != ReachFlags.None)
        {
            return default;
        }

        int index = double.IsNaN(margin) ? 0 : ReachClasses.IndexOf(edges, margin);
        bool isLine = Math.Abs(Math.IEEERemainder(column + row, HatchPeriod)) < 1 || (double.IsNaN(margin) && Math.Abs(Math.IEEERemainder(column - row, HatchPeriod)) < 1);
        return index > 0 ? ReachScale.Light.Of(index - 1).Veil(ClassVeil) : isLine ? ReachScale.Light.Hatch.Veil(HatchVeil) : default;
    }

    private static Drawing DrawLegend(ImmutableArray<double> edges)
    {
        Palette palette = Palette.Of(Theme.Light);
        List<Shape> shapes = [new TextShape(new(12, 22), "Margin to spare", 13, palette.Ink) { Weight = TextWeight.SemiBold }];
        double y = 32;
        for (int i = edges.Length; i >= 0; i--)
        {
            Fill fill = i == 0 ? new(palette.Paper, new(HatchKind.Rising, ReachScale.Light.Hatch)) : new(ReachScale.Light.Of(i - 1));
            string text = i == 0 ? "below the limit"
                : i == edges.Length ? string.Create(CultureInfo.InvariantCulture, $"{edges[i - 1]:0.#} dB and more")
                : string.Create(CultureInfo.InvariantCulture, $"{edges[i - 1]:0.#} to {edges[i]:0.#} dB");
            shapes.Add(AreaShape.Of(new(12, y, 40, y + 18), fill, new(palette.Muted, 0.8)));
            shapes.Add(new TextShape(new(50, y + 14), text, 12.5, palette.Ink));
            y += 24;
        }

        return new()
        {
            WidthPixels = 190,
            HeightPixels = (int)y + 8,
            Title = "Margin to spare",
            Description = "The colours of the margins, the darker the more.",
            Paper = palette.Paper,
            Shapes = [.. shapes],
        };
    }
}
