using System.Collections.Immutable;
using Mastwright.Quantities;
using Mastwright.Station.HoldUp;
using Mastwright.Station.Supply;

namespace Mastwright.Station.Sun;

/// <summary>Hours a year without service as a range: over the years that were drawn, what the loads may draw, and how cells of one type differ.</summary>
/// <remarks>
/// Low: the kindest year, the least load, good cells (the most that their table leaves in the cold, the longest life). High: the hardest year, the greatest load, poor cells. The middle is
/// the median of the years with the middle of all else. The ends are rarer than each input's own.
/// </remarks>
public sealed record SolarRange
{
    /// <summary>Hours a year without service.</summary>
    public required Estimate Hours { get; init; }

    /// <summary>Years that it is taken over.</summary>
    public required int YearCount { get; init; }

    /// <summary>The setup of the high end: the hardest year, the greatest load, poor cells.</summary>
    public required SolarSetup Poor { get; init; }

    /// <summary>What its panel gives.</summary>
    public required SolarYield PoorYield { get; init; }

    /// <summary>Finds it.</summary>
    /// <param name="setup">The setup with everything in the middle.</param>
    /// <param name="years">The years, one or more.</param>
    /// <param name="track">What the panel makes of the light in all of them.</param>
    /// <param name="battery">The battery with its load.</param>
    /// <exception cref="ArgumentException">There is no year.</exception>
    public static SolarRange Of(SolarSetup setup, ImmutableArray<WeatherYear> years, PanelTrack track, SupplyBatteryResult battery)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(battery);
        if (years.IsDefaultOrEmpty)
        {
            throw new ArgumentException("A range is taken over one year or more.", nameof(years));
        }

        CellRow cell = setup.Pack.Cell;
        Estimate load = battery.Load.MeanWatts;
        double celsius = setup.Weather.Hours.Average(hour => hour.Celsius);
        SolarSetup With(LinearCurve capacity, double lifeYears, double watts) => setup with
        {
            Pack = setup.Pack with { Cell = cell with { CapacityByCelsius = new(capacity, capacity, capacity) } },
            AgeFactor = BatteryPack.AgeFactor(battery.Battery.AgeYears.High, celsius, lifeYears),
            LoadWatts = watts,
        };
        SolarSetup good = With(cell.CapacityByCelsius.High, cell.LifeYears.High, load.Low);
        SolarSetup poor = With(cell.CapacityByCelsius.Low, cell.LifeYears.Low, load.High);
        double low = double.PositiveInfinity;
        double high = double.NegativeInfinity;
        double darkest = double.PositiveInfinity;
        List<double> middles = [];
        SolarSetup hardest = poor;
        SolarYield hardestYield = SolarYear.YieldOf(setup, track);
        foreach (WeatherYear year in years)
        {
            SolarYield yield = SolarYear.YieldOf(setup with { Weather = year }, track);
            double without = SolarYear.HoursWithout(poor with { Weather = year }, yield);

            // Where poor cells under the greatest load are never without service, better ones under less are not either.
            double middle = without == 0 ? 0 : SolarYear.HoursWithout(setup with { Weather = year }, yield);
            middles.Add(middle);
            low = Math.Min(low, middle == 0 ? 0 : SolarYear.HoursWithout(good with { Weather = year }, yield));

            // Of years without a gap the one whose darkest month has the least light is the hardest.
            double dark = Darkest(yield);
            if (without > high || (without.Equals(high) && dark < darkest))
            {
                (high, darkest, hardest, hardestYield) = (without, dark, poor with { Weather = year }, yield);
            }
        }

        middles.Sort();
        double median = middles[middles.Count / 2];
        return new()
        {
            Hours = Estimate.Of(Math.Min(low, median), median, Math.Max(median, high)),
            YearCount = years.Length,
            Poor = hardest,
            PoorYield = hardestYield,
        };
    }

    private static double Darkest(SolarYield yield)
    {
        double least = double.PositiveInfinity;
        for (int month = 0; month < 12; month++)
        {
            double sum = 0;
            foreach (double watts in yield.Watts.AsSpan(WeatherYear.FirstHourOf(month), 24 * WeatherYear.DaysOf(month)))
            {
                sum += watts;
            }

            least = Math.Min(least, sum);
        }

        return least;
    }
}
