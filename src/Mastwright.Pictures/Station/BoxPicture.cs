using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Pictures.Drawings;
using Mastwright.Pictures.Fonts;
using Mastwright.Quantities;
using Mastwright.Station.BoxClimate;

namespace Mastwright.Pictures.Station;

/// <summary>A box over its hottest day, its coldest day and the year: air inside and outside, dew point, and what the parts bear.</summary>
/// <remarks>Hours in which the coldest part of the wall is below the dew point are hatched.</remarks>
public static class BoxPicture
{
    private const double Axis = 50;
    private const double DayHeight = 140;
    private const double Gap = 54;

    /// <summary>Draws a box.</summary>
    /// <param name="name">What station and fit-out.</param>
    /// <param name="course">Its days and months.</param>
    /// <param name="parts">What is in it, with what it bears.</param>
    /// <param name="width">Pixels across, <see cref="StationSheet.LeastWidth"/> to <see cref="StationSheet.MostWidth"/>.</param>
    /// <param name="theme">Light or dark.</param>
    /// <exception cref="ArgumentOutOfRangeException">The width is outside its range.</exception>
    public static Drawing Draw(string name, BoxCourse course, ImmutableArray<BoxPart> parts, int width, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(course);
        StationSheet.Checked(width);
        Palette palette = Palette.Of(theme);
        string title = $"{name}: the box over a day and a year";
        double hottest = course.Hot.Points.Max(point => point.InsideCelsius);
        double coldest = course.Cold.Points.Min(point => point.InsideCelsius);
        int dewy = course.Cold.Points.Count(point => point.IsBelowDewPoint);
        string words = StationSheet.Text($"Air in the box is judged at {course.InsideCelsius.High:0} °C in the hottest hour and {course.InsideCelsius.Low:0} °C in the coldest with nothing on. It gets up to {hottest:0} °C on {course.Hot.Name} and down to {coldest:0} °C on {course.Cold.Name}; there air from outside sheds dew or frost in it for {dewy} of 24 hours.");
        GroupShape head = StationSheet.Head(title, words, width, palette, out double top);
        double left = StationSheet.Margin + Axis;
        double right = width - StationSheet.Margin - 6;
        Limits limits = Limits.Of(parts);
        double peak = course.InsideCelsius.High;
        string peakWords = StationSheet.Text($"judged: {peak:0} °C in the hottest hour");
        double y = top + 42;
        Plot hot = Day(course.Hot, Math.Max(peak, limits.MostCelsius ?? peak), null);
        Plot cold = Day(course.Cold, null, limits.LeastCelsius);
        List<Shape> shapes = [head, .. DayShapes("hot", $"On {course.Hot.Name}", course.Hot, hot, limits, palette), new GroupShape("peak", Peak(hot, peak, peakWords, palette)), .. DayShapes("cold", $"On {course.Cold.Name}", course.Cold, cold, limits, palette)];
        List<Shape> legend = [];
        y = Plot.Legend(legend, y - Gap + 24, width, palette, (Inside(palette), "air inside"), (Outside(palette), "air outside"), (Roof(palette), "roof of the box"), (Dew(palette), "dew point outside"));
        shapes.Add(new GroupShape("legend", [.. legend]));
        if (!course.Months.IsEmpty)
        {
            y += Gap - 10;
            Plot year = new(new(left, y, right, y + DayHeight), 0, 12, Floor(course.Months.Min(month => Math.Min(month.InsideLowCelsius, month.OutsideLowCelsius))), Ceiling(course.Months.Max(month => month.InsideHighCelsius)), palette);
            shapes.AddRange(Months(course.Months, year, palette));
            y = year.Box.Bottom + (course.Months[0].WetHours is null ? 20 : 38);
        }

        List<Shape> foot = [];
        y = StationSheet.Words(foot, $"From {course.Source}. Hatched: the roof is below the dew point.", y, width, palette);
        shapes.Add(new GroupShape("foot", [.. foot]));
        return new()
        {
            WidthPixels = width,
            HeightPixels = (int)Math.Ceiling(y + StationSheet.Margin),
            Title = title,
            Description = words + " " + limits.Words,
            Paper = palette.Paper,
            Shapes = [.. shapes],
        };

        Plot Day(BoxDay day, double? most, double? least)
        {
            double low = Floor(Math.Min(day.Points.Min(point => Math.Min(Math.Min(point.RoofCelsius, point.DewPointCelsius), point.OutsideCelsius)), least ?? double.PositiveInfinity));
            double high = Ceiling(Math.Max(day.Points.Max(point => point.InsideCelsius), most ?? double.NegativeInfinity));
            Plot plot = new(new(left, y, right, y + DayHeight), 0, 24, low, high, palette);
            y += DayHeight + Gap;
            return plot;
        }
    }

    /// <summary>The hottest hour as it is judged, across the plot of the hottest day; its words stand left, those of what the parts bear right.</summary>
    private static ImmutableArray<Shape> Peak(Plot plot, double celsius, string words, Palette palette) =>
    [
        new LineShape([plot.At(plot.FromX, celsius), plot.At(plot.ToX, celsius)], new(palette.Ok, 1.4) { Dashes = [2, 3] }),
        new TextShape(new(plot.Box.Left + 4, plot.Y(celsius) - 5), words, StationSheet.SmallPixels, palette.Ok) { Halo = palette.Paper },
    ];

    private static double Floor(double celsius) => (5 * Math.Floor(celsius / 5)) - 2;

