using Mastwright.Quantities;
using Mastwright.Station.HoldUp;
using Mastwright.Tests.Station.Supply;

namespace Mastwright.Tests.Station.HoldUp;

public sealed class HoldUpCourseTests
{
    private static readonly BatteryLoad Load = new(Estimate.Exactly(0.2), 0.3, 3, "made up", ["load"], []);

    private static readonly ChargedBattery Battery = HoldUpTimeTests.Charged(SupplySamples.Cell, 1, 1, 3.35, years: 1) with { Celsius = Estimate.Of(-10, 15, 40) };

    private static readonly HoldUpResult Result = HoldUpTime.Of(Battery, Load)!;

    private static readonly HoldUpCourse Course = HoldUpCourse.Of(Battery, Load, Result);

    [Fact]
    public void What_leaves_the_battery_is_what_the_load_takes() => Assert.All(Course.Runs, run =>
    {
        // Energy: watts times hours, by the new capacity and what age leaves of it.
        double aged = 3.35 * SupplySamples.Cell.NominalVolts * BatteryPack.AgeFactor(1, 15, SupplySamples.Cell.LifeYears.Median);
        Assert.Equal(0.2 * run.Hours, aged * (run.Points[0].Charge - run.Points[^1].Charge), 1e-9);
        Assert.Equal(run.Hours, run.Points[^1].Hour, 1e-12);
    });

    [Fact]
    public void In_the_middle_it_is_the_time_of_the_finding()
    {
        Assert.Equal(Result.Hours.Median, Course.Runs[1].Hours, 1e-9);
        Assert.Equal(15, Course.Runs[1].Celsius, 1e-12);
    }

    [Fact]
    public void The_cold_takes_hours_and_leaves_charge_behind()
    {
        Assert.True(Course.Runs[0].Hours < Course.Runs[1].Hours);
        Assert.True(Course.Runs[0].Points[^1].Charge > Course.Runs[1].Points[^1].Charge);
        Assert.All(Course.ByCelsius.Zip(Course.ByCelsius.Skip(1)), pair => Assert.True(pair.First.Hours <= pair.Second.Hours + 1e-9));
    }

    /// <summary>The same two shares as the battery's use tells them: what cold and rate withhold, and what the cut-off leaves besides.</summary>
    [Fact]
    public void What_is_left_in_is_withheld_or_left_by_the_cut_off()
    {
        HoldUpTime.HoursAt(Battery, Load, -10, out BatteryUse use);
        Assert.InRange(use.Withheld, 0.05, 0.6);
        Assert.Equal(1 - use.UsableShare, use.Withheld + use.LeftAtCutOff, 1e-12);
        Assert.Equal(use.Withheld, Course.Runs[0].Withheld, 1e-12);
        Assert.All(Course.Runs, run => Assert.True(run.Withheld <= run.Points[^1].Charge + 1e-12));
    }

    [Fact]
    public void Under_the_load_the_voltage_falls_from_near_full_towards_the_cut_off()
    {
        Assert.All(Course.Runs[1].Points.Zip(Course.Runs[1].Points.Skip(1)), pair => Assert.True(pair.Second.Volts <= pair.First.Volts + 1e-12));
        Assert.All(Course.Runs[1].Points, point => Assert.InRange(point.Volts!.Value, 3, 4.3));
    }

    [Fact]
    public void A_battery_of_one_temperature_has_one_run() =>
        Assert.Single(HoldUpCourse.Of(Battery with { Celsius = Estimate.Exactly(20) }, Load, Result).Runs);
}
