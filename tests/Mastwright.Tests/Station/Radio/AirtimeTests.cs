using Mastwright.Station.Radio;

namespace Mastwright.Tests.Station.Radio;

public sealed class AirtimeTests
{
    /// <summary>
    /// Spreading factor, kHz, coding 4/n, payload bytes, payload symbols, milliseconds; preamble 8, explicit header, checksum on.
    /// The first six are printed in public test suites and airtime tables (41.216 ms, 991.232 ms, 51 ms, 165 ms, 330 ms, 61.7 ms);
    /// the rest is the modem data sheet's formula (clause 4.1.1.7) worked by hand.
    /// </summary>
    public static TheoryData<int, double, int, int, int, double> Published => new()
    {
        { 7, 125, 5, 10, 28, 41.216 },
        { 12, 125, 5, 10, 18, 991.232 },
        { 7, 125, 5, 16, 38, 51.456 },
        { 9, 125, 5, 16, 28, 164.864 },
        { 10, 125, 5, 16, 28, 329.728 },
        { 7, 125, 5, 26, 48, 61.696 },
        { 8, 125, 5, 10, 23, 72.192 },
        { 9, 125, 5, 10, 23, 144.384 },
        { 10, 125, 5, 10, 23, 288.768 },
        { 11, 125, 5, 10, 23, 577.536 },
        { 12, 125, 5, 23, 33, 1482.752 },
        { 12, 125, 5, 64, 73, 2793.472 },
        { 12, 125, 8, 51, 96, 3547.136 },
        { 10, 125, 5, 24, 33, 370.688 },
        { 7, 125, 5, 235, 348, 368.896 },
        { 7, 250, 5, 50, 83, 48.768 },
        { 9, 250, 5, 50, 68, 164.352 },
        { 10, 250, 5, 50, 63, 308.224 },
        { 11, 250, 5, 50, 58, 575.488 },
        { 12, 500, 5, 50, 53, 534.528 },
        { 10, 62.5, 5, 20, 38, 823.296 },
        { 7, 62.5, 8, 32, 88, 205.312 },
        { 12, 62.5, 5, 20, 28, 2637.824 },
    };

    [Theory, MemberData(nameof(Published))]
    public void Time_on_air_equals_the_published_value(int factor, double kilohertz, int coding, int bytes, int symbols, double milliseconds)
    {
        AirtimeResult result = Airtime.Compute(Chirp(factor, kilohertz, coding, bytes));

        Assert.Equal(symbols, result.PayloadSymbols);
        Assert.Equal(milliseconds, 1000 * result.TotalSeconds, 1e-9);
    }

    [Fact]
    public void A_preamble_of_16_symbols_lasts_8_symbols_longer() =>
        Assert.Equal(641.024, 1000 * Airtime.Compute(Chirp(11, 250, 5, 50) with { PreambleLength = 16 }).TotalSeconds, 1e-9);

    [Fact]
    public void Without_checksum_the_packet_is_five_symbols_shorter() =>
        Assert.Equal(36.096, 1000 * Airtime.Compute(Chirp(7, 125, 5, 10) with { Checksum = false }).TotalSeconds, 1e-9);

    /// <summary>The rule of the modem data sheet, clause 4.1.1.6: on when the symbol lasts longer than 16 ms.</summary>
    [Theory]
    [InlineData(10, 125, false)]
    [InlineData(11, 125, true)]
    [InlineData(12, 125, true)]
    [InlineData(11, 250, false)]
    [InlineData(12, 250, true)]
    [InlineData(12, 500, false)]
    [InlineData(9, 62.5, false)]
    [InlineData(10, 62.5, true)]
    public void The_low_data_rate_rule_holds_above_16_ms(int factor, double kilohertz, bool on) =>
        Assert.Equal(on, Airtime.Compute(Chirp(factor, kilohertz, 5, 20)).LowDataRateOptimised);

    /// <summary>Raw bit rates at 125 kHz and 4/5: SF·(4/5)·BW/2^SF; a regional-parameters document prints 5470, 3125, 1760, 980 for SF 7 to 10.</summary>
    [Theory]
    [InlineData(7, 5468.75)]
    [InlineData(8, 3125)]
    [InlineData(9, 1757.8125)]
    [InlineData(10, 976.5625)]
    [InlineData(11, 537.109375)]
    [InlineData(12, 292.96875)]
    public void Raw_bit_rate_follows_from_spreading_and_coding(int factor, double bitsPerSecond) =>
        Assert.Equal(bitsPerSecond, Airtime.Compute(Chirp(factor, 125, 5, 10)).BitRate, 1e-9);

