using Mastwright.Findings;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Ledgers;

namespace Mastwright.Pictures.Tests.Ledgers;

public sealed class LedgerPictureTests
{
    /// <summary>Invented figures.</summary>
    internal static Ledger Link { get; } = new("Ferry House → Lantern Bay, received level", "dBm",
    [
        new("power", "Conducted power", 14, "sites/ferry-house/fit-outs/net-loft/radio"),
        new("feed", "Feed, 3 m of 10 mm foam low-loss", -0.4, "catalogue, at 868 MHz"),
        new("gain", "Antenna gain towards the horizon", 7.6, "sites/ferry-house/fit-outs/net-loft/antenna", "8 dBi, 0.4 dB off its peak"),
        new("loss", "Loss of the path", -171.3, "Rec. ITU-R P.1812"),
        new("nothing", "Entry into a building", 0, "outdoors"),
        new("far", "Antenna gain at the far end", 2.1, "sites/lantern-bay/fit-outs/whip/antenna"),
    ]);

    [Fact]
    public void Every_step_begins_where_the_one_before_it_ended()
    {
        Drawing drawing = LedgerPicture.Draw(Link, 900, Theme.Light);
        double? end = null;
        double zero = drawing.Group("zero")!.Members.OfType<LineShape>().Single().Points[0].X;
        double perDb = (Tip(drawing, "power") - zero) / 14;
        foreach (LedgerLine line in Link.Lines.Where(line => line.Value != 0))
        {
            AreaShape arrow = Arrow(drawing, line.Code);
            Assert.Equal(end ?? zero, arrow.Outline[0].X, 1e-9);
            Assert.Equal(line.Value * perDb, Tip(drawing, line.Code) - arrow.Outline[0].X, 1e-9);
            end = Tip(drawing, line.Code);
        }

        AreaShape total = drawing.Group("total")!.Members.OfType<AreaShape>().Single();
        Assert.Equal(end!.Value, total.Outline[2].X, 1e-9);
        Assert.Equal(zero, total.Outline[0].X, 1e-9);
    }

    [Fact]
    public void Every_line_shows_its_label_its_value_and_its_source()
    {
        string[] words = [.. LedgerPicture.Draw(Link, 1_200, Theme.Dark).Texts().Select(text => text.Text)];
        Assert.Contains("Loss of the path", words);
        Assert.Contains("−171.3 dB", words);
        Assert.Contains("Rec. ITU-R P.1812", words);
        Assert.Contains("−148 dBm", words);
    }

    [Fact]
    public void Any_ledger_stays_on_its_sheet() =>
        Gen.Select(Gen.Double[-500, 500].Array[0, 12], Gen.Int[560, 2_000]).Sample((values, width) =>
        {
            Drawing drawing = LedgerPicture.Draw(new("Any", "W", [.. values.Select((value, i) => new LedgerLine($"l{i}", "A line", value, "test"))]), width, Theme.Light);
            IEnumerable<Spot> spots = drawing.Group("steps")!.Members.OfType<GroupShape>().SelectMany(row => row.Members).OfType<AreaShape>().SelectMany(area => area.Outline);
            return spots.All(spot => spot.X >= 0 && spot.X <= width && spot.Y <= drawing.HeightPixels);
        });

    [Fact]
    public void A_ledger_that_cannot_be_drawn_is_refused()
    {
        Assert.Throws<ArgumentException>(() => LedgerPicture.Draw(new("x", "dB", [new("a", "a", double.NaN, "test")]), 900, Theme.Light));
        Assert.Throws<ArgumentOutOfRangeException>(() => LedgerPicture.Draw(Link, 100, Theme.Light));
    }

    private static AreaShape Arrow(Drawing drawing, string code) => drawing.Group($"line-{code}")!.Members.OfType<AreaShape>().Single();

    private static double Tip(Drawing drawing, string code) => Arrow(drawing, code).Outline[2].X;
}
