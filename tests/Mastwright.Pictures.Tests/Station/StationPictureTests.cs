using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Pictures.Station;
using Mastwright.Pictures.Writers;
using Mastwright.Plans;
using Mastwright.Quantities;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.HoldUp;
using Mastwright.Station.Mast;

namespace Mastwright.Pictures.Tests.Station;

/// <summary>The pictures of a station, from a phone's width up.</summary>
public sealed class StationPictureTests
{
    private static readonly ImmutableArray<StationElement> Elements =
    [
        Element("antenna", ElementKind.Antenna, ElementPlace.Mast, "Collinear", Verdict.Ok),
        Element("feed/2", ElementKind.Line, ElementPlace.Mast, "10 mm foam line of a long name that does not fit a phone at all", null),
        Element("feed/1", ElementKind.Arrester, ElementPlace.Mast, "arrester", null),
        Element("radio", ElementKind.Radio, ElementPlace.Radio, "radio", Verdict.Unknown),
        Element("supply/4/branches/radio/1", ElementKind.Battery, ElementPlace.Radio, "lithium cell", Verdict.Tight),
        Element("supply/4/branches/board/1", ElementKind.Board, ElementPlace.Radio, "board", Verdict.Fails) with { Lane = 1 },
        Element("supply/4", ElementKind.Fork, ElementPlace.Radio, "fork", null),
        Element("supply/3", ElementKind.Converter, ElementPlace.Radio, "converter", Verdict.Ok),
        Element("supply/2", ElementKind.DataCable, ElementPlace.Run, "data cable with power", Verdict.Ok),
        Element("supply/1", ElementKind.Source, ElementPlace.Source, "source", Verdict.Ok),
        Element("mast", ElementKind.Mast, ElementPlace.Beside, "mast", Verdict.Tight),
        Element("box", ElementKind.Box, ElementPlace.Beside, "box", null),
        Element("earthing", ElementKind.Earth, ElementPlace.Beside, "earth", null),
        Element("whole", ElementKind.Whole, ElementPlace.Beside, "the whole fit-out", null),
    ];

    private static readonly MastFigure Mast = new()
    {
        Tubes = [new(1, 0, 2.4, 0.0603, "60.3 × 3.2 mm"), new(2, 2.4, 4.2, 0.0483, "48.3 × 3.2 mm")],
        FreeLengthMetres = 4.2,
        BracketHeightMetres = 6.9,
        BracketSpacingMetres = 0.8,
        AntennaFootMetres = 4.2,
        AntennaLengthMetres = 1.8,
        Box = new(0.2, 0.3, 3, 2.6, null),
        Guys = new(2, 45, 0.004, 4, null, null),
        Bending = new("without ice", [new(0, 1585, 1829, 0), new(2.4, 416, 1829, 0.03), new(2.4, 416, 1127, 0.03), new(4.2, 60, 1127, 0.11)], [], "at the upper bracket", 0, 0.87),
    };

    private static readonly BoxCourse Box = new()
    {
        InsideCelsius = Estimate.Of(-11, 15, 44),
        Hot = new("a hot day", [.. Enumerable.Range(0, 24).Select(hour => new BoxPoint(20 + (hour % 12), 30 + (hour % 12), 28, 12))]),
        Cold = new("a cold day", [.. Enumerable.Range(0, 24).Select(hour => new BoxPoint(-4, hour < 8 ? -6 : 5, hour < 8 ? -9 : 2, -5))]),
        Months = [.. Enumerable.Range(0, 12).Select(month => new BoxMonth(2, 10 + month, 4, 12, 30, 10 * month))],
        Source = "made up",
    };

    private static readonly HoldUpCourse Battery = new()
    {
        Runs = [Run(-10, 30, 0.3), Run(15, 44, 0.05), Run(40, 46, 0)],
        ByCelsius = [new(-20, 20), new(0, 40), new(20, 46), new(60, 46)],
        WantedHours = 24,
        Hours = Estimate.Of(20, 44, 70),
        CutOffVolts = 3,
        Celsius = Estimate.Of(-10, 15, 40),
    };

    public static TheoryData<string, int, Theme> Sheets()
    {
        TheoryData<string, int, Theme> data = [];
        foreach (string kind in (string[])["diagram", "mast", "box", "hold-up"])
        {
            foreach ((int width, Theme theme) in ((int, Theme)[])[(StationSheet.LeastWidth, Theme.Dark), (390, Theme.Light), (720, Theme.Light), (StationSheet.MostWidth, Theme.Dark)])
            {
                data.Add(kind, width, theme);
            }
        }

        return data;
    }

    [Theory, MemberData(nameof(Sheets))]
    public void Text_stays_on_the_sheet_and_is_no_smaller_than_a_phone_can_show(string kind, int width, Theme theme)
    {
        Drawing drawing = Draw(kind, width, theme);
        Assert.Equal(width, drawing.WidthPixels);
        Assert.Empty(drawing.MissingGlyphs());
        Assert.All(drawing.Texts(), text =>
        {
            double wide = TextRuler.WidthPixels(text.Text, text.SizePixels, text.Weight);
            double left = text.At.X - (text.Anchor switch { TextAnchor.End => wide, TextAnchor.Middle => wide / 2, _ => 0 });
            Assert.True(left >= 0 && left + wide <= width + 0.5, $"'{text.Text}' from {left:0} to {left + wide:0} of {width}");
            Assert.InRange(text.At.Y, 0, drawing.HeightPixels);
            Assert.True(text.SizePixels >= 11 || text.Text == "?", $"'{text.Text}' of {text.SizePixels} px");
        });
        Assert.Contains("<svg", SvgWriter.Write(drawing), StringComparison.Ordinal);
    }

