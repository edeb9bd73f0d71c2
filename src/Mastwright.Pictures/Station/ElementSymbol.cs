using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Plans;

namespace Mastwright.Pictures.Station;

/// <summary>The symbols of a one-line diagram: plain strokes after the forms that electrical drawings share (IEC 60617, shapes from memory).</summary>
/// <remarks>Each is drawn about its centre on an upright line; its radius is half its height.</remarks>
internal static class ElementSymbol
{
    private const double Thin = 1.6;

    internal static ImmutableArray<Shape> Draw(ElementKind kind, Spot centre, double radius, Palette palette)
    {
        double r = radius;
        Stroke pen = new(palette.Ink, Thin);
        Fill paper = new(palette.Paper);
        return kind switch
        {
            ElementKind.Antenna => [Line(pen, (0, 1), (0, -1)), Line(pen, (-0.7, -1), (0, -0.2), (0.7, -1))],
            ElementKind.Connectors => [Line(pen, (-0.45, -0.05), (0, -0.5), (0.45, -0.05)), Line(pen, (-0.45, 0.5), (0, 0.05), (0.45, 0.5))],
            ElementKind.Line => [new AreaShape(Ring(0.45), new(palette.Paper.Veil(0)), pen), Line(pen, (-0.6, 0.45), (0.6, 0.45))],
            ElementKind.Arrester => [Rect(-0.4, -0.6, 0.4, 0.6), Line(pen, (-0.2, -0.35), (0, -0.05), (0.2, -0.35)), Line(pen, (-0.2, 0.35), (0, 0.05), (0.2, 0.35)), .. Earth(1.05, 0, 0.55), Line(pen, (0.4, 0), (1.05, 0))],
            ElementKind.Filter => [Rect(-0.6, -0.6, 0.6, 0.6), Wave(-0.22), Wave(0.22)],
            ElementKind.Amplifier => [new AreaShape([At(-0.6, 0.6), At(0.6, 0.6), At(0, -0.7)], paper, pen)],
            ElementKind.Radio => [Rect(-0.85, -0.7, 0.85, 0.7), Line(pen, (-0.35, 0.35), (-0.35, -0.35)), Line(pen, (-0.55, -0.12), (-0.35, -0.38), (-0.15, -0.12)), Line(pen, (0.35, -0.35), (0.35, 0.35)), Line(pen, (0.15, 0.12), (0.35, 0.38), (0.55, 0.12))],
            ElementKind.Board => [Rect(-0.85, -0.7, 0.85, 0.7), Rect(-0.3, -0.3, 0.3, 0.3), .. Pins(-0.62), .. Pins(0.62)],
            ElementKind.Fork => [new AreaShape(Ring(0.22), new(palette.Ink))],
            ElementKind.Fuse => [Rect(-0.28, -0.7, 0.28, 0.7), Line(pen, (0, -0.7), (0, 0.7))],
            ElementKind.Battery => [new AreaShape([At(-0.7, -0.5), At(0.7, -0.5), At(0.7, 0.5), At(-0.7, 0.5)], paper), Line(pen, (-0.7, -0.45), (0.7, -0.45)), Line(new(palette.Ink, 3), (-0.35, -0.15), (0.35, -0.15)), Line(pen, (-0.7, 0.15), (0.7, 0.15)), Line(new(palette.Ink, 3), (-0.35, 0.45), (0.35, 0.45))],
            ElementKind.Converter => [Rect(-0.75, -0.75, 0.75, 0.75), Line(pen, (-0.75, 0.75), (0.75, -0.75)), Line(pen, (-0.5, -0.45), (-0.05, -0.45)), Line(pen, (-0.5, -0.25), (-0.05, -0.25)), Line(pen, (0.05, 0.3), (0.5, 0.3)), Line(pen, (0.05, 0.5), (0.5, 0.5))],
            ElementKind.DataCable => [Line(pen, (-0.16, -1.35), (-0.16, 1.35)), Line(pen, (0.16, -1.35), (0.16, 1.35)), .. Enumerable.Range(0, 4).Select(pair => Line(pen, (-0.5, -0.25 + (0.26 * pair)), (0.5, -0.55 + (0.26 * pair))))],
            ElementKind.PowerCable => [Line(pen, (-0.16, -1.35), (-0.16, 1.35)), Line(pen, (0.16, -1.35), (0.16, 1.35)), Line(pen, (-0.5, 0.15), (0.5, -0.15)), Line(pen, (-0.5, 0.4), (0.5, 0.1))],
            ElementKind.Source => [new AreaShape(Ring(0.8), paper, pen), Wave(0)],
            ElementKind.Panel => [Rect(-0.85, -0.6, 0.85, 0.6), Line(pen, (-0.28, -0.6), (-0.28, 0.6)), Line(pen, (0.28, -0.6), (0.28, 0.6)), Line(pen, (-0.85, 0), (0.85, 0))],
            ElementKind.Earth => [Line(pen, (0, -0.8), (0, -0.1)), .. Earth(0, -0.1, 0.8)],
            _ => [new AreaShape(Ring(0.5), paper, pen)],
        };

        Spot At(double right, double down) => new(centre.X + (right * r), centre.Y + (down * r));

        LineShape Line(Stroke stroke, params ReadOnlySpan<(double Right, double Down)> points)
        {
            ImmutableArray<Spot>.Builder spots = ImmutableArray.CreateBuilder<Spot>(points.Length);
            foreach ((double right, double down) in points)
            {
                spots.Add(At(right, down));
            }

            return new(spots.MoveToImmutable(), stroke);
        }

        ImmutableArray<Spot> Ring(double share) => Drawings.VerdictMark.Disc(centre, share * r);

        AreaShape Rect(double left, double top, double right, double bottom) => new([At(left, top), At(right, top), At(right, bottom), At(left, bottom)], paper, pen);

        LineShape Wave(double down) => Line(pen, (-0.4, down), (-0.2, down - 0.2), (0, down), (0.2, down + 0.2), (0.4, down));

        LineShape[] Pins(double right) => [Line(pen, (right, -0.4), (right, -0.15)), Line(pen, (right, 0.15), (right, 0.4))];

        LineShape[] Earth(double right, double down, double width) =>
        [
            Line(pen, (right - (width / 2), down), (right + (width / 2), down)),
            Line(pen, (right - (width / 3), down + 0.2), (right + (width / 3), down + 0.2)),
            Line(pen, (right - (width / 6), down + 0.4), (right + (width / 6), down + 0.4)),
        ];
    }
}
