using Mastwright.Findings;
using Mastwright.Station.Radio;

namespace Mastwright.Tests.Station.Radio;

public sealed class FrequencyErrorTests
{
    private static readonly RadioUnit Crystal = new() { FrequencyErrorPartsPerMillion = 10, FrequencyDriftPartsPerMillion = 10 };

    /// <summary>By hand at 869.525 MHz: two crystals of 10 + 10 ppm differ by up to 40 ppm, 34.781 kHz; a quarter of 62.5, 125, 250 kHz is 15.6, 31.25, 62.5 kHz.</summary>
    [Theory]
    [InlineData(62.5, Verdict.Fails)]
    [InlineData(125, Verdict.Fails)]
    [InlineData(250, Verdict.Ok)]
    public void Two_crystals_need_a_bandwidth_four_times_their_difference(double kilohertz, Verdict verdict)
    {
        Finding finding = FrequencyError.Judge(AirtimeTests.Chirp(9, kilohertz, 5, 10), Crystal, Crystal, SensitivityTests.Catalogue, "link");

        Assert.Equal(verdict, finding.Verdict);
        Assert.Equal(34_781, finding.Value!.Value.Median, 0.5);
        Assert.Equal(kilohertz * 250, finding.Limit!.Value, 1e-9);
    }

    [Fact]
    public void An_end_whose_error_nobody_gave_leaves_it_unknown_and_says_so()
    {
        Finding finding = FrequencyError.Judge(AirtimeTests.Chirp(9, 125, 5, 10), Crystal, new(), SensitivityTests.Catalogue, "link");

        Assert.Equal(Verdict.Unknown, finding.Verdict);
        Assert.Contains("drift over temperature", finding.Details["missing"], StringComparison.Ordinal);
    }

    /// <summary>By hand, BW/(3·2^SF): SF 11 at 250 kHz 40.7 Hz; SF 12 at 125 kHz under the low-data-rate rule 16·10.17 = 162.8 Hz (newer modem data sheet, from memory).</summary>
    [Theory]
    [InlineData(11, 250, 40.69)]
    [InlineData(12, 125, 162.76)]
    public void During_a_packet_far_less_is_borne(int factor, double kilohertz, double hertz) =>
        Assert.Equal(hertz, FrequencyError.PacketDriftHz(AirtimeTests.Chirp(factor, kilohertz, 5, 10))!.Value, 0.01);

    /// <summary>By hand: 125 kHz less twice 50 kbit/s leaves 25 kHz, half of it either way.</summary>
    [Fact]
    public void Frequency_shift_keying_bears_what_the_receivers_width_leaves() =>
        Assert.Equal(12_500, FrequencyError.ToleranceHz(AirtimeTests.Shift(), SensitivityTests.Catalogue)!.Value, 1e-9);
}
