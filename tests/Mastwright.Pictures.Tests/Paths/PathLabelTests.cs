using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Pictures.Paths;

namespace Mastwright.Pictures.Tests.Paths;

/// <summary>Where the words of a path picture stand: near what they speak of, and over nothing.</summary>
public sealed class PathLabelTests
{
    public static TheoryData<string, int, int> EveryLabelled
    {
        get
        {
            TheoryData<string, int, int> all = [];
            foreach (string name in Models.Keys)
            {
                all.Add(name, 1200, 520);
                all.Add(name, 800, 400);
                all.Add(name, 640, 360);
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
        ["crowded"] = SkerrinPaths.Crowded,
        ["near-the-mast"] = SkerrinPaths.RidgeInTheWay with { Obstructions = [new(9_800, 633.5, 15.9, "The Combs"), new(250, 2.3, 0.25), new(150, 1.2, 0.17)] },
    };

    [Theory, MemberData(nameof(EveryLabelled))]
    public void No_label_hides_a_mark_and_no_line_runs_through_words(string name, int width, int height)
    {
        Drawing drawing = PathPicture.Draw(Models[name], new(width, height), Theme.Light);
        Shape[] members = [.. drawing.Group("obstructions")!.Members];
        int firstBox = Array.FindIndex(members, shape => shape is AreaShape);
        Box[] boxes = [.. members.OfType<AreaShape>().Select(area => Around(area.Outline))];
        Box[] marks = [.. members[..(firstBox - 1)].OfType<LineShape>().Select(line => Around(line.Points).Grown(1))];
        Assert.NotEmpty(marks);
        Assert.All(boxes, box => Assert.DoesNotContain(marks, box.Overlaps));

        LineShape[] leaders = [.. members[(firstBox - 1)..].OfType<LineShape>()];
        Assert.Equal(boxes.Length, leaders.Length);
        Box[] masts = [.. drawing.Group("antennas")!.Members.OfType<TextShape>().Select(BoxOf)];
        for (int i = 0; i < leaders.Length; i++)
        {
            Box[] others = [.. masts, .. boxes[..i], .. boxes[(i + 1)..]];
            Assert.All(Along(leaders[i]), spot => Assert.DoesNotContain(others, box => Holds(box, spot)));
        }
    }

    [Theory]
    [InlineData("ridge", 1200, 520)]
    [InlineData("ridge", 800, 400)]
    [InlineData("near-the-mast", 1200, 520)]
    public void No_label_hides_what_stands_in_the_ray(string name, int width, int height)
    {
        Drawing drawing = PathPicture.Draw(Models[name], new(width, height), Theme.Light);
        Spot[] inTheWay = [.. drawing.Group("stands-in-the-ray")!.Members.OfType<AreaShape>().SelectMany(area => area.Outline)];
        Box[] boxes = [.. drawing.Group("obstructions")!.Members.OfType<AreaShape>().Select(area => Around(area.Outline))];
        Assert.NotEmpty(boxes);
        Assert.NotEmpty(inTheWay);
        Assert.All(boxes, box => Assert.DoesNotContain(inTheWay, spot => Holds(box, spot)));
    }

    [Theory]
    [InlineData(800_000)]
    [InlineData(5_000_000)]
    [InlineData(15_000_000)]
    public void On_a_very_long_path_the_name_of_the_height_axis_stands_clear_of_its_numbers(double lengthMetres)
    {
        PathPictureModel model = SkerrinPaths.Path("Ferry House", "Lantern Bay", lengthMetres, 2_001, _ => 0, _ => (CoverKind.Water, 0)) with { LowKFactor = 0.8 };
        Drawing drawing = PathPicture.Draw(model, PictureSize.Wide, Theme.Light);
        TextShape[] texts = [.. drawing.Group("axes")!.Members.OfType<TextShape>()];
        TextShape title = Assert.Single(texts, text => text.RotationDegrees != 0);
        Assert.Equal("height above sea level, km", title.Text);
        double numbersLeft = texts.Where(text => text.Anchor == TextAnchor.End && text.RotationDegrees == 0)
            .Min(text => text.At.X - TextRuler.WidthPixels(text.Text, text.SizePixels, text.Weight));

        // The turned line's baseline is its right side; what hangs below it takes a quarter of its size.
        Assert.True(title.At.X + (title.SizePixels * 0.25) < numbersLeft, $"{title.At.X} and {numbersLeft}");
        Assert.True(title.At.X - (title.SizePixels * 0.75) > 0, $"{title.At.X}");
    }

    private static IEnumerable<Spot> Along(LineShape line) => Enumerable.Range(1, 199).Select(i =>
        new Spot(line.Points[0].X + ((line.Points[1].X - line.Points[0].X) * i / 200), line.Points[0].Y + ((line.Points[1].Y - line.Points[0].Y) * i / 200)));

    private static bool Holds(Box box, Spot spot) => spot.X > box.Left && spot.X < box.Right && spot.Y > box.Top && spot.Y < box.Bottom;

    private static Box BoxOf(TextShape text)
    {
        double wide = TextRuler.WidthPixels(text.Text, text.SizePixels, text.Weight);
        double left = text.Anchor == TextAnchor.End ? text.At.X - wide : text.At.X;
        return new(left, text.At.Y - (text.SizePixels * 0.72), left + wide, text.At.Y);
    }

    private static Box Around(ImmutableArray<Spot> spots) => new(spots.Min(spot => spot.X), spots.Min(spot => spot.Y), spots.Max(spot => spot.X), spots.Max(spot => spot.Y));
}