    /// <summary>
    /// The newer modem's form for spreading factors 5 and 6 worked by hand (its data sheet, clause 6.1.4, from memory):
    /// 10 bytes, 125 kHz, SF 6: ceil((80+16−24+20)/24) = 4 blocks, 8+4·5 = 28 symbols, 8+6.25+28 = 42.25 symbols of 0.512 ms;
    /// SF 5: ceil((80+16−20+20)/20) = 5 blocks, 33 symbols, 47.25 symbols of 0.256 ms.
    /// </summary>
    [Theory]
    [InlineData(6, 28, 21.632)]
    [InlineData(5, 33, 12.096)]
    public void Spreading_factors_5_and_6_follow_the_newer_modem(int factor, int symbols, double milliseconds)
    {
        AirtimeResult result = Airtime.Compute(Chirp(factor, 125, 5, 10));

        Assert.Equal(symbols, result.PayloadSymbols);
        Assert.Equal(milliseconds, 1000 * result.TotalSeconds, 1e-9);
    }

    /// <summary>By hand: 40 bits of preamble, 24 of sync word, 1 + 20 + 2 bytes; 248 bits at 50 kbit/s.</summary>
    [Fact]
    public void A_frequency_shift_keying_packet_lasts_its_bits()
    {
        AirtimeResult result = Airtime.Compute(Shift() with { PreambleLength = 40, PayloadBytes = 20 });

        Assert.Equal(0.00496, result.TotalSeconds, 1e-12);
        Assert.Contains(result.Assumptions, assumption => assumption.Code == "sync-word");
    }

    [Fact]
    public void A_longer_payload_never_takes_less_time() =>
        Gen.Select(Gen.Int[5, 12], Gen.Int[0, 254], Gen.Int[5, 8], Gen.Int[0, 3]).Sample((factor, bytes, coding, octave) =>
            Airtime.Compute(Chirp(factor, 62.5 * (1 << octave), coding, bytes + 1)).TotalSeconds >= Airtime.Compute(Chirp(factor, 62.5 * (1 << octave), coding, bytes)).TotalSeconds);

    [Fact]
    public void Half_the_bandwidth_takes_twice_as_long_where_the_low_data_rate_rule_stays() =>
        Gen.Select(Gen.Int[7, 9], Gen.Int[0, 255]).Sample((factor, bytes) =>
            Math.Abs((2 * Airtime.Compute(Chirp(factor, 250, 5, bytes)).TotalSeconds) - Airtime.Compute(Chirp(factor, 125, 5, bytes)).TotalSeconds) < 1e-12);

    [Fact]
    public void The_ledger_sums_to_the_time() =>
        Gen.Select(Gen.Int[5, 12], Gen.Int[0, 255]).Sample((factor, bytes) =>
        {
            AirtimeResult result = Airtime.Compute(Chirp(factor, 125, 5, bytes));
            return Math.Abs(result.Ledger.Total - result.TotalSeconds) < 1e-12;
        });

    public static TheoryData<ModemSetting, string> Wrong => new()
    {
        { Chirp(4, 125, 5, 10), "spreading factor is 4" },
        { Chirp(13, 125, 5, 10), "spreading factor is 13" },
        { Chirp(7, 125, 4, 10), "coding rate is 4/4" },
        { Chirp(7, 125, 9, 10), "coding rate is 4/9" },
        { Chirp(7, 125, 5, 256), "payload is 256 bytes" },
        { Chirp(7, 125, 5, -1), "payload is -1 bytes" },
        { Chirp(7, 0.125, 5, 10), "bandwidth is 0.125 kHz" },
        { Chirp(7, double.NaN, 5, 10), "bandwidth is NaN" },
        { Chirp(7, 125, 5, 10) with { PreambleLength = 5 }, "preamble is 5 symbols" },
        { Chirp(7, 125, 5, 10) with { FrequencyHz = 0 }, "frequency is 0 Hz" },
        { Shift() with { BitRate = 0 }, "bit rate is 0 bit/s" },
        { Shift() with { BitRate = 200_000 }, "more than the receiver bandwidth" },
    };

    [Theory, MemberData(nameof(Wrong))]
    public void An_impossible_setting_is_refused_with_what_is_wrong(ModemSetting setting, string words)
    {
        Assert.False(ModemSettingCheck.TryValidate(setting, out string problem));
        Assert.Contains(words, problem, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Airtime.Compute(setting));
    }

    [Theory]
    [InlineData(125, false)]
    [InlineData(125.5, false)]
    [InlineData(120, true)]
    public void A_bandwidth_that_no_modem_offers_is_found(double kilohertz, bool found) =>
        Assert.Equal(found, ModemSettingCheck.BandwidthIsOffered(Chirp(9, kilohertz, 5, 10), SensitivityTests.Catalogue, "modem") is not null);

    internal static ModemSetting Chirp(int factor, double kilohertz, int coding, int bytes) => new()
    {
        FrequencyHz = 869.525e6,
        BandwidthHz = kilohertz * 1000,
        SpreadingFactor = factor,
        CodingRateDenominator = coding,
        PayloadBytes = bytes,
    };

    internal static ModemSetting Shift() => new()
    {
        FrequencyHz = 868.3e6,
        BandwidthHz = 125_000,
        Modulation = Modulation.FrequencyShiftKeying,
        BitRate = 50_000,
        PreambleLength = 40,
        PayloadBytes = 20,
    };
}
