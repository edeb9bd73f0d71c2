using System.Collections.Immutable;
using CsCheck;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.HoldUp;
using Mastwright.Station.Supply;
using Mastwright.Tests.Station.Supply;

namespace Mastwright.Tests.Station.HoldUp;

public sealed class HoldUpTimeTests
{
    private static readonly CellRow Plain = SupplySamples.Cell with
    {
        CapacityByCelsius = new(LinearCurve.Level(0.7), LinearCurve.Level(0.7), LinearCurve.Level(0.7)),
        RatedHours = 0.1,
        CutOffVolts = 1,
        LifeYears = Estimate.Exactly(1),
    };

    /// <summary>
    /// t = n·C·V·f/P: two cells side by side, 3.35 Ah, 3.6 V, use 0.8 · 0.9, cold 0.7, age 0.8, 0.35 W give 27.786 h. The use (depth and converter) is put into the
    /// load here: 0.35 W over 0.72.
    /// </summary>
    [Fact]
    public void The_hold_up_of_two_lithium_cells_is_the_product_of_its_factors()
    {
        ChargedBattery battery = Charged(Plain, 1, 2, 3.35, years: 1);

        HoldUpResult result = HoldUpTime.Of(battery, Load(0.35 / 0.72))!;

        Assert.Equal(27.786, result.Hours.Median, 1e-3);
        Assert.Equal(result.Hours.Median, result.Ledger.Total, 1e-9);
    }

    /// <summary>The same for four iron phosphate cells in series: 12.8 V, 6 Ah, use 0.9 · 0.9, cold 0.7, age 0.8, 0.5 W give 69.673 h.</summary>
    [Fact]
    public void The_hold_up_of_iron_phosphate_cells_is_the_product_of_its_factors() =>
        Assert.Equal(69.673, HoldUpTime.Of(Charged(Plain with { NominalVolts = 3.2 }, 4, 1, 6, years: 1), Load(0.5 / 0.81))!.Hours.Median, 1e-3);

    [Fact]
    public void The_range_comes_from_cold_age_and_load()
    {
        ChargedBattery battery = Charged(SupplySamples.Cell, 1, 1, 3.35, years: 0) with { Celsius = Estimate.Of(-10, 10, 30), AgeYears = Estimate.Of(0, 2, 4) };
        Estimate hours = HoldUpTime.Of(battery, Load(0.2) with { MeanWatts = Estimate.Of(0.15, 0.2, 0.25) })!.Hours;

        Assert.True(hours.Low < hours.Median && hours.Median < hours.High);

        // At the high end: warm, new, 0.15 W: all of 3.35 Ah at 3.6 V but what the cut-off of 3 V withholds.
        Assert.InRange(hours.High, 0.99 * 3.35 * 3.6 / 0.15, 3.35 * 3.6 / 0.15);
    }

    [Fact]
    public void A_heavier_load_never_lasts_longer() =>
        Gen.Select(Gen.Double[0.01, 5], Gen.Double[0, 5], Gen.Double[-20, 40]).Sample((watts, more, celsius) =>
        {
            ChargedBattery battery = Charged(SupplySamples.Cell, 1, 1, 3.35, years: 2) with { Celsius = Estimate.Exactly(celsius) };
            Estimate light = HoldUpTime.Of(battery, Load(watts))!.Hours;
            Estimate heavy = HoldUpTime.Of(battery, Load(watts + more))!.Hours;
            return heavy.Low <= light.Low + 1e-9 && heavy.Median <= light.Median + 1e-9 && heavy.High <= light.High + 1e-9;
        });

    [Fact]
    public void A_peak_that_even_a_full_cold_cell_cannot_hold_leaves_nothing()
    {
        ChargedBattery battery = Charged(SupplySamples.Cell, 1, 1, 0.5, years: 0) with { Celsius = Estimate.Exactly(-20) };

        HoldUpResult result = HoldUpTime.Of(battery, Load(0.1) with { PeakWatts = 3, CutOffVolts = 3.3 })!;

        Assert.False(result.Middle.HoldsPeak);
        Assert.Equal(0, result.Hours.High);
        Assert.Equal(0, result.Ledger.Total, 1e-9);
    }

    /// <summary>3.35 Ah through 0.99, tapering by 1.3, at 0.5 A less the load's 0.1 A: 3.35/0.99 · 1.3/0.4 h, less what the cut-off keeps in.</summary>
    [Fact]
    public void Recharging_while_feeding_takes_what_the_charger_has_left()
    {
        ChargedBattery battery = Charged(SupplySamples.Cell, 1, 1, 3.35, years: 0) with { Celsius = Estimate.Exactly(25), ChargerAmperes = 0.5, IsFed = true };
        HoldUpResult result = HoldUpTime.Of(battery, Load(0.36))!;

        Assert.Equal(3.35 * result.Middle.UsableShare / 0.99 * 1.3 / 0.4, result.RechargeHours!.Value.Median, 1e-9);
        Assert.Null(HoldUpTime.Of(battery with { ChargerAmperes = 0.05 }, Load(0.36))!.RechargeHours);
        Assert.Null(HoldUpTime.Of(battery with { IsFed = false }, Load(0.36))!.RechargeHours);
    }

