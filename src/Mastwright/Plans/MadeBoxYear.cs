using System.Collections.Immutable;
using Mastwright.Station.BoxClimate;
using Mastwright.Station.Sun;

namespace Mastwright.Plans;

/// <summary>A year of weather around a box, made from the months' means where no weather file is: for how long dew stands in it, not for its extremes.</summary>
/// <remarks>
/// Light, air and sky are those of <see cref="MonthlyClimate.Year(SunSite, string, int)"/>, whose draws belong to the station. The air holds as much water all day as makes the stated
/// humidity in the day's coldest hour (common practice: nights are damp, days dry), and no wind blows.
/// </remarks>
internal static class MadeBoxYear
{
    /// <summary>What a person reads.</summary>
    internal const string Name = "a made year with the months' means";

    /// <summary>The hours.</summary>
    /// <param name="climate">The months' means.</param>
    /// <param name="place">The place.</param>
    /// <param name="key">What the draws belong to: the station's key.</param>
    /// <param name="nightHumidity">Relative humidity in each day's coldest hour, as a share above zero.</param>
    internal static ImmutableArray<BoxHour> Of(MonthlyClimate climate, SunSite place, string key, double nightHumidity)
    {
        ImmutableArray<WeatherHour> hours = climate.Year(place, key).Hours;
        ImmutableArray<BoxHour>.Builder year = ImmutableArray.CreateBuilder<BoxHour>(hours.Length);
        for (int day = 0; day < hours.Length / 24; day++)
        {
            ReadOnlySpan<WeatherHour> ofDay = hours.AsSpan(24 * day, 24);
            double coldest = double.PositiveInfinity;
            foreach (WeatherHour hour in ofDay)
            {
                coldest = Math.Min(coldest, hour.Celsius);
            }

            double vapour = nightHumidity * HumidAir.SaturationHpa(coldest);
            foreach (WeatherHour hour in ofDay)
            {
                year.Add(new(
                    hour.Celsius, vapour / HumidAir.SaturationHpa(hour.Celsius), hour.Light.Direct, hour.Light.Diffuse, hour.Light.Global, 0, hour.Sky));
            }
        }

        return year.MoveToImmutable();
    }
}
