using CsCheck;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Feed;
using Mastwright.Station.Radio;
using Mastwright.Station.Rules;

namespace Mastwright.Storage.Tests.Law;

public sealed class EuropeanRulesTests
{
    /// <summary>ETSI EN 300 220-2 V3.3.1 (2025-03), Table 4, quoted in a public copy: MHz, mW ERP, duty cycle in %, occupied bandwidth in kHz.</summary>
    public static TheoryData<string, double, double, double, double?, double> Table4 => new()
    {
        { "eu-k", 863, 865, 25, 0.1, 2000 },
        { "eu-l", 865, 868, 25, 1.0, 3000 },
        { "eu-m", 868.0, 868.6, 25, 1.0, 600 },
        { "eu-n", 868.7, 869.2, 25, 0.1, 500 },
        { "eu-o", 869.4, 869.65, 500, 10.0, 250 },
        { "eu-p", 869.7, 870, 5, null, 300 },
        { "eu-q", 869.7, 870, 25, 1.0, 300 },
    };

    [Theory, MemberData(nameof(Table4))]
    public void Each_band_is_as_the_table_prints_it(string key, double low, double high, double milliwatts, double? percent, double kilohertz)
    {
        RadioRule rule = Rule(key);

        Assert.Equal((low * 1e6, high * 1e6), (rule.LowHz, rule.HighHz));
        Assert.Equal(PowerReference.Erp, rule.Reference);
        Assert.Equal(10 * Math.Log10(milliwatts), rule.PowerDbm!.Value, 1e-9);
        Assert.Equal(percent, rule.DutyCyclePercent);
        Assert.Equal(kilohertz * 1e3, rule.MostOccupiedHz);
        Assert.Equal(percent is not null, rule.PoliteAllowed);
        Assert.False(rule.Source.FromMemory);
    }

    /// <summary>Worked out in the check values: 25 mW ERP = 13.979 dBm ERP = 16.129 dBm EIRP; 500 mW = 26.990 / 29.140; 5 mW = 6.990 / 9.140.</summary>
    [Theory]
    [InlineData("eu-m", 13.979, 16.129)]
    [InlineData("eu-o", 26.990, 29.140)]
    [InlineData("eu-p", 6.990, 9.140)]
    public void Limits_in_dBm_agree_with_the_check_values(string key, double erp, double eirp)
    {
        Assert.Equal(erp, Rule(key).PowerDbm!.Value, 0.0005);
        Assert.Equal(eirp, Mastwright.Station.Antenna.RadiatedPower.EirpFromErpDbm(Rule(key).PowerDbm!.Value), 0.0005);
    }

    /// <summary>500 mW ERP are 26.990 dBm ERP, and 2.15 dBi without a feed add nothing: a setting of 27.0 dBm would be over it.</summary>
    [Fact]
    public void The_largest_lawful_setting_is_never_rounded_up()
    {
        RadioRulesResult result = Stations.Examine("EU", Stations.Chirp(869.525, 125), Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(30) });
        Finding power = Assert.Single(result.Examination.Findings, finding => finding.Code == "radiated-power");

