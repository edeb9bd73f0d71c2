using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Geodesy;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>The colours of a reach map alone, see-through and upright in degrees, to be laid over somebody else's map.</summary>
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
    private const int MostCounts = 4;
    private const int MostNames = 24;

    /// <summary>Draws the classes of margin of one station.</summary>
    public static ReachOverlay Draw(ReachMap map, ReachDirection direction)
    {
        ArgumentNullException.ThrowIfNull(map);
        float[] margins = map.MarginsDb(direction);
        ImmutableArray<double> edges = ReachClasses.Edges(map.Budget.Wanted.MarginDb);
        return Draw(
            GeoBounds.Of(map.Field.Input.Station).Expanded(map.Field.Input.RadiusMetres),
            map.Field.Frame,
            (x, y, column, row) =>
            {
                (double margin, ReachFlags flags) = ReachImage.MarginAt(map.Field, margins, x, y);
                return Of(margin, flags, edges, column, row);
            },
            "Margin to spare",
            [.. Enumerable.Range(0, edges.Length + 1).Reverse().Select(i => (i == 0 ? Below : new Fill(ReachScale.Light.Of(i - 1)), Range(edges, i)))]);
    }

    /// <summary>Draws which of several stations serves a place best, or how many reach it.</summary>
    /// <param name="servers">Best server and count.</param>
    /// <param name="direction">Which way margins count.</param>
    /// <param name="showsCount">Whether it shows how many.</param>
    /// <param name="stations">The stations in the order of their numbers.</param>
    /// <param name="bounds">The rectangle that holds all their radii.</param>
    public static ReachOverlay Draw(BestServers servers, ReachDirection direction, bool showsCount, ImmutableArray<MapStation> stations, GeoBounds bounds)
    {
        ArgumentNullException.ThrowIfNull(servers);
        ArgumentNullException.ThrowIfNull(bounds);
        ImmutableArray<int> styles = ServerStyles.For(stations);
        BestServerLayer layer = servers.Layer(direction);
        ImmutableArray<(Fill, string)> rows = showsCount
            ? [.. Enumerable.Range(1, Math.Min(stations.Length, MostCounts)).Reverse().Select(count => (new Fill(ReachScale.Light.Of(count - 1)), Counted(count, stations.Length)))]
            : [.. stations.Take(MostNames).Select((station, i) => (FillOf(styles[i]), $"{i + 1}  {station.Name}"))];
        return Draw(
            bounds,
            servers.Frame,
            (x, y, column, row) =>
            {
                int cell = ServerPicture.CellAt(servers.Frame, x, y);
                if (cell < 0 || float.IsNaN(layer.MarginsDb[cell]))
                {
                    return Of(double.NaN, cell < 0 ? ReachFlags.Outside : servers.Flags[cell], [0], column, row);
                }

                int server = layer.ServerOf(cell);
                if (server == 0)
                {
                    return Of(-1, ReachFlags.None, [0], column, row);
                }

                Ink ink = showsCount ? ReachScale.Light.Of(Math.Min((int)layer.Counts[cell], MostCounts) - 1) : ServerStyles.InkOf(styles[server - 1]);
                return (!showsCount && ServerStyles.HatchOf(styles[server - 1]) is { } hatch && IsMarked(hatch, column, row) ? ReachScale.MarksOn(ink) : ink).Veil(ClassVeil);
            },
            showsCount ? "Stations in reach" : "Most margin to spare",
            [.. rows, (Below, showsCount ? "no station" : "below the limit")],
            showsCount || stations.Length <= MostNames ? "" : string.Create(CultureInfo.InvariantCulture, $"… and {stations.Length - MostNames} more"));
    }

    private static ReachOverlay Draw(
        GeoBounds bounds, GridFrame grid, Func<double, double, int, int, Ink> inkAt, string title, ImmutableArray<(Fill Fill, string Text)> rows, string after = "")
    {
        double height = bounds.NorthDegrees - bounds.SouthDegrees;
        byte[] pixels = new byte[Side * Side * 4];
        Parallel.For(0, Side, row =>
        {
            double latitude = bounds.NorthDegrees - ((row + 0.5) / Side * height);
            for (int column = 0; column < Side; column++)
            {
                double longitude = bounds.WestDegrees + ((column + 0.5) / Side * bounds.WidthDegrees);
                UniversalTransverseMercator.Forward(latitude, longitude, grid.UtmZone, grid.IsNorth, out double x, out double y);
                Ink ink = inkAt(x, y, column, row);
                int at = ((row * Side) + column) * 4;
                (pixels[at], pixels[at + 1], pixels[at + 2], pixels[at + 3]) = (ink.Red, ink.Green, ink.Blue, ink.Opacity);
            }
        });
        return new(
            PixelImage.FromPixels(Side, Side, pixels),
            DrawLegend(title, rows, after),
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
        bool isLine = IsMarked(HatchKind.Rising, column, row) || (double.IsNaN(margin) && IsMarked(HatchKind.Falling, column, row));
        return index > 0 ? ReachScale.Light.Of(index - 1).Veil(ClassVeil) : isLine ? ReachScale.Light.Hatch.Veil(HatchVeil) : default;
    }

    /// <summary>Whether a pixel belongs to the marks of a pattern.</summary>
    private static bool IsMarked(HatchKind hatch, int column, int row) => hatch switch
    {
        HatchKind.Dots => Math.Abs(Math.IEEERemainder(column, HatchPeriod)) <= 1 && Math.Abs(Math.IEEERemainder(row, HatchPeriod)) <= 1,
        HatchKind.Falling => Math.Abs(Math.IEEERemainder(column - row, HatchPeriod)) < 1,
        _ => Math.Abs(Math.IEEERemainder(column + row, HatchPeriod)) < 1,
    };

    private static Fill Below => new(Palette.Of(Theme.Light).Paper, new(HatchKind.Rising, ReachScale.Light.Hatch));

    private static Fill FillOf(int style)
    {
        Ink ink = ServerStyles.InkOf(style);
        return new(ink, ServerStyles.HatchOf(style) is { } hatch ? new(hatch, ReachScale.MarksOn(ink)) : null);
    }

    private static string Range(ImmutableArray<double> edges, int index) =>
        index == 0 ? "below the limit"
        : index == edges.Length ? string.Create(CultureInfo.InvariantCulture, $"{edges[index - 1]:0.#} dB and more")
        : string.Create(CultureInfo.InvariantCulture, $"{edges[index - 1]:0.#} to {edges[index]:0.#} dB");

    private static string Counted(int count, int stations) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} station{(count == 1 ? "" : "s")}{(count == MostCounts && stations > MostCounts ? " and more" : "")}");

    private static Drawing DrawLegend(string title, ImmutableArray<(Fill Fill, string Text)> rows, string after)
    {
        Palette palette = Palette.Of(Theme.Light);
        List<Shape> shapes = [new TextShape(new(12, 22), title, 13, palette.Ink) { Weight = TextWeight.SemiBold }];
        double y = 32;
        foreach ((Fill fill, string text) in rows)
        {
            shapes.Add(AreaShape.Of(new(12, y, 40, y + 18), fill, new(palette.Muted, 0.8)));
            shapes.Add(new TextShape(new(50, y + 14), text, 12.5, palette.Ink));
            y += 24;
        }

        if (after.Length > 0)
        {
            shapes.Add(new TextShape(new(12, y + 14), after, 12.5, palette.Muted));
            y += 24;
        }

        int longest = rows.Max(row => row.Text.Length);
        return new()
        {
            WidthPixels = Math.Max(190, 62 + (int)(longest * 7.2)),
            HeightPixels = (int)y + 8,
            Title = title,
            Description = "What the colours of the map mean.",
            Paper = palette.Paper,
            Shapes = [.. shapes],
        };
    }
}
