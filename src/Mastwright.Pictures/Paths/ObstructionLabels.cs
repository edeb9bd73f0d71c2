using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Paths;

/// <summary>Words at what is in the way: where it is, how far it stands above the ray, in metres and in Fresnel radii.</summary>
internal static class ObstructionLabels
{
    private const int MostLabels = 4;

    /// <summary>The labels, the worst first; none lies over another or over a taken place.</summary>
    public static GroupShape Draw(PathPictureModel model, PathGeometry geometry, PathFrame frame, Palette palette, double textPixels, IEnumerable<Box> taken)
    {
        List<Box> full = [.. taken];
        List<Shape> marks = [];
        List<Shape> labels = [];
        foreach (PathObstruction obstruction in model.Obstructions.OrderByDescending(one => one.FresnelRadii).ThenBy(one => one.DistanceMetres).Take(MostLabels))
        {
            bool bad = obstruction.FresnelRadii > -RadioLayer.WantedShare;
            Ink ink = bad ? palette.Blocked : palette.Muted;
            double ray = geometry.RayMetres(obstruction.DistanceMetres);
            Spot head = frame.At(obstruction.DistanceMetres, ray + obstruction.AboveRayMetres);
            Spot onRay = frame.At(obstruction.DistanceMetres, ray);
            marks.AddRange(Measure(head, onRay, new(bad ? palette.Ink : palette.Muted, 1.6)));

            string place = Wording.Place(obstruction);
            string clearance = Wording.Clearance(obstruction);
            double width = Math.Max(TextRuler.WidthPixels(place, textPixels, TextWeight.SemiBold), TextRuler.WidthPixels(clearance, textPixels)) + 12;
            if (Room(frame.Plot, full, new(frame, geometry), head, onRay, width, (textPixels * 2.5) + 6) is not Box box)
            {
                continue;
            }

            full.Add(box.Grown(3));
            double middle = (box.Left + box.Right) / 2;
            Spot near = new(Math.Clamp(head.X, box.Left + 6, box.Right - 6), box.Bottom <= head.Y ? box.Bottom : box.Top);
            labels.Add(new LineShape([near, head], new(ink, 1)));
            labels.Add(AreaShape.Of(box, new(palette.Paper.Veil(0.92)), new(ink, 1)));
            labels.Add(new TextShape(new(middle, box.Top + textPixels + 3), place, textPixels, bad ? palette.Blocked : palette.Ink) { Anchor = TextAnchor.Middle, Weight = TextWeight.SemiBold });
            labels.Add(new TextShape(new(middle, box.Top + (textPixels * 2.25) + 3), clearance, textPixels, palette.Ink) { Anchor = TextAnchor.Middle });
        }

        return new("obstructions", [.. marks, .. labels]);
    }

    /// <summary>A measuring line between the ray and the top of what is in the way.</summary>
    private static IEnumerable<Shape> Measure(Spot head, Spot onRay, Stroke stroke)
    {
        if (Math.Abs(head.Y - onRay.Y) > 3)
        {
            yield return new LineShape([head, onRay], stroke);
            yield return new LineShape([new(onRay.X - 4, onRay.Y), new(onRay.X + 4, onRay.Y)], stroke);
        }

        yield return new LineShape([new(head.X - 4, head.Y), new(head.X + 4, head.Y)], stroke);
    }

    /// <summary>
    /// A free place for a label, near the marks and hiding little: above the higher mark or below the lower one, and somewhat to
    /// the side where that leaves more of the ground to be seen.
    /// </summary>
    private static Box? Room(Box plot, List<Box> full, FrameCurves curves, Spot head, Spot onRay, double width, double height)
    {
        double above = Math.Min(head.Y, onRay.Y) - 10;
        double below = Math.Max(head.Y, onRay.Y) + 12;
        double wrongSide = 30;
        double leastCost = double.MaxValue;
        Box? best = null;
        foreach (double aside in (ReadOnlySpan<double>)[0, -0.42, 0.42])
        {
            double left = Math.Clamp(head.X - (width / 2) + (aside * width), plot.Left + 4, Math.Max(plot.Left + 4, plot.Right - width - 4));
            for (double away = 0; away < plot.Height; away += 6)
            {
                Try(new(left, above - away - height, left + width, above - away), away + (head.Y > onRay.Y ? wrongSide : 0), aside);
                Try(new(left, below + away, left + width, below + away + height), away + (head.Y > onRay.Y ? 0 : wrongSide), aside);
            }
        }

        return best;

        void Try(Box box, double away, double aside)
        {
            double cost = away + Math.Abs(aside * 20) + (60 * curves.ShareHiddenBy(box));
            if (cost < leastCost && box.Top >= plot.Top && box.Bottom <= plot.Bottom && !full.Exists(box.Overlaps))
            {
                leastCost = cost;
                best = box;
            }
        }
    }

    /// <summary>The curves that a label should leave in sight.</summary>
    private sealed record FrameCurves(PathFrame Frame, PathGeometry Geometry)
    {
        /// <summary>Over which share of its width a box hides the top of the ground or the ray.</summary>
        public double ShareHiddenBy(Box box)
        {
            int across = 0;
            int hidden = 0;
            for (int i = 0; i < Geometry.Distances.Length; i++)
            {
                double x = Frame.X(Geometry.Distances[i]);
                if (x >= box.Left && x <= box.Right)
                {
                    across++;
                    hidden += Inside(Geometry.Top[i]) || Inside(Geometry.Ray[i]) ? 1 : 0;
                }
            }

            return across == 0 ? 0 : (double)hidden / across;

            bool Inside(double metres) => Frame.Y(metres) is double y && y > box.Top && y < box.Bottom;
        }
    }
}
