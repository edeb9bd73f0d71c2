using System.Collections.Immutable;
using Mastwright.Pictures.Drawings;
using Mastwright.Station.HoldUp;

namespace Mastwright.Pictures.Station;

/// <summary>How a battery empties after its feed failed, at three temperatures, and how long it lasts by temperature.</summary>
public static class HoldUpPicture
{
    private const double Axis = 44;
    private const double PlotHeight = 170;

    /// <summary>Draws a battery.</summary>
    /// <param name="name">What station and fit-out.</param>
    /// <param name="course">How it empties.</param>
    /// <param name="width">Pixels across, <see cref="StationSheet.LeastWidth"/> to <see cref="StationSheet.MostWidth"/>.</param>
    /// <param name="theme">Light or dark.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is outside its range.</exception>
    public static Drawing Draw(string name, HoldUpCourse course, int width, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(course);
        StationSheet.Checked(width);
        Palette palette = Palette.Of(theme);
        string title = $"{name}: hold-up";
        string words = StationSheet.Text($"When the feed fails the battery lasts {course.Hours.Median:0.#} h, {course.Hours.Low:0.#} to {course.Hours.High:0.#} h with every input at its ends; {course.WantedHours:0.#} h are wanted. It gives up at {course.CutOffVolts:0.##} V under the greatest load.");
        GroupShape head = StationSheet.Head(title, words, width, palette, out double top);
        double left = StationSheet.Margin + Axis;
        double right = width - StationSheet.Margin - 8;
        double most = 1.06 * Math.Max(course.WantedHours, course.Runs.Max(run => run.Hours));
        Plot charge = new(new(left, top + 40, right, top + 40 + PlotHeight), 0, most, 0, 1, palette);
        double under = charge.Box.Bottom + 22;
        List<Shape> legend = [];
        under = Plot.Legend(legend, under, width, palette, [.. course.Runs.Select((run, number) => (Pen(number, course.Runs.Length, palette), StationSheet.Text($"at {run.Celsius:0.#} °C: {run.Hours:0.#} h")))]);
        double highest = 1.08 * Math.Max(course.WantedHours, course.ByCelsius.Max(at => at.Hours));
        Plot warmth = new(new(left, under + 52, right, under + 52 + PlotHeight), course.ByCelsius[0].Celsius, course.ByCelsius[^1].Celsius, 0, highest, palette);
        List<Shape> foot = [];
        double bottom = StationSheet.Words(foot, "Under the mean load, all but the temperature at its median; what cold, rate and cut-off withhold is not usable and stays in. Shares are of the capacity that age has left.", warmth.Box.Bottom + 22, width, palette);
        return new()
        {
            WidthPixels = width,
            HeightPixels = (int)Math.Ceiling(bottom + StationSheet.Margin),
            Title = title,
            Description = words + " " + string.Join("; ", course.Runs.Select(run => StationSheet.Text($"at {run.Celsius:0.#} °C {run.Hours:0.#} h, with {100 * run.Points[^1].Charge:0} % left in: cold and rate withhold {100 * run.Withheld:0} %, the cut-off leaves {100 * (run.Points[^1].Charge - run.Withheld):0} %"))) + ".",
            Paper = palette.Paper,
            Shapes =
            [
                head,
                Heading("Usable charge by hours after the failure", charge, palette),
                new GroupShape("charge", Charge(course, charge, palette)),
                new GroupShape("legend", [.. legend]),
                Heading("Hours by temperature (shaded: as it stands)", warmth, palette),
                new GroupShape("warmth", Warmth(course, warmth, palette)),
                new GroupShape("foot", [.. foot]),
            ],
        };
    }

    private static TextShape Heading(string words, Plot plot, Palette palette) =>
        new(new(StationSheet.Margin, plot.Box.Top - 14), Fonts.TextRuler.Fit(words, plot.Box.Right - StationSheet.Margin, StationSheet.TextPixels, TextWeight.SemiBold), StationSheet.TextPixels, palette.Ink) { Weight = TextWeight.SemiBold };

    private static Stroke Pen(int number, int count, Palette palette) => (count, number) switch
    {
        (1, _) or (_, 1) => new(palette.Ok, 2.2),
        (_, 0) => new(palette.Fresnel, 2) { Dashes = [7, 4] },
        _ => new(palette.Blocked, 2) { Dashes = [2, 3] },
    };

    private static ImmutableArray<Shape> Charge(HoldUpCourse course, Plot plot, Palette palette)
    {
        List<Shape> shapes = [.. plot.Levels(4, "").Select(Percent), .. plot.Steps(5, " h")];
        for (int number = 0; number < course.Runs.Length; number++)
        {
            HoldUpRun run = course.Runs[number];
            Stroke pen = Pen(number, course.Runs.Length, palette);
            HoldUpPoint end = run.Points[^1];
            shapes.Add(plot.Line(run.Points.Select(point => (point.Hour, point.Charge - end.Charge)), pen));

            shapes.Add(new AreaShape(Drawings.VerdictMark.Disc(plot.At(end.Hour, 0), 4), new(pen.Ink)));
        }

        double wanted = plot.X(course.WantedHours);
        shapes.Add(new LineShape([new(wanted, plot.Box.Top), new(wanted, plot.Box.Bottom)], new(palette.Fails, 1.4) { Dashes = [6, 4] }));
        bool isLeft = wanted > (plot.Box.Left + plot.Box.Right) / 2;
        shapes.Add(new TextShape(new(wanted + (isLeft ? -5 : 5), plot.Box.Bottom - 8), StationSheet.Text($"wanted {course.WantedHours:0.#} h"), StationSheet.SmallPixels, palette.Fails) { Anchor = isLeft ? TextAnchor.End : TextAnchor.Start, Halo = palette.Paper });
        return [.. shapes];

        Shape Percent(Shape shape) => shape is TextShape text && double.TryParse(text.Text, System.Globalization.CultureInfo.InvariantCulture, out double share) ? text with { Text = StationSheet.Text($"{100 * share:0} %") } : shape;
    }

    private static ImmutableArray<Shape> Warmth(HoldUpCourse course, Plot plot, Palette palette) =>
    [
        AreaShape.Of(
            new(plot.X(Math.Max(plot.FromX, course.Celsius.Low)) - 1, plot.Box.Top, plot.X(Math.Min(plot.ToX, course.Celsius.High)) + 1, plot.Box.Bottom), new(palette.Ground.Veil(0.6))),
        .. plot.Levels(4, " h"),
        .. plot.Steps(5, " °C"),
        plot.Line(course.ByCelsius.Select(at => (at.Celsius, at.Hours)), new(palette.Ok, 2.2)),
        .. plot.Limit(course.WantedHours, StationSheet.Text($"wanted {course.WantedHours:0.#} h")),
    ];
}
