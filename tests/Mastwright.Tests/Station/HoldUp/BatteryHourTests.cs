using CsCheck;
using Mastwright.Station.HoldUp;
using Mastwright.Tests.Station.Supply;

namespace Mastwright.Tests.Station.HoldUp;

public sealed class BatteryHourTests
{
    private static readonly BatteryPack Pack = BatteryPackTests.One;

    [Fact]
    public void Hour_by_hour_it_lasts_as_long_as_the_hold_up_says()
    {
        ChargedBattery battery = HoldUpTimeTests.Charged(SupplySamples.Cell, 1, 1, 3.35, years: 3) with { Celsius = Mastwright.Quantities.Estimate.Exactly(-5) };
        BatteryLoad load = new(Mastwright.Quantities.Estimate.Exactly(0.2), 0.5, 3.2, "made up", ["load"], []);
        double hours = HoldUpTime.Of(battery, load)!.Hours.Median;
        double age = BatteryPack.AgeFactor(3, -5, 7);
        double charge = BatteryHour.Full(Pack, age);
        double served = 0;
        for (int hour = 0; hour < 100; hour++)
        {
            BatteryStep step = BatteryHour.Step(Pack, charge, new(0.2, 0.5, 0, -5, 1, 3.2, age));
            (charge, served) = (step.ChargeAmpereHours, served + step.ServedWattHours);
        }

        Assert.Equal(hours, served / 0.2, 1e-6);
    }

    [Fact]
    public void What_cold_withholds_comes_back_with_warmth()
    {
        double charge = Pack.AmpereHours;
        BatteryStep cold = BatteryHour.Step(Pack, charge, new(5, 5, 0, -20, 100, 1, 1));
        BatteryStep warm = BatteryHour.Step(Pack, cold.ChargeAmpereHours, new(5, 5, 0, 25, 100, 1, 1));

        Assert.True(cold.UnservedWattHours > 0);
        Assert.True(warm.ServedWattHours > 0);
    }

    [Fact]
    public void Below_zero_nothing_goes_in()
    {
        BatteryStep step = BatteryHour.Step(Pack, 1, new(0.5, 0.5, 5, -1, 1, 3, 1));

        Assert.Equal((1.0, 0.5, 0.0, 0.0, 4.5), (step.ChargeAmpereHours, step.ServedWattHours, step.UnservedWattHours, step.StoredWattHours, step.SpilledWattHours));
    }

    /// <summary>0.5 C of 3.35 Ah for an hour at 20 °C is 1.675 Ah, 0.99 of which is kept.</summary>
    [Fact]
    public void No_more_goes_in_than_the_temperature_permits() =>
        Assert.Equal(1 + (1.675 * 0.99), BatteryHour.Step(Pack, 1, new(0, 0, 100, 20, 1, 3, 1)).ChargeAmpereHours, 1e-12);

    [Fact]
    public void Energy_is_neither_made_nor_lost() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 4], Gen.Double[0, 6], Gen.Double[-25, 45], Gen.Double[0.1, 12]).Sample((share, load, offered, celsius, hours) =>
        {
            double before = share * Pack.AmpereHours;
            BatteryStep step = BatteryHour.Step(Pack, before, new(load, load, offered, celsius, hours, 3, 1));
            double drawn = Math.Max(0, before - step.ChargeAmpereHours) * Pack.NominalVolts;
            double kept = Math.Max(0, step.ChargeAmpereHours - before) * Pack.NominalVolts;
            return Math.Abs((load * hours) - step.ServedWattHours - step.UnservedWattHours) < 1e-9
                && Math.Abs((offered * hours) + drawn - step.ServedWattHours - step.StoredWattHours - step.SpilledWattHours) < 1e-9
                && kept <= step.StoredWattHours + 1e-9
                && step.ChargeAmpereHours >= -1e-12 && step.ChargeAmpereHours <= Pack.AmpereHours + 1e-12;
        });

    /// <summary>The cell of the samples must not be discharged below −20 °C: nothing is served, nothing goes in, and it comes back with warmth.</summary>
    [Fact]
    public void Below_the_limit_of_discharge_nothing_is_served()
    {
        BatteryStep step = BatteryHour.Step(Pack, 2, new(0.5, 0.5, 0.3, -20.1, 2, 3, 1));

        Assert.Equal((2.0, 0.0, 1.0, 0.0, 0.6), (step.ChargeAmpereHours, step.ServedWattHours, step.UnservedWattHours, step.StoredWattHours, step.SpilledWattHours));
        Assert.True(BatteryHour.Step(Pack, 2, new(0.5, 0.5, 0.3, -19.9, 2, 3, 1)).ServedWattHours > 0.9);
    }

    /// <summary>What is drawn is the lesser of what is wanted and what the use of the battery leaves: written out here from the use alone.</summary>
    [Fact]
    public void The_short_way_to_what_a_battery_has_gives_what_the_long_way_gives() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[0.01, 6], Gen.Double[-20, 45], Gen.Double[2.9, 4.1], Gen.Double[0.6, 1]).Sample((share, load, celsius, cutOff, age) =>
        {
            double full = BatteryHour.Full(Pack, age);
            BatteryStep step = BatteryHour.Step(Pack, share * full, new(load, 1.5 * load, 0, celsius, 1, cutOff, age));
            BatteryUse use = BatteryUse.Of(Pack, age, celsius, Pack.Cell.CapacityByCelsius.Median.At(celsius), load, 1.5 * load, cutOff);
            double drawn = Math.Min(load / Pack.NominalVolts, use.ShareFrom(share) * full);
            return Math.Abs((share * full) - step.ChargeAmpereHours - drawn) < 1e-7;
        });

    [Fact]
    public void Negative_powers_and_times_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => BatteryHour.Step(Pack, 1, new(-1, 0, 0, 20, 1, 3, 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => BatteryHour.Step(Pack, 1, new(0, 0, -1, 20, 1, 3, 1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => BatteryHour.Step(Pack, 1, new(0, 0, 0, 20, -1, 3, 1)));
    }
}
