using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Reach;

/// <summary>The map of where a station is heard, or what it hears.</summary>
public static class ReachPicture
{
    /// <summary>Points of relief to ask for: two a pixel, so that the map stays sharp at twice the size.</summary>
    public const int ReliefSide = 2 * MapPixels;

    /// <summary>Rim around the radius to ask for, as a share of it.</summary>
    public const double RimShare = 0.05;

    private const int MapPixels = 800;
    private const double Margin = 28;
    private const double PanelPixels = 320;
    private const double Top = 92;

    /// <summary>Where the map lies on the sheet, in pixels at scale 1: for a world file.</summary>
    public static Box MapBox => new(Margin, Top, Margin + MapPixels, Top + MapPixels);

    /// <summary>Draws the picture.</summary>
    /// <exception cref="ArgumentException">Relief and map are not of one zone.</exception>
    public static Drawing Draw(ReachPictureModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (model.Relief.Frame.UtmZone != model.Map.Field.Frame.UtmZone || model.Relief.Frame.IsNorth != model.Map.Field.Frame.IsNorth)
        {
            throw new ArgumentException("Relief and map are of one UTM zone.", nameof(model));
        }

        Palette palette = Palette.Of(Theme.Light);
        ReachFrame frame = ReachFrame.Of(MapBox, model.Map, model.Relief);
        double right = MapBox.Right + 26 + PanelPixels;
        string title = Title(model);
        string radio = TextRuler.Fit($"by {model.ReceiverName} · {model.RadioText}", right - Margin, 13.5);
        return new()
        {
            WidthPixels = (int)(right + Margin),
            HeightPixels = (int)(MapBox.Bottom + 44),
            Title = title,
            Description = $"{title}, {radio}. {model.MethodText}",
            Paper = palette.Paper,
            Shapes =
            [
                new GroupShape("header",
                [
                    new TextShape(new(Margin, 44), TextRuler.Fit(title, right - Margin, 25, TextWeight.SemiBold), 25, palette.Ink) { Weight = TextWeight.SemiBold },
                    new TextShape(new(Margin, 68), radio, 13.5, palette.Ink),
                    new TextShape(new(Margin, 84), TextRuler.Fit(model.FitOutName, MapPixels, 11.5), 11.5, palette.Muted),
                ]),
                new GroupShape("map", [new ImageShape(MapBox, ReachImage.Draw(model.Map, model.Direction, model.Relief))]),
                ReachMapLayer.Draw(model, frame, palette),
                ReachPanel.Draw(model, palette, new(MapBox.Right + 26, Top, right, MapBox.Bottom)),
                new GroupShape("footer", [new TextShape(new(Margin, MapBox.Bottom + 24), TextRuler.Fit(model.MethodText, right - Margin, 11.5), 11.5, palette.Muted)]),
            ],
        };
    }

    private static string Title(ReachPictureModel model) => model.Direction switch
    {
        ReachDirection.Hears => $"What {model.StationName} hears",
        ReachDirection.Both => $"Where {model.StationName} is heard and hears",
        _ => $"Where {model.StationName} is heard",
    };
}
