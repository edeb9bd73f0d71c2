using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Pictures.Paths;
using Mastwright.Pictures.Tests.Paths;
using Mastwright.Pictures.Writers;

namespace Mastwright.Pictures.Tests.Writers;

public sealed class SvgWriterTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void It_is_well_formed_and_carries_title_and_description()
    {
        Drawing drawing = PathPicture.Draw(SkerrinPaths.RidgeInTheWay, PictureSize.Wide, Theme.Light);
        XElement root = XDocument.Parse(SvgWriter.Write(drawing)).Root!;
        Assert.Equal(Svg + "svg", root.Name);
        Assert.Equal("0 0 1200 520", root.Attribute("viewBox")!.Value);
        Assert.Equal(drawing.Title, root.Element(Svg + "title")!.Value);
        Assert.Equal(drawing.Description, root.Element(Svg + "desc")!.Value);
    }

    [Fact]
    public void Every_text_of_the_drawing_is_text_in_the_file_with_its_measured_width()
    {
        Drawing drawing = PathPicture.Draw(SkerrinPaths.Woodland, PictureSize.Small, Theme.Dark);
        XElement[] texts = [.. XDocument.Parse(SvgWriter.Write(drawing)).Descendants(Svg + "text")];
        Assert.Equal(drawing.Texts().Select(text => text.Text), texts.Select(text => text.Value));
        foreach ((TextShape shape, XElement text) in drawing.Texts().Zip(texts))
        {
            double width = double.Parse(text.Attribute("textLength")!.Value, CultureInfo.InvariantCulture);
            Assert.Equal(TextRuler.WidthPixels(shape.Text, shape.SizePixels, shape.Weight), width, 0.006);
        }
    }

    [Fact]
    public void The_same_drawing_gives_the_same_characters()
    {
        string first = SvgWriter.Write(PathPicture.Draw(SkerrinPaths.Woodland, PictureSize.Wide, Theme.Light));
        string second = SvgWriter.Write(PathPicture.Draw(SkerrinPaths.Woodland with { Notes = [] }, PictureSize.Wide, Theme.Light));
        Assert.Equal(first, second);
    }

    [Fact]
    public void Every_reference_leads_to_a_definition_and_nothing_is_loaded_from_elsewhere()
    {
        string svg = SvgWriter.Write(PathPicture.Draw(SkerrinPaths.Woodland, PictureSize.Wide, Theme.Light));
        XDocument document = XDocument.Parse(svg);
        HashSet<string> ids = [.. document.Descendants().Attributes("id").Select(id => id.Value)];
        string[] references = [.. document.Descendants().Attributes().Where(attribute => attribute.Value.StartsWith("url(#", StringComparison.Ordinal)).Select(attribute => attribute.Value[5..^1])];
        Assert.NotEmpty(references);
        Assert.All(references, reference => Assert.Contains(reference, ids));
        Assert.DoesNotContain("http", svg.Replace(Svg.NamespaceName, "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Words_with_markup_and_control_characters_stay_words()
    {
        Drawing drawing = Sheet(new TextShape(new(10, 20), "<b> & \"quoted\" \u0001\uFFFE'end'", 12, Ink.Of(0)));
        XElement text = Assert.Single(XDocument.Parse(SvgWriter.Write(drawing)).Descendants(Svg + "text"));
        Assert.Equal("<b> & \"quoted\" 'end'", text.Value);
    }

    [Fact]
    public void A_coordinate_that_is_not_finite_is_refused() =>
        Assert.Throws<ArgumentException>(() => SvgWriter.Write(Sheet(new LineShape([new(0, double.NaN), new(1, 1)], new(Ink.Of(0), 1)))));

    [Fact]
    public void A_letter_the_font_lacks_is_reported_and_its_line_takes_the_width_of_the_viewers_font()
    {
        Drawing drawing = Sheet(new TextShape(new(10, 20), "Skerrin 島", 12, Ink.Of(0)));
        Assert.Equal(["島"], drawing.MissingGlyphs());
        XElement text = Assert.Single(XDocument.Parse(SvgWriter.Write(drawing)).Descendants(Svg + "text"));
        Assert.Equal("Skerrin 島", text.Value);
        Assert.Null(text.Attribute("textLength"));
    }

    internal static Drawing Sheet(params ImmutableArray<Shape> shapes) => new()
    {
        WidthPixels = 200,
        HeightPixels = 60,
        Title = "Sheet",
        Description = "A sheet for a test.",
        Paper = Ink.Of(0xFFFFFF),
        Shapes = shapes,
    };
}
