namespace Mastwright.Station.Sun;

/// <summary>The moment of its hours that a weather file's light belongs to, found from the light itself.</summary>
/// <remarks>
/// Direct light on the level and the light of the sky make up the global light when the sun is taken at the right moment: G = D·sin h + S. Files made of instants and not of means over hours
/// say by a line of their header how far off they are, but not all count from the same edge of the hour; so that line makes one look, and the light decides.
/// </remarks>
public static class LightMoment
{
    private const double Furthest = 1.5;
    private const double Step = 0.05;

    /// <summary>The share of an hour, from its beginning, at which the parts of the light fit best; below 0 and above 1 are moments of the hours beside it.</summary>
    /// <param name="weather">The year.</param>
    /// <param name="place">Where it was measured.</param>
    /// <returns>The middle of the hour where no other moment fits clearly better: by half of the misfit.</returns>
    /// <remarks>Error: a quarter of a step, some 1 min; a year without direct light says nothing, and gets the middle.</remarks>
    public static double Of(WeatherYear weather, SunSite place)
    {
        ArgumentNullException.ThrowIfNull(weather);
        double middle = Misfit(weather, place, WeatherYear.MiddleOfHour);
        int steps = (int)Math.Round(2 * Furthest / Step);
        double[] misfits = [.. Enumerable.Range(0, steps + 1).Select(i => Misfit(weather, place, MomentOf(i)))];
        int best = Array.IndexOf(misfits, misfits.Min());
        if (best == 0 || best == steps || !(misfits[best] < middle / 2))
        {
            return WeatherYear.MiddleOfHour;
        }

        // The misfit falls and rises in straight lines from its least: where those of the two neighbours meet.
        double fall = misfits[best - 1] - misfits[best + 1];
        return MomentOf(best) + (Step / 2 * fall / (Math.Max(misfits[best - 1], misfits[best + 1]) - misfits[best]));
    }

    private static double MomentOf(int index) => WeatherYear.MiddleOfHour - Furthest + (index * Step);

    /// <summary>How far the parts are from the whole, as a share of the light: over every fifth day, which is enough for a minute.</summary>
    private static double Misfit(WeatherYear weather, SunSite place, double moment)
    {
        double off = 0;
        double sum = 0;
        for (int hour = 0; hour < WeatherYear.HourCount; hour++)
        {
            HourLight light = weather.Hours[hour].Light;
            if (hour / 24 % 5 == 0 && light.Direct > 0)
            {
                double up = Math.Max(0, WeatherYear.SunAt(weather.Year, weather.HoursFromUniversal, hour, place, moment).Up);
                off += Math.Abs((light.Direct * up) + light.Diffuse - light.Global);
                sum += light.Global;
            }
        }

        return sum > 0 ? off / sum : 0;
    }
}