    [Theory, InlineData("diagram"), InlineData("mast"), InlineData("box"), InlineData("hold-up")]
    public void What_cannot_be_seen_is_told_in_words(string kind)
    {
        string told = Draw(kind, 720, Theme.Light).Description;
        string[] wanted = kind switch
        {
            "diagram" => ["Collinear (ok)", "board (fails)", "lithium cell (tight)"],
            "mast" => ["87 % of the strength", "110 mm", "licensed"],
            "box" => ["judged at 44 °C in the hottest hour and −11 °C in the coldest", "up to 41 °C", "down to −6 °C", "for 8 of 24 hours"],
            _ => ["44 h", "20 to 70 h", "24 h are wanted"],
        };
        Assert.All(wanted, words => Assert.Contains(words, told, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_element_of_a_diagram_has_its_place_and_no_two_share_it()
    {
        StationDiagram diagram = DiagramPicture.Draw("Hut", Elements, 390, Theme.Light);
        Assert.Equal(["antenna", "box", "earthing", "feed/1", "feed/2", "mast", "radio", "supply/1", "supply/2", "supply/3", "supply/4", "supply/4/branches/board/1", "supply/4/branches/radio/1"], diagram.Places.Select(place => place.Key).Order(StringComparer.Ordinal));
        Assert.All(diagram.Places.SelectMany((one, i) => diagram.Places.Skip(i + 1).Select(other => (one, other))), pair => Assert.False(pair.one.Box.Overlaps(pair.other.Box), $"{pair.one} and {pair.other}"));
        Assert.All(diagram.Places, place => Assert.NotNull(diagram.Drawing.Group("element " + place.Key)));
        Assert.True(diagram.Places.Single(place => place.Key == "antenna").Box.Bottom < diagram.Places.Single(place => place.Key == "supply/1").Box.Top);
    }

    [Fact]
    public void A_branch_stands_on_its_own_line_and_comes_back_at_the_fork()
    {
        StationDiagram diagram = DiagramPicture.Draw("Hut", Elements, 720, Theme.Light);
        Box board = diagram.Places.Single(place => place.Key.EndsWith("board/1", StringComparison.Ordinal)).Box;
        Box fork = diagram.Places.Single(place => place.Key == "supply/4").Box;
        LineShape branch = Assert.Single(diagram.Drawing.Group("lines")!.Members.OfType<LineShape>(), line => line.Points.Length == 3);
        Assert.Equal((board.Top + board.Bottom) / 2, branch.Points[0].Y, 1e-9);
        Assert.Equal((fork.Top + fork.Bottom) / 2, branch.Points[2].Y, 1e-9);
    }

    [Fact]
    public void The_mast_is_drawn_to_one_scale_across_and_up()
    {
        Drawing drawing = MastPicture.Draw("Hut", Mast, 1200, Theme.Light);
        AreaShape[] areas = [.. drawing.Group("figure")!.Members.OfType<AreaShape>()];
        (double Width, double Height) Size(AreaShape area) => (area.Outline.Max(spot => spot.X) - area.Outline.Min(spot => spot.X), area.Outline.Max(spot => spot.Y) - area.Outline.Min(spot => spot.Y));

        // The box is 0.2 m wide and 0.3 m high, the upper tube 1.8 m long.
        (double Width, double Height) box = Assert.Single(areas.Select(Size), size => Math.Abs((size.Width / size.Height) - (0.2 / 0.3)) < 1e-6);
        Assert.Contains(areas.Select(Size), size => Math.Abs(size.Height - (box.Height * 1.8 / 0.3)) < 1e-6);
    }

    [Fact]
    public void A_moment_beyond_the_strength_is_hatched()
    {
        MastFigure weak = Mast with { Bending = Mast.Bending! with { Points = [new(0, 2000, 1829, 0), new(4.2, 0, 1829, 0.1)], Utilisation = 1.1 } };
        Assert.DoesNotContain(Moment(Mast), area => area.Fill.Hatch is not null);
        Assert.Contains(Moment(weak), area => area.Fill.Hatch is not null);

        static IEnumerable<AreaShape> Moment(MastFigure mast) => MastPicture.Draw("Hut", mast, 720, Theme.Light).Group("moment")!.Members.OfType<AreaShape>();
    }

    [Fact]
    public void A_picture_narrower_than_a_phone_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => MastPicture.Draw("Hut", Mast, StationSheet.LeastWidth - 1, Theme.Light));

    private static Drawing Draw(string kind, int width, Theme theme) => kind switch
    {
        "diagram" => DiagramPicture.Draw("Ferry House, net-loft", Elements, width, theme).Drawing,
        "mast" => MastPicture.Draw("Ferry House, net-loft", Mast, width, theme),
        "box" => BoxPicture.Draw("Ferry House, net-loft", Box, [new("p", "board", Estimate.Between(-20, 70), 12, null)], width, theme),
        _ => HoldUpPicture.Draw("Ferry House, net-loft", Battery, width, theme),
    };

    private static HoldUpRun Run(double celsius, double hours, double left) => new(celsius, hours, [new(0, 0.95, 4.1), new(hours, left, 3.2)], left / 2);

    private static StationElement Element(string key, ElementKind kind, ElementPlace place, string label, Verdict? verdict) => new()
    {
        Key = key,
        PlanPath = "p/" + key,
        Kind = kind,
        Place = place,
        Label = label,
        Findings = verdict is { } known ? [new() { Code = "made", Subject = "p/" + key, Verdict = known }] : [],
    };
}
