using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Plans;

namespace Mastwright.Pictures.Station;

/// <summary>A fit-out as a one-line diagram from the antenna down to the source of its power, row by row.</summary>
/// <remarks>
/// Each element is a group whose name is "element " and its key. What is aloft, in the box and at the source stands in frames; branches of the supply
/// stand on lines of their own beside the way from antenna to source.
/// </remarks>
public static class DiagramPicture
{
    private const double RowHeight = 46;
    private const double ForkHeight = 24;
    private const double FrameTitle = 30;
    private const double FrameGap = 10;
    private const double SymbolRadius = 13;
    private const double LaneWidth = 28;
    private const double FirstLane = 40;

    /// <summary>Draws a fit-out.</summary>
    /// <param name="name">What station and fit-out.</param>
    /// <param name="elements">Its elements, as <see cref="StationElements"/> lists them.</param>
    /// <param name="width">Pixels across, <see cref="StationSheet.LeastWidth"/> to <see cref="StationSheet.MostWidth"/>.</param>
    /// <param name="theme">Light or dark.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is outside its range.</exception>
    /// <exception cref="InvalidOperationException">The fonts are missing from the program.</exception>
    public static StationDiagram Draw(string name, ImmutableArray<StationElement> elements, int width, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(name);
        StationSheet.Checked(width);
        Palette palette = Palette.Of(theme);
        GroupShape head = StationSheet.Head($"{name}: one-line diagram", "", width, palette, out double top);
        Rows rows = new(elements, width, top + FrameGap, palette);
        rows.Lay();
        string told = string.Join("; ", elements.Where(element => element.Place != ElementPlace.Beside).Select(Told));
        return new(
            new()
            {
                WidthPixels = width,
                HeightPixels = (int)Math.Ceiling(rows.Bottom + StationSheet.Margin),
                Title = $"{name}: one-line diagram",
                Description = "From the antenna down to the source of the power: " + told + ".",
                Paper = palette.Paper,
                Shapes = [head, new GroupShape("frames", [.. rows.Frames]), new GroupShape("lines", [.. rows.Lines]), .. rows.Elements],
            },
            [.. rows.Places]);
    }

    private static string Told(StationElement element) => element.Verdict is { } verdict
        ? $"{element.Label}{(element.Note.Length > 0 ? ", " + element.Note : "")} ({VerdictMark.Word(verdict)})"
        : element.Label + (element.Note.Length > 0 ? ", " + element.Note : "");

    /// <summary>Lays the rows from the top down.</summary>
    private sealed class Rows(ImmutableArray<StationElement> elements, int width, double top, Palette palette)
    {
        private readonly double _labels = FirstLane + (LaneWidth * elements.Max(element => element.Lane)) + 30;

        /// <summary>By lane where its first row and its last row so far are.</summary>
        private readonly Dictionary<int, double> _open = [];
        private readonly Dictionary<int, double> _lastRow = [];
        private double _y = top;

        internal List<Shape> Frames { get; } = [];

        internal List<Shape> Lines { get; } = [];

        internal List<Shape> Elements { get; } = [];

        internal List<ElementBox> Places { get; } = [];

        internal double Bottom => _y;

        internal void Lay()
        {
            bool hasSupply = elements.Any(element => element.Place is ElementPlace.Radio or ElementPlace.Source && element.Kind is not (ElementKind.Radio or ElementKind.Panel));
            double radio = 0;
            ElementPlace? place = null;
            double frameTop = 0;
            foreach (StationElement element in elements.Where(element => element.Place != ElementPlace.Beside))
            {
                if (element.Place != place)
                {
                    CloseFrame(place, frameTop);
                    place = element.Place;
                    frameTop = _y;
                    OpenFrame(element.Place);
                }

                double height = element.Kind == ElementKind.Fork ? ForkHeight : RowHeight;
                double middle = _y + (height / 2);
                Connect(element, middle);
                radio = element.Kind == ElementKind.Radio && element.Lane == 0 ? middle : radio;
                Row(element, middle, height);
                _y += height;
            }

            CloseFrame(place, frameTop);
            if (!hasSupply)
            {
                Elements.Add(new TextShape(new(_labels, _y + 12), "supply: not described", StationSheet.SmallPixels, palette.Muted));
                _y += 24;
            }

            if (_open.TryGetValue(0, out double first) && radio > first)
            {
                Lines.Insert(0, new LineShape([new(FirstLane, first), new(FirstLane, radio)], new(palette.Fresnel, 2.4)));
            }

            if (elements.FirstOrDefault(element => element.Kind == ElementKind.Earth) is { } earth)
            {
                Row(earth, _y + (RowHeight / 2), RowHeight);
                _y += RowHeight;
            }
        }

        /// <summary>Draws the line down to an element: on its own lane, and from the lanes of the branches that end in a fork.</summary>
        private void Connect(StationElement element, double middle)
        {
            double x = X(element.Lane);
            Stroke wire = new(palette.Ink, 1.8);
            if (element.Place != ElementPlace.Mast && element.Kind != ElementKind.Radio && _lastRow.TryGetValue(element.Lane, out double above))
            {
                Lines.Add(new LineShape([new(x, above), new(x, middle)], wire));
            }

            _open.TryAdd(element.Lane, middle);
            _lastRow[element.Lane] = middle;
            if (element.Kind != ElementKind.Fork)
            {
                return;
            }

            foreach (int lane in _open.Keys.Where(lane => lane > element.Lane).ToArray())
            {
                Lines.Add(new LineShape([new(X(lane), _lastRow[lane]), new(X(lane), middle), new(x, middle)], wire));
                _open.Remove(lane);
                _lastRow.Remove(lane);
            }
        }

