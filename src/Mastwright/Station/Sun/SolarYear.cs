using System.Buffers;
using Mastwright.Findings;
using Mastwright.Station.HoldUp;

namespace Mastwright.Station.Sun;

/// <summary>A panel and a battery through a year, hour by hour.</summary>
/// <remarks>
/// The year is run twice and the second time counted, so that it begins as charged as it ends (where the battery is full once in between, exactly so). In each hour the light on the panel, the panel's temperature and
/// the charge controller say what is offered; <see cref="BatteryHour"/> says what comes of it at the battery's temperature.
/// </remarks>
public static class SolarYear
{
    private const int Hours = WeatherYear.HourCount;

    /// <summary>What a panel of one watt gives behind its controller in each hour, in watts; and how the light of the year got lost on the way.</summary>
    /// <param name="setup">The panel in its place; its battery and loads are asked only where snow covers it: it lies where it empties that battery most.</param>
    public static SolarYield YieldOf(SolarSetup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        return YieldOf(setup, PanelTrack.Of(setup.Panel, setup.Horizon, setup.Weather.SunOver(setup.Place)));
    }

    /// <summary>The same under a sun that was worked out before.</summary>
    /// <param name="setup">The panel in its place; its battery and loads are asked only where snow covers it: it lies where it empties that battery most.</param>
    /// <param name="track">What its panel makes of the light: of its own horizon, and of the sun of its weather over its place.</param>
    public static SolarYield YieldOf(SolarSetup setup, PanelTrack track)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(track);
        double[] open = new double[Hours];
        double[] shaded = new double[Hours];
        for (int hour = 0; hour < Hours; hour++)
        {
            HourLight light = setup.Weather.Hours[hour].Light;
            open[hour] = track.Open[hour].LightOf(light);
            shaded[hour] = track.Shaded[hour].LightOf(light);
        }

        SolarYield clear = YieldOf(setup, open, shaded, 0, 0);
        if (Math.Round(setup.CoveredDays * 24) <= 0)
        {
            return clear;
        }

