using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Paths;

/// <summary>Stretches without ground data: nothing else is drawn of the ground there.</summary>
internal static class MissingLayer
{
    /// <summary>Words on a stretch without data.</summary>
    public const string Words = "no ground data";

    /// <summary>A band from top to bottom for each stretch.</summary>
    public static GroupShape Draw(PathPictureModel model, PathFrame frame, Palette palette, double textPixels)
    {
        List<Shape> shapes = [];
        foreach (PathStretch stretch in model.Missing)
        {
            double left = frame.X(stretch.FromMetres);
            double right = frame.X(stretch.ToMetres);
            Fill fill = new(palette.Paper.Veil(0.55), new(HatchKind.Crossed, palette.Missing.Veil(0.7)));
            shapes.Add(AreaShape.Of(new(left, frame.Plot.Top, right, frame.Plot.Bottom), fill, new(palette.Missing, 1)));
            if (right - left < textPixels * 1.5)
            {
                // Too narrow for words; the legend has them.
                continue;
            }

            // At an end of the path the lowest line is left to the words of the mast.
            bool reachesEnd = stretch.FromMetres <= 0 || stretch.ToMetres >= frame.LengthMetres;
            double baseline = frame.Plot.Bottom - 10 - (reachesEnd ? (textPixels * 1.5) + 20 : 0);
            double middle = (left + right) / 2;
            bool across = TextRuler.WidthPixels(Words, textPixels, TextWeight.SemiBold) + 8 < right - left;
            shapes.Add(new TextShape(new(across ? middle : middle + (textPixels * 0.35), baseline), Words, textPixels, palette.Ink)
            {
                Anchor = across ? TextAnchor.Middle : TextAnchor.Start,
                RotationDegrees = across ? 0 : -90,
                Weight = TextWeight.SemiBold,
                Halo = palette.Paper,
            });
        }

        return new("missing", [.. shapes]);
    }
}
