using System.Collections.Immutable;
using Mastwright.Quantities;
using Mastwright.Station.BoxClimate;

namespace Mastwright.Station.Sun;

/// <summary>What is known of a place's year where there is no weather file: two numbers a month.</summary>
public sealed record MonthlyClimate
{
    /// <summary>Light on level ground in kilowatt-hours a square metre and day, January first: twelve, each zero or more: zero is a month without sun.</summary>
    /// <exception cref="ArgumentException">There are not twelve, or one is below zero.</exception>
    public required ImmutableArray<double> LightKilowattHours { get; init => field = Twelve(value) && value.All(light => light >= 0) ? value : throw new ArgumentException("A year has twelve months, each with light of zero or more.", nameof(value)); }

    /// <summary>Temperature of the air in °C, January first: twelve.</summary>
    /// <exception cref="ArgumentException">There are not twelve.</exception>
    public required ImmutableArray<double> Celsius { get; init => field = Twelve(value) ? value : throw new ArgumentException("A year has twelve months.", nameof(value)); }

    /// <summary>A year that has these means, hour by hour.</summary>
    /// <param name="place">The place.</param>
    /// <param name="key">What the draws belong to, such as the station's key.</param>
    /// <param name="year">The year that the sun is taken from.</param>
    /// <remarks>
    /// <para>Each day is a share of a clear day: exp(0.6·z) about the month's, never above 1, with a correlation of 0.3 from day to day (from memory), then
    /// brought to the month's mean (no more than a clear sky's: ask <see cref="ClearKilowattHours"/>). Each hour has the day's share of its clear light, split by <see cref="SunLight.Split"/>.</para>
    /// <para>Temperature: the month's mean with straight lines between the middles of months, a daily swing of ±3 K that grows with the light, and 2 K of
    /// weather that follows the same draws. Sky: between an overcast one, black and as warm as the air, and a clear one, by the day's share of clear light
    /// (common practice). Good for how many dark days come together, not for any one of them.</para>
    /// </remarks>
    public WeatherYear Year(SunSite place, string key, int year = 2023)
    {
        ArgumentNullException.ThrowIfNull(key);
        return Year(SunTrack.Of(year, ZoneOf(place), place), place, KeyedDraws.SeedOf(key), year);
    }

    /// <summary>Several years that have these means, each drawn for itself, the first of them <see cref="Year(SunSite, string, int)"/>.</summary>
    /// <param name="place">The place.</param>
    /// <param name="key">What the draws belong to, such as the station's key.</param>
    /// <param name="count">How many, 1 or more.</param>
    /// <param name="sun">Where the sun stands in all of them.</param>
    /// <param name="year">The year that the sun is taken from.</param>
    public ImmutableArray<WeatherYear> Years(SunSite place, string key, int count, out SunTrack sun, int year = 2023)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ulong seed = KeyedDraws.SeedOf(key);
        SunTrack track = SunTrack.Of(year, ZoneOf(place), place);
        sun = track;
        return [.. Enumerable.Range(0, count).Select(draw => Year(track, place, draw == 0 ? seed : KeyedDraws.Within(seed, (ulong)draw), year))];
    }

    private static double ZoneOf(SunSite place) => Math.Round(place.LongitudeDegrees / 15);

    private WeatherYear Year(SunTrack track, SunSite place, ulong seed, int year)
    {
        double zone = ZoneOf(place);
        ImmutableArray<SunPlace> sun = track.Places;
        double[] clear = new double[sun.Length];
        for (int hour = 0; hour < sun.Length; hour++)
        {
            clear[hour] = SunLight.ClearGlobal(sun[hour].Up);
        }

        double[] moods = Moods(seed);
        double[] shares = new double[moods.Length];
        for (int month = 0; month < 12; month++)
        {
            FillShares(month, clear, moods, shares);
        }

        WeatherHour[] hours = new WeatherHour[sun.Length];
        for (int hour = 0; hour < hours.Length; hour++)
        {
            int day = hour / 24;
            double brightness = shares[day];
            double swing = 1 + (4 * brightness);
            double celsius = MeanCelsius(hour) + (2 * moods[day]) + (swing * Math.Cos(2 * Math.PI * ((hour % 24) + 0.5 - 15) / 24));
            double sky = NightSky.BlackWattsPerSquareMetre(celsius);
            sky -= brightness * (sky - NightSky.ClearSkyWattsPerSquareMetre(celsius));
            hours[hour] = new(SunLight.Split(clear[hour] * brightness, sun[hour]), celsius, double.NaN, double.NaN, sky);
        }

        return WeatherYear.Of("a made year with the months' means", year, zone, [.. hours]);
    }

    /// <summary>The light of a clear sky on level ground, month by month, in kilowatt-hours a square metre and day: what no month's mean exceeds.</summary>
    public static ImmutableArray<double> ClearKilowattHours(SunSite place, int year = 2023)
    {
        double zone = ZoneOf(place);
        double[] sums = new double[12];
        for (int hour = 0; hour < WeatherYear.HourCount; hour++)
        {
            sums[WeatherYear.MonthOf(hour)] += SunLight.ClearGlobal(WeatherYear.SunAt(year, zone, hour, place).Up) / 1000;
        }

        return [.. sums.Select((sum, month) => sum / WeatherYear.DaysOf(month))];
    }

    private static bool Twelve(ImmutableArray<double> months) => !months.IsDefault && months.Length == 12 && months.All(double.IsFinite);

    private static double[] Moods(ulong seed)
    {
        const double kept = 0.3;
        double[] moods = new double[WeatherYear.HourCount / 24];
        double before = KeyedDraws.Normal(seed, 0);
        for (int day = 0; day < moods.Length; day++)
        {
            before = (kept * before) + (Math.Sqrt(1 - (kept * kept)) * KeyedDraws.Normal(seed, day + 1));
            moods[day] = before;
        }

        return moods;
    }

    /// <summary>Shares of clear light for the days of a month, with the month's mean light; the factor is found by halving.</summary>
    private void FillShares(int month, double[] clear, double[] moods, double[] shares)
    {
        int first = WeatherYear.FirstHourOf(month) / 24;
        int days = WeatherYear.DaysOf(month);
        double[] most = new double[days];
        double[] drawn = new double[days];
        for (int day = 0; day < days; day++)
        {
            double sum = 0;
            foreach (double hour in clear.AsSpan((first + day) * 24, 24))
            {
                sum += hour;
            }

            most[day] = sum / 1000;
            drawn[day] = Math.Exp(0.6 * moods[first + day]);
        }

        double wanted = LightKilowattHours[month] * days;
        double low = 0;
        double high = 1e3;
        for (int i = 0; i < 60; i++)
        {
            double factor = (low + high) / 2;
            double sum = 0;
            for (int day = 0; day < days; day++)
            {
                shares[first + day] = Math.Min(1, factor * drawn[day]);
                sum += most[day] * shares[first + day];
            }

            (low, high) = sum < wanted ? (factor, high) : (low, factor);
        }
    }

    private double MeanCelsius(int hour)
    {
        // Straight lines between the middles of months.
        int month = WeatherYear.MonthOf(hour);
        double into = (hour - WeatherYear.FirstHourOf(month)) / (24.0 * WeatherYear.DaysOf(month));
        int other = into < 0.5 ? (month + 11) % 12 : (month + 1) % 12;
        double share = Math.Abs(into - 0.5);
        return Celsius[month] + (share * (Celsius[other] - Celsius[month]));
    }
}
