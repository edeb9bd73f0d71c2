using System.Collections.Immutable;
using System.Globalization;
using System.Security;
using System.Text;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;

namespace Mastwright.Pictures.Writers;

/// <summary>Writes a drawing as SVG 1.1, with nothing to load from elsewhere.</summary>
/// <remarks>
/// Text stays text: it can be selected, searched and read aloud. The few letters used travel along as an embedded font, and every line
/// carries its width, so that a viewer which takes its own font instead keeps the layout. Same drawing, same characters. Ids are made from
/// content, so many pictures can stand in one page. Needs no native library.
/// </remarks>
public static class SvgWriter
{
    /// <summary>The drawing as the text of an SVG file, with "\n" line ends.</summary>
    /// <exception cref="ArgumentException">A coordinate is not finite.</exception>
    /// <exception cref="InvalidOperationException">The fonts are missing from the program.</exception>
    public static string Write(Drawing drawing)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        string family = SvgFont.FamilyOf(drawing);
        StringBuilder body = new();
        SortedDictionary<string, string> definitions = new(StringComparer.Ordinal);
        foreach (Shape shape in drawing.Shapes)
        {
            Append(body, definitions, shape, family);
        }

        StringBuilder svg = new();
        string size = $"{Text(drawing.WidthPixels)} {Text(drawing.HeightPixels)}";
        svg.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ").Append(size)
            .Append("\" width=\"").Append(Text(drawing.WidthPixels)).Append("\" height=\"").Append(Text(drawing.HeightPixels))
            .Append("\" role=\"img\" aria-label=\"").Append(Escaped(drawing.Title)).Append("\">\n");
        svg.Append("<title>").Append(Escaped(drawing.Title)).Append("</title>\n");
        svg.Append("<desc>").Append(Escaped(drawing.Description)).Append("</desc>\n");
        svg.Append("<defs>\n").Append(SvgFont.Style(drawing, family));
        foreach (string definition in definitions.Values)
        {
            svg.Append(definition);
        }

