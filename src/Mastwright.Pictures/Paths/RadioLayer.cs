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

    /// <summary>How far below its foot a mast's words begin where they would hide ground above it, in pixels.</summary>
    private const double BelowFootPixels = 12;

    /// <summary>The veil over what stands in the ray or in the wanted zone; drawn over the ground and under the lines.</summary>
    public static IEnumerable<GroupShape> DrawObstructed(PathGeometry geometry, PathFrame frame, Palette palette)
    {
        if (!geometry.HasRay)
        {
            yield break;
        }

        ImmutableArray<double> wanted = [.. Ray(geometry, -WantedShare)];
        ImmutableArray<double> intruding = [.. geometry.Top.Zip(geometry.Ray, Math.Min)];
        AreaShape[] near = [.. geometry.Known.SelectMany(known => Bands.Over(frame, known.Of(geometry.Distances), known.Of(intruding), known.Of(wanted)))
            .Select(outline => new AreaShape(outline, new(palette.Blocked.Veil(0.16), new(HatchKind.Rising, palette.Blocked.Veil(0.8)))))];
        AreaShape[] inTheWay = [.. geometry.Known.SelectMany(known => Bands.Over(frame, known.Of(geometry.Distances), known.Of(geometry.Top), known.Of(geometry.Ray)))
            .Select(outline => new AreaShape(outline, new(palette.Blocked.Veil(BlockedVeil)), new(palette.Blocked, 1.2)))];
        yield return new("stands-in-the-zone", [.. near], frame.Plot);
        yield return new("stands-in-the-ray", [.. inTheWay], frame.Plot);
    }

    /// <summary>Ray and zone.</summary>
    public static IEnumerable<GroupShape> DrawRay(PathGeometry geometry, PathFrame frame, Palette palette)
    {
        if (geometry is not { LeftAntennaMetres: { } leftMetres, RightAntennaMetres: { } rightMetres })
        {
            yield break;
        }

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
            [new LineShape([frame.At(0, leftMetres), frame.At(geometry.LengthMetres, rightMetres)], new(palette.Ray, 1.8))]);
    }

    /// <summary>
    /// A mast with its antenna at either end, and how tall it is; where its height or its ground is unknown, a mark at the ground with
    /// what is known in words, so that nothing stands at a height that nobody gave.
    /// </summary>
    public static GroupShape DrawAntennas(PathPictureModel model, PathGeometry geometry, PathFrame frame, Palette palette, double textPixels)
    {
        List<Shape> shapes = [];
        Add(0, geometry.Missing[0] ? null : model.GroundMetres[0], model.TransmitterHeightMetres, 1);
        Add(geometry.LengthMetres, geometry.Missing[^1] ? null : model.GroundMetres[^1], model.ReceiverHeightMetres, -1);
        return new("antennas", [.. shapes]);

        void Add(double distance, double? ground, double? height, int inwards)
        {
            Spot foot = ground is { } metres ? frame.At(distance, metres) : new(frame.X(distance), frame.Plot.Bottom);
            Spot head = foot;
            if (ground is { } known && height is { } tall)
            {
                head = frame.At(distance, known + tall);
                shapes.Add(new LineShape([foot, head], new(palette.Ray, 3)));
                shapes.Add(new AreaShape(VerdictMark.Disc(head, 4.5), new(palette.Paper), new(palette.Ray, 2)));
            }
            else if (ground is not null)
            {
                shapes.Add(new AreaShape([new(foot.X - 5, foot.Y), new(foot.X, foot.Y - 6), new(foot.X + 5, foot.Y)], new(palette.Paper), new(palette.Missing, 1.5)));
            }

            string words = Words(ground, height);
            if (ground is null && height is { } mast && TextRuler.WidthPixels(words, textPixels) + 24 > MissingPixels(distance))
            {
                words = Words(0, mast);
            }

            double near = head.X + (inwards * 12);
            double far = near + (inwards * TextRuler.WidthPixels(words, textPixels));
            double baseline = head.Y - 10;
            if (IsTaken(Math.Min(near, far) - 8, Math.Max(near, far) + 8, baseline))
            {
                baseline = Math.Min(foot.Y + BelowFootPixels + textPixels, frame.Plot.Bottom - 4);
            }

            Box plate = new Box(Math.Min(near, far), baseline - (textPixels * 0.82), Math.Max(near, far), baseline + (textPixels * 0.12)).Grown(2.5);
            shapes.Add(AreaShape.Of(plate, new(palette.Paper.Veil(0.85))));
            shapes.Add(new TextShape(new(near, baseline), words, textPixels, palette.Ink) { Anchor = inwards > 0 ? TextAnchor.Start : TextAnchor.End });
        }

        // Width of the stretch without data that reaches an end of the path.
        double MissingPixels(double end) =>
            model.Missing.Where(stretch => stretch.FromMetres <= end && stretch.ToMetres >= end).Max(stretch => frame.X(stretch.ToMetres) - frame.X(stretch.FromMetres));

        // Words over ground that rises from the mast would hide it; over an obstruction close by they would stand in the way of its label.
        bool IsTaken(double left, double right, double bottom) =>
            geometry.Distances.Where((distance, i) => !geometry.Missing[i] && frame.X(distance) > left && frame.X(distance) < right && frame.Y(geometry.Top[i]) < bottom).Any()
            || (geometry.HasRay && model.Obstructions.Any(obstruction => frame.X(obstruction.DistanceMetres) > left && frame.X(obstruction.DistanceMetres) < right));
    }

    private static string Words(double? groundMetres, double? heightMetres) => (groundMetres, heightMetres) switch
    {
        (_, null) => "height unknown",
        (null, { } tall) => $"{Wording.Metres(tall)} mast on unknown ground",
        (_, { } tall) => $"{Wording.Metres(tall)} mast",
    };

    private static ImmutableArray<Spot> Lens(PathGeometry geometry, PathFrame frame, double share) =>
    [
        .. frame.Curve(geometry.Distances, Ray(geometry, share)),
        .. frame.Curve(geometry.Distances, Ray(geometry, -share)).Reverse(),
    ];

    private static IEnumerable<double> Ray(PathGeometry geometry, double share) =>
        geometry.Ray.Zip(geometry.Fresnel, (ray, radius) => ray + (share * radius));
}
