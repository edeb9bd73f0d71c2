using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Network.Air;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Plans;

namespace Mastwright.Pictures.Network;

/// <summary>How busy the channel is at each station, split in own sending and what is heard, and what arrives as traffic grows.</summary>
/// <remarks>Own sending is hatched besides its colour, and each bar has its number.</remarks>
public static class AirPicture
{
    private const double Margin = 18;
    private const double SmallPixels = 11;
    private const double NameWidth = 150;
    private const double RowPixels = 22;
    private const double GrowthPixels = 190;
    private const int Width = 1000;
    private const int MostStations = 24;

    /// <summary>Draws the picture.</summary>
    /// <param name="report">The simulated day.</param>
    /// <param name="theme">Light or dark.</param>
    /// <exception cref="InvalidOperationException">The fonts are missing from the program.</exception>
    public static Drawing Draw(AirReport report, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(report);
        Palette palette = Palette.Of(theme);
        AirResult result = report.Result;
        int[] shown = [.. Enumerable.Range(0, result.Stations.Length).OrderByDescending(station => result.Stations[station].BusySeconds).Take(MostStations)];
        double top = 100;
        double bottom = top + (RowPixels * shown.Length);
        bool grows = report.Growth.Length > 1;
        int height = (int)(bottom + (grows ? GrowthPixels + 92 : 0) + 46);
        string title = $"{report.Links.Plan.Name}: the channel";
        string words = Text($"{result.DurationSeconds / 3600:0.##} h, {result.Stations.Length} stations, packets of {1000 * report.Settings.AirtimeSeconds:0} ms: {result.Made} made, {result.Sent} sent, {100 * Math.Min(1, result.DeliveredShare):0} % of what is wanted arrives. Seed {report.Settings.Seed}.");
        return new()
        {
            WidthPixels = Width,
            HeightPixels = height,
            Title = title,
            Description = words,
            Paper = palette.Paper,
            Shapes =
            [
                .. SheetHead.Of(title, words, Width, palette),
                new GroupShape("busy", Busy(report, shown, top, palette)),
                .. grows ? [new GroupShape("growth", Growth(report, new(Margin + 52, bottom + 74, Width - Margin - 40, bottom + 74 + GrowthPixels), palette))] : Array.Empty<Shape>(),
                new TextShape(
                    new(Margin, height - 16),
                    Text($"Hatched: it sends itself; plain: it hears others.{(result.Stations.Length > shown.Length ? Text($" The {shown.Length} busiest of {result.Stations.Length}.") : "")} Every link at its best guess."),
                    SmallPixels, palette.Muted),
            ],
        };
    }

    private static ImmutableArray<Shape> Busy(AirReport report, int[] shown, double top, Palette palette)
    {
        AirResult result = report.Result;
        double left = Margin + NameWidth;
        double right = Width - Margin - 64;
        double most = Math.Max(1e-9, shown.Max(station => result.Stations[station].BusySeconds / result.DurationSeconds));
        double scale = (right - left) / most;
        List<Shape> shapes = [new TextShape(new(Margin, top - 12), "Share of the time in which the channel is busy at", SmallPixels, palette.Muted)];
        foreach ((int row, int station) in shown.Index())
        {
            AirStation one = result.Stations[station];
            double y = top + (RowPixels * row);
            double busy = scale * one.BusySeconds / result.DurationSeconds;
            double own = Math.Min(busy, scale * one.AirSeconds / result.DurationSeconds);
            shapes.Add(new TextShape(new(left - 8, y + 14), TextRuler.Fit(report.Links.Matrix.Stations[station].Name, NameWidth - 8, SmallPixels + 1), SmallPixels + 1, palette.Ink) { Anchor = TextAnchor.End });
            shapes.Add(Bar(left, left + own, y, new Fill(palette.Fresnel, new Hatch(HatchKind.Rising, palette.Paper))));
            shapes.Add(Bar(left + own, left + busy, y, new Fill(palette.WaterMarks)));
            shapes.Add(new TextShape(new(left + busy + 6, y + 14), Text($"{100 * one.BusySeconds / result.DurationSeconds:0.##} %"), SmallPixels, palette.Ink));
        }

        shapes.Add(new LineShape([new(left, top - 4), new(left, top + (RowPixels * shown.Length))], new(palette.Ink, 1)));
        return [.. shapes];
    }

    private static AreaShape Bar(double from, double to, double y, Fill fill) => new([new(from, y + 4), new(to, y + 4), new(to, y + 18), new(from, y + 18)], fill);

    /// <summary>What arrives by how many times the traffic, on a scale of powers of two.</summary>
    private static ImmutableArray<Shape> Growth(AirReport report, Box box, Palette palette)
    {
        double most = Math.Max(1, Math.Log2(report.Growth.Max(growth => growth.Factor)));
        List<Shape> shapes = [new TextShape(new(Margin, box.Top - 22), "As traffic grows: what is wanted and arrives (line), and the share of the time the busiest place is busy (dashes)", SmallPixels, palette.Muted)];
        foreach (int percent in (int[])[0, 25, 50, 75, 100])
        {
            double y = box.Bottom - (box.Height * percent / 100);
            shapes.Add(new LineShape([new(box.Left, y), new(box.Right, y)], new(palette.Faint, 1)));
            shapes.Add(new TextShape(new(box.Left - 8, y + 4), Text($"{percent} %"), SmallPixels, palette.Muted) { Anchor = TextAnchor.End });
        }

        foreach (AirGrowth growth in report.Growth)
        {
            Spot at = At(growth.Factor, growth.DeliveredShare);
            shapes.Add(new TextShape(new(at.X, box.Bottom + 18), Text($"{growth.Factor:0} ×"), SmallPixels, palette.Muted) { Anchor = TextAnchor.Middle });
            shapes.Add(new AreaShape([new(at.X - 4, at.Y), new(at.X, at.Y - 4), new(at.X + 4, at.Y), new(at.X, at.Y + 4)], new(palette.Ink)));
        }

        shapes.Add(new LineShape([.. report.Growth.Select(growth => At(growth.Factor, growth.MostBusyShare))], new(palette.WaterMarks, 2) { Dashes = [6, 4] }));
        shapes.Add(new LineShape([.. report.Growth.Select(growth => At(growth.Factor, growth.DeliveredShare))], new(palette.Ink, 2)));
        return [.. shapes];

        Spot At(double factor, double share) => new(box.Left + (box.Width * Math.Log2(factor) / most), box.Bottom - (box.Height * Math.Clamp(share, 0, 1)));
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