    /// <summary>The cell of the samples must not be charged below 0 °C: always below nothing goes in; below at the cold end alone the time has no upper end.</summary>
    [Fact]
    public void Nothing_is_recharged_below_the_limit()
    {
        ChargedBattery battery = Charged(SupplySamples.Cell, 1, 1, 3.35, years: 0) with { ChargerAmperes = 1, IsFed = true, StopsChargeInCold = true };
        Assert.Null(HoldUpTime.Of(battery with { Celsius = Estimate.Exactly(-15) }, Load(0.1))!.RechargeHours);

        Estimate open = HoldUpTime.Of(battery with { Celsius = Estimate.Of(-15, 10, 30) }, Load(0.1))!.RechargeHours!.Value;
        Estimate warm = HoldUpTime.Of(battery with { Celsius = Estimate.Of(1, 10, 30) }, Load(0.1))!.RechargeHours!.Value;
        Assert.True(double.IsPositiveInfinity(open.High));
        Assert.True(double.IsFinite(warm.High));
        Assert.Equal((warm.Low, warm.Median), (open.Low, open.Median));
    }

    [Theory]
    [InlineData(-15, -15, -15, Verdict.Fails, "not recharged at its -15 °C")]
    [InlineData(-15, -5, 20, Verdict.Fails, "not recharged at its -5 °C")]
    [InlineData(-15, 10, 30, Verdict.Tight, "but never outside the 0 °C to 60 °C that a cell may be charged at, while it feeds its loads")]
    [InlineData(5, 10, 30, Verdict.Ok, "full again in")]
    public void A_recharge_is_judged_by_where_the_cold_lets_it(double low, double middle, double high, Verdict verdict, string words)
    {
        Finding finding = Assert.Single(Supply(SupplySamples.Battery with { ChargerAmperes = 1, TemperatureCelsius = Estimate.Of(low, middle, high) }).Findings, one => one.Code == "battery-recharge");

        Assert.Equal(verdict, finding.Verdict);
        Assert.Contains(words, FindingSentences.Text(finding), StringComparison.Ordinal);
    }

    [Fact]
    public void A_battery_that_gives_nothing_is_not_called_full_again()
    {
        // Warmer than 0 °C it would be recharged; at a cut-off above the full voltage under load nothing ever comes out.
        SupplyResult result = Supply(SupplySamples.Battery with { CutOffVolts = 4.19, TemperatureCelsius = Estimate.Exactly(20) });

        Assert.Equal(0, Assert.Single(result.Findings, finding => finding.Code == "hold-up").Value!.Value.High);
        Assert.DoesNotContain(result.Findings, finding => finding.Code == "battery-recharge");
    }

    /// <summary>Below −20 °C the cell of the samples is not to be discharged, though its table would be read on at its last point.</summary>
    [Fact]
    public void Below_the_limit_of_discharge_nothing_comes_out()
    {
        ChargedBattery battery = Charged(SupplySamples.Cell, 1, 1, 3.35, years: 0);
        Assert.Equal(0, HoldUpTime.Of(battery with { Celsius = Estimate.Exactly(-20.5) }, Load(0.1))!.Hours.High);
        Assert.True(HoldUpTime.Of(battery with { Celsius = Estimate.Exactly(-20) }, Load(0.1))!.Hours.Median > 24);
    }

    /// <summary>Whatever voltage it would show, below −20 °C the cell of the samples is not to be discharged.</summary>
    [Theory]
    [InlineData(-36.7, Verdict.Fails)]
    [InlineData(10, Verdict.Ok)]
    public void Below_the_limit_of_discharge_no_cut_off_is_held(double coldest, Verdict verdict) => Assert.Equal(
        verdict,
        Assert.Single(Supply(SupplySamples.Battery with { CutOffVolts = 2.6, TemperatureCelsius = Estimate.Of(coldest, 15, 30) }).Findings, one => one.Code == "hold-up-cut-off").Verdict);

    [Fact]
    public void A_load_of_nothing_has_no_time() => Assert.Null(HoldUpTime.Of(Charged(Plain, 1, 1, 3.35, years: 1), Load(0)));

