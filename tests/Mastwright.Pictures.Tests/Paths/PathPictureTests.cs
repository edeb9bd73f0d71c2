using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Pictures.Paths;
using Mastwright.Pictures.Writers;

namespace Mastwright.Pictures.Tests.Paths;

public sealed class PathPictureTests
{
    /// <summary>Curves are thinned to within 0.08 pixels.</summary>
    private const double PixelTolerance = 0.1;

    public static TheoryData<string, int, int, Theme> EveryPicture
    {
        get
        {
            TheoryData<string, int, int, Theme> all = [];
            foreach (string name in Models.Keys)
            {
                foreach (Theme theme in Enum.GetValues<Theme>())
                {
                    all.Add(name, 1200, 520, theme);
                    all.Add(name, 800, 400, theme);
                    all.Add(name, 640, 360, theme);
                }
            }

            return all;
        }
    }

    private static Dictionary<string, PathPictureModel> Models { get; } = new(StringComparer.Ordinal)
    {
        ["sea"] = SkerrinPaths.ClearSea,
        ["ridge"] = SkerrinPaths.RidgeInTheWay,
        ["short"] = SkerrinPaths.ShortHop,
        ["wood"] = SkerrinPaths.Woodland,
        ["long"] = SkerrinPaths.VeryLong,
        ["crowded"] = SkerrinPaths.Crowded,
        ["no-height"] = SkerrinPaths.NoHeight,
        ["no-ground"] = SkerrinPaths.NoGround,
    };

    [Theory, MemberData(nameof(EveryPicture))]
    public void Every_text_stands_on_the_sheet(string name, int width, int height, Theme theme)
    {
        Drawing drawing = PathPicture.Draw(Models[name], new(width, height), theme);
        foreach (TextShape text in drawing.Texts().Where(text => text.RotationDegrees == 0))
        {
            double wide = TextRuler.WidthPixels(text.Text, text.SizePixels, text.Weight);
            double left = text.Anchor switch { TextAnchor.Middle => text.At.X - (wide / 2), TextAnchor.End => text.At.X - wide, _ => text.At.X };
            Assert.True(left >= 0 && left + wide <= width && text.At.Y >= text.SizePixels * 0.7 && text.At.Y <= height - 2, $"'{text.Text}' at {text.At}");
        }
    }

    [Theory, MemberData(nameof(EveryPicture))]
    public void The_verdict_is_a_word_and_a_shape(string name, int width, int height, Theme theme)
    {
        PathPictureModel model = Models[name];
        Drawing drawing = PathPicture.Draw(model, new(width, height), theme);
        string word = VerdictMark.Word(model.Verdict);
        Assert.Contains(drawing.Texts(), text => text.Text.StartsWith(word, StringComparison.Ordinal) && text.Weight == TextWeight.SemiBold);
        Assert.NotEmpty(drawing.Group($"verdict-{word}")!.Members);
    }

    [Theory, MemberData(nameof(EveryPicture))]
    public void Obstruction_labels_lie_over_nothing_of_each_other(string name, int width, int height, Theme theme)
    {
        GroupShape group = PathPicture.Draw(Models[name], new(width, height), theme).Group("obstructions")!;
        Box[] boxes = [.. group.Members.OfType<AreaShape>().Select(Around)];
        Assert.InRange(boxes.Length, name is "no-height" or "no-ground" ? 0 : Math.Min(1, Models[name].Obstructions.Length), 4);
        for (int i = 0; i < boxes.Length; i++)
        {
            Assert.DoesNotContain(boxes[(i + 1)..], boxes[i].Overlaps);
        }
    }

    [Theory, MemberData(nameof(EveryPicture))]
    public void No_text_lies_over_another(string name, int width, int height, Theme theme)
    {
        Drawing drawing = PathPicture.Draw(Models[name], new(width, height), theme);
        (string Words, Box Box)[] boxes = [.. drawing.Texts().Where(text => text.RotationDegrees == 0).Select(text => (text.Text, BoxOf(text)))];
        for (int i = 0; i < boxes.Length; i++)
        {
            foreach ((string words, Box box) in boxes[(i + 1)..])
            {
                Assert.False(boxes[i].Box.Overlaps(box), $"'{boxes[i].Words}' and '{words}'");
            }
        }
    }

    [Theory, MemberData(nameof(EveryPicture))]
    public void The_plot_keeps_a_fair_share_of_the_sheet(string name, int width, int height, Theme theme)
    {
        Box plot = PathPicture.Draw(Models[name], new(width, height), theme).Group("ground")!.Clip!.Value;
        Assert.InRange(plot.Height, height * 0.25, height);
    }

