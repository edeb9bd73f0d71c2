using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Ground;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;

namespace Mastwright.Pictures.Reach;

/// <summary>The map of several stations: which serves a place best, or how many reach it.</summary>
public static class ServerPicture
{
    private const double ReliefOverStyle = 0.6;
    private const double StationLine = 24;
    private const double KeptForAssumptions = 190;
    private const int MostSteps = 4;

    /// <summary>Draws the picture.</summary>
    /// <exception cref="ArgumentException">The relief is of another zone.</exception>
    public static Drawing Draw(ServerPictureModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        model.Relief.RequireZoneOf(model.Servers.Frame);
        string verb = model.Direction switch { ReachDirection.Hears => "hears", ReachDirection.Both => "links", _ => "is heard" };
        int count = model.Stations.Length;
        return new MapSheet
        {
            Title = model.ShowsCount ? $"How many of {count} stations {Plural(model.Direction)}" : $"Which of {count} stations {verb} best",
            Radio = $"by {model.ReceiverName} · {model.RadioText}",
            Method = model.MethodText,
            Theme = model.Theme,
        }.Draw(model.Relief, Image(model), new(model.Stations, model.Marks, null), Panel(model));
    }

    /// <summary>The pixels of the map, one a point of the relief.</summary>
    public static PixelImage Image(ServerPictureModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        ReachScale scale = ReachScale.For(model.Theme);
        ImmutableArray<int> styles = ServerStyles.For(model.Stations);
        GridFrame frame = model.Servers.Frame;
        BestServerLayer layer = model.Servers.Layer(model.Direction);
        return MapImage.Draw(
            model.Relief,
            scale,
            (x, y) =>
            {
                int cell = CellAt(frame, x, y);
                if (cell < 0)
                {
                    return new(MapPixelKind.Outside);
                }

                if (float.IsNaN(layer.MarginsDb[cell]))
                {
                    return new((model.Servers.Flags[cell] & ReachFlags.Outside) != ReachFlags.None ? MapPixelKind.Outside : MapPixelKind.Missing);
                }

                int server = layer.ServerOf(cell);
                return server == 0 ? new(MapPixelKind.Below)
                    : model.ShowsCount ? new(MapPixelKind.Coloured, scale.Of(layer.Counts[cell] - 1))
                    : new(MapPixelKind.Coloured, ServerStyles.InkOf(styles[server - 1]), ServerStyles.HatchOf(styles[server - 1]));
            },
            model.ShowsCount ? 1 : ReliefOverStyle);
    }

    /// <summary>The cell at a place of the grid's zone; −1 outside the grid.</summary>
    internal static int CellAt(GridFrame frame, double eastingMetres, double northingMetres)
    {
        int column = (int)Math.Round((eastingMetres - frame.OriginX) / frame.StepX);
        int row = (int)Math.Round((frame.OriginY - northingMetres) / frame.StepY);
        return (uint)column < (uint)frame.Columns && (uint)row < (uint)frame.Rows ? (row * frame.Columns) + column : -1;
    }

    private static ImmutableArray<Shape> Panel(ServerPictureModel model)
    {
        MapPanel panel = new(model.Theme);
        BestServerLayer layer = model.Servers.Layer(model.Direction);
        double cell = model.Servers.CellAreaSquareMetres;
        ImmutableArray<int> counts = layer.CellsByCount(model.Servers.Flags);
        double reached = counts.Skip(1).Sum() * cell;
        double several = counts.Skip(2).Sum() * cell;
        string verb = model.Direction switch { ReachDirection.Hears => "Heard from", ReachDirection.Both => "Linked over", _ => "Served over" };
        panel.Answer($"{verb} {MapPanel.Area(reached)}");
        panel.Sentence($"of the {MapPanel.Area(counts.Sum() * cell)} that were worked out, sea included; {MapPanel.Area(several)} by two stations or more.");
        if (model.ShowsCount)
        {
            Counts(model, counts, cell, panel);
        }
        else
        {
            Stations(model, layer.ByStation(), cell, panel);
        }

        panel.Below(model.ShowsCount ? "no station" : "below the limit", "every station has less than 0 dB to spare", MapPanel.Area(counts[0] * cell));
        panel.Missing((model.Servers.CellCount - counts.Sum()) * cell);
        if (!model.Marks.IsEmpty)
        {
            panel.Places();
        }

        panel.Assumptions(model.Assumptions);
        return panel.Shapes;
    }

    private static void Stations(ServerPictureModel model, ImmutableArray<ServedCells> served, double cell, MapPanel panel)
    {
        ImmutableArray<int> styles = ServerStyles.For(model.Stations);
        panel.Heading("Most margin to spare", "area");
        panel.Gap(8);
        for (int i = 0; i < served.Length; i++)
        {
            bool isLast = i == served.Length - 1;
            if (panel.Left - StationLine - (isLast ? 0 : StationLine) < KeptForAssumptions)
            {
                panel.Note(string.Create(CultureInfo.InvariantCulture, $"… and {served.Length - i} more, which the text and --json list"));
                panel.Gap(10);
                return;
            }

            Ink ink = ServerStyles.InkOf(styles[i]);
            panel.Flat(
                new(ink, ServerStyles.HatchOf(styles[i]) is { } hatch ? new(hatch, ReachScale.MarksOn(ink)) : null),
                string.Create(CultureInfo.InvariantCulture, $"{i + 1}  {model.Stations[i].Name}"),
                MapPanel.Area(served[i].Best * cell));
        }
    }

    private static void Counts(ServerPictureModel model, ImmutableArray<int> counts, double cell, MapPanel panel)
    {
        ReachScale scale = ReachScale.For(model.Theme);
        panel.Heading("Stations with 0 dB and more to spare", "area");
        panel.Gap(8);
        for (int count = Math.Min(MostSteps, counts.Length - 1); count > 0; count--)
        {
            bool isOpen = count == MostSteps && model.Stations.Length > MostSteps;
            int cells = isOpen ? counts.Skip(count).Sum() : counts[count];
            string text = string.Create(CultureInfo.InvariantCulture, $"{count} station{(count == 1 ? "" : "s")}{(isOpen ? " and more" : "")}");
            panel.Tall(new(scale.Of(count - 1)), text, count == 1 ? "nothing else reaches it if that one fails" : "", MapPanel.Area(cells * cell));
        }
    }

    private static string Plural(ReachDirection direction) => direction switch
    {
        ReachDirection.Hears => "hear",
        ReachDirection.Both => "link",
        _ => "are heard",
    };
}