        Assert.Equal(Verdict.Fails, power.Verdict);
        Assert.Contains("feed is 26.9 dBm", FindingSentences.Text(power), StringComparison.Ordinal);
        Assert.Contains("Set the radio to 26.9 dBm or less", FindingSentences.Advice(power), StringComparison.Ordinal);
    }

    /// <summary>A fixed 125 kHz channel keeps no American row by access: it neither hops nor has 500 kHz at 6 dB (47 CFR 15.247).</summary>
    [Fact]
    public void Advice_leads_to_no_row_that_the_station_does_not_keep()
    {
        RadioRulesResult result = Stations.Examine("US", Stations.Chirp(869.525, 125));
        string advice = FindingSentences.Advice(Assert.Single(result.Examination.Findings, finding => finding.Code == "radio-band-none"));

        Assert.Contains("would hold the station as it is", advice, StringComparison.Ordinal);
        Assert.DoesNotContain("Move it", advice, StringComparison.Ordinal);
    }

    /// <summary>Rec. 70-03 and UK IR 2030: 10 mW at 10 %, 10 mW in 25 kHz, 1 mW at -13 dBm in 10 kHz.</summary>
    [Fact]
    public void The_433_MHz_rows_are_as_quoted()
    {
        Assert.Equal((10.0, 10.0), (Math.Round(Rule("eu-433").PowerDbm!.Value, 9), Rule("eu-433").DutyCyclePercent));
        Assert.Equal(25e3, Rule("eu-433-narrow").MostOccupiedHz);
        Assert.Equal((0.0, -13.0, 10e3), (Rule("eu-433-weak").PowerDbm, Rule("eu-433-weak").DensityDbm, Rule("eu-433-weak").DensityBandwidthHz));
    }

    [Theory]
    [InlineData(868.65)]
    [InlineData(869.3)]
    [InlineData(869.675)]
    [InlineData(868.6)]
    [InlineData(869.65)]
    public void The_gaps_for_alarms_are_refused_by_name(double megahertz)
    {
        RadioRulesResult result = Stations.Examine("EU", Stations.Chirp(megahertz, 31.25));

        Finding finding = Find(result, "radio-band-none");
        Assert.Equal(Verdict.Fails, finding.Verdict);
        Assert.Contains("is kept for alarms", FindingSentences.Text(finding), StringComparison.Ordinal);
        Assert.Contains("Move it", FindingSentences.Advice(finding), StringComparison.Ordinal);
        Assert.Empty(result.Judgements);
    }

    [Fact]
    public void A_station_of_25_mW_in_band_M_is_at_its_limit_and_2_15_dB_are_told()
    {
        RadioRulesResult result = Stations.Examine("EU", Stations.Chirp(868.3, 125), gainDbi: 2.15, radio: Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(13.9) });

        Finding power = Find(result, "radiated-power");
        Assert.Equal("eu-m", result.Judgements[0].Rule.Key);
        Assert.Equal(Verdict.Tight, power.Verdict);
        Assert.Equal(13.9, power.Value!.Value.Median, 1e-9);
        Assert.Equal(13.979, power.Limit!.Value, 0.0005);
        Assert.Contains("14.0 dBm", FindingSentences.Text(power), StringComparison.Ordinal);
    }

    [Fact]
    public void More_than_all_rows_allow_fails_with_a_setting_and_a_word_on_licences()
    {
        RadioRulesResult result = Stations.Examine("EU", Stations.Chirp(869.525, 125), gainDbi: 10, radio: Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(30) });

        Finding power = Find(result, "radiated-power");
        Assert.Equal(Verdict.Fails, power.Verdict);
        Assert.Contains("amateur and other licences are outside", FindingSentences.Text(power), StringComparison.Ordinal);
        Assert.Contains("Set the radio to 19.1 dBm or less", FindingSentences.Advice(power), StringComparison.Ordinal);
        Assert.Equal(26.990 + 2.15 - 10, result.Judgements[0].Setting!.Total, 0.0005);
    }

    /// <summary>869.7–870 MHz holds two rows: 5 mW without a duty cycle, 25 mW with one. The busy weak station goes by the first.</summary>
    [Theory]
    [InlineData(12, 1, "eu-q")]
    [InlineData(5, 400, "eu-p")]
    public void Of_two_rows_the_one_that_is_kept_decides(double dbm, double packets, string key)
    {
        TrafficRate traffic = new() { OwnMean = packets, OwnWorst = packets, RelayedMean = 0, RelayedWorst = 0 };
        RadioRulesResult result = Stations.Examine("EU", Stations.Chirp(869.85, 125), Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(dbm) }, traffic: traffic);

        Assert.Equal(key, result.Judgements[0].Rule.Key);
        Assert.DoesNotContain(result.Examination.Findings, finding => finding.Verdict == Verdict.Fails);
    }

    [Fact]
    public void The_busiest_hour_counts_and_not_the_average()
    {
        TrafficRate traffic = new() { OwnMean = 1, OwnWorst = 1, RelayedMean = 10, RelayedWorst = 100 };
        RadioRulesResult result = Stations.Examine("EU", Stations.Chirp(868.3, 125), traffic: traffic);

        Finding time = Find(result, "time-on-air");
        Assert.Equal(Verdict.Fails, time.Verdict);
        Assert.True(result.Traffic.MeanPercent < 1);
        Assert.Equal(result.Traffic.WorstPercent, time.Value!.Value.Median);
        Assert.Equal(1, time.Limit);
    }

    [Fact]
    public void Traffic_that_nobody_gave_decides_nothing()
    {
        RadioRulesResult result = Stations.Examine("EU", Stations.Chirp(869.525, 125), traffic: new());

        Assert.Equal(Verdict.Unknown, Find(result, "time-on-air").Verdict);
        Assert.Equal(4, result.Traffic.Assumptions.Length);
        Assert.All(result.Traffic.Assumptions, assumption => Assert.Contains(assumption, result.Examination.Assumptions));
    }

    /// <summary>Table 18: one transmission of at most 1 s, 100 s an hour on one fixed channel: more than band M's 1 %, less than band O's 10 %.</summary>
    [Fact]
    public void Polite_access_takes_the_place_of_a_smaller_duty_cycle_only()
    {
        EmissionSetting polite = new() { Polite = true };

        Assert.Equal(100 / 36.0, Stations.Examine("EU", Stations.Chirp(868.3, 125) with { Emission = polite }).Judgements[0].AllowedPercent!.Value, 1e-9);
        Assert.Equal(10, Stations.Examine("EU", Stations.Chirp(869.525, 125) with { Emission = polite }).Judgements[0].AllowedPercent);
        Assert.Equal(1, Stations.Examine("EU", Stations.Chirp(868.3, 125, 12) with { Emission = polite }).Judgements[0].AllowedPercent);
    }

    /// <summary>Trap of the check values: a signal of 250 kHz fills band O, so that its width has to be measured before anything is said.</summary>
    [Fact]
    public void A_signal_as_wide_as_its_band_is_unknown_until_its_width_is_measured()
    {
        ModemSetting wide = Stations.Chirp(869.525, 250);

        Assert.Equal(Verdict.Unknown, Find(Stations.Examine("EU", wide), "radio-band").Verdict);
        Assert.Equal(Verdict.Ok, Find(Stations.Examine("EU", wide with { Emission = new() { OccupiedHz = 240e3 } }), "radio-band").Verdict);
        Assert.Equal(Verdict.Fails, Find(Stations.Examine("EU", wide with { Emission = new() { OccupiedHz = 250e3 } }), "radio-band-none").Verdict);
        Assert.Equal(Verdict.Fails, Find(Stations.Examine("EU", Stations.Chirp(869.5, 250)), "radio-band-none").Verdict);
    }

    [Fact]
    public void An_error_that_is_only_assumed_leaves_the_edge_open()
    {
        RadioUnit vague = Stations.Radio with { FrequencyDriftPartsPerMillion = null };

        Assert.Equal(Verdict.Unknown, Find(Stations.Examine("EU", Stations.Chirp(869.47, 125), vague), "radio-band").Verdict);
        Assert.Equal(Verdict.Ok, Find(Stations.Examine("EU", Stations.Chirp(869.525, 125), vague), "radio-band").Verdict);
    }

    [Fact]
    public void An_unknown_gain_or_power_is_unknown_and_no_silent_zero()
    {
        RadioRulesResult result = Stations.Examine("EU", Stations.Chirp(869.525, 125), Stations.Radio with { ConductedPowerDbm = null });

        Assert.Equal(Verdict.Unknown, Find(result, "radiated-power").Verdict);
        Assert.NotNull(result.Judgements[0].Setting);
    }

    [Fact]
    public void A_row_from_memory_is_never_ok()
    {
        RadioRulesResult british = Stations.Examine("GB", Stations.Chirp(869.525, 125));

        Assert.Equal(Verdict.Unknown, Find(british, "radiated-power").Verdict);
        Assert.Equal(Verdict.Unknown, Find(british, "radio-band").Verdict);
        Assert.Equal(Verdict.Unknown, Find(british, "time-on-air").Verdict);
        Assert.Contains("from memory", FindingSentences.Text(Find(british, "radio-band")), StringComparison.Ordinal);
        Assert.Equal(Verdict.Unknown, Find(Stations.Examine("EU", Stations.Chirp(869.525, 125)), "approval-antenna").Verdict);
    }

    /// <summary>IR 2030 was quoted without its edition, Rec. 70-03 for 433 MHz likewise; outside the Union no national text was read.</summary>
    [Theory]
    [InlineData("GB", 868.3, "which edition")]
    [InlineData("EU", 433.5, "which edition")]
    [InlineData("NO", 869.525, "Not read: the country's own rules")]
    [InlineData("CEPT", 868.3, "Not read: the country's own rules")]
    public void A_row_of_unknown_edition_or_of_a_law_that_was_not_read_is_never_ok(string region, double megahertz, string words)
    {
        RadioRulesResult result = Stations.Examine(region, Stations.Chirp(megahertz, 125), Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(5) });

        foreach (string code in (string[])["radio-band", "radiated-power", "time-on-air"])
        {
            Assert.Equal(Verdict.Unknown, Find(result, code).Verdict);
            Assert.Contains(words, FindingSentences.Text(Find(result, code)), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void That_a_member_state_asks_for_no_more_is_listed_as_assumed()
    {
        Assert.Contains(Stations.Examine("FR", Stations.Chirp(869.525, 125)).Examination.Assumptions, assumption => assumption is { Code: "national-law", PlanPath: "region" });
        Assert.DoesNotContain(Stations.Examine("US", Stations.Chirp(915, 125)).Examination.Assumptions, assumption => assumption.Code == "national-law");
    }

    /// <summary>
    /// Decision 2006/771/EC, annex as replaced by (EU) 2019/1345: adjacent bands may be used as one if the conditions of each are met. Across 868.0 MHz
    /// bands L and M: 25 mW, 1 %, at most 600 kHz. Across 865.0 MHz bands K and L: the 0.1 % of band K.
    /// </summary>
    [Theory]
    [InlineData(868.0, "eu-l+eu-m", 1.0, 600e3)]
    [InlineData(865.0, "eu-k+eu-l", 0.1, 2000e3)]
    public void A_signal_across_two_adjacent_bands_keeps_the_strictest_of_each(double megahertz, string key, double percent, double hertz)
    {
        RadioRulesResult result = Stations.Examine("EU", Stations.Chirp(megahertz, 125), Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(10) });
        RuleJudgement best = result.Judgements[0];

        Assert.Equal(key, best.Rule.Key);
        Assert.Equal(13.979, best.PowerLimit!.Total, 0.0005);
        Assert.Equal((percent, hertz), (best.AllowedPercent, best.Rule.MostOccupiedHz));
        Assert.Equal(Verdict.Ok, Find(result, "radio-band").Verdict);
        Assert.Contains("2019/1345", FindingSentences.Text(Find(result, "radio-band")), StringComparison.Ordinal);
    }

    /// <summary>Where nobody read whether adjacent rows may be taken together it is unknown; rows with a gap between them are none.</summary>
    [Fact]
    public void Adjacent_bands_are_unknown_where_the_law_was_not_read_and_gaps_stay_gaps()
    {
        RadioRulesResult british = Stations.Examine("GB", Stations.Chirp(868.0, 125));

        Assert.Equal(Verdict.Unknown, Find(british, "radio-band").Verdict);
        Assert.Contains("whether the law lets them be used as one was not read", FindingSentences.Text(Find(british, "radio-band")), StringComparison.Ordinal);
        Assert.Equal(Verdict.Fails, Find(Stations.Examine("EU", Stations.Chirp(868.65, 250)), "radio-band-none").Verdict);
    }

    /// <summary>869.7–870 MHz: band Q with 25 mW at 1 %, band P with 5 mW at any time. Both are told, whichever decides.</summary>
    [Fact]
    public void Every_row_that_holds_the_signal_is_told_with_why_it_does_not_decide()
    {
        Finding rows = Find(Stations.Examine("EU", Stations.Chirp(869.85, 125), Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(12) }), "radio-rows");
        string text = FindingSentences.Text(rows);

        Assert.Equal(Verdict.Ok, rows.Verdict);
        Assert.Contains("2 rows hold the signal: band Q (869.7–870 MHz, ETSI EN 300 220-2, Table 4), 14.0 dBm ERP (25 mW) and 1.00 % of the time, or listening before talking: ok and decides", text, StringComparison.Ordinal);
        Assert.Contains("band P (869.7–870 MHz, ETSI EN 300 220-2, Table 4), 7.0 dBm ERP (5 mW) and any time on the air: fails, since it allows 5.0 dB less than the station may put out", text, StringComparison.Ordinal);
        Assert.DoesNotContain(Stations.Examine("EU", Stations.Chirp(869.525, 125)).Examination.Findings, finding => finding.Code == "radio-rows");
    }

    /// <summary>14 dBm ERP for 3 % of the hour break band M's 1 %; band O allows 10 % of 500 mW, and the advice says so.</summary>
    [Fact]
    public void What_to_change_names_a_row_that_would_do()
    {
        TrafficRate busy = new() { OwnMean = 200, OwnWorst = 200, RelayedMean = 0, RelayedWorst = 0 };
        Finding time = Find(Stations.Examine("EU", Stations.Chirp(868.3, 125), traffic: busy), "time-on-air");
        Finding power = Find(Stations.Examine("EU", Stations.Chirp(868.3, 125), Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(22) }), "radiated-power");
        Finding none = Find(Stations.Examine("EU", Stations.Chirp(868.3, 125), Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(35) }), "radiated-power");

        Assert.Equal(Verdict.Fails, time.Verdict);
        Assert.Contains("Or move the carrier to 869.525 MHz, where band O (869.4–869.65 MHz, ETSI EN 300 220-2, Table 4) allows 27.0 dBm ERP (500 mW) and 10.0 % of the time", FindingSentences.Advice(time), StringComparison.Ordinal);
        Assert.Contains("Or move the carrier to 869.525 MHz", FindingSentences.Advice(power), StringComparison.Ordinal);
        Assert.Contains("No row of the European Union in the catalogue would hold the station as it is", FindingSentences.Advice(none), StringComparison.Ordinal);
    }

    /// <summary>Rec. 70-03, Annex 2: 500 mW in four channels of 200 kHz, 10 % for access points with adaptive power control, which no plan tells of.</summary>
    [Theory]
    [InlineData(865.7)]
    [InlineData(866.3)]
    [InlineData(866.9)]
    [InlineData(867.5)]
    public void A_data_network_channel_is_at_best_unknown_and_band_L_decides_where_it_is_kept(double megahertz)
    {
        RadioRulesResult strong = Stations.Examine("EU", Stations.Chirp(megahertz, 125), Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(22) });
        RadioRulesResult weak = Stations.Examine("EU", Stations.Chirp(megahertz, 125), Stations.Radio with { ConductedPowerDbm = Estimate.Exactly(10) });

        Assert.Equal((26.990, 10.0), (Math.Round(strong.Judgements[0].PowerLimit!.Total, 3), strong.Judgements[0].AllowedPercent));
        Assert.Equal(Verdict.Unknown, Find(strong, "radio-band").Verdict);
        Assert.Equal(Verdict.Unknown, Find(strong, "radiated-power").Verdict);
        Assert.Contains("lowers its power by itself", FindingSentences.Text(Find(strong, "radio-band")), StringComparison.Ordinal);
        Assert.Equal("eu-l", weak.Judgements[0].Rule.Key);
        Assert.Equal(Verdict.Ok, Find(weak, "radiated-power").Verdict);
    }

    /// <summary>Rec. 70-03, Annex 3: wideband data of 600 kHz to 1 MHz, 25 mW, listening first, 10 % for access points and 2.8 % for others.</summary>
    [Fact]
    public void The_wideband_rows_are_as_quoted()
    {
        Assert.Equal((10.0, 2.8), (Rule("eu-wideband-access-point").DutyCyclePercent, Rule("eu-wideband").DutyCyclePercent));
        Assert.All((string[])["eu-wideband-access-point", "eu-wideband"], key =>
        {
            Assert.Equal((863e6, 868e6, 600e3, 1000e3), (Rule(key).LowHz, Rule(key).HighHz, Rule(key).LeastOccupiedHz, Rule(key).MostOccupiedHz));
            Assert.True(Rule(key).PoliteRequired);
            Assert.False(Rule(key).Source.IsFirm);
        });
    }

    [Fact]
    public void More_gain_than_the_approval_names_fails_even_by_a_row_from_memory()
    {
        RadioRulesResult result = Stations.Examine("EU", Stations.Chirp(869.525, 125), gainDbi: 8);

        Assert.Equal(Verdict.Fails, Find(result, "approval-antenna").Verdict);
        Assert.Equal(-3, Find(result, "approval-antenna").Margin!.Value, 1e-9);
    }

    [Fact]
    public void An_amplifier_asks_whether_the_radio_was_approved_with_it()
    {
        FeedAmplifier amplifier = new("feed/1", "", null, null, Estimate.Exactly(10), Estimate.Exactly(27), 1);

        Assert.Equal(Verdict.Unknown, Find(Stations.Examine("EU", Stations.Chirp(869.525, 125), feed: [amplifier]), "approval-amplifier").Verdict);
        Assert.Equal(Verdict.Fails, Find(Stations.Examine("US", Stations.Chirp(915, 500), Stations.Radio with { ApprovedAmplifier = false }, feed: [amplifier]), "approval-amplifier").Verdict);
        Assert.Equal(Verdict.Ok, Find(Stations.Examine("US", Stations.Chirp(915, 500), Stations.Radio with { ApprovedAmplifier = true }, feed: [amplifier]), "approval-amplifier").Verdict);
    }

    [Fact]
    public void Every_carrier_from_860_to_872_MHz_lies_in_a_row_or_is_refused() =>
        Gen.Select(Gen.Double[860, 872], Gen.Int[0, 5].Select(i => new[] { 7.8125, 31.25, 62.5, 125, 250, 500 }[i])).Sample((megahertz, kilohertz) =>
        {
            RadioRulesResult result = Stations.Examine("EU", Stations.Chirp(megahertz, kilohertz));
            bool none = result.Examination.Findings.Any(finding => finding.Code == "radio-band-none");
            return none == result.Judgements.IsEmpty
                && result.Judgements.All(judgement => judgement.Rule.Access != RuleAccess.Refused && judgement.EdgeMarginHz >= -result.Band.VagueHz);
        });

    private static RadioRule Rule(string key) => Stations.Catalogue.Law.Rules.Single(rule => rule.Key == key);

    internal static Finding Find(RadioRulesResult result, string code) => Assert.Single(result.Examination.Findings, finding => finding.Code == code);
}