    [Fact]
    public void The_ray_runs_straight_from_antenna_to_antenna()
    {
        (Drawing drawing, PathFrame frame) = Drawn(SkerrinPaths.ClearSea);
        LineShape ray = Assert.IsType<LineShape>(Assert.Single(drawing.Group("ray")!.Members));
        Assert.Equal(2, ray.Points.Length);

        // 34 m of cliff and a 6 m mast; 38 m of stack and a 4 m mast: the model's own numbers.
        Near(frame.At(0, 40), ray.Points[0]);
        Near(frame.At(9_100, 42), ray.Points[1]);
    }

    [Fact]
    public void The_sea_at_mid_path_is_raised_by_the_bulge_of_the_effective_earth()
    {
        // d1·d2/(2·k·a) with d1 = d2 = 20 km, k = 4/3, a = 6371 km: 4e8 / 16.989e6 = 23.544 m (worked by hand).
        PathPictureModel sea = SkerrinPaths.Path("Ferry House", "Gannet Stack", 40_000, 401, _ => 0, _ => (CoverKind.Water, 0));
        (Drawing drawing, PathFrame frame) = Drawn(sea);
        LineShape ground = Assert.IsType<LineShape>(Assert.Single(drawing.Group("ground-line")!.Members));
        Spot top = ground.Points.MinBy(point => point.Y);
        Assert.Equal(frame.X(20_000), top.X, frame.Plot.Width * 0.03);
        Assert.Equal(frame.Y(23.544), top.Y, PixelTolerance);
    }

    [Fact]
    public void The_low_k_ground_rises_higher_by_the_ratio_of_the_factors()
    {
        PathPictureModel sea = SkerrinPaths.Path("Ferry House", "Gannet Stack", 40_000, 401, _ => 0, _ => (CoverKind.Water, 0)) with { LowKFactor = 2.0 / 3 };
        (Drawing drawing, PathFrame frame) = Drawn(sea);
        LineShape line = Assert.IsType<LineShape>(Assert.Single(drawing.Group("ground-low-k")!.Members));
        Assert.Equal(frame.Y(2 * 23.544), line.Points.Min(point => point.Y), PixelTolerance);
    }

    [Fact]
    public void The_first_Fresnel_zone_has_its_radius_at_mid_path()
    {
        // √(λ·d/4): λ = 299.792458/868 m = 0.345383 m, d = 40 km → 58.769 m (worked by hand; Rec. ITU-R P.526).
        PathPictureModel sea = SkerrinPaths.Path("Ferry House", "Gannet Stack", 40_000, 401, _ => 0, _ => (CoverKind.Water, 0));
        (Drawing drawing, PathFrame frame) = Drawn(sea);
        LineShape[] edges = [.. drawing.Group("fresnel")!.Members.OfType<LineShape>()];
        Assert.Equal(frame.Y(10 + 58.769), edges[0].Points.Min(point => point.Y), PixelTolerance);
        Assert.Equal(frame.Y(10 - 58.769), edges[1].Points.Max(point => point.Y), PixelTolerance);
        LineShape[] inner = [.. drawing.Group("fresnel-06")!.Members.OfType<LineShape>()];
        Assert.Equal(frame.Y(10 + (0.6 * 58.769)), inner[0].Points.Min(point => point.Y), PixelTolerance);
    }

    [Fact]
    public void What_blocks_the_ray_is_shaded_exactly_from_the_ray_upwards()
    {
        // A wall 30 m high from 4.9 km to 5.1 km on flat ground, antennas at 10 m; k so large that the earth is flat.
        PathPictureModel wall = SkerrinPaths.Path("Creamery", "Wind Shed", 10_000, 1_001, distance => Math.Max(0, 30 - (Math.Abs(distance - 5_000) * 0.3)), _ => (CoverKind.None, 0)) with { KFactor = 1e9 };
        (Drawing drawing, PathFrame frame) = Drawn(wall);
        AreaShape area = Assert.IsType<AreaShape>(Assert.Single(drawing.Group("stands-in-the-ray")!.Members));
        Box box = Around(area);
        Assert.Equal(frame.Y(30), box.Top, PixelTolerance);
        Assert.Equal(frame.Y(10), box.Bottom, PixelTolerance);

        // 30 − 0.3·x = 10 where x = 66.67 m either side.
        Assert.Equal(frame.X(5_000 - 66.667), box.Left, 0.2);
        Assert.Equal(frame.X(5_000 + 66.667), box.Right, 0.2);
    }

