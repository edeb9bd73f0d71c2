using CsCheck;
using Mastwright.Station.Radio;
using Mastwright.Station.Rules;
using Mastwright.Tests.Station.Radio;

namespace Mastwright.Tests.Station.Rules;

public sealed class OccupiedBandTests
{
    private static readonly ModemSetting Modem = AirtimeTests.Chirp(10, 125, 5, 40) with { FrequencyHz = 869.525e6 };

    /// <summary>By hand: half of 125 kHz and 10 ppm of 869.525 MHz, which is 8.69525 kHz, each way.</summary>
    [Fact]
    public void Edges_are_half_the_bandwidth_and_the_frequency_error_off()
    {
        OccupiedBand band = OccupiedBand.Of(Modem, new() { FrequencyErrorPartsPerMillion = 4, FrequencyDriftPartsPerMillion = 6 }, "radio");

        Assert.Equal(869.525e6 - 62_500 - 8_695.25, band.LowHz, 1e-3);
        Assert.Equal(869.525e6 + 62_500 + 8_695.25, band.HighHz, 1e-3);
        Assert.Equal(band.HighHz / 1e3, band.UpperEdge.Total, 1e-9);
        Assert.Equal(band.LowHz / 1e3, band.LowerEdge.Total, 1e-9);
        Assert.Equal(["occupied-bandwidth"], band.Assumptions.Select(assumption => assumption.Code));
    }

    [Fact]
    public void An_error_that_nobody_gave_is_assumed_and_listed()
    {
        OccupiedBand band = OccupiedBand.Of(Modem, new() { FrequencyErrorPartsPerMillion = 4 }, "sites/west/fit-outs/roof/radio");

        Assert.True(band.ErrorAssumed);
        Assert.Equal(OccupiedBand.AssumedPartsPerMillion * 869.525, band.ErrorHz, 1e-6);
        Assert.Contains(band.Assumptions, assumption => assumption.PlanPath == "sites/west/fit-outs/roof/radio/frequency-drift");
    }

    [Fact]
    public void A_measured_bandwidth_takes_the_place_of_the_modems()
    {
        OccupiedBand band = OccupiedBand.Of(Modem with { Emission = new() { OccupiedHz = 118e3 } }, new(), "radio");

        Assert.Equal(118e3, band.WidthHz);
        Assert.False(band.WidthAssumed);
    }

    /// <summary>Carson's rule at a modulation index of 1: deviation of half the bit rate, 2·(½ + ½) = 2 times the bit rate.</summary>
    [Fact]
    public void Keying_takes_twice_its_bit_rate() => Assert.Equal(
        9_600, OccupiedBand.Of(new() { FrequencyHz = 868e6, BandwidthHz = 25e3, Modulation = Modulation.FrequencyShiftKeying, BitRate = 4_800, PayloadBytes = 20 }, new(), "").WidthHz);

    [Fact]
    public void More_frequency_error_never_narrows_the_band() =>
        Gen.Select(Gen.Double[0, 50], Gen.Double[0, 50]).Sample((ppm, more) => Width(ppm + more) >= Width(ppm) - 1e-6);

    private static double Width(double ppm)
    {
        OccupiedBand band = OccupiedBand.Of(Modem, new() { FrequencyErrorPartsPerMillion = ppm, FrequencyDriftPartsPerMillion = 0 }, "");
        return band.HighHz - band.LowHz;
    }
}
