using Mastwright.Station.HoldUp;
using Mastwright.Station.Sun;
using Mastwright.Tests.Station.HoldUp;

namespace Mastwright.Tests.Station.Sun;

public sealed class SolarYearTests
{
    private static readonly SunSite Place = new(46.4, -18.6);

    // Invented for the tests: a cloudy oceanic year.
    private static readonly MonthlyClimate Climate = new()
    {
        LightKilowattHours = [1.3, 2.1, 3.4, 4.8, 5.7, 6.1, 6.0, 5.2, 4.0, 2.6, 1.5, 1.1],
        Celsius = [8, 8, 9, 10, 12, 15, 17, 18, 17, 14, 11, 9],
    };

    private static readonly WeatherYear Year = Climate.Year(Place, "test");

    internal static SolarSetup Setup { get; } = new()
    {
        Panel = new() { Watts = 10, TiltDegrees = 50, AzimuthDegrees = 180 },
        Pack = BatteryPackTests.One with { Parallel = 4 },
        AgeFactor = 0.8,
        LoadWatts = 0.5,
        PeakWatts = 1.5,
        CutOffVolts = 3.0,
        Weather = Year,
        Place = Place,
    };

    [Fact]
    public void The_made_year_has_the_means_of_its_months()
    {
        for (int month = 0; month < 12; month++)
        {
            int first = WeatherYear.FirstHourOf(month);
            WeatherHour[] hours = [.. Year.Hours.Skip(first).Take(24 * WeatherYear.DaysOf(month))];
            Assert.Equal(Climate.LightKilowattHours[month], hours.Sum(hour => hour.Light.Global) / 1000 / WeatherYear.DaysOf(month), 1e-6);
            Assert.Equal(Climate.Celsius[month], hours.Average(hour => hour.Celsius), 2.0);
        }
    }

    [Fact]
    public void The_same_key_makes_the_same_year_and_another_another()
    {
        Assert.Equal(Year.Hours, Climate.Year(Place, "test").Hours);
        Assert.NotEqual(Year.Hours, Climate.Year(Place, "other").Hours);
    }

    [Fact]
    public void The_energy_of_the_year_is_neither_made_nor_lost()
    {
        SolarYield yield = SolarYear.YieldOf(Setup);
        SolarYearResult year = SolarYear.Run(Setup, yield);

        // The ledger's line is what its other lines leave; the battery's charges tell it another way.
        Assert.Equal(-year.KeptWattHours, year.Ledger.Lines.Single(line => line.Code == "left").Value, 1e-6);
        Assert.Equal(year.ServedWattHours, (8760 - year.HoursWithout) * Setup.LoadWatts, 1e-6);
        Assert.Equal(yield.Open + yield.Horizon + yield.Covered + yield.Warmth + yield.Losses + yield.Controller, yield.Offered, 1e-9);
    }

    [Fact]
    public void No_hour_of_a_made_year_is_brighter_than_a_clear_one_and_dark_days_come_together()
    {
        double[] days = new double[365];
        for (int hour = 0; hour < 8760; hour++)
        {
            double clear = SunLight.ClearGlobal(Year.SunAt(hour, Place).Up);
            Assert.True(Year.Hours[hour].Light.Global <= clear + 1e-9);
            days[hour / 24] += Year.Hours[hour].Light.Global;
        }

        // Against the month's mean, one day and the next go together by 0.3, and by chance 0.1 more or less.
        double[] off = [.. days.Select((light, day) => Math.Log(light / Climate.LightKilowattHours[WeatherYear.MonthOf(day * 24)]))];
        double mean = off.Average();
        double together = Enumerable.Range(0, 364).Sum(day => (off[day] - mean) * (off[day + 1] - mean)) / off.Sum(one => (one - mean) * (one - mean));
        Assert.InRange(together, 0.1, 0.6);
    }

    [Fact]
    public void More_panel_never_means_more_hours_without_service() =>
        Gen.Select(Gen.Double[2, 40], Gen.Double[1, 3], Gen.Double[0.1, 1.5]).Sample(
            (watts, more, load) =>
            {
                SolarSetup small = Setup with { Panel = Setup.Panel with { Watts = watts }, LoadWatts = load };
                SolarYield yield = SolarYear.YieldOf(small);
                Assert.True(SolarYear.Run(small with { Panel = small.Panel with { Watts = watts * more } }, yield).HoursWithout <= SolarYear.Run(small, yield).HoursWithout + 1e-6);
            },
            iter: 12);

