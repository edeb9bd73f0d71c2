using CsCheck;
using Mastwright.Station.HoldUp;
using Mastwright.Tests.Station.Supply;

namespace Mastwright.Tests.Station.HoldUp;

public sealed class BatteryPackTests
{
    internal static readonly BatteryPack One = new() { Cell = SupplySamples.Cell, Series = 1, Parallel = 1, CellAmpereHours = 3.35 };

    /// <summary>Peukert's law t = H·(C/(I·H))^k: 5 h, 3.35 Ah, 1 A, exponent 1.05 give 3.2836 h.</summary>
    [Fact]
    public void A_faster_discharge_ends_when_peukerts_law_says() => Assert.Equal(3.2836, 3.35 * One.RateFactor(1) / 1, 1e-4);

    [Fact]
    public void A_slow_discharge_gives_no_more_than_the_rated_capacity() => Assert.Equal(1, One.RateFactor(0.01));

    /// <summary>A fifth is gone after its life at 25 °C, half of that after a quarter of it (square root of time), and twice as fast 10 K warmer.</summary>
    [Theory]
    [InlineData(7, 25, 0.8)]
    [InlineData(1.75, 25, 0.9)]
    [InlineData(3.5, 35, 0.8)]
    [InlineData(14, 15, 0.8)]
    [InlineData(0, 40, 1)]
    public void Age_takes_its_share(double years, double celsius, double left) => Assert.Equal(left, BatteryPack.AgeFactor(years, celsius, 7), 1e-12);

    [Fact]
    public void Resistance_goes_with_the_cells_and_grows_with_cold_and_age()
    {
        // 0.17 ohm·Ah over 3.35 Ah; three in series, two side by side; factor 1.8 at 0 °C; factor 2 when a fifth is gone.
        BatteryPack pack = One with { Series = 3, Parallel = 2 };
        Assert.Equal(0.17 / 3.35 * 1.5, pack.Ohms(25, 1), 1e-12);
        Assert.Equal(0.17 / 3.35 * 1.5 * 1.8 * 2, pack.Ohms(0, 0.8), 1e-12);
    }

    [Fact]
    public void Under_a_load_the_terminals_stand_where_the_closed_form_says()
    {
        // 3.7 V at half charge, 0.1 ohm, 10 W: [3.7 + √(3.7² − 4)]/2.
        Assert.Equal((3.7 + Math.Sqrt((3.7 * 3.7) - 4)) / 2, One.TerminalVolts(0.5, 10, 0.1)!.Value, 1e-12);
        Assert.Null(One.TerminalVolts(0.5, 35, 0.1));
    }

    [Fact]
    public void The_least_charge_is_where_the_peak_meets_the_cut_off()
    {
        double ohms = 0.3;
        double? least = One.LeastCharge(2, 3.2, ohms);

        Assert.NotNull(least);
        Assert.Equal(3.2, One.TerminalVolts(least.Value, 2, ohms)!.Value, 1e-6);
        Assert.Null(One.LeastCharge(20, 3.2, ohms));
        Assert.Equal(0, One.LeastCharge(0, 2.5, ohms));
    }

    /// <summary>Below 0 °C a lithium cell takes no charge: prohibited by the cell data sheets.</summary>
    [Theory]
    [InlineData(-0.1, 0)]
    [InlineData(0, 0.2 * 3.35)]
    [InlineData(20, 0.5 * 3.35)]
    [InlineData(61, 0)]
    public void Charge_is_permitted_by_temperature(double celsius, double amperes) => Assert.Equal(amperes, One.MostChargeAmperes(celsius), 1e-12);

    [Fact]
    public void Colder_or_older_never_holds_more_and_never_resists_less() =>
        Gen.Select(Gen.Double[-30, 25], Gen.Double[0, 30], Gen.Double[0, 10], Gen.Double[0, 10], Gen.Double[0.01, 5]).Sample((celsius, colder, years, older, watts) =>
        {
            BatteryUse Use(double at, double age) => BatteryUse.Of(One, BatteryPack.AgeFactor(age, 15, 7), at, SupplySamples.Cell.CapacityByCelsius.Median.At(at), watts, 2 * watts, 3);
            double Share(BatteryUse use) => use.AgeFactor * use.ShareFrom(0.97);
            BatteryUse usual = Use(celsius, years);
            BatteryUse cold = Use(celsius - colder, years);
            BatteryUse old = Use(celsius, years + older);
            return Share(cold) <= Share(usual) + 1e-9 && Share(old) <= Share(usual) + 1e-9 && cold.Ohms >= usual.Ohms - 1e-12 && old.Ohms >= usual.Ohms - 1e-12;
        });

    [Fact]
    public void What_is_no_battery_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => One with { Series = 0 });
        Assert.Throws<ArgumentOutOfRangeException>(() => One with { Parallel = -1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => One with { CellAmpereHours = 0 });
    }
}
