using System.Collections.Immutable;
using Mastwright.Network.Reach;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Reach;

/// <summary>The sheet that every map is drawn on: title, map, a panel beside it, a line on the method below.</summary>
internal sealed record MapSheet
{
    private const double MapPixels = 800;
    private const double Margin = 28;
    private const double PanelPixels = 320;
    private const double Top = 92;

    /// <summary>Where the map lies on the sheet, in pixels at scale 1.</summary>
    public static Box MapBox => new(Margin, Top, Margin + MapPixels, Top + MapPixels);

    /// <summary>Where the panel lies.</summary>
    public static Box PanelBox => new(MapBox.Right + 26, Top, MapBox.Right + 26 + PanelPixels, MapBox.Bottom);

    /// <summary>The title.</summary>
    public required string Title { get; init; }

    /// <summary>The line below it.</summary>
    public required string Radio { get; init; }

    /// <summary>The small line below that; empty for none.</summary>
    public string Details { get; init; } = "";

    /// <summary>How it was worked out.</summary>
    public required string Method { get; init; }

    /// <summary>Light or dark.</summary>
    public required Theme Theme { get; init; }

    /// <summary>Draws it.</summary>
    /// <param name="relief">The relief under the map.</param>
    /// <param name="image">The pixels of the map.</param>
    /// <param name="marks">What is marked on it.</param>
    /// <param name="panel">What stands in the panel.</param>
    public Drawing Draw(ReachRelief relief, PixelImage image, MapMarks marks, ImmutableArray<Shape> panel)
    {
        Palette palette = Palette.Of(Theme);
        double right = PanelBox.Right;
        string radio = TextRuler.Fit(Radio, right - Margin, 13.5);
        return new()
        {
            WidthPixels = (int)(right + Margin),
            HeightPixels = (int)(MapBox.Bottom + 44),
            Title = Title,
            Description = $"{Title}, {radio}. {Method}",
            Paper = palette.Paper,
            Shapes =
            [
                new GroupShape("header",
                [
                    new TextShape(new(Margin, 44), TextRuler.Fit(Title, right - Margin, 25, TextWeight.SemiBold), 25, palette.Ink) { Weight = TextWeight.SemiBold },
                    new TextShape(new(Margin, 68), radio, 13.5, palette.Ink),
                    new TextShape(new(Margin, 84), TextRuler.Fit(Details, MapPixels, 11.5), 11.5, palette.Muted),
                ]),
                new GroupShape("map", [new ImageShape(MapBox, image)]),
                ReachMapLayer.Draw(marks, ReachFrame.Of(MapBox, relief), palette),
                new GroupShape("panel", panel),
                new GroupShape("footer", [new TextShape(new(Margin, MapBox.Bottom + 24), TextRuler.Fit(Method, right - Margin, 11.5), 11.5, palette.Muted)]),
            ],
        };
    }
}
