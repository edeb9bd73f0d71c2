using CsCheck;
using Mastwright.Quantities;
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
        Assert.Equal(["carrier", "half-bandwidth", "carrier-error", "carrier-drift"], band.UpperEdge.Lines.Select(line => line.Code));
    }

    /// <summary>50 ppm for what nobody stated, on top of what was stated: 54 ppm of 869.525 MHz are 46.95 kHz.</summary>
    [Theory]
    [InlineData(null, null, 50, 50, "frequency-error")]
    [InlineData(4.0, null, 54, 50, "frequency-drift")]
    [InlineData(200.0, null, 250, 50, "frequency-drift")]
    [InlineData(null, 200.0, 250, 50, "frequency-error")]
    public void What_nobody_stated_is_assumed_on_top_of_what_was(double? error, double? drift, double ppm, double assumed, string key)
    {
        OccupiedBand band = OccupiedBand.Of(
            Modem, new() { FrequencyErrorPartsPerMillion = error, FrequencyDriftPartsPerMillion = drift, DriftCelsius = Estimate.Of(-30, 25, 85) }, "sites/west/fit-outs/roof/radio", Estimate.Of(-5, 20, 40));

        Assert.Equal(ppm * 869.525, band.ErrorHz, 1e-6);
        Assert.Equal(assumed, band.Error.AssumedPartsPerMillion);
        Assert.Contains(band.Assumptions, assumption => assumption.PlanPath == "sites/west/fit-outs/roof/radio/" + key);
    }

    /// <summary>A drift stated for -20 to 60 °C: nothing is assumed of a box within, 50 ppm more of one that gets to 71 °C.</summary>
    [Fact]
    public void A_drift_holds_for_the_temperatures_for_which_it_was_stated()
    {
        RadioUnit radio = new() { FrequencyErrorPartsPerMillion = 4, FrequencyDriftPartsPerMillion = 6, DriftCelsius = Estimate.Of(-20, 25, 60) };
        OccupiedBand within = OccupiedBand.Of(Modem, radio, "radio", Estimate.Of(-20, 20, 60));
        OccupiedBand hot = OccupiedBand.Of(Modem, radio, "radio", Estimate.Of(-3, 20, 71));
        OccupiedBand cold = OccupiedBand.Of(Modem, radio, "radio", Estimate.Of(-21, 20, 40));

        Assert.Equal(["occupied-bandwidth"], within.Assumptions.Select(assumption => assumption.Code));
        Assert.Equal(10 * 869.525, within.ErrorHz, 1e-6);
        Assert.Equal(60 * 869.525, hot.ErrorHz, 1e-6);
        Assert.Equal(60 * 869.525, cold.ErrorHz, 1e-6);
        Assert.Equal(0, within.Error.AssumedPartsPerMillion);
        Assert.Contains(hot.Assumptions, assumption => assumption.Text.Contains("leaves -20 to 60 °C", StringComparison.Ordinal));
        Assert.Equal(["carrier", "half-bandwidth", "carrier-error", "carrier-drift", "carrier-drift-outside"], hot.UpperEdge.Lines.Select(line => line.Code));
        Assert.Contains("-3 to 71 °C", hot.UpperEdge.Lines[^1].Note, StringComparison.Ordinal);
    }

    /// <summary>That a stated drift is for this box's temperatures is an assumption until the plan says for which it is.</summary>
    [Theory]
    [InlineData(false, false, "temperatures, which are not known")]
    [InlineData(false, true, "holds for -5 to 40 °C")]
    [InlineData(true, false, "stays within -30 to 85 °C")]
    public void Temperatures_that_nobody_gave_are_assumed_and_listed(bool stated, bool known, string words)
    {
        RadioUnit radio = new() { FrequencyErrorPartsPerMillion = 4, FrequencyDriftPartsPerMillion = 6, DriftCelsius = stated ? Estimate.Of(-30, 25, 85) : null };
        OccupiedBand band = OccupiedBand.Of(Modem, radio, "radio", known ? Estimate.Of(-5, 20, 40) : null);

        Assert.Equal(10 * 869.525, band.ErrorHz, 1e-6);
        Assert.Contains(words, Assert.Single(band.Assumptions, assumption => assumption.Code == "carrier-error").Text, StringComparison.Ordinal);
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

    [Fact]
    public void Not_to_know_never_narrows_the_band() =>
        Gen.Select(Gen.Double[0, 300], Gen.Double[0, 300]).Sample((error, drift) =>
            Half(error, drift) <= Half(error, null) + drift + 1e-9 && Half(error, null) >= error && Half(null, drift) >= drift);

    private static double Half(double? error, double? drift) =>
        OccupiedBand.Of(Modem, new() { FrequencyErrorPartsPerMillion = error, FrequencyDriftPartsPerMillion = drift }, "").Error.PartsPerMillion;

    private static double Width(double ppm)
    {
        OccupiedBand band = OccupiedBand.Of(Modem, new() { FrequencyErrorPartsPerMillion = ppm, FrequencyDriftPartsPerMillion = 0 }, "");
        return band.HighHz - band.LowHz;
    }
}
