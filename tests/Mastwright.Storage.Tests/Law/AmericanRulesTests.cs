using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Radio;
using Mastwright.Station.Rules;

namespace Mastwright.Storage.Tests.Law;

/// <summary>47 CFR 15.247 and 15.249 in 902 to 928 MHz, text quoted in public copies.</summary>
public sealed class AmericanRulesTests
{
    private static readonly RadioUnit OneTenth = Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(20) };

    /// <summary>Neither hopping nor 500 kHz wide, and above the field strength of 15.249: it keeps nothing, and each way in is named.</summary>
    [Fact]
    public void A_fixed_narrow_channel_keeps_no_row_and_says_what_each_asks()
    {
        RadioRulesResult result = Stations.Examine("US", Stations.Chirp(915, 125), OneTenth);

        Finding none = EuropeanRulesTests.Find(result, "radio-rule-none");
        string text = FindingSentences.Text(none);
        Assert.Equal(Verdict.Fails, none.Verdict);
        Assert.Contains("hopping over 50 frequencies or more, and the radio stays on one", text, StringComparison.Ordinal);
        Assert.Contains("asks for 500 kHz of bandwidth at 6 dB", text, StringComparison.Ordinal);
        Assert.Contains("15.249", text, StringComparison.Ordinal);
        Assert.Equal("us-field", result.Judgements[0].Rule.Key);
        Assert.Contains("amateur", FindingSentences.Advice(none), StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>50 mV/m at 3 m is an EIRP of (E·d)²/30 = 0.75 mW: -1.249 dBm, worked out in the check values.</summary>
    [Fact]
    public void The_field_strength_row_is_0_75_mW_and_keeps_a_weak_station()
    {
        RadioRulesResult result = Stations.Examine("US", Stations.Chirp(915, 125), Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(-5) });

        Assert.Equal(-1.249, result.Judgements[0].PowerLimit!.Total, 0.0005);
        Assert.Equal(Verdict.Ok, EuropeanRulesTests.Find(result, "radiated-power").Verdict);
        Assert.Equal(Verdict.Ok, EuropeanRulesTests.Find(result, "radio-band").Verdict);
    }

    [Fact]
    public void Digital_modulation_of_500_kHz_wants_its_6_dB_bandwidth_measured()
    {
        ModemSetting wide = Stations.Chirp(915, 500);

        Assert.Equal(Verdict.Unknown, EuropeanRulesTests.Find(Stations.Examine("US", wide, OneTenth), "radio-band").Verdict);
        RadioRulesResult measured = Stations.Examine("US", wide with { Emission = new() { SixDecibelHz = 510e3 } }, OneTenth);
        Assert.Equal(Verdict.Ok, EuropeanRulesTests.Find(measured, "radio-band").Verdict);
        Assert.Equal("us-digital", measured.Judgements[0].Rule.Key);
        Assert.Equal(Verdict.Fails, EuropeanRulesTests.Find(Stations.Examine("US", wide with { Emission = new() { SixDecibelHz = 480e3 } }, OneTenth), "radio-rule-none").Verdict);
    }

    /// <summary>15.247(b)(4), and feed loss that may be made up for: 30 - (9 - 6) = 27 dBm at the antenna's port.</summary>
    [Fact]
    public void Gain_above_6_dBi_comes_off_the_conducted_power()
    {
        RadioRulesResult result = Stations.Examine("US", Stations.Chirp(915, 500) with { Emission = new() { SixDecibelHz = 510e3 } }, OneTenth, gainDbi: 9);

        Assert.Equal(27, result.Judgements[0].PowerLimit!.Total, 1e-9);
        Assert.Equal(27, result.Judgements[0].Setting!.Total, 1e-9);
    }

    /// <summary>15.247(a)(1)(i): 50 frequencies, 0.4 s in 20 s, carriers at least as far apart as the signal is wide; 30 dBm by (b)(2).</summary>
    [Theory]
    [InlineData(64, 0.37, Verdict.Ok)]
    [InlineData(64, 0.41, Verdict.Fails)]
    [InlineData(64, null, Verdict.Unknown)]
    [InlineData(120, 0.37, Verdict.Fails)]
    public void Narrow_hopping_wants_frequencies_dwell_and_spacing(int channels, double? dwell, Verdict verdict)
    {
        ModemSetting modem = Stations.Chirp(908, 125, 7) with { Emission = new() { Hopping = new(channels, 902.3e6, 914.9e6, dwell) } };
        RadioRulesResult result = Stations.Examine("US", modem, OneTenth);

        RuleJudgement narrow = result.Judgements.Single(judgement => judgement.Rule.Key == "us-hopping-narrow");
        Assert.Equal(verdict, narrow.AccessVerdict);
        Assert.Equal(30, narrow.PowerLimit!.Total, 1e-9);
    }

    /// <summary>40 bytes at spreading factor 10 in 125 kHz take 0.535 s: whatever dwell is claimed, a radio that hops between packets stays that long.</summary>
    [Theory]
    [InlineData(0.3, false, Verdict.Unknown)]
    [InlineData(0.3, true, Verdict.Ok)]
    [InlineData(0.5, true, Verdict.Fails)]
    [InlineData(null, true, Verdict.Unknown)]
    [InlineData(null, false, Verdict.Fails)]
    public void A_dwell_shorter_than_a_packet_wants_a_radio_that_hops_within_one(double? dwell, bool within, Verdict verdict)
    {
        ModemSetting modem = Stations.Chirp(908, 125) with { Emission = new() { Hopping = new(64, 902.3e6, 914.9e6, dwell, within) } };
        RuleJudgement narrow = Stations.Examine("US", modem, OneTenth).Judgements.Single(judgement => judgement.Rule.Key == "us-hopping-narrow");
        RuleCondition condition = narrow.Conditions.Single(one => one.Code == "hop-dwell");

        Assert.Equal(verdict, condition.Verdict);
        if (dwell is 0.3 && !within)
        {
            Assert.Contains("the plan gives 0.3 s, but one packet takes 0.535 s", condition.Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Wide_hopping_over_25_to_49_frequencies_has_a_quarter_of_a_watt()
    {
        ModemSetting modem = Stations.Chirp(915, 250, 7) with { Emission = new() { Hopping = new(30, 903e6, 927e6, 0.3) } };
        RuleJudgement few = Stations.Examine("US", modem, OneTenth).Judgements.Single(judgement => judgement.Rule.Key == "us-hopping-few");

        Assert.Equal(Verdict.Ok, few.Overall);
        Assert.Equal(10 * Math.Log10(250), few.PowerLimit!.Total, 1e-9);
    }

    /// <summary>15.247(f): no least number of frequencies, 0.4 s in (number · 0.4 s): 25.6 s for 64; 8 dBm in 3 kHz make 24.198 dBm over 125 kHz.</summary>
    [Fact]
    public void A_hybrid_of_8_frequencies_has_the_density_limit()
    {
        ModemSetting modem = Stations.Chirp(903, 125, 7) with { Emission = new() { Hopping = new(8, 902.3e6, 903.7e6, 0.3) } };
        RuleJudgement best = Stations.Examine("US", modem, OneTenth).Judgements[0];

        Assert.Equal("us-hybrid", best.Rule.Key);
        Assert.Equal(Verdict.Ok, best.Overall);
        Assert.Equal(24.198, best.PowerLimit!.Total, 0.0005);
        Assert.Contains("in any 3.2 s", best.Conditions.Single(condition => condition.Code == "hop-dwell").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void There_is_no_duty_cycle() =>
        Assert.DoesNotContain(Stations.Examine("US", Stations.Chirp(915, 125), OneTenth).Examination.Findings, finding => finding.Code == "time-on-air");

    [Fact]
    public void The_antenna_has_to_be_one_that_the_radio_was_authorised_with()
    {
        Assert.Equal(Verdict.Ok, EuropeanRulesTests.Find(Stations.Examine("US", Stations.Chirp(915, 500)), "approval-antenna").Verdict);
        Assert.Equal(Verdict.Unknown, EuropeanRulesTests.Find(Stations.Examine("US", Stations.Chirp(915, 500), Stations.Radio with { ApprovedAntenna = null }), "approval-antenna").Verdict);
        Assert.Equal(Verdict.Fails, EuropeanRulesTests.Find(Stations.Examine("US", Stations.Chirp(915, 500), Stations.Radio with { ApprovedAntenna = false }), "approval-antenna").Verdict);
    }
}
