using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Quantities;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Sun;

namespace Mastwright.Plans;

/// <summary>The days and the year of a fit-out's box, from the weather of its site or, where the plan names none, from made clear days.</summary>
/// <remarks>
/// A made day has a clear sky, no wind and air that swings by <see cref="BoxDefaults.ClearDaySwingKelvin"/> about its mean. The hottest one comes up to the
/// plan's hottest air in the longest light of the year, the coldest one goes down to its coldest in the shortest.
/// </remarks>
public static class StationBoxCourse
{
    private const int MidJune = 171;
    private const int MidDecember = 354;
    private const int AnyYear = 2023;

    /// <summary>Works it out; null where the box's numbers are not known.</summary>
    /// <param name="report">What was worked out of the fit-out.</param>
    public static BoxCourse? Of(FitOutReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report.Box is not { Model: { } model, OutsideCelsius: { } outside, HeatWatts: { } heat })
        {
            return null;
        }

        BoxModel hot = model with { OwnWatts = heat.High };
        (ImmutableArray<BoxHour> year, string name, bool isMade) = StationBox.YearAt(report.Station, report.Station.FitOut!.Box);
        return (year.IsEmpty || isMade ? Made(report, model, hot, outside) : OfYear(name, model, hot, year)) with { InsideCelsius = report.Box.InsideCelsius!.Value };
    }

    private static BoxCourse OfYear(string name, BoxModel model, BoxModel hot, ImmutableArray<BoxHour> year)
    {
        BoxYear through = BoxYear.Of(model, year.AsSpan());
        int hottest = Enumerable.Range(0, year.Length).MaxBy(hour => hot.Of(year[hour]).Inside) / 24;
        int coldest = Enumerable.Range(0, year.Length).MinBy(hour => model.Of(year[hour]).Inside) / 24;
        return new()
        {
            Hot = BoxCourse.Day(Date(hottest), hot, year.AsSpan(24 * hottest, 24)),
            Cold = BoxCourse.Day(Date(coldest), model, year.AsSpan(24 * coldest, 24)),
            Months = Months(model, year, through),
            Source = name,
        };
    }

    private static ImmutableArray<BoxMonth> Months(BoxModel model, ImmutableArray<BoxHour> year, BoxYear through) =>
    [
        .. Enumerable.Range(0, 12).Select(month =>
        {
            (int first, int count) = (WeatherYear.FirstHourOf(month), 24 * WeatherYear.DaysOf(month));
            return BoxCourse.Month(model, year.AsSpan(first, count), through.IsWetByHour.AsSpan(first, count).ToArray().Count(wet => wet));
        }),
    ];

    private static BoxCourse Made(FitOutReport report, BoxModel model, BoxModel hot, Estimate outside)
    {
        double swing = BoxDefaults.ClearDaySwingKelvin;
        double humidity = report.Station.FitOut!.Box.NightHumidity ?? BoxDefaults.NightHumidity;
        SunSite place = new(report.Station.Position.Point.LatitudeDegrees, report.Station.Position.Point.LongitudeDegrees);
        (int summer, int winter) = place.LatitudeDegrees < 0 ? (MidDecember, MidJune) : (MidJune, MidDecember);
        (ImmutableArray<BoxHour> year, string name, bool isMade) = StationBox.YearAt(report.Station, report.Station.FitOut!.Box);
        ImmutableArray<BoxMonth> months = isMade ? Months(model, year, BoxYear.Of(model, year.AsSpan())) : [];
        return new()
        {
            Hot = BoxCourse.Day("a clear, still day in the longest light", hot, Clear(place, summer, outside.High - swing, humidity)),
            Cold = BoxCourse.Day("a clear, still day in the shortest light", model, Clear(place, winter, outside.Low + swing, humidity)),
            Months = months,
            Source = string.Create(CultureInfo.InvariantCulture, $"made clear days without wind, ± {swing:0} K about their mean, {100 * humidity:0} % humid at their coldest: common practice{(isMade ? $"; months from {name}" : "")}"),
        };
    }

    /// <summary>The hours of a made day.</summary>
    private static BoxHour[] Clear(SunSite place, int day, double meanCelsius, double humidity)
    {
        double zone = Math.Round(place.LongitudeDegrees / 15);
        double vapour = humidity * HumidAir.SaturationHpa(meanCelsius - BoxDefaults.ClearDaySwingKelvin);
        BoxHour[] hours = new BoxHour[24];
        for (int i = 0; i < hours.Length; i++)
        {
            SunPlace sun = WeatherYear.SunAt(AnyYear, zone, (24 * day) + i, place);
            HourLight light = SunLight.Split(SunLight.ClearGlobal(sun.Up), sun);
            double celsius = meanCelsius + (BoxDefaults.ClearDaySwingKelvin * Math.Cos(2 * Math.PI * (i + 0.5 - 15) / 24));
            hours[i] = new(celsius, Math.Min(1, vapour / HumidAir.SaturationHpa(celsius)), light.Direct, light.Diffuse, light.Global, 0, null);
        }

        return hours;
    }

    private static string Date(int day)
    {
        int month = WeatherYear.MonthOf(24 * day);
        return string.Create(CultureInfo.InvariantCulture, $"{day - (WeatherYear.FirstHourOf(month) / 24) + 1} {CultureInfo.InvariantCulture.DateTimeFormat.MonthNames[month]}");
    }
}
