using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Ground;

namespace Mastwright.Pictures.Paths;

/// <summary>The picture of a path: ground and cover over the curved earth, the straight ray, its Fresnel zone, and what is in the way.</summary>
public static class PathPicture
{
    private const double LeftRoom = 62;
    private const double Margin = 18;
    private const double LeastPlotPixels = 130;

    /// <summary>Draws the picture of a path.</summary>
    /// <param name="model">What it shows.</param>
    /// <param name="size">How large.</param>
    /// <param name="theme">Light or dark.</param>
    /// <exception cref="ArgumentException">The model holds arrays of unlike length, a number that is not finite or out of its range, or a mark outside the path.</exception>
    /// <exception cref="InvalidOperationException">The fonts are missing from the program.</exception>
    public static Drawing Draw(PathPictureModel model, PictureSize size, Theme theme)
    {
        PathPictureDoor.Check(model);
        ArgumentOutOfRangeException.ThrowIfZero(size.WidthPixels, nameof(size));
        Palette palette = Palette.Of(theme);
        TypeSizes type = TypeSizes.For(size);
        double right = size.WidthPixels - Margin;
        PathGeometry geometry = PathGeometry.Of(model, (int)(right - LeftRoom));

        GroupShape header = PathHeader.Draw(model, geometry, type, palette, new(Margin, Margin - 4, right, size.HeightPixels), out double headerBottom);
        ImmutableArray<LegendEntry> legend = PathLegend.Of(model, geometry, palette);
        double strip = model.Zones.IsDefaultOrEmpty ? 0 : PathAxes.StripPixels;
        double axisHeight = strip + (type.Small * 2) + 13;
        int noteLines = PathFooter.MostNoteLines + 1;
        double footerTop;
        Box plot;
        do
        {
            // The plot comes first: on a small sheet notes give way to it (the description holds them all).
            noteLines--;
            _ = PathFooter.Draw(model, legend, type, palette, noteLines, new(Margin, 0, right, 0), out double footerHeight);
            footerTop = size.HeightPixels - footerHeight - 6;
            plot = new(LeftRoom, headerBottom + 4, right, footerTop - axisHeight);
        }
        while (plot.Height < LeastPlotPixels && noteLines > 0);

        bool labelled = geometry.HasRay && model.Obstructions.Any(obstruction => obstruction.AboveRayMetres > 0);
        PathFrame frame = PathFrame.Around(plot, geometry, model.LowKFactor, labelled ? (type.Small * 2.5) + 20 : type.Small + 14);

        string scale = ScaleSentence(model, geometry, frame);
        GroupShape antennas = RadioLayer.DrawAntennas(model, geometry, frame, palette, type.Small);
        GroupShape missing = MissingLayer.Draw(model, frame, palette, type.Small);
        IEnumerable<Box> taken = antennas.Members.Concat(missing.Members).OfType<TextShape>().Select(BoxOf);
        List<Shape> shapes =
        [
            .. GroundLayer.Draw(model, geometry, frame, palette),
            PathAxes.DrawHeightLines(model, geometry, frame, palette),
            .. RadioLayer.DrawObstructed(geometry, frame, palette),
            .. RadioLayer.DrawRay(geometry, frame, palette),
            missing,
            PathAxes.Draw(model, frame, palette, type.Small, plot.Bottom + strip, plot.Width - TextRuler.WidthPixels(scale, type.Small) - 24),
            antennas,
            ObstructionLabels.Draw(model, geometry, frame, palette, type.Small, taken),
            header,
            PathFooter.Draw(model, legend, type, palette, noteLines, new(Margin, footerTop, right, size.HeightPixels), out _),
            new GroupShape("scale", [new TextShape(new(plot.Right, plot.Bottom + strip + (type.Small * 2) + 11), scale, type.Small, palette.Muted) { Anchor = TextAnchor.End }]),
        ];
        if (strip > 0)
        {
            shapes.Insert(0, PathAxes.DrawZones(model, geometry, frame, palette));
        }

        return new Drawing
        {
            WidthPixels = size.WidthPixels,
            HeightPixels = size.HeightPixels,
            Title = $"Path from {model.TransmitterName} to {model.ReceiverName}: {VerdictMark.Sentence(model.Verdict, model.MarginDb, model.MarginLowDb, model.MarginHighDb)}",
            Description = PathDescription.Of(model, geometry),
            Paper = palette.Paper,
            Shapes = [.. shapes],
        };
    }

    /// <summary>How the picture is drawn: the bend of the ground, and how much taller heights are than distances.</summary>
    private static string ScaleSentence(PathPictureModel model, PathGeometry geometry, PathFrame frame)
    {
        double bulge = geometry.BulgeMetres(geometry.LengthMetres / 2, model.KFactor);
        string bend = bulge < 0.05 ? "under 0.1 m" : Wording.Distance(bulge);
        return $"ground bent for k = {Wording.KFactor(model.KFactor)}, {bend} at mid-path · heights drawn {Wording.Times(frame.Exaggeration)} × distances";
    }

    private static Box BoxOf(TextShape text)
    {
        double width = TextRuler.WidthPixels(text.Text, text.SizePixels, text.Weight);
        if (text.RotationDegrees != 0)
        {
            // Words that run upwards from their start.
            return new(text.At.X - text.SizePixels, text.At.Y - width - 4, text.At.X + 4, text.At.Y + 4);
        }

        double left = text.At.X - (text.Anchor switch { TextAnchor.End => width, TextAnchor.Middle => width / 2, _ => 0 });
        return new(left - 4, text.At.Y - text.SizePixels, left + width + 4, text.At.Y + 4);
    }
}