    [Fact]
    public void A_clear_path_shades_nothing()
    {
        Drawing drawing = PathPicture.Draw(SkerrinPaths.ClearSea, PictureSize.Wide, Theme.Light);
        Assert.Empty(drawing.Group("stands-in-the-ray")!.Members);
        Assert.Empty(drawing.Group("stands-in-the-zone")!.Members);
        Assert.DoesNotContain(drawing.Texts(), text => text.Text == "blocks the ray");
    }

    [Fact]
    public void Summits_survive_when_a_profile_has_more_points_than_the_plot_has_columns()
    {
        // One point of 20 000 stands up: it must still be drawn at its full height.
        PathPictureModel spike = SkerrinPaths.Path("Creamery", "Wind Shed", 100_000, 20_001, distance => Math.Abs(distance - 37_005) < 1 ? 250 : 5, _ => (CoverKind.None, 0)) with { KFactor = 1e9 };
        (Drawing drawing, PathFrame frame) = Drawn(spike);
        LineShape ground = Assert.IsType<LineShape>(Assert.Single(drawing.Group("ground-line")!.Members));
        Spot top = ground.Points.MinBy(point => point.Y);
        Near(frame.At(37_005, 250), top);
    }

    [Fact]
    public void Every_cover_and_every_stretch_without_data_is_drawn_and_named()
    {
        Drawing drawing = PathPicture.Draw(SkerrinPaths.Woodland, PictureSize.Wide, Theme.Light);
        foreach (string part in (string[])["cover-woodland", "cover-buildings", "cover-pasture", "cover-other-cover"])
        {
            Assert.NotEmpty(drawing.Group(part)!.Members);
        }

        string[] words = [.. drawing.Texts().Select(text => text.Text)];
        Assert.Contains("woodland", words);
        Assert.Contains("buildings", words);

        // On the stretch, in the strip of zones, and in the legend.
        Assert.Equal(3, words.Count(word => word == "no ground data"));
        Assert.NotEmpty(drawing.Group("missing")!.Members);
    }

    [Fact]
    public void Obstructions_are_labelled_in_metres_and_in_Fresnel_radii()
    {
        string[] words = [.. PathPicture.Draw(SkerrinPaths.RidgeInTheWay, PictureSize.Wide, Theme.Light).Texts().Select(text => text.Text)];
        Assert.Contains("The Combs, 9.8 km", words);
        Assert.Contains("634 m above the ray (15.9 Fresnel radii)", words);
        Assert.Contains("Ferry House → Lantern Bay: −23.4 dB, fails", words);
    }

    [Fact]
    public void Length_and_height_of_the_path_never_break_the_picture() =>
        Gen.Select(Gen.Double[50, 200_000], Gen.Double[-10, 4_000], Gen.Double[-10, 4_000], Gen.Int[2, 3_000], Gen.Double[0, 60], Gen.Double[0.3, 5]).Sample(
            (length, low, high, count, mast, k) =>
            {
                PathPictureModel model = SkerrinPaths.Path("Ferry House", "Lantern Bay", length, count, distance => low + ((high - low) * Math.Pow(Math.Sin(distance / length * 7), 2)), distance => ((CoverKind)((int)(distance / length * 11) % 6), distance / length * 20)) with
                {
                    TransmitterHeightMetres = mast,
                    ReceiverHeightMetres = mast / 2,
                    KFactor = k,
                };
                Drawing drawing = PathPicture.Draw(model, PictureSize.Small, Theme.Dark);
                string svg = SvgWriter.Write(drawing);
                return svg.Length > 10_000 && drawing.Texts().Count() > 15;
            },
            iter: 60);

