using CsCheck;
using Mastwright.Station.Supply;

namespace Mastwright.Tests.Station.Supply;

public sealed class ConstantPowerFeedTests
{
    /// <summary>
    /// Source voltage, loop resistance, power at the device; voltage and current there, power of the source. The limits of IEEE 802.3 types 1 to 4: the
    /// closed form lands on the standard's own least device voltage, greatest current and source power.
    /// </summary>
    public static TheoryData<double, double, double, double, double, double> Standard => new()
    {
        { 44, 20, 12.95, 37.0000, 0.35000, 15.4000 },
        { 50, 12.5, 25.5, 42.5000, 0.60000, 30.0000 },
        { 50, 6.25, 40, 44.3649, 0.90161, 45.0807 },
        { 50, 6.25, 51, 42.5000, 1.20000, 60.0000 },
        { 52, 6.25, 62, 42.9853, 1.44235, 75.0024 },
        { 52, 6.25, 71.3, 41.1781, 1.73150, 90.0381 },
    };

    [Theory, MemberData(nameof(Standard))]
    public void It_lands_on_the_limits_of_the_standard(double source, double ohms, double watts, double volts, double amperes, double sourceWatts)
    {
        FeedPoint? point = ConstantPowerFeed.Solve(source, ohms, watts);

        Assert.NotNull(point);
        Assert.Equal(volts, point.Volts, 1e-4);
        Assert.Equal(amperes, point.Amperes, 1e-5);
        Assert.Equal(sourceWatts, source * point.Amperes, 1e-3);
    }

    /// <summary>Passive power over 24 AWG, two conductors each way, 8.42 ohm a loop of 100 m: V = [E + √(E² − 4·R·P)]/2.</summary>
    [Theory]
    [InlineData(24, 30, 6, 23.351)]
    [InlineData(24, 50, 12, 21.6685)]
    [InlineData(48, 50, 12, 46.923)]
    [InlineData(24, 100, 6, 21.6685)]
    [InlineData(12, 20, 5, 11.2517)]
    public void A_passive_feed_has_its_far_voltage(double source, double metres, double watts, double volts) =>
        Assert.Equal(volts, ConstantPowerFeed.Solve(source, 0.0842 * metres, watts)!.Volts, 1e-3);

    [Fact]
    public void Beyond_a_quarter_of_the_square_over_the_resistance_nothing_comes_through()
    {
        // 24 V over 100 m of the same: at most 17.10 W.
        Assert.Equal(17.10, ConstantPowerFeed.MostWatts(24, 8.42), 0.005);
        Assert.Null(ConstantPowerFeed.Solve(24, 8.42, 24));
        Assert.NotNull(ConstantPowerFeed.Solve(24, 8.42, 17.1));
        Assert.Null(ConstantPowerFeed.Solve(24, 8.42, 17.11));
    }

    [Fact]
    public void It_is_the_upper_of_two_roots_and_keeps_the_power() =>
        Gen.Select(Gen.Double[1, 60], Gen.Double[0, 50], Gen.Double[0, 0.9999]).Sample((source, ohms, share) =>
        {
            // At the very edge rounding decides whether there is a root, so the edge itself is left out.
            double watts = ohms == 0 ? share * 100 : share * ConstantPowerFeed.MostWatts(source, ohms);
            FeedPoint? point = ConstantPowerFeed.Solve(source, ohms, watts);
            return point is not null && point.Volts >= (source / 2) - 1e-9
                && Math.Abs((point.Volts * point.Amperes) - watts) <= 1e-9 * Math.Max(1, watts)
                && Math.Abs(source - (ohms * point.Amperes) - point.Volts) <= 1e-6;
        });

    [Fact]
    public void Impossible_numbers_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ConstantPowerFeed.Solve(0, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ConstantPowerFeed.Solve(24, -1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ConstantPowerFeed.Solve(24, 1, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ConstantPowerFeed.Solve(double.NaN, 1, 1));
    }
}
