using System.Collections.Immutable;
using CsCheck;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Feed;
using Mastwright.Station.Rules;

namespace Mastwright.Tests.Station.Rules;

public sealed class PowerAllowanceTests
{
    private static readonly RadioRule Conducted = Rule(30, PowerReference.Conducted) with { GainFreeDbi = 6 };

    /// <summary>47 CFR 15.247(b)(4): allowed conducted power in dBm by antenna gain, worked out in the check values; exact.</summary>
    [Theory]
    [InlineData(3, 30)]
    [InlineData(6, 30)]
    [InlineData(9, 27)]
    [InlineData(12, 24)]
    [InlineData(15, 21)]
    public void A_conducted_limit_falls_by_the_gain_above_6_dBi(double gainDbi, double dbm) =>
        Assert.Equal(dbm, PowerAllowance.Limit(Conducted, 500e3, Estimate.Exactly(gainDbi))!.Total, 1e-12);

    /// <summary>47 CFR 15.247(e), 8 dBm in 3 kHz: most power in dBm of an even signal, worked out in the check values; tolerance is their rounding.</summary>
    [Theory]
    [InlineData(500e3, 30.218)]
    [InlineData(125e3, 24.198)]
    public void A_density_limit_counts_over_the_bandwidth(double occupiedHz, double dbm)
    {
        RadioRule density = Rule(40, PowerReference.Conducted) with { DensityDbm = 8, DensityBandwidthHz = 3e3 };

        Assert.Equal(dbm, PowerAllowance.Limit(density, occupiedHz, Estimate.Exactly(2))!.Total, 0.0005);
    }

    /// <summary>The lower of power and density counts: 30 dBm against 24.198 dBm.</summary>
    [Fact]
    public void The_lower_of_power_and_density_is_the_limit()
    {
        RadioRule both = Rule(30, PowerReference.Conducted) with { DensityDbm = 8, DensityBandwidthHz = 3e3 };

        Assert.Equal(24.198, PowerAllowance.Limit(both, 125e3, Estimate.Exactly(2))!.Total, 0.0005);
        Assert.Equal(30, PowerAllowance.Limit(both, 500e3, Estimate.Exactly(2))!.Total, 1e-12);
    }

    /// <summary>By hand: 27 dBm ERP is 29.15 dBm EIRP; less 8 dBi, plus 2 dB of feed, is a setting of 23.15 dBm.</summary>
    [Fact]
    public void An_ERP_limit_becomes_a_setting_with_2_15_dB_as_a_line_of_its_own()
    {
        Ledger setting = Setting(27, PowerReference.Erp, 8, Loss(2))!;

        Assert.Equal(23.15, setting.Total, 1e-9);
        Assert.Equal(2.15, Assert.Single(setting.Lines, line => line.Code == "to-isotropic").Value, 1e-12);
    }

    [Fact]
    public void The_ranges_of_feed_antenna_and_radio_count_by_their_worse_end()
    {
        Ledger setting = PowerAllowance.Setting(
            Limit(14, PowerReference.Eirp), PowerReference.Eirp, Estimate.Between(2, 5), [Stage(Estimate.Between(-3, -1))], 1, "p")!;

        Assert.Equal(14 - 5 + 1 - 1, setting.Total, 1e-9);
    }

    [Fact]
    public void A_loss_that_is_not_known_counts_as_none()
    {
        Ledger setting = PowerAllowance.Setting(Limit(14, PowerReference.Eirp), PowerReference.Eirp, Estimate.Exactly(2), [Stage(null)], 0, "p")!;

        Assert.Equal(12, setting.Total, 1e-9);
    }

    [Fact]
    public void An_amplifier_that_stops_below_the_limit_leaves_no_setting_to_lower()
    {
        FeedStage amplifier = Stage(Estimate.Exactly(20)) with { AmplifiesTransmission = true, TransmitMaximumDbm = Estimate.Exactly(25) };

        Assert.Null(Setting(27, PowerReference.Erp, 2, amplifier));
        Assert.Equal(29.15 - 8 - 20, Setting(27, PowerReference.Erp, 8, amplifier)!.Total, 1e-9);
    }

    [Fact]
    public void More_antenna_gain_never_raises_the_lawful_setting() =>
        Gen.Select(Gen.Double[-5, 20], Gen.Double[0, 15], Gen.Double[0, 10], Gen.Int[0, 2]).Sample((gain, more, loss, reference) =>
        {
            RadioRule rule = Rule(27, (PowerReference)reference) with { GainFreeDbi = 6 };
            double Lawful(double dbi) => PowerAllowance.Setting(
                PowerAllowance.Limit(rule, 125e3, Estimate.Exactly(dbi))!, rule.Reference, Estimate.Exactly(dbi), [Loss(loss)], 0, "p")!.Total;
            return Lawful(gain + more) <= Lawful(gain) + 1e-9;
        });

    [Fact]
    public void More_feed_loss_never_lowers_the_lawful_setting() =>
        Gen.Select(Gen.Double[0, 20], Gen.Double[0, 20]).Sample((loss, more) =>
            Setting(27, PowerReference.Erp, 5, Loss(loss + more))!.Total >= Setting(27, PowerReference.Erp, 5, Loss(loss))!.Total - 1e-9);

    internal static RadioRule Rule(double? dbm, PowerReference reference) => new()
    {
        Key = "row",
        Region = "X",
        Name = "the row",
        LowHz = 869.4e6,
        HighHz = 869.65e6,
        PowerDbm = dbm,
        Reference = reference,
        Source = new("A document", "1", "table", "2026-11-28"),
    };

    private static Ledger Limit(double dbm, PowerReference reference) => PowerAllowance.Limit(Rule(dbm, reference), 125e3, Estimate.Exactly(0))!;

    private static Ledger? Setting(double dbm, PowerReference reference, double gainDbi, FeedStage stage) =>
        PowerAllowance.Setting(Limit(dbm, reference), reference, Estimate.Exactly(gainDbi), [stage], 0, "p");

    private static FeedStage Loss(double db) => Stage(Estimate.Exactly(-db));

    private static FeedStage Stage(Estimate? gain) => new() { Code = "part", Label = "a part", TransmitGainDb = gain, ReceiveGainDb = gain, Source = "plan" };
}
