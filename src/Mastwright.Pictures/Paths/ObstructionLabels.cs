using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Paths;

/// <summary>Words at what is in the way: where it is, how far it stands above the ray, in metres and in Fresnel radii.</summary>
internal static class ObstructionLabels
{
    private const int MostLabels = 4;

    /// <summary>The labels, the worst first; none lies over another, over a mark or over a taken place. A lesser one without room is left out.</summary>
    public static GroupShape Draw(PathPictureModel model, PathGeometry geometry, PathFrame frame, Palette palette, double textPixels, IEnumerable<Box> taken)
    {
        if (!geometry.HasRay)
        {
            return new("obstructions", []);
        }

        PathObstruction[] obstructions = [.. model.Obstructions.OrderByDescending(one => one.FresnelRadii).ThenBy(one => one.DistanceMetres).Take(MostLabels)];
        LabelRoom.Mark[] heads = [.. obstructions.Select(Head)];
        LabelRoom room = new(frame, geometry, taken, heads);
        List<Shape> marks = [];
        List<Shape> labels = [];
        for (int i = 0; i < obstructions.Length; i++)
        {
            bool bad = obstructions[i].FresnelRadii > -RadioLayer.WantedShare;
            Ink ink = bad ? palette.Blocked : palette.Muted;
            marks.AddRange(Measure(heads[i], new(bad ? palette.Ink : palette.Muted, 1.6)));

            string place = Wording.Place(obstructions[i]);
            string clearance = Wording.Clearance(obstructions[i]);
            double width = Math.Max(TextRuler.WidthPixels(place, textPixels, TextWeight.SemiBold), TextRuler.WidthPixels(clearance, textPixels)) + 12;
            if (room.Take(heads[i], width, (textPixels * 2.5) + 6, isFirst: i == 0, out (Spot From, Spot To) leader) is not Box box)
            {
                continue;
            }

            double middle = (box.Left + box.Right) / 2;
            labels.Add(new LineShape([leader.From, leader.To], new(ink, 1)));
            labels.Add(AreaShape.Of(box, new(palette.Paper.Veil(0.92)), new(ink, 1)));
            labels.Add(new TextShape(new(middle, box.Top + textPixels + 3), place, textPixels, bad ? palette.Blocked : palette.Ink) { Anchor = TextAnchor.Middle, Weight = TextWeight.SemiBold });
            labels.Add(new TextShape(new(middle, box.Top + (textPixels * 2.25) + 3), clearance, textPixels, palette.Ink) { Anchor = TextAnchor.Middle });
        }

        return new("obstructions", [.. marks, .. labels]);

        LabelRoom.Mark Head(PathObstruction obstruction)
        {
            double ray = geometry.RayMetres(obstruction.DistanceMetres);
            return new(frame.At(obstruction.DistanceMetres, ray + obstruction.AboveRayMetres), frame.At(obstruction.DistanceMetres, ray));
        }
    }

    /// <summary>A measuring line between the ray and the top of what is in the way.</summary>
    private static IEnumerable<Shape> Measure(LabelRoom.Mark mark, Stroke stroke)
    {
        (Spot head, Spot onRay) = (mark.Head, mark.OnRay);
        if (Math.Abs(head.Y - onRay.Y) > 3)
        {
            yield return new LineShape([head, onRay], stroke);
            yield return new LineShape([new(onRay.X - 4, onRay.Y), new(onRay.X + 4, onRay.Y)], stroke);
        }

        yield return new LineShape([new(head.X - 4, head.Y), new(head.X + 4, head.Y)], stroke);
    }
}