        (int from, int to) = Covered(setup, clear);
        return YieldOf(setup, open, shaded, from, to);
    }

    private static SolarYield YieldOf(SolarSetup setup, double[] open, double[] shaded, int from, int to)
    {
        SolarPanel panel = setup.Panel;
        double[] watts = new double[Hours];
        double horizon = 0;
        double covered = 0;
        double warmth = 0;
        double losses = 0;
        double controller = 0;
        for (int hour = 0; hour < Hours; hour++)
        {
            horizon += (shaded[hour] - open[hour]) / 1000;
            if (IsBetween(hour, from, to))
            {
                covered -= shaded[hour] / 1000;
                continue;
            }

            double standard = shaded[hour] / 1000;
            double warm = standard * panel.TemperatureFactor(panel.CellCelsius(shaded[hour], setup.Weather.Hours[hour].Celsius));
            double left = warm * (1 - panel.LossShare);
            watts[hour] = left * setup.ControllerEfficiency;
            warmth += warm - standard;
            losses += left - warm;
            controller += watts[hour] - left;
        }

        return new(watts, open.Sum() / 1000, horizon, covered, warmth, losses, controller);
    }

    /// <summary>Runs the year.</summary>
    /// <param name="setup">Panel, battery and loads.</param>
    /// <param name="yield">What the panel gives: <see cref="YieldOf(SolarSetup)"/> of a setup that differs at most in its panel's watts and its battery.</param>
    public static SolarYearResult Run(SolarSetup setup, SolarYield yield)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(yield);
        BatteryStep[] steps = new BatteryStep[Hours];
        First(setup, yield, steps, double.PositiveInfinity);
        double charge = Second(setup, yield, steps);
        double end = steps[^1].ChargeAmpereHours;
        Count count = new();
        for (int hour = 0; hour < Hours; hour++)
        {
            count.Take(hour, steps[hour], setup.LoadWatts, setup.Pack.MostChargeAmperes(CelsiusOf(setup, hour)) == 0);
        }

        double lost = count.Stored * (1 - setup.Pack.Cell.ChargeEfficiency);
        double watts = setup.Panel.Watts;
        Ledger ledger = Ledger.SummingTo(
            count.Served,
            "energy of the solar year",
            "Wh",
            [
                new("light", "light on the open panel, at its rated power", yield.Open * watts, setup.Weather.Name, FormattableString.Invariant($"{yield.Open:0} full hours of {watts:0.#} W")),
                new("horizon", "behind the horizon", yield.Horizon * watts, "plan's ground"),
                new("covered", "under snow or rime", yield.Covered * watts, "plan or assumed"),
                new("warmth", "warmth of the cells", yield.Warmth * watts, "IEC 61215, in proportion"),
                new("losses", "dirt, ageing, wiring", yield.Losses * watts, "plan or assumed"),
                new("controller", "charge controller", yield.Controller * watts, "plan or assumed"),
                new("cold", "not taken: too cold to charge", 0 - count.Cold, setup.Pack.Cell.Source),
                new("full", "not taken: battery full, or charging as fast as it may", 0 - count.Spilled, setup.Pack.Cell.Source),
                new("charging", "lost in charging", 0 - lost, setup.Pack.Cell.Source),
                new("left", "left in the battery", 0 - Kept(count, yield, watts, lost), "balance"),
            ]);
        int worst = count.Without > 0 ? Array.IndexOf(count.WithoutByMonth, count.WithoutByMonth.Max()) : Array.IndexOf(count.LeastByMonth, count.LeastByMonth.Min());
        return new()
        {
            HoursWithout = count.Without,
            KeptWattHours = (end - charge) * setup.Pack.NominalVolts,
            ColdHours = count.ColdHours,
            ServedWattHours = count.Served,
            LeastCharge = count.LeastByMonth.Min() / Math.Max(1e-12, BatteryHour.Full(setup.Pack, setup.AgeFactor)),
            WorstMonth = worst,
            ChargeByHour = count.Charges,
            OfferedByHour = [.. yield.Watts.Select(hour => (float)(hour * watts))],
            WithoutByHour = count.WithoutByHour,
            FullAmpereHours = BatteryHour.Full(setup.Pack, setup.AgeFactor),
            Ledger = ledger,
        };
    }

    /// <summary>What the balance leaves in the battery over the year: the difference of its charges, to rounding (tested).</summary>
    private static double Kept(Count count, SolarYield yield, double watts, double lost) =>
        (yield.Offered * watts) - count.Cold - count.Spilled - lost - count.Served;

    /// <summary>Hours in the year without service, the same as <see cref="Run"/> finds, without its account: for trying many sizes.</summary>
    /// <param name="setup">Panel, battery and loads.</param>
    /// <param name="yield">What the panel gives.</param>
    /// <param name="enough">Hours above which the exact number is of no interest.</param>
    /// <returns>The hours; where they are more than enough, some number above it.</returns>
    public static double HoursWithout(SolarSetup setup, SolarYield yield, double enough = double.PositiveInfinity)
    {
        ArgumentNullException.ThrowIfNull(setup);
        ArgumentNullException.ThrowIfNull(yield);
        BatteryStep[] steps = ArrayPool<BatteryStep>.Shared.Rent(Hours);
        try
        {
            // From a full battery it is never without service for longer than from the one that the year ends with.
            double without = First(setup, yield, steps, enough);
            if (without > enough)
            {
                return without;
            }

            Second(setup, yield, steps);
            double sum = 0;
            foreach (BatteryStep step in steps.AsSpan(0, Hours))
            {
                sum += Without(step, setup.LoadWatts);
            }

            return sum;
        }
        finally
        {
            ArrayPool<BatteryStep>.Shared.Return(steps);
        }
    }

    /// <summary>The year from a full battery; ends early once it was without service for more than enough. Gives the hours without service.</summary>
    private static double First(SolarSetup setup, SolarYield yield, BatteryStep[] steps, double enough)
    {
        double charge = BatteryHour.Full(setup.Pack, setup.AgeFactor);
        double without = 0;
        for (int hour = 0; hour < Hours && without <= enough; hour++)
        {
            steps[hour] = StepOf(setup, yield, hour, charge);
            charge = steps[hour].ChargeAmpereHours;
            without += Without(steps[hour], setup.LoadWatts);
        }

        return without;
    }

    /// <summary>
    /// The year again, from what the first left; gives that charge. As soon as an hour ends as it did in the first, usually with the first full battery of the spring, all that
    /// follows is the same to the last digit and stays.
    /// </summary>
    private static double Second(SolarSetup setup, SolarYield yield, BatteryStep[] steps)
    {
        double start = steps[Hours - 1].ChargeAmpereHours;
        double charge = start;
        for (int hour = 0; hour < Hours; hour++)
        {
            double before = steps[hour].ChargeAmpereHours;
            steps[hour] = StepOf(setup, yield, hour, charge);
            charge = steps[hour].ChargeAmpereHours;
            if (charge.Equals(before))
            {
                break;
            }
        }

        return start;
    }

    private static BatteryStep StepOf(SolarSetup setup, SolarYield yield, int hour, double charge) => BatteryHour.Step(
        setup.Pack, charge, new(setup.LoadWatts, setup.PeakWatts, yield.Watts[hour] * setup.Panel.Watts, CelsiusOf(setup, hour), 1, setup.CutOffVolts, setup.AgeFactor));

    private static double CelsiusOf(SolarSetup setup, int hour) => setup.Weather.Hours[hour].Celsius + setup.BatteryRiseKelvin;

    private static double Without(BatteryStep step, double load) => load > 0 && step.UnservedWattHours > 1e-9 * load ? step.UnservedWattHours / load : 0;

    /// <summary>The hours that lie under snow: so many days in a row where they harm most.</summary>
    private static (int From, int To) Covered(SolarSetup setup, SolarYield clear)
    {
        BatteryStep[] steps = new BatteryStep[Hours];
        First(setup, clear, steps, double.PositiveInfinity);
        Second(setup, clear, steps);
        SolarYield dark = clear with { Watts = new double[Hours] };
        return SolarCover.Worst(setup.CoveredDays, steps, (hour, charge, isLit) => StepOf(setup, isLit ? clear : dark, hour, charge), step => Without(step, setup.LoadWatts));
    }

    private static bool IsBetween(int hour, int from, int to) => (hour >= from && hour < to) || (hour - Hours >= from && hour - Hours < to);

    private sealed class Count
    {
        internal double[] LeastByMonth { get; } = [.. Enumerable.Repeat(double.PositiveInfinity, 12)];

        internal double[] WithoutByMonth { get; } = new double[12];

        internal float[] Charges { get; } = new float[Hours];

        internal float[] WithoutByHour { get; } = new float[Hours];

        internal double Without { get; private set; }

        internal int ColdHours { get; private set; }

        internal double Served { get; private set; }

        internal double Stored { get; private set; }

        internal double Spilled { get; private set; }

        internal double Cold { get; private set; }

        internal void Take(int hour, BatteryStep step, double load, bool isCold)
        {
            Served += step.ServedWattHours;
            Stored += step.StoredWattHours;
            double without = SolarYear.Without(step, load);
            Without += without;
            WithoutByHour[hour] = (float)without;
            if (isCold && step.SpilledWattHours > 0)
            {
                ColdHours++;
                Cold += step.SpilledWattHours;
            }
            else
            {
                Spilled += step.SpilledWattHours;
            }

            int month = WeatherYear.MonthOf(hour);
            WithoutByMonth[month] += without;
            LeastByMonth[month] = Math.Min(LeastByMonth[month], step.ChargeAmpereHours);
            Charges[hour] = (float)step.ChargeAmpereHours;
        }
    }
}

