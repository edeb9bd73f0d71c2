using Mastwright.Station.HoldUp;

namespace Mastwright.Station.Sun;

/// <summary>Where in a year days under snow or rime harm a station most.</summary>
/// <remarks>
/// Every day of the year is tried as the last one under snow: the battery goes through that stretch without light, beginning as the year without snow has it there, and on until its charge is again what
/// it is without snow. The stretch with most hours without service is the worst; among those that cost none, the one with the emptiest battery. With a given last day more snow is the same snow and
/// more, so that more days never harm less (tested).
/// </remarks>
internal static class SolarCover
{
    private const int Hours = WeatherYear.HourCount;

    /// <summary>The worst stretch, from its first hour to the one after its last; a year of hours may be added to either.</summary>
    /// <param name="days">Days in a row, above zero; no more than the year's count.</param>
    /// <param name="year">The year without snow, hour by hour.</param>
    /// <param name="step">What comes of an hour with a charge at its beginning, with or without light.</param>
    /// <param name="without">Hours without service in a step.</param>
    internal static (int From, int To) Worst(double days, ReadOnlySpan<BatteryStep> year, Func<int, double, bool, BatteryStep> step, Func<BatteryStep, double> without)
    {
        int length = Math.Min(Hours, (int)Math.Round(days * 24));
        (double most, double least, int worst) = (double.NegativeInfinity, double.PositiveInfinity, 0);
        for (int end = 24; end <= Hours; end += 24)
        {
            (double more, double charge) = Harm(end - length, length, year, step, without);
            bool isSame = Math.Abs(more - most) <= 1e-9;
            if (isSame ? charge < least - 1e-12 : more > most)
            {
                (most, least, worst) = (more, charge, end);
            }
        }

        return (worst - length, worst);
    }

    /// <summary>Hours without service that a stretch adds, and the least charge from its beginning until it is made good.</summary>
    private static (double MoreWithout, double LeastCharge) Harm(int from, int length, ReadOnlySpan<BatteryStep> year, Func<int, double, bool, BatteryStep> step, Func<BatteryStep, double> without)
    {
        double charge = year[Place(from - 1)].ChargeAmpereHours;
        double least = charge;
        double more = 0;
        for (int passed = 0; passed < Hours; passed++)
        {
            int hour = Place(from + passed);
            BatteryStep now = step(hour, charge, passed >= length);
            charge = now.ChargeAmpereHours;
            least = Math.Min(least, charge);
            more += without(now) - without(year[hour]);
            if (passed >= length && charge.Equals(year[hour].ChargeAmpereHours))
            {
                break;
            }
        }

        return (more, least);
    }

    private static int Place(int hour) => ((hour % Hours) + Hours) % Hours;
}