    [Fact]
    public void More_battery_never_means_more_hours_without_service() =>
        Gen.Select(Gen.Int[1, 8], Gen.Int[1, 8], Gen.Double[3, 25]).Sample(
            (cells, more, watts) =>
            {
                SolarSetup small = Setup with { Pack = Setup.Pack with { Parallel = cells }, Panel = Setup.Panel with { Watts = watts } };
                SolarYield yield = SolarYear.YieldOf(small);
                Assert.True(SolarYear.Run(small with { Pack = small.Pack with { Parallel = cells + more } }, yield).HoursWithout <= SolarYear.Run(small, yield).HoursWithout + 1e-6);
            },
            iter: 12);

    [Fact]
    public void A_higher_horizon_never_lets_more_through() =>
        Gen.Select(Gen.Double[0, 40].Array[8], Gen.Double[0, 30]).Sample(
            (line, lift) =>
            {
                SolarSetup low = Setup with { Horizon = HorizonLine.Of([.. line]) };
                SolarSetup high = Setup with { Horizon = HorizonLine.Of([.. line.Select(angle => angle + lift)]) };
                Assert.True(SolarYear.YieldOf(high).Offered <= SolarYear.YieldOf(low).Offered + 1e-9);
            },
            iter: 12);

    [Fact]
    public void Snow_takes_its_days_and_never_gives()
    {
        SolarYield clear = SolarYear.YieldOf(Setup);
        SolarYield snowed = SolarYear.YieldOf(Setup with { CoveredDays = 20 });
        int lost = snowed.Watts.Zip(clear.Watts).Count(pair => pair.First == 0 && pair.Second > 0);
        Assert.InRange(lost, 20 * 7, 20 * 16);
        Assert.True(snowed.Covered < 0);
        Assert.True(snowed.Offered < clear.Offered);
    }

    [Fact]
    public void More_days_of_snow_never_mean_more_charge_or_fewer_hours_without_service() =>
        Gen.Select(Gen.Double[3, 15], Gen.Int[1, 8], Gen.Double[0.5, 15], Gen.Double[1, 15]).Sample(
            (watts, cells, days, more) =>
            {
                SolarSetup setup = Setup with { Panel = Setup.Panel with { Watts = watts }, Pack = Setup.Pack with { Parallel = cells } };
                SolarYearResult none = SolarYear.Run(setup, SolarYear.YieldOf(setup));
                SolarYearResult some = SolarYear.Run(setup, SolarYear.YieldOf(setup with { CoveredDays = days }));
                SolarYearResult most = SolarYear.Run(setup, SolarYear.YieldOf(setup with { CoveredDays = days + more }));

                // Charges are kept as 32 bit numbers, hours without service are sums over the year.
                Assert.True(none.HoursWithout <= some.HoursWithout + 1e-6 && some.HoursWithout <= most.HoursWithout + 1e-6);
                Assert.True(most.HoursWithout > 0 || (none.LeastCharge >= some.LeastCharge - 1e-6 && some.LeastCharge >= most.LeastCharge - 1e-6));
            },
            iter: 12);

    /// <summary>The worst stretch costs no less than one that lies anywhere else, found by running the whole year for each.</summary>
    [Fact]
    public void Snow_lies_where_it_costs_most()
    {
        SolarYield clear = SolarYear.YieldOf(Setup);
        double worst = SolarYear.Run(Setup, SolarYear.YieldOf(Setup with { CoveredDays = 6 })).HoursWithout;
        double[] elsewhere =
        [
            .. Enumerable.Range(0, 36).Select(place => 240 * place).Select(from =>
                SolarYear.HoursWithout(Setup, clear with { Watts = [.. clear.Watts.Select((watts, hour) => hour >= from && hour < from + 144 ? 0 : watts)] })),
        ];
        Assert.True(elsewhere.Max() > SolarYear.Run(Setup, clear).HoursWithout);
        Assert.True(worst >= elsewhere.Max() - 1e-6);
    }

    [Fact]
    public void Too_cold_to_charge_costs_what_it_says()
    {
        WeatherYear cold = (Climate with { Celsius = [.. Climate.Celsius.Select(celsius => celsius - 25)] }).Year(Place, "test");
        SolarYearResult year = SolarYear.Run(Setup with { Weather = cold }, SolarYear.YieldOf(Setup with { Weather = cold }));
        Assert.True(year.ColdHours > 1000);
        Assert.True(year.HoursWithout > SolarYear.Run(Setup, SolarYear.YieldOf(Setup)).HoursWithout);
    }