/// <summary>What a panel of one watt gives in a year, and where the light went; all but the hours in watt-hours a watt.</summary>
/// <param name="Watts">What it gives behind its controller in each hour, in watts.</param>
/// <param name="Open">Light on it with a level horizon: hours at its rated power.</param>
/// <param name="Horizon">What the horizon takes: zero or less.</param>
/// <param name="Covered">What snow and rime take: zero or less.</param>
/// <param name="Warmth">What the cells' temperature takes, or gives in the cold.</param>
/// <param name="Losses">What dirt, ageing and wiring take: zero or less.</param>
/// <param name="Controller">What the charge controller takes: zero or less.</param>
public sealed record SolarYield(double[] Watts, double Open, double Horizon, double Covered, double Warmth, double Losses, double Controller)
{
    /// <summary>What it gives behind its controller in the year.</summary>
    public double Offered => Watts.Sum();
}

/// <summary>What came of a solar year.</summary>
public sealed record SolarYearResult
{
    /// <summary>Hours in the year without service.</summary>
    public required double HoursWithout { get; init; }

    /// <summary>Hours in which there was light to spare and the battery too cold to take it.</summary>
    public required int ColdHours { get; init; }

    /// <summary>What the loads got, in watt-hours.</summary>
    public required double ServedWattHours { get; init; }

    /// <summary>The least state of charge of the year, 0 to 1 of what age has left.</summary>
    public required double LeastCharge { get; init; }

    /// <summary>What the battery holds more at the end of the year than at its beginning, by its charge, in watt-hours.</summary>
    public required double KeptWattHours { get; init; }

    /// <summary>The month, from 0, with most hours without service; where there are none, with the emptiest battery. Of several the first.</summary>
    public required int WorstMonth { get; init; }

    /// <summary>Charge in ampere-hours at the end of each hour.</summary>
    public required float[] ChargeByHour { get; init; }

    /// <summary>What the panel offers behind its controller in each hour, in watts.</summary>
    public required float[] OfferedByHour { get; init; }

    /// <summary>Share of each hour without service, 0 to 1.</summary>
    public required float[] WithoutByHour { get; init; }

    /// <summary>Charge in ampere-hours of the full battery, as age has left it.</summary>
    public required double FullAmpereHours { get; init; }

    /// <summary>The year's energy from the light to the loads.</summary>
    public required Ledger Ledger { get; init; }
}