    [Theory, MemberData(nameof(EveryPicture))]
    public void However_long_the_names_each_direction_ends_in_its_verdict(string name, int width, int height, Theme theme)
    {
        TextShape[] lines = [.. PathPicture.Draw(Models[name], new(width, height), theme).Group("footer")!.Members.OfType<TextShape>().Where(text => text.Weight == TextWeight.SemiBold)];
        Assert.Equal(Models[name].Directions.Length, lines.Length);
        foreach ((TextShape line, PathDirection direction) in lines.Zip(Models[name].Directions))
        {
            Assert.EndsWith(VerdictMark.Word(direction.Verdict), line.Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_model_that_cannot_be_drawn_is_refused()
    {
        PathPictureModel good = SkerrinPaths.ShortHop;
        PathPictureModel[] wrong =
        [
            good with { DistancesMetres = [0] },
            good with { DistancesMetres = good.DistancesMetres.SetItem(3, 0) },
            good with { DistancesMetres = good.DistancesMetres.SetItem(0, 1) },
            good with { GroundMetres = good.GroundMetres.RemoveAt(0) },
            good with { GroundMetres = good.GroundMetres.SetItem(2, double.NaN) },
            good with { CoverHeightMetres = good.CoverHeightMetres.SetItem(2, -1) },
            good with { CoverKinds = [CoverKind.Grass] },
            good with { TransmitterHeightMetres = -1 },
            good with { FrequencyHz = 0 },
            good with { KFactor = double.PositiveInfinity },
            good with { LowKFactor = 0 },
            good with { TransmitterName = " " },
            good with { MarginDb = double.NaN },
            good with { MarginLowDb = 1 },
            good with { MarginLowDb = 2, MarginHighDb = 1 },
            good with { Directions = [new("a", "b", 1, Verdict.Ok, 2, 1)] },
            good with { Missing = [new(50, 70)] },
            good with { Obstructions = [new(61, 0, 0)] },
            good with { Obstructions = default },
            good with { Directions = [new("a", "b", double.NaN, Verdict.Ok)] },
        ];
        Assert.All(wrong, model => Assert.Throws<ArgumentException>(() => PathPicture.Draw(model, PictureSize.Wide, Theme.Light)));
        Assert.Throws<ArgumentOutOfRangeException>(() => PathPicture.Draw(good, default, Theme.Light));
    }

    [Fact]
    public void The_description_says_what_the_picture_shows()
    {
        Drawing drawing = PathPicture.Draw(SkerrinPaths.RidgeInTheWay, PictureSize.Wide, Theme.Light);
        Assert.Equal("Path from Ferry House to Lantern Bay: fails: 23.4 dB short", drawing.Title);
        Assert.Contains("The Combs, 9.8 km: 634 m above the ray (15.9 Fresnel radii).", drawing.Description, StringComparison.Ordinal);
    }

    private static (Drawing Drawing, PathFrame Frame) Drawn(PathPictureModel model)
    {
        Drawing drawing = PathPicture.Draw(model, PictureSize.Wide, Theme.Light);
        PathGeometry geometry = PathGeometry.Of(model, 1_120);
        LineShape ray = Assert.IsType<LineShape>(Assert.Single(drawing.Group("ray")!.Members));
        Box plot = drawing.Group("ground")!.Clip!.Value;

        // The scale is read off two height numbers of the axis, not taken from the code that drew them.
        (double Height, double Y)[] ticks = [.. drawing.Group("axes")!.Members.OfType<TextShape>()
            .Where(text => text.Anchor == TextAnchor.End && text.RotationDegrees == 0)
            .Select(text => (double.Parse(text.Text.Replace('−', '-'), System.Globalization.CultureInfo.InvariantCulture), text.At.Y - (text.SizePixels * 0.36)))];
        double metresPerPixel = (ticks[^1].Height - ticks[0].Height) / (ticks[0].Y - ticks[^1].Y);
        double low = ticks[0].Height - ((plot.Bottom - ticks[0].Y) * metresPerPixel);
        Assert.Equal(plot.Left, ray.Points[0].X, PixelTolerance);
        return (drawing, new(plot, geometry.LengthMetres, low, low + (plot.Height * metresPerPixel)));
    }

    /// <summary>The box of a line's letters, from their tops to the baseline.</summary>
    private static Box BoxOf(TextShape text)
    {
        double wide = TextRuler.WidthPixels(text.Text, text.SizePixels, text.Weight);
        double left = text.Anchor switch { TextAnchor.Middle => text.At.X - (wide / 2), TextAnchor.End => text.At.X - wide, _ => text.At.X };
        return new(left, text.At.Y - (text.SizePixels * 0.72), left + wide, text.At.Y);
    }

    private static Box Around(AreaShape area) => new(
        area.Outline.Min(point => point.X), area.Outline.Min(point => point.Y), area.Outline.Max(point => point.X), area.Outline.Max(point => point.Y));

    private static void Near(Spot expected, Spot actual)
    {
        Assert.Equal(expected.X, actual.X, PixelTolerance);
        Assert.Equal(expected.Y, actual.Y, PixelTolerance);
    }
}
