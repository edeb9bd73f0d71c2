using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using SkiaSharp;

namespace Mastwright.Pictures.Writers;

/// <summary>Draws shapes on a canvas of the native library: the one behind PNG, and the one a PDF page offers.</summary>
internal static class SkiaPen
{
    private static readonly Lazy<SKTypeface> Regular = new(() => Face(TextWeight.Regular));
    private static readonly Lazy<SKTypeface> SemiBold = new(() => Face(TextWeight.SemiBold));

    /// <summary>Draws the shapes in order.</summary>
    public static void Draw(SKCanvas canvas, ImmutableArray<Shape> shapes)
    {
        foreach (Shape shape in shapes)
        {
            switch (shape)
            {
                case AreaShape area:
                    DrawArea(canvas, area);
                    break;
                case LineShape line:
                    using (SKPath path = PathOf(line.Points, close: false))
                    {
                        DrawStroke(canvas, path, line.Stroke);
                    }

                    break;
                case TextShape text:
                    DrawText(canvas, text);
                    break;
                case ImageShape image:
                    DrawImage(canvas, image);
                    break;
                case GroupShape group:
                    canvas.Save();
                    if (group.Clip is Box clip)
                    {
                        canvas.ClipRect(new SKRect((float)clip.Left, (float)clip.Top, (float)clip.Right, (float)clip.Bottom), SKClipOperation.Intersect, antialias: true);
                    }

                    Draw(canvas, group.Members);
                    canvas.Restore();
                    break;
                default:
                    throw new ArgumentException($"No way to draw a {shape.GetType().Name}.", nameof(shapes));
            }
        }
    }

    /// <summary>The library's form of a colour.</summary>
    public static SKColor Colour(Ink ink) => new(ink.Red, ink.Green, ink.Blue, ink.Opacity);

    private static void DrawImage(SKCanvas canvas, ImageShape shape)
    {
        PixelImage pixels = shape.Image;
        using SKImage image = SKImage.FromPixelCopy(new SKImageInfo(pixels.Width, pixels.Height, SKColorType.Rgba8888, SKAlphaType.Unpremul), pixels.Pixels);
        SKRect box = new((float)shape.Box.Left, (float)shape.Box.Top, (float)shape.Box.Right, (float)shape.Box.Bottom);
        canvas.DrawImage(image, box, new SKSamplingOptions(SKFilterMode.Linear));
    }

    private static void DrawArea(SKCanvas canvas, AreaShape area)
    {
        using SKPath path = PathOf(area.Outline, close: true);
        if (area.Fill.Ink.Opacity > 0)
        {
            using SKPaint paint = new() { Color = Colour(area.Fill.Ink), IsAntialias = true, Style = SKPaintStyle.Fill };
            canvas.DrawPath(path, paint);
        }

        if (area.Fill.Hatch is Hatch hatch)
        {
            DrawHatch(canvas, path, hatch);
        }

        if (area.Edge is Stroke edge)
        {
            DrawStroke(canvas, path, edge);
        }
    }

    private static void DrawHatch(SKCanvas canvas, SKPath path, Hatch hatch)
    {
        HatchTile tile = HatchTile.Of(hatch.Kind);
        SKRect bounds = path.Bounds;
        canvas.Save();
        canvas.ClipPath(path, SKClipOperation.Intersect, antialias: true);
        if (canvas.GetLocalClipBounds(out SKRect visible) && bounds.IntersectsWith(visible))
        {
            bounds.Intersect(visible);
            using SKPath marks = new();
            for (double y = Math.Floor(bounds.Top / tile.Height) * tile.Height; y < bounds.Bottom; y += tile.Height)
            {
                for (double x = Math.Floor(bounds.Left / tile.Width) * tile.Width; x < bounds.Right; x += tile.Width)
                {
                    foreach (ImmutableArray<Spot> mark in tile.Marks)
                    {
                        Trace(marks, mark, x, y);
                    }
                }
            }

            DrawStroke(canvas, marks, new Stroke(hatch.Ink, tile.LineWidth));
        }

        canvas.Restore();
    }

    private static void DrawStroke(SKCanvas canvas, SKPath path, Stroke stroke)
    {
        using SKPathEffect? dashes = stroke.Dashes.IsEmpty ? null : SKPathEffect.CreateDash([.. stroke.Dashes.Select(dash => (float)dash)], 0);
        using SKPaint paint = new()
        {
            Color = Colour(stroke.Ink),
            IsAntialias = true,
            Style = SKPaintStyle.Stroke,
            StrokeWidth = (float)stroke.WidthPixels,
            StrokeJoin = SKStrokeJoin.Round,
            PathEffect = dashes,
        };
        canvas.DrawPath(path, paint);
    }

    private static void DrawText(SKCanvas canvas, TextShape text)
    {
        FontFile font = FontShelf.Of(text.Weight);
        string words = PlainText.ShownBy(font, text.Text);
        double width = TextRuler.WidthPixels(words, text.SizePixels, text.Weight);
        double left = text.Anchor switch { TextAnchor.Middle => -width / 2, TextAnchor.End => -width, _ => 0 };
        using SKFont pen = new((text.Weight == TextWeight.SemiBold ? SemiBold : Regular).Value, (float)text.SizePixels)
        {
            Edging = SKFontEdging.Antialias,
            Hinting = SKFontHinting.None,
            Subpixel = true,
            LinearMetrics = true,
        };
        canvas.Save();
        canvas.Translate((float)text.At.X, (float)text.At.Y);
        canvas.RotateDegrees((float)text.RotationDegrees);
        if (text.Halo is Ink halo)
        {
            using SKPaint rim = new() { Color = Colour(halo), IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = 3, StrokeJoin = SKStrokeJoin.Round };
            canvas.DrawText(words, (float)left, 0, pen, rim);
        }

        using SKPaint paint = new() { Color = Colour(text.Ink), IsAntialias = true };
        canvas.DrawText(words, (float)left, 0, pen, paint);
        canvas.Restore();
    }

    private static SKPath PathOf(ImmutableArray<Spot> points, bool close)
    {
        SKPath path = new();
        Trace(path, points, 0, 0);
        if (close)
        {
            path.Close();
        }

        return path;
    }

    private static void Trace(SKPath path, ImmutableArray<Spot> points, double right, double down)
    {
        for (int i = 0; i < points.Length; i++)
        {
            SKPoint point = new((float)(points[i].X + right), (float)(points[i].Y + down));
            if (i == 0)
            {
                path.MoveTo(point);
            }
            else
            {
                path.LineTo(point);
            }
        }
    }

    private static SKTypeface Face(TextWeight weight)
    {
        using SKData data = SKData.CreateCopy(FontShelf.Of(weight).Bytes.ToArray());
        return SKTypeface.FromData(data) ?? throw new InvalidOperationException("The embedded font could not be opened, so no text can be drawn.");
    }
}