    private static double Ceiling(double celsius) => (5 * Math.Ceiling(celsius / 5)) + 3;

    private static Stroke Inside(Palette palette) => new(palette.Ok, 2.4);

    private static Stroke Outside(Palette palette) => new(palette.Muted, 1.8) { Dashes = [7, 4] };

    private static Stroke Roof(Palette palette) => new(palette.GroundEdge, 1.6);

    private static Stroke Dew(Palette palette) => new(palette.Fresnel, 1.8) { Dashes = [2, 3] };

    private static ImmutableArray<Shape> DayShapes(string group, string heading, BoxDay day, Plot plot, Limits limits, Palette palette)
    {
        IEnumerable<(double, double)> Hours(Func<BoxPoint, double> of) => day.Points.Select((point, hour) => (hour + 0.5, of(point)));
        List<Shape> shapes =
        [
            .. plot.Hatched([.. day.Points.Select(point => point.IsBelowDewPoint)], palette.Fresnel),
            .. plot.Levels(4, " °C"),
            .. plot.Steps(6, " h"),
            plot.Line(Hours(point => point.DewPointCelsius), Dew(palette)),
            plot.Line(Hours(point => point.OutsideCelsius), Outside(palette)),
            plot.Line(Hours(point => point.RoofCelsius), Roof(palette)),
            plot.Line(Hours(point => point.InsideCelsius), Inside(palette)),
        ];
        if (limits.MostCelsius is { } most && most < plot.ToY)
        {
            shapes.AddRange(plot.Limit(most, limits.MostWords));
        }

        if (limits.LeastCelsius is { } least && least > plot.FromY)
        {
            shapes.AddRange(plot.Limit(least, limits.LeastWords));
        }

        return
        [
            new TextShape(new(StationSheet.Margin, plot.Box.Top - 12), TextRuler.Fit(heading, plot.Box.Right - StationSheet.Margin, StationSheet.TextPixels, TextWeight.SemiBold), StationSheet.TextPixels, palette.Ink) { Weight = TextWeight.SemiBold },
            new GroupShape(group, [.. shapes]),
        ];
    }

    private static ImmutableArray<Shape> Months(ImmutableArray<BoxMonth> months, Plot plot, Palette palette)
    {
        List<Shape> shapes = [.. plot.Levels(4, " °C")];
        for (int i = 0; i < months.Length; i++)
        {
            BoxMonth month = months[i];
            shapes.Add(AreaShape.Of(new(plot.X(i + 0.28), plot.Y(month.InsideHighCelsius), plot.X(i + 0.72), plot.Y(month.InsideLowCelsius)), new(palette.Ok.Veil(0.25)), new(palette.Ok, 1)));
            shapes.Add(new LineShape([plot.At(i + 0.2, month.InsideMeanCelsius), plot.At(i + 0.8, month.InsideMeanCelsius)], Inside(palette)));
            shapes.Add(new LineShape([plot.At(i + 0.5, month.OutsideLowCelsius), plot.At(i + 0.5, month.OutsideHighCelsius)], Outside(palette)));
            string letter = CultureInfo.InvariantCulture.DateTimeFormat.AbbreviatedMonthNames[i][..(plot.Box.Width < 420 ? 1 : 3)];
            shapes.Add(new TextShape(new(plot.X(i + 0.5), plot.Box.Bottom + 16), letter, StationSheet.SmallPixels, palette.Muted) { Anchor = TextAnchor.Middle });
            if (month.WetHours is { } wet)
            {
                shapes.Add(new TextShape(new(plot.X(i + 0.5), plot.Box.Bottom + 33), StationSheet.Text($"{wet}"), StationSheet.SmallPixels, palette.Fresnel) { Anchor = TextAnchor.Middle });
            }
        }

        string heading = months[0].WetHours is null ? "The months: range inside (bars) and outside (dashed)" : "The months: range inside (bars), outside (dashed), hours with dew";
        return
        [
            new TextShape(new(StationSheet.Margin, plot.Box.Top - 12), TextRuler.Fit(heading, plot.Box.Right - StationSheet.Margin, StationSheet.TextPixels, TextWeight.SemiBold), StationSheet.TextPixels, palette.Ink) { Weight = TextWeight.SemiBold },
            new GroupShape("months", [.. shapes]),
        ];
    }

    /// <summary>The least that any part bears, in terms of the air in the box.</summary>
    private sealed record Limits(double? MostCelsius, string MostWords, double? LeastCelsius, string LeastWords)
    {
        internal string Words => string.Join(" ", new[] { MostWords, LeastWords }.Where(words => words.Length > 0).Select(words => words + "."));

        internal static Limits Of(ImmutableArray<BoxPart> parts)
        {
            BoxPart[] rated = [.. parts.Where(part => part.RatedCelsius is not null)];
            if (rated.Length == 0)
            {
                return new(null, "", null, "");
            }

            BoxPart hot = rated.MinBy(part => Rating(part).High - (part.RiseKelvin ?? 0))!;
            BoxPart cold = rated.MaxBy(part => Rating(part).Low)!;
            double most = Rating(hot).High - (hot.RiseKelvin ?? 0);
            return new(
                most, StationSheet.Text($"{hot.Name} bears {most:0} °C around it"),
                Rating(cold).Low, StationSheet.Text($"{cold.Name} bears {Rating(cold).Low:0} °C"));
        }

        private static Estimate Rating(BoxPart part) => part.RatedCelsius!.Value;
    }
}