    [Theory]
    [InlineData(true, -10, Verdict.Tight)]
    [InlineData(false, -10, Verdict.Fails)]
    [InlineData(null, -10, Verdict.Unknown)]
    [InlineData(null, 2, Verdict.Ok)]
    public void Charging_in_the_cold_is_judged_by_whether_the_charger_stops(bool? stops, double coldest, Verdict verdict)
    {
        SupplyResult result = Supply(SupplySamples.Battery with { StopsChargeInCold = stops, TemperatureCelsius = Estimate.Of(coldest, 15, 30) });

        Assert.Equal(verdict, Assert.Single(result.Findings, finding => finding.Code == "battery-charge-cold").Verdict);
    }

    [Theory]
    [InlineData(1, Verdict.Ok)]
    [InlineData(190, Verdict.Tight)]
    [InlineData(230, Verdict.Unknown)]
    [InlineData(1000, Verdict.Fails)]
    public void The_wanted_hours_are_held_against_the_range(double wanted, Verdict verdict)
    {
        SupplyResult result = Supply(SupplySamples.Battery with { WantedHours = wanted });
        Finding finding = Assert.Single(result.Findings, finding => finding.Code == "hold-up");
        Estimate hours = finding.Value!.Value;

        // The limits of this test lie where it says: below the range, in its lower half, in its upper half, above it.
        Assert.Equal(verdict, wanted < hours.Low ? Verdict.Ok : wanted < hours.Median ? Verdict.Tight : wanted < hours.High ? Verdict.Unknown : Verdict.Fails);
        Assert.Equal(verdict, finding.Verdict);
    }

    [Fact]
    public void Only_what_hangs_behind_the_battery_is_held_up()
    {
        SupplyResult result = SupplySamples.Compute(
            SupplySamples.Adapter(5, 10),
            new SupplyBranches("p/supply/2", [new("board", [new SupplyLoad("p/supply/3", false, "board")]), new("radio", [SupplySamples.Battery, SupplySamples.Node])]));

        Assert.Contains("Held up: node; not board.", FindingSentences.Text(Assert.Single(result.Findings, finding => finding.Code == "hold-up")), StringComparison.Ordinal);
        SupplyBatteryResult battery = Assert.Single(result.Batteries);
        Assert.Equal(0.0515, battery.Load.MeanWatts.Median, 1e-12);
    }

    [Fact]
    public void A_load_that_gives_up_above_the_cells_cut_off_sets_it()
    {
        SupplyResult result = Supply(SupplySamples.Battery, SupplySamples.Node with { InputVolts = Estimate.Between(3.5, 5.5) });

        Assert.Equal(3.5, Assert.Single(result.Batteries).Load.CutOffVolts, 1e-6);
        Assert.Equal(3.0, Assert.Single(Supply(SupplySamples.Battery).Batteries).Load.CutOffVolts, 1e-6);
    }

    /// <summary>0.3 W as it starts at 3 V are 0.1 A; with a quarter to spare the next size is 0.125 A.</summary>
    [Fact]
    public void The_fuse_of_a_battery_outlasts_the_start_of_its_loads() =>
        Assert.Contains("Put one of 0.125 A", FindingSentences.Advice(Assert.Single(Supply(SupplySamples.Battery).Findings, finding => finding.Code == "supply-fuse-missing")), StringComparison.Ordinal);

    [Fact]
    public void A_battery_that_nothing_feeds_is_told()
    {
        SupplyResult result = SupplySamples.Compute(SupplySamples.Battery, SupplySamples.Node);

        Assert.Equal(Verdict.Unknown, Assert.Single(result.Findings, finding => finding.Code == "battery-unfed").Verdict);
        Assert.DoesNotContain(result.Findings, finding => finding.Code is "battery-recharge" or "battery-charge-cold" or "supply-headroom");
        Assert.Equal(0.0515, result.MeanWatts!.Value, 1e-12);
    }

    internal static ChargedBattery Charged(CellRow cell, int series, int parallel, double ampereHours, double years) => new()
    {
        Pack = new() { Cell = cell, Series = series, Parallel = parallel, CellAmpereHours = ampereHours },
        AgeYears = Estimate.Exactly(years),
        ChargeAtStart = Estimate.Exactly(1),
        Celsius = Estimate.Exactly(25),
        ChargerAmperes = 0.5,
        ChargerEfficiency = 0.85,
        WantedHours = 24,
        IsFed = false,
    };

    private static BatteryLoad Load(double watts) => new(Estimate.Exactly(watts), watts, 1, "made up", ["load"], []);

    private static SupplyResult Supply(SupplyBattery battery, SupplyLoad? load = null) =>
        SupplySamples.Compute(SupplySamples.Adapter(5, 10), battery, load ?? SupplySamples.Node);
}
