using System.Collections.Immutable;
using Mastwright.Agreement;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Evidence;

/// <summary>Measured over predicted signal power, a mark for each link, with the line on which the two are equal.</summary>
internal static class AgreementLayer
{
    internal const double Height = 260;
    private const double TextPixels = 13;
    private const double SmallPixels = 11;
    private const double AxisWidth = 70;

    /// <summary>Draws links that were heard.</summary>
    internal static ImmutableArray<Shape> Draw(List<AgreementRow> rows, double top, double right, Palette palette)
    {
        Box box = new(AxisWidth, top, Math.Min(right, AxisWidth + 560), top + Height);
        double low = Math.Min(rows.Min(row => row.PredictedDbm - row.SpreadDb), rows.Min(row => row.MeasuredDbm!.Value)) - 3;
        double high = Math.Max(rows.Max(row => row.PredictedDbm + row.SpreadDb), rows.Max(row => row.MeasuredDbm!.Value)) + 3;
        double X(double level) => box.Left + ((level - low) / (high - low) * box.Width);
        double Y(double level) => box.Bottom - ((level - low) / (high - low) * box.Height);
        Ticks ticks = Ticks.Between(low, high, 6);
        List<Shape> shapes = [new TextShape(new(18, top - 16), "Measured (up) against predicted (across) signal power, dBm; the bar is what the prediction does not know", TextPixels, palette.Ink) { Weight = TextWeight.SemiBold }];
        foreach (double value in ticks.Values)
        {
            shapes.Add(new LineShape([new(box.Left, Y(value)), new(box.Right, Y(value))], new(palette.Faint, 1)));
            shapes.Add(new LineShape([new(X(value), box.Top), new(X(value), box.Bottom)], new(palette.Faint, 1)));
            shapes.Add(new TextShape(new(box.Left - 8, Y(value) + 4), ticks.Text(value), SmallPixels, palette.Muted) { Anchor = TextAnchor.End });
            shapes.Add(new TextShape(new(X(value), box.Bottom + 18), ticks.Text(value), SmallPixels, palette.Muted) { Anchor = TextAnchor.Middle });
        }

        shapes.Add(new LineShape([new(X(low), Y(low)), new(X(high), Y(high))], new(palette.Muted, 1.2) { Dashes = [6, 4] }));
        double under = box.Top - 8;
        foreach (AgreementRow row in rows.OrderByDescending(row => row.MeasuredDbm))
        {
            double x = X(row.PredictedDbm);
            double y = Y(row.MeasuredDbm!.Value);
            Ink ink = row.WeakOnesLost ? palette.Missing : palette.Ok;
            shapes.Add(new LineShape([new(X(row.PredictedDbm - row.SpreadDb), y), new(X(row.PredictedDbm + row.SpreadDb), y)], new(ink, 1.6)));
            shapes.Add(new AreaShape([new(x, y - 5), new(x + 5, y), new(x, y + 5), new(x - 5, y)], new(row.WeakOnesLost ? palette.Paper : ink), new(ink, 1.4)));

            // Names in a column of their own, kept apart.
            under = Math.Max(under + 14, y + 4);
            shapes.Add(new TextShape(new(box.Right + 8, under), TextRuler.Fit(row.Name, 180, SmallPixels), SmallPixels, palette.Ink));
        }

        return [.. shapes];
    }
}