        private void Row(StationElement element, double middle, double height)
        {
            double right = width - StationSheet.Margin - 30;
            List<Shape> shapes = [.. ElementSymbol.Draw(element.Kind, new(X(element.Lane), middle), SymbolRadius, palette)];
            string note = string.Join(" · ", new[] { element.Note, element.AtWork }.Where(text => text.Length > 0));
            bool isOne = note.Length == 0 || element.Kind == ElementKind.Fork;
            shapes.Add(new TextShape(new(_labels, middle + (isOne ? 4.5 : -3)), TextRuler.Fit(element.Label, right - _labels, StationSheet.TextPixels, TextWeight.SemiBold), element.Kind == ElementKind.Fork ? StationSheet.SmallPixels : StationSheet.TextPixels, element.Kind == ElementKind.Fork ? palette.Muted : palette.Ink) { Weight = element.Kind == ElementKind.Fork ? TextWeight.Regular : TextWeight.SemiBold });
            if (!isOne)
            {
                shapes.Add(new TextShape(new(_labels, middle + 14), TextRuler.Fit(note, right - _labels, StationSheet.SmallPixels), StationSheet.SmallPixels, palette.Muted));
            }

            Mark(shapes, element, middle);
            Elements.Add(new GroupShape("element " + element.Key, [.. shapes]));
            Places.Add(new(element.Key, new(StationSheet.Margin, middle - (height / 2), width - StationSheet.Margin, middle + (height / 2))));
        }

        private void Mark(List<Shape> shapes, StationElement element, double middle)
        {
            if (element.Verdict is { } verdict)
            {
                shapes.Add(VerdictMark.Draw(verdict, new(width - StationSheet.Margin - 16, middle), 8, palette));
            }
        }

        private void OpenFrame(ElementPlace place)
        {
            if (Title(place) is not { } title)
            {
                return;
            }

            double middle = _y + (FrameTitle / 2);
            List<Shape> shapes = [];
            StationElement? frame = elements.FirstOrDefault(element => element.Kind == (place switch { ElementPlace.Mast => ElementKind.Mast, ElementPlace.Radio => ElementKind.Box, _ => ElementKind.Whole }) && element.Place == ElementPlace.Beside);
            string note = frame is null or { Kind: ElementKind.Whole } or { Note: "" } ? "" : $": {frame.Note}";
            double right = width - StationSheet.Margin - 34;
            double titleWidth = TextRuler.WidthPixels(title, StationSheet.SmallPixels, TextWeight.SemiBold);
            shapes.Add(new TextShape(new(_labels, middle + 4.5), title, StationSheet.SmallPixels, palette.Ink) { Weight = TextWeight.SemiBold });
            shapes.Add(new TextShape(new(_labels + titleWidth, middle + 4.5), TextRuler.Fit(note, right - _labels - titleWidth, StationSheet.SmallPixels), StationSheet.SmallPixels, palette.Muted));
            if (frame is null or { Kind: ElementKind.Whole })
            {
                Elements.Add(new GroupShape("frame", [.. shapes]));
            }
            else
            {
                Mark(shapes, frame, middle);
                Elements.Add(new GroupShape("element " + frame.Key, [.. shapes]));
                Places.Add(new(frame.Key, new(StationSheet.Margin, _y, width - StationSheet.Margin, _y + FrameTitle)));
            }

            _y += FrameTitle;
        }

        private void CloseFrame(ElementPlace? place, double frameTop)
        {
            if (place is { } closed && Title(closed) is not null)
            {
                Frames.Add(AreaShape.Of(new(StationSheet.Margin, frameTop, width - StationSheet.Margin, _y + 4), new(closed == ElementPlace.Radio ? palette.Ground.Veil(0.35) : palette.Paper), new(palette.Missing, 1) { Dashes = closed == ElementPlace.Radio ? [] : [5, 4] }));
                _y += 4 + FrameGap;
            }
            else if (place is not null)
            {
                _y += FrameGap;
            }
        }

        private string? Title(ElementPlace place) => place switch
        {
            ElementPlace.Mast => elements.Any(element => element.Kind == ElementKind.Mast) ? "On the mast" : "Antenna and feed",
            ElementPlace.Radio => elements.First(element => element.Kind == ElementKind.Box).Label == "box" ? "In the box" : "Where the radio stands",
            ElementPlace.Source => elements.Any(element => element.Kind == ElementKind.Panel) ? "In the sun" : "Where the power comes from",
            _ => null,
        };

        private static double X(int lane) => FirstLane + (LaneWidth * lane);
    }
}

/// <summary>A one-line diagram, and where on it each element is.</summary>
/// <param name="Drawing">The picture.</param>
/// <param name="Places">The elements from the top down.</param>
public sealed record StationDiagram(Drawing Drawing, ImmutableArray<ElementBox> Places);

/// <summary>Where an element is on a picture.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Box">Its place in pixels at scale 1.</param>
public sealed record ElementBox(string Key, Box Box);
