using Mastwright.Findings;
using Mastwright.Network;
using Mastwright.Network.Links;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Network;
using Mastwright.Pictures.Writers;
using Mastwright.Quantities;

namespace Mastwright.Pictures.Tests.Network;

public sealed class LinksPictureTests
{
    private static readonly LinkMatrix Three = new(
        [new("a", "a/mast", "Ferry House", new(46.40, -18.70), true), new("b", "b", "Lantern Bay", new(46.45, -18.55), false), new("c", "c", "East Quay", new(46.38, -18.50), false)],
        [new(0, 1, 12_000, 60, Way(25), Way(12)), new(0, 2, 15_000, 95, Way(3), Way(-2)), new(1, 2, 8_000, 150, Way(-5), Way(-5))]);

    [Theory]
    [InlineData(Theme.Light)]
    [InlineData(Theme.Dark)]
    public void Links_heard_both_ways_are_drawn_by_their_weaker_margin_and_others_dashed(Theme theme)
    {
        Drawing drawing = LinksPicture.Draw("Skerrin", Three, 10, theme);
        LineShape[] lines = [.. drawing.Group("links")!.Members.OfType<LineShape>()];
        Assert.Equal(2, lines.Length);
        Assert.Single(lines, line => line.Stroke.Dashes.Length > 0);
        Assert.Equal(2.6, lines.Single(line => line.Stroke.Dashes.IsEmpty).Stroke.WidthPixels, 1e-9);
        Assert.Equal(3, drawing.Group("stations")!.Members.OfType<AreaShape>().Count());
        Assert.Contains("1 are heard both ways at the best guess, 1 one way only", drawing.Description, StringComparison.Ordinal);
        Assert.Empty(drawing.MissingGlyphs());
        Assert.All(drawing.Texts(), text => Assert.InRange(text.At.X, 0, drawing.WidthPixels));
        Assert.Contains("<svg", SvgWriter.Write(drawing), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Theme.Light)]
    [InlineData(Theme.Dark)]
    public void Links_are_drawn_by_the_confidence_that_the_weaker_way_works(Theme theme)
    {
        // With 8 dB of what is not known, 12 dB work with Φ(1.5) = 93 %, −2 dB with Φ(−0.25) = 40 %, −5 dB with Φ(−0.625) = 27 %.
        Drawing drawing = LinksPicture.DrawConfidence("Skerrin", Three, theme);
        LineShape[] lines = [.. drawing.Group("links")!.Members.OfType<LineShape>()];
        Assert.Equal(3, lines.Length);
        Assert.Equal(2, lines.Count(line => line.Stroke.Dashes.Length > 0));
        Assert.Equal(2.6, lines.Single(line => line.Stroke.Dashes.IsEmpty).Stroke.WidthPixels, 1e-9);
        Assert.Contains("1 work both ways with a confidence of 80 % or more, 0 of 50 to 80 %, 2 of less (dashed), 0 unknown", drawing.Description, StringComparison.Ordinal);
        Assert.Empty(drawing.MissingGlyphs());
        Assert.All(drawing.Texts(), text => Assert.InRange(text.At.X, 0, drawing.WidthPixels));
    }

    [Fact]
    public void North_is_up_and_both_axes_have_one_scale()
    {
        Drawing drawing = LinksPicture.Draw("Skerrin", Three, 10, Theme.Light);
        Spot[] at = [.. drawing.Group("links")!.Members.OfType<LineShape>().SelectMany(line => line.Points)];
        LineShape both = drawing.Group("links")!.Members.OfType<LineShape>().Single(line => line.Stroke.Dashes.IsEmpty);
        Assert.True(both.Points[1].Y < both.Points[0].Y && both.Points[1].X > both.Points[0].X);

        // 0.15° of longitude at 46.4° are 0.1034 of a degree of latitude's length, 0.05° of latitude 0.05.
        Assert.Equal(0.15 * Math.Cos(46.415 * Math.PI / 180) / 0.05, (both.Points[1].X - both.Points[0].X) / (both.Points[0].Y - both.Points[1].Y), 0.01);
        Assert.All(at, spot => Assert.True(spot.X > 0 && spot.X < drawing.WidthPixels && spot.Y > 0 && spot.Y < drawing.HeightPixels));
        Assert.NotNull(LinksPicture.Draw("empty", new([], []), 10, Theme.Light));
    }

    private static LinkOneWay Way(double margin) => new() { Verdict = LinkBudget.Judge(margin, 10), MarginDb = Estimate.Exactly(margin), Odds = LinkOdds.From(margin, 8, 3) };
}