    [Fact]
    public void The_hours_without_service_are_the_same_without_their_account() =>
        Gen.Select(Gen.Double[2, 20], Gen.Double[0.1, 1.5], Gen.Int[1, 8], Gen.Double[-25, 5]).Sample(
            (watts, load, cells, colder) =>
            {
                WeatherYear weather = (Climate with { Celsius = [.. Climate.Celsius.Select(celsius => celsius + colder)] }).Year(Place, "test");
                SolarSetup setup = Setup with { Weather = weather, Panel = Setup.Panel with { Watts = watts }, LoadWatts = load, Pack = Setup.Pack with { Parallel = cells } };
                SolarYield yield = SolarYear.YieldOf(setup);
                double hours = SolarYear.Run(setup, yield).HoursWithout;
                Assert.Equal(hours, SolarYear.HoursWithout(setup, yield), 1e-9);
                Assert.Equal(hours > 9, SolarYear.HoursWithout(setup, yield, 9) > 9);
            },
            iter: 12);

    [Fact]
    public void Years_are_drawn_each_for_itself_with_the_same_means()
    {
        WeatherYear[] years = [.. Climate.Years(Place, "test", 3, out SunTrack sun)];
        Assert.Equal(Year.Hours, years[0].Hours);
        Assert.NotEqual(years[0].Hours, years[1].Hours);
        Assert.NotEqual(years[1].Hours, years[2].Hours);
        Assert.Equal(years[2].SunAt(4321, Place), sun.Places[4321]);
        Assert.All(years, year => Assert.Equal(Climate.LightKilowattHours[0] * 31, year.Hours.Take(31 * 24).Sum(hour => hour.Light.Global) / 1000, 1e-6));
    }

    /// <summary>At 70° N the sun does not rise from late November to the middle of January: a month without light has none, and the year runs through it.</summary>
    [Fact]
    public void A_month_without_sun_is_dark()
    {
        SunSite north = new(70, 20);
        MonthlyClimate polar = Climate with { LightKilowattHours = [0, 0.3, 1.5, 3.5, 4.8, 5.2, 5, 3.6, 1.8, 0.6, 0.05, 0] };
        WeatherYear year = polar.Year(north, "polar");
        Assert.Equal(0, MonthlyClimate.ClearKilowattHours(north)[11]);
        Assert.Equal(0, year.Hours.Skip(WeatherYear.FirstHourOf(11)).Sum(hour => hour.Light.Global));

        SolarSetup dark = Setup with { Weather = year, Place = north };
        SolarYearResult result = SolarYear.Run(dark, SolarYear.YieldOf(dark));
        Assert.Equal(0, result.OfferedByHour.AsSpan(WeatherYear.FirstHourOf(11), 31 * 24).ToArray().Sum());
        Assert.True(result.HoursWithout > 24);
        Assert.Throws<ArgumentException>(() => Climate with { LightKilowattHours = [-0.1, .. Climate.LightKilowattHours.Skip(1)] });
    }

    /// <summary>A quarter of a sphere of 6371 km from equator to pole is π/2 of it; half of it lies between opposite points.</summary>
    [Theory]
    [InlineData(0, 0, 90, 0, 10_007.5)]
    [InlineData(0, -90, 0, 90, 20_015.1)]
    [InlineData(45, 8, 45, 8, 0)]
    public void The_distance_of_two_places_is_that_of_a_sphere(double latitude, double longitude, double otherLatitude, double otherLongitude, double kilometres) =>
        Assert.Equal(kilometres, new SunSite(latitude, longitude).KilometresTo(new(otherLatitude, otherLongitude)), 0.1);

    [Fact]
    public void The_smallest_sizes_keep_the_target_and_the_next_smaller_do_not()
    {
        SolarYield yield = SolarYear.YieldOf(Setup);
        double watts = SolarSizes.SmallestPanelWatts(Setup, yield, 9)!.Value;
        int index = SolarSizes.PanelWatts.IndexOf(watts);
        Assert.True(SolarYear.Run(Setup with { Panel = Setup.Panel with { Watts = watts } }, yield).HoursWithout <= 9);
        Assert.True(index == 0 || SolarYear.Run(Setup with { Panel = Setup.Panel with { Watts = SolarSizes.PanelWatts[index - 1] } }, yield).HoursWithout > 9);

        SolarSetup weak = Setup with { Panel = Setup.Panel with { Watts = 8 } };
        if (SolarSizes.FewestParallel(weak, yield, 9) is { } cells and > 1)
        {
            Assert.True(SolarYear.Run(weak with { Pack = weak.Pack with { Parallel = cells } }, yield).HoursWithout <= 9);
            Assert.True(SolarYear.Run(weak with { Pack = weak.Pack with { Parallel = cells - 1 } }, yield).HoursWithout > 9);
        }
    }
}