        svg.Append("</defs>\n<rect width=\"100%\" height=\"100%\"").Append(Paint("fill", drawing.Paper)).Append("/>\n");
        return svg.Append(body).Append("</svg>\n").ToString();
    }

    private static void Append(StringBuilder body, SortedDictionary<string, string> definitions, Shape shape, string family)
    {
        switch (shape)
        {
            case AreaShape area:
                AppendArea(body, definitions, area);
                break;
            case LineShape line:
                body.Append("<path d=\"").Append(PathOf(line.Points)).Append("\" fill=\"none\"").Append(StrokeOf(line.Stroke)).Append("/>\n");
                break;
            case TextShape text:
                AppendText(body, text, family);
                break;
            case ImageShape image:
                body.Append("<image x=\"").Append(Text(image.Box.Left)).Append("\" y=\"").Append(Text(image.Box.Top))
                    .Append("\" width=\"").Append(Text(image.Box.Width)).Append("\" height=\"").Append(Text(image.Box.Height))
                    .Append("\" preserveAspectRatio=\"none\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" xlink:href=\"data:image/png;base64,")
                    .Append(Convert.ToBase64String(PixelPng.Write(image.Image))).Append("\"/>\n");
                break;
            case GroupShape group:
                body.Append("<g data-part=\"").Append(Escaped(group.Name)).Append('"');
                if (group.Clip is Box clip)
                {
                    string id = $"mw-clip-{Text(clip.Left)}-{Text(clip.Top)}-{Text(clip.Right)}-{Text(clip.Bottom)}";
                    definitions[id] = $"<clipPath id=\"{id}\"><rect x=\"{Text(clip.Left)}\" y=\"{Text(clip.Top)}\" width=\"{Text(clip.Width)}\" height=\"{Text(clip.Height)}\"/></clipPath>\n";
                    body.Append(" clip-path=\"url(#").Append(id).Append(")\"");
                }

                body.Append(">\n");
                foreach (Shape member in group.Members)
                {
                    Append(body, definitions, member, family);
                }

                body.Append("</g>\n");
                break;
            default:
                throw new ArgumentException($"No way to write a {shape.GetType().Name}.", nameof(shape));
        }
    }

    private static void AppendArea(StringBuilder body, SortedDictionary<string, string> definitions, AreaShape area)
    {
        string path = PathOf(area.Outline) + "Z";
        if (area.Fill.Ink.Opacity > 0 || (area.Edge is not null && area.Fill.Hatch is null))
        {
            string edge = area.Fill.Hatch is null ? StrokeOf(area.Edge) : "";
            body.Append("<path d=\"").Append(path).Append('"').Append(Paint("fill", area.Fill.Ink)).Append(edge).Append("/>\n");
        }

        if (area.Fill.Hatch is Hatch hatch)
        {
            string id = $"mw-{hatch.Kind.ToString().ToLowerInvariant()}-{hatch.Ink.ToHex()[1..]}-{Text(hatch.Ink.Opacity)}";
            definitions[id] = Pattern(id, hatch);
            body.Append("<path d=\"").Append(path).Append("\" fill=\"url(#").Append(id).Append(")\"").Append(StrokeOf(area.Edge)).Append("/>\n");
        }
    }

    private static string Pattern(string id, Hatch hatch)
    {
        HatchTile tile = HatchTile.Of(hatch.Kind);
        string marks = string.Concat(tile.Marks.Select(PathOf));
        return $"<pattern id=\"{id}\" width=\"{Text(tile.Width)}\" height=\"{Text(tile.Height)}\" patternUnits=\"userSpaceOnUse\"><path d=\"{marks}\" fill=\"none\"{StrokeOf(new(hatch.Ink, tile.LineWidth))}/></pattern>\n";
    }

    private static void AppendText(StringBuilder body, TextShape text, string family)
    {
        FontFile font = FontShelf.Of(text.Weight);
        string words = PlainText.Of(text.Text);
        if (words.Length == 0)
        {
            return;
        }

        body.Append("<text x=\"").Append(Text(text.At.X)).Append("\" y=\"").Append(Text(text.At.Y)).Append("\" font-family=\"").Append(family)
            .Append(", 'IBM Plex Sans', sans-serif\" font-size=\"").Append(Text(text.SizePixels)).Append('"');
        body.Append(text.Weight == TextWeight.SemiBold ? " font-weight=\"600\"" : "");
        body.Append(text.Anchor switch { TextAnchor.Middle => " text-anchor=\"middle\"", TextAnchor.End => " text-anchor=\"end\"", _ => "" });
        if (text.RotationDegrees != 0)
        {
            body.Append(" transform=\"rotate(").Append(Text(text.RotationDegrees)).Append(' ').Append(Text(text.At.X)).Append(' ').Append(Text(text.At.Y)).Append(")\"");
        }

        // A line with a letter the font lacks is shown in the viewer's font for that letter: its width is not known here.
        if (PlainText.Runes(words).All(font.Has))
        {
            body.Append(" textLength=\"").Append(Text(TextRuler.WidthPixels(words, text.SizePixels, text.Weight))).Append("\" lengthAdjust=\"spacingAndGlyphs\"");
        }

        if (text.Halo is Ink halo)
        {
            body.Append(" paint-order=\"stroke\" stroke-linejoin=\"round\" stroke-width=\"3\"").Append(Paint("stroke", halo));
        }

        body.Append(Paint("fill", text.Ink)).Append('>').Append(Escaped(words)).Append("</text>\n");
    }

    private static string PathOf(ImmutableArray<Spot> points)
    {
        StringBuilder path = new();
        for (int i = 0; i < points.Length; i++)
        {
            path.Append(i == 0 ? 'M' : 'L').Append(Text(points[i].X)).Append(' ').Append(Text(points[i].Y));
        }

        return path.ToString();
    }

    private static string StrokeOf(Stroke? stroke)
    {
        if (stroke is null)
        {
            return "";
        }

        string dashes = stroke.Dashes.IsEmpty ? "" : $" stroke-dasharray=\"{string.Join(' ', stroke.Dashes.Select(Text))}\"";
        return $"{Paint("stroke", stroke.Ink)} stroke-width=\"{Text(stroke.WidthPixels)}\" stroke-linejoin=\"round\"{dashes}";
    }

    private static string Paint(string attribute, Ink ink)
    {
        string opacity = ink.Opacity == 255 ? "" : $" {attribute}-opacity=\"{Text(ink.Opacity / 255.0)}\"";
        return $" {attribute}=\"{ink.ToHex()}\"{opacity}";
    }

    private static string Text(double value)
    {
        if (!double.IsFinite(value))
        {
            throw new ArgumentException("A coordinate of the drawing is not finite.", nameof(value));
        }

        string text = value.ToString("0.##", CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }

    private static string Escaped(string text) => SecurityElement.Escape(PlainText.Of(text))!;
}
