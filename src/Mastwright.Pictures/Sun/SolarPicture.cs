using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Pictures.Drawings;
using Mastwright.Station.Sun;

namespace Mastwright.Pictures.Sun;

/// <summary>A month of a solar year: how full the battery is hour by hour, and what the panel offers day by day.</summary>
/// <remarks>Hours without service are hatched and counted in words: nothing is said by colour alone.</remarks>
public static class SolarPicture
{
    private const double Margin = 18;
    private const double AxisWidth = 52;
    private const double TextPixels = 13;
    private const double SmallPixels = 11;
    private const int Width = 1000;
    private const int Height = 560;

    /// <summary>Draws a month.</summary>
    /// <param name="name">What station and fit-out.</param>
    /// <param name="setup">What the year was worked out from.</param>
    /// <param name="year">The year.</param>
    /// <param name="month">The month, from 0; <see cref="SolarYearResult.WorstMonth"/> is the one with the emptiest battery.</param>
    /// <param name="theme">Light or dark.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such month.</exception>
    /// <exception cref="InvalidOperationException">The fonts are missing from the program.</exception>
    public static Drawing Draw(string name, SolarSetup setup, SolarYearResult year, int month, Theme theme)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(year);
        ArgumentOutOfRangeException.ThrowIfNegative(month);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(month, 11);
        Palette palette = Palette.Of(theme);
        int first = WeatherYear.FirstHourOf(month);
        int days = WeatherYear.DaysOf(month);
        string monthName = CultureInfo.InvariantCulture.DateTimeFormat.MonthNames[month];
        double without = year.WithoutByHour.AsSpan(first, 24 * days).ToArray().Sum();
        double[] offered = [.. Enumerable.Range(0, days).Select(day => year.OfferedByHour.AsSpan(first + (24 * day), 24).ToArray().Sum(hour => (double)hour))];
        Box charge = new(Margin + AxisWidth, 104, Width - Margin, 324);
        Box light = new(charge.Left, 372, charge.Right, Height - 62);
        string title = $"{name}: {monthName}";
        string words = Text($"{setup.Panel.Watts:0.#} W of panel, {setup.Pack.WattHours:0} Wh of battery, {100 * setup.AgeFactor:0} % of which age leaves; {setup.LoadWatts:0.00} W drawn. {(without > 0 ? Text($"{without:0} h of the month without service") : "No hour of the month without service")}. Weather: {setup.Weather.Name}.");
        return new()
        {
            WidthPixels = Width,
            HeightPixels = Height,
            Title = title,
            Description = Text($"{words} The battery is between {100 * Least(year, first, days):0} % and {100 * Most(year, first, days):0} % full; the panel offers {offered.Min():0.0} to {offered.Max():0.0} Wh a day, {24 * setup.LoadWatts:0.0} Wh are drawn."),
            Paper = palette.Paper,
            Shapes =
            [
                .. SheetHead.Of(title, words, Width, palette),
                new GroupShape("charge", Charge(year, first, days, charge, palette)),
                new GroupShape("offered", Offered(offered, 24 * setup.LoadWatts, light, palette)),
                new GroupShape("days", Days(days, light, palette)),
            ],
        };
    }

    private static ImmutableArray<Shape> Charge(SolarYearResult year, int first, int days, Box box, Palette palette)
    {
        double X(double hour) => box.Left + (hour / (24.0 * days) * box.Width);
        double Y(double share) => box.Bottom - (share * box.Height);
        List<Shape> shapes = [new TextShape(new(Margin, box.Top - 12), "Battery, of what age has left", TextPixels, palette.Ink) { Weight = TextWeight.SemiBold }];
        foreach (double share in (double[])[0, 0.25, 0.5, 0.75, 1])
        {
            shapes.Add(new LineShape([new(box.Left, Y(share)), new(box.Right, Y(share))], new(palette.Faint, 1)));
            shapes.Add(new TextShape(new(box.Left - 8, Y(share) + 4), Text($"{100 * share:0} %"), SmallPixels, palette.Muted) { Anchor = TextAnchor.End });
        }

        for (int from = 0; from < 24 * days; from++)
        {
            int to = from;
            while (to < 24 * days && year.WithoutByHour[first + to] > 0)
            {
                to++;
            }

            if (to > from)
            {
                shapes.Add(AreaShape.Of(new(X(from), box.Top, X(to), box.Bottom), new(palette.Fails.Veil(0.12), new(HatchKind.Rising, palette.Fails)), null));
                from = to;
            }
        }

        ImmutableArray<Spot> line = [.. Enumerable.Range(0, 24 * days).Select(hour => new Spot(X(hour + 0.5), Y(year.ChargeByHour[first + hour] / year.FullAmpereHours)))];
        shapes.Add(new AreaShape([new(line[0].X, box.Bottom), .. line, new(line[^1].X, box.Bottom)], new(palette.Ok.Veil(0.16))));
        shapes.Add(new LineShape(line, new(palette.Ok, 1.8)));
        return [.. shapes];
    }

    private static ImmutableArray<Shape> Offered(double[] wattHours, double drawn, Box box, Palette palette)
    {
        double most = Math.Max(wattHours.Max(), drawn) * 1.08;
        Ticks ticks = Ticks.Between(0, most, 4);
        double Y(double value) => box.Bottom - (value / most * box.Height);
        double width = box.Width / wattHours.Length;
        List<Shape> shapes = [new TextShape(new(Margin, box.Top - 12), "Offered each day behind the charge controller, and drawn (dashed)", TextPixels, palette.Ink) { Weight = TextWeight.SemiBold }];
        foreach (double value in ticks.Values)
        {
            shapes.Add(new LineShape([new(box.Left, Y(value)), new(box.Right, Y(value))], new(palette.Faint, 1)));
            shapes.Add(new TextShape(new(box.Left - 8, Y(value) + 4), $"{ticks.Text(value)} Wh", SmallPixels, palette.Muted) { Anchor = TextAnchor.End });
        }

        for (int day = 0; day < wattHours.Length; day++)
        {
            double left = box.Left + (day * width);

            // A day that brings less than is drawn is hatched.
            Fill fill = wattHours[day] < drawn ? new(palette.Grass, new(HatchKind.Falling, palette.GrassMarks)) : new(palette.Grass);
            shapes.Add(AreaShape.Of(new(left + (0.14 * width), Y(wattHours[day]), left + (0.86 * width), box.Bottom), fill, new(palette.GrassMarks, 1)));
        }

        shapes.Add(new LineShape([new(box.Left, Y(drawn)), new(box.Right, Y(drawn))], new(palette.Ray, 1.6) { Dashes = [7, 4] }));
        return [.. shapes];
    }

    private static ImmutableArray<Shape> Days(int days, Box box, Palette palette)
    {
        List<Shape> shapes = [];
        for (int day = 1; day <= days; day += day == 1 ? 4 : 5)
        {
            double x = box.Left + ((day - 0.5) / days * box.Width);
            shapes.Add(new TextShape(new(x, box.Bottom + 18), day.ToString(CultureInfo.InvariantCulture), SmallPixels, palette.Muted) { Anchor = TextAnchor.Middle });
        }

        shapes.Add(new TextShape(new(box.Right, box.Bottom + 40), "day of the month; hatched days bring less than is drawn, hatched hours are without service", SmallPixels, palette.Muted) { Anchor = TextAnchor.End });
        return [.. shapes];
    }

    private static double Least(SolarYearResult year, int first, int days) => year.ChargeByHour.AsSpan(first, 24 * days).ToArray().Min() / year.FullAmpereHours;

    private static double Most(SolarYearResult year, int first, int days) => year.ChargeByHour.AsSpan(first, 24 * days).ToArray().Max() / year.FullAmpereHours;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
