using Mastwright.Findings;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Paths;

namespace Mastwright.Pictures.Tests.Paths;

/// <summary>What nobody knows is said, and nothing is drawn in its place.</summary>
public sealed class UnknownPathTests
{
    private static readonly string[] RadioGroups = ["ray", "fresnel", "fresnel-06", "stands-in-the-ray", "stands-in-the-zone"];

    [Fact]
    public void Without_an_antennas_height_there_is_neither_ray_nor_zone_nor_shading()
    {
        Drawing drawing = PathPicture.Draw(SkerrinPaths.NoHeight, PictureSize.Wide, Theme.Light);
        string[] words = [.. drawing.Texts().Select(text => text.Text)];
        Assert.Contains("11 m mast", words);
        Assert.Contains("height unknown", words);
        Assert.Contains("antenna height unknown", words);
        Assert.Contains(words, word => word.StartsWith("antenna 11 m above ground, ", StringComparison.Ordinal));
        Assert.DoesNotContain(words, word => word is "0 m mast" or "direct ray" or "first Fresnel zone" or "blocks the ray");
        Assert.All(RadioGroups, group => Assert.Null(drawing.Group(group)));
        Assert.Empty(drawing.Group("obstructions")!.Members);
        Assert.Contains("Antenna at Lantern Bay: height unknown.", drawing.Description, StringComparison.Ordinal);
        Assert.DoesNotContain("above the ray", drawing.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void An_antenna_on_unknown_ground_has_no_height_above_the_sea()
    {
        Drawing drawing = PathPicture.Draw(SkerrinPaths.NoGround, PictureSize.Wide, Theme.Light);
        string[] words = [.. drawing.Texts().Select(text => text.Text)];
        Assert.Contains("7 m mast on unknown ground", words);
        Assert.Contains("antenna 7 m above unknown ground", words);
        Assert.All(RadioGroups, group => Assert.Null(drawing.Group(group)));
    }

    [Theory]
    [InlineData("ground")]
    [InlineData("ground-line")]
    [InlineData("ground-low-k")]
    [InlineData("cover")]
    public void Nothing_of_the_ground_is_drawn_where_there_are_no_data(string group)
    {
        Drawing drawing = PathPicture.Draw(SkerrinPaths.NoGround, PictureSize.Wide, Theme.Light);
        Box plot = drawing.Group("ground")!.Clip!.Value;
        double[] xs = [.. Spots(drawing.Group(group)!).Select(spot => (spot.X - plot.Left) / plot.Width * 21_300)];
        Assert.NotEmpty(xs);
        Assert.DoesNotContain(xs, x => x is > 4_980.1 and < 7_019.9 or > 16_980.1);

        // It ends exactly where the data end, and begins again where they begin.
        Assert.Contains(xs, x => Math.Abs(x - 4_980) < 0.5);
        Assert.Contains(xs, x => Math.Abs(x - 7_020) < 0.5);
    }

    [Fact]
    public void A_stretch_without_data_has_no_zone()
    {
        Drawing drawing = PathPicture.Draw(SkerrinPaths.NoGround, PictureSize.Wide, Theme.Light);
        Box plot = drawing.Group("ground")!.Clip!.Value;
        Shape[] zones = [.. drawing.Group("zones")!.Members];
        TextShape[] unknown = [.. zones.OfType<TextShape>().Where(text => text.Text == "no ground data")];
        Assert.Equal(6_000, (unknown[0].At.X - plot.Left) / plot.Width * 21_300, 1.0);
        AreaShape band = Assert.Single(zones.OfType<AreaShape>(), area => Math.Abs(area.Outline.Min(spot => spot.X) - plot.Left - (4_980 / 21_300.0 * plot.Width)) < 0.1);
        Assert.Equal(7_020, (band.Outline.Max(spot => spot.X) - plot.Left) / plot.Width * 21_300, 0.5);
    }

    [Fact]
    public void What_the_arrays_hold_in_a_gap_changes_nothing()
    {
        // A wall of 5 km in the gap: were it drawn or measured, the scale would change.
        PathPictureModel model = SkerrinPaths.RidgeInTheWay with { Missing = [new(4_980, 7_020)] };
        PathPictureModel walled = model with { GroundMetres = [.. model.GroundMetres.Select((height, i) => model.DistancesMetres[i] is > 4_980 and < 7_020 ? 5_000 : height)] };
        Assert.Equal(
            Mastwright.Pictures.Writers.SvgWriter.Write(PathPicture.Draw(model, PictureSize.Wide, Theme.Light)),
            Mastwright.Pictures.Writers.SvgWriter.Write(PathPicture.Draw(walled, PictureSize.Wide, Theme.Light)));
    }

    [Fact]
    public void A_gap_between_known_ends_leaves_the_ray_but_shades_nothing_inside()
    {
        Drawing drawing = PathPicture.Draw(SkerrinPaths.RidgeInTheWay with { Missing = [new(8_010, 9_510)] }, PictureSize.Wide, Theme.Light);
        Assert.NotNull(drawing.Group("ray"));
        Box plot = drawing.Group("ground")!.Clip!.Value;
        double[] xs = [.. Spots(drawing.Group("stands-in-the-ray")!).Select(spot => (spot.X - plot.Left) / plot.Width * 21_300)];
        Assert.NotEmpty(xs);
        Assert.DoesNotContain(xs, x => x is > 8_010.1 and < 9_509.9);
    }

    [Fact]
    public void A_path_of_which_nothing_is_known_is_still_drawn()
    {
        PathPictureModel nothing = SkerrinPaths.NoHeight with { Missing = [new(0, 21_300)], TransmitterHeightMetres = null };
        Drawing drawing = PathPicture.Draw(nothing, PictureSize.Small, Theme.Dark);
        Assert.Empty(drawing.Group("ground")!.Members);
        Assert.Equal(2, drawing.Texts().Count(text => text.Text == "height unknown"));
    }

    [Theory]
    [InlineData(Verdict.Unknown, 21.3, 2.2, 55.8, "unknown: 2 to 56 dB")]
    [InlineData(Verdict.Unknown, -4.0, -23.1, 12.9, "unknown: −23 to +13 dB")]
    [InlineData(Verdict.Unknown, 9.0, null, null, "unknown")]
    [InlineData(Verdict.Unknown, null, null, null, "unknown")]
    [InlineData(Verdict.Ok, 21.3, 18.0, 25.0, "ok: 21.3 dB to spare")]
    [InlineData(Verdict.Fails, -4.0, -6.0, -2.0, "fails: 4 dB short")]
    public void The_headline_of_an_unknown_verdict_is_its_range(Verdict verdict, double? margin, double? low, double? high, string headline)
    {
        PathPictureModel model = SkerrinPaths.ClearSea with { Verdict = verdict, MarginDb = margin, MarginLowDb = low, MarginHighDb = high };
        Drawing drawing = PathPicture.Draw(model, PictureSize.Wide, Theme.Light);
        Assert.Contains(drawing.Texts(), text => text.Text == headline);
        Assert.EndsWith(": " + headline, drawing.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void A_direction_whose_verdict_is_unknown_shows_its_range()
    {
        PathPictureModel model = SkerrinPaths.ClearSea with { Directions = [new("Pilot Hut", "Gannet Stack", 21.3, Verdict.Unknown, 2.2, 55.8), new("Gannet Stack", "Pilot Hut", null, Verdict.Unknown)] };
        string[] words = [.. PathPicture.Draw(model, PictureSize.Wide, Theme.Light).Texts().Select(text => text.Text)];
        Assert.Contains("Pilot Hut → Gannet Stack: 2 to 56 dB, unknown", words);
        Assert.Contains("Gannet Stack → Pilot Hut: unknown", words);
    }

    private static IEnumerable<Spot> Spots(GroupShape group) => group.Members.SelectMany(shape => shape switch
    {
        AreaShape area => area.Outline,
        LineShape line => line.Points,
        GroupShape inner => Spots(inner),
        _ => [],
    });
}
