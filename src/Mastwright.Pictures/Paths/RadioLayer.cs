using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Paths;

/// <summary>Ray, Fresnel zone, what stands in them, and the two antennas.</summary>
internal static class RadioLayer
{
    /// <summary>Share of the first Fresnel zone that is wanted clear: 0.6 of its radius (common practice).</summary>
    public const double WantedShare = 0.6;

    /// <summary>How far the colour of what blocks the ray hides the ground below it.</summary>
    public const double BlockedVeil = 0.68;

    /// <summary>The veil over what stands in the ray or in the wanted zone; drawn over the ground and under the lines.</summary>
    public static IEnumerable<GroupShape> DrawObstructed(PathGeometry geometry, PathFrame frame, Palette palette)
    {
        ImmutableArray<double> wanted = [.. Ray(geometry, -WantedShare)];
        ImmutableArray<double> intruding = [.. geometry.Top.Zip(geometry.Ray, Math.Min)];
        AreaShape[] near = [.. Bands.Over(frame, geometry.Distances, intruding, wanted)
            .Select(outline => new AreaShape(outline, new(palette.Blocked.Veil(0.16), new(HatchKind.Rising, palette.Blocked.Veil(0.8)))))];
        AreaShape[] inTheWay = [.. Bands.Over(frame, geometry.Distances, geometry.Top, geometry.Ray)
            .Select(outline => new AreaShape(outline, new(palette.Blocked.Veil(BlockedVeil)), new(palette.Blocked, 1.2)))];
        yield return new("stands-in-the-zone", [.. near], frame.Plot);
        yield return new("stands-in-the-ray", [.. inTheWay], frame.Plot);
    }

    /// <summary>Ray and zone.</summary>
    public static IEnumerable<GroupShape> DrawRay(PathGeometry geometry, PathFrame frame, Palette palette)
    {
        yield return new(
            "fresnel",
            [
                new AreaShape(Lens(geometry, frame, 1), new(palette.Fresnel.Veil(0.08))),
                new LineShape(frame.Curve(geometry.Distances, Ray(geometry, 1)), new(palette.Fresnel, 1.1)),
                new LineShape(frame.Curve(geometry.Distances, Ray(geometry, -1)), new(palette.Fresnel, 1.1)),
            ],
            frame.Plot);
        Stroke dashed = new(palette.Fresnel, 1.2) { Dashes = [6, 4] };
        yield return new(
            "fresnel-06",
            [
                new LineShape(frame.Curve(geometry.Distances, Ray(geometry, WantedShare)), dashed),
                new LineShape(frame.Curve(geometry.Distances, Ray(geometry, -WantedShare)), dashed),
            ],
            frame.Plot);
        yield return new(
            "ray",
            [new LineShape([frame.At(0, geometry.LeftAntennaMetres), frame.At(geometry.LengthMetres, geometry.RightAntennaMetres)], new(palette.Ray, 1.8))]);
    }

    /// <summary>A mast with its antenna at either end, and how tall it is.</summary>
    public static GroupShape DrawAntennas(PathPictureModel model, PathGeometry geometry, PathFrame frame, Palette palette, double textPixels)
    {
        List<Shape> shapes = [];
        Add(0, model.GroundMetres[0], model.TransmitterHeightMetres, 1);
        Add(geometry.LengthMetres, model.GroundMetres[^1], model.ReceiverHeightMetres, -1);
        return new("antennas", [.. shapes]);

        void Add(double distance, double ground, double height, int inwards)
        {
            Spot foot = frame.At(distance, ground);
            Spot head = frame.At(distance, ground + height);
            shapes.Add(new LineShape([foot, head], new(palette.Ray, 3)));
            shapes.Add(new AreaShape(VerdictMark.Disc(head, 4.5), new(palette.Paper), new(palette.Ray, 2)));
            string words = $"{Wording.Metres(height)} mast";
            double near = head.X + (inwards * 12);
            double far = near + (inwards * TextRuler.WidthPixels(words, textPixels));
            double baseline = head.Y - 10;
            Box plate = new Box(Math.Min(near, far), baseline - (textPixels * 0.82), Math.Max(near, far), baseline + (textPixels * 0.12)).Grown(2.5);
            shapes.Add(AreaShape.Of(plate, new(palette.Paper.Veil(0.85))));
            shapes.Add(new TextShape(new(near, baseline), words, textPixels, palette.Ink) { Anchor = inwards > 0 ? TextAnchor.Start : TextAnchor.End });
        }
    }

    private static ImmutableArray<Spot> Lens(PathGeometry geometry, PathFrame frame, double share) =>
    [
        .. frame.Curve(geometry.Distances, Ray(geometry, share)),
        .. frame.Curve(geometry.Distances, Ray(geometry, -share)).Reverse(),
    ];

    private static IEnumerable<double> Ray(PathGeometry geometry, double share) =>
        geometry.Ray.Zip(geometry.Fresnel, (ray, radius) => ray + (share * radius));
}
