using System.Collections.Immutable;
using System.Globalization;

namespace Mastwright.Station.Sun;

/// <summary>One hour of weather: means over it.</summary>
/// <param name="Light">The light.</param>
/// <param name="Celsius">Temperature of the air.</param>
/// <param name="RelativeHumidity">Relative humidity, 0 to 1; NaN when unknown.</param>
/// <param name="WindMetresPerSecond">Speed of the wind; NaN when unknown.</param>
/// <param name="Sky">Heat radiation of the sky on a level square metre, in watts; NaN when unknown.</param>
public readonly record struct WeatherHour(HourLight Light, double Celsius, double RelativeHumidity, double WindMetresPerSecond, double Sky = double.NaN)
{
    /// <summary>Light and temperature, in the invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{Light}, {Celsius:0.#} °C");
}

/// <summary>A year of weather, hour by hour, and where the sun stands in each.</summary>
public sealed class WeatherYear
{
    /// <summary>Hours of an ordinary year.</summary>
    public const int HourCount = 8760;

    /// <summary>The moment of an hour that its mean light belongs to, as a share of it.</summary>
    public const double MiddleOfHour = 0.5;

    /// <summary>Sine of the height of 3° above the horizon, from which on a sky gives whole watts under any cloud: common practice.</summary>
    private const double LightlessUp = 0.05;

    private static readonly ImmutableArray<int> DaysBefore = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365];

    private WeatherYear(string name, int year, double hoursFromUniversal, ImmutableArray<WeatherHour> hours)
    {
        Name = name;
        Year = year;
        HoursFromUniversal = hoursFromUniversal;
        Hours = hours;
    }

    /// <summary>What a person reads: a file, or how it was made.</summary>
    public string Name { get; }

    /// <summary>The year that the sun is taken from.</summary>
    public int Year { get; }

    /// <summary>Hours by which its clock is ahead of universal time.</summary>
    public double HoursFromUniversal { get; }

    /// <summary>Where it was measured or modelled, which its sun is taken from; null when it does not say.</summary>
    public SunSite? Place { get; private init; }

    /// <summary>The moment of each hour that its light belongs to, as a share of it from its beginning: the middle, but for years of instants.</summary>
    public double Moment { get; private init; } = MiddleOfHour;

    /// <summary>Hours by which its light is off its clock, as the file says; null when it says nothing.</summary>
    public double? StatedOffsetHours { get; private init; }

    /// <summary>The hours, from midnight on 1 January of its own clock: <see cref="HourCount"/> of them.</summary>
    public ImmutableArray<WeatherHour> Hours { get; }

    /// <summary>A year.</summary>
    /// <param name="name">What a person reads.</param>
    /// <param name="year">The year that the sun is taken from.</param>
    /// <param name="hoursFromUniversal">Hours by which the clock is ahead of universal time, -12 to 14.</param>
    /// <param name="hours">The hours.</param>
    /// <param name="place">Where it was measured; null when it does not say.</param>
    /// <exception cref="ArgumentException">It is not a year, or a number is not finite.</exception>
    public static WeatherYear Of(string name, int year, double hoursFromUniversal, ImmutableArray<WeatherHour> hours, SunSite? place = null)
    {
        bool isWhole = hours.Length == HourCount
            && hours.All(hour => double.IsFinite(hour.Celsius) && hour.Light is { Global: >= 0 and < 2000, Direct: >= 0 and < 2000, Diffuse: >= 0 and < 2000 });
        return isWhole && hoursFromUniversal is >= -12 and <= 14
            ? new(name, year, hoursFromUniversal, hours) { Place = place }
            : throw new ArgumentException($"A year has {HourCount} hours of light and temperature.", nameof(hours));
    }

    /// <summary>This year with its light at another moment of its hours.</summary>
    /// <param name="moment">As a share of the hour from its beginning.</param>
    /// <param name="statedOffsetHours">What the file says of it.</param>
    public WeatherYear WithLightAt(double moment, double statedOffsetHours) =>
        new(Name, Year, HoursFromUniversal, Hours) { Place = Place, Moment = moment, StatedOffsetHours = statedOffsetHours };

    /// <summary>The month of an hour, from 0.</summary>
    public static int MonthOf(int hour)
    {
        int day = hour / 24;
        int month = 0;
        while (month < 11 && day >= DaysBefore[month + 1])
        {
            month++;
        }

        return month;
    }

    /// <summary>A day of the year, from 0, as a date such as "3 January".</summary>
    public static string DateOf(int day) =>
        string.Create(CultureInfo.InvariantCulture, $"{day - DaysBefore[MonthOf(day * 24)] + 1} {CultureInfo.InvariantCulture.DateTimeFormat.MonthNames[MonthOf(day * 24)]}");

    /// <summary>Days, from 0, on which no hour has any light though the sun stands well up in one: gaps in a record rather than weather.</summary>
    /// <param name="place">Where it was measured.</param>
    public ImmutableArray<int> LightlessDays(SunSite place) =>
        [.. Enumerable.Range(0, HourCount / 24).Where(day => Enumerable.Range(24 * day, 24).All(hour => Hours[hour].Light is { Global: 0, Direct: 0, Diffuse: 0 })
            && Enumerable.Range(24 * day, 24).Any(hour => SunAt(hour, place).Up > LightlessUp))];

    /// <summary>Days of a month, from 0.</summary>
    public static int DaysOf(int month) => DaysBefore[month + 1] - DaysBefore[month];

    /// <summary>First hour of a month, from 0.</summary>
    public static int FirstHourOf(int month) => DaysBefore[month] * 24;

    /// <summary>The sun in the middle of an hour of a clock.</summary>
    /// <param name="year">The year.</param>
    /// <param name="hoursFromUniversal">Hours by which the clock is ahead of universal time.</param>
    /// <param name="hour">The hour, from 0.</param>
    /// <param name="place">Where one stands.</param>
    /// <param name="moment">The moment of the hour, as a share of it from its beginning.</param>
    public static SunPlace SunAt(int year, double hoursFromUniversal, int hour, SunSite place, double moment = MiddleOfHour) =>
        SunPosition.Of(SunPosition.JulianDate(year, 1 + ((hour + moment - hoursFromUniversal) / 24)), place);

    /// <summary>The sun at the moment of an hour of this year that its light belongs to.</summary>
    public SunPlace SunAt(int hour, SunSite place) => SunAt(Year, HoursFromUniversal, hour, place, Moment);

    /// <summary>The sun in every hour of this year.</summary>
    /// <param name="place">Where one stands.</param>
    public SunTrack SunOver(SunSite place) => SunTrack.Of(Year, HoursFromUniversal, place, Moment);
}
