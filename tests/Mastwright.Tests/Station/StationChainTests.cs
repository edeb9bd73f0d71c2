using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Antenna;
using Mastwright.Station.Feed;
using Mastwright.Station.Radio;
using Mastwright.Tests.Station.Antenna;
using Mastwright.Tests.Station.Feed;
using Mastwright.Tests.Station.Radio;

namespace Mastwright.Tests.Station;

public sealed class StationChainTests
{
    private static readonly StationCatalogue Catalogue = FeedChainTests.Catalogue.Overlay(SensitivityTests.Catalogue);

    private static readonly StationChainInput Input = new()
    {
        PlanPath = "sites/ferry-house/fit-outs/eaves",
        Antenna = AntennaPatternTests.Fit,
        Feed = [FeedChainTests.Ten(20)],
        Radio = new() { ConductedPowerDbm = Estimate.Exactly(14), NoiseFigureDb = Estimate.Exactly(6) },
        Modem = AirtimeTests.Chirp(12, 125, 5, 20),
        Catalogue = Catalogue,
        ExternalNoiseFigureDb = 0,
    };

    /// <summary>By hand: 14 − 2 = 12 dBm into the antenna, 8 dBi: EIRP 20 dBm, ERP 17.85 dBm; sensitivity −137.03 dBm (published), 2 dB more at the antenna.</summary>
    [Fact]
    public void A_plain_chain_comes_to_the_hand_worked_figures()
    {
        StationChainResult result = StationChain.Compute(Input);

        Assert.Equal(12, result.PowerIntoAntennaDbm!.Value.Median, 1e-9);
        Assert.Equal(20, result.RadiatedPower!.EirpDbm.Median, 1e-9);
        Assert.Equal(17.85, result.RadiatedPower.ErpDbm.Median, 1e-9);
        Assert.Equal(-137.03, result.SensitivityLedger!.Total, 0.005);
        Assert.Equal(-135.03, result.RequiredDbm!.Value.Median, 0.005);
        Assert.Equal(result.RequiredDbm.Value.Median, result.RequiredLedger!.Total, 1e-9);
        Assert.Empty(result.MissingToSend);
        Assert.Empty(result.MissingToReceive);
    }

    [Fact]
    public void Everything_assumed_is_listed_with_its_place_in_the_plan()
    {
        StationChainResult result = StationChain.Compute(Input with
        {
            Radio = new() { ConductedPowerDbm = Estimate.Exactly(14) },
            ExternalNoiseFigureDb = null,
            Feed = [FeedChainTests.Ten(20), new LossyPart("sites/ferry-house/fit-outs/eaves/feed/1", LossyPartKind.Connector, 2, null)],
        });

        string[] codes = [.. result.Assumptions.Select(assumption => assumption.Code)];
        Assert.Equal(["line-temperature", "part-loss-connector", "antenna-match", "antenna-pattern", "radio-noise-figure", "external-noise"], codes);
        Assert.Contains(result.Assumptions, assumption => assumption.PlanPath == "sites/ferry-house/fit-outs/eaves/radio/noise-figure");
        Assert.Contains(result.Findings, finding => finding is { Code: "external-noise-unknown", Verdict: Verdict.Unknown });
    }

    [Fact]
    public void A_station_of_unknown_power_can_still_be_told_what_it_hears()
    {
        StationChainResult result = StationChain.Compute(Input with { Radio = new() });

        Assert.Null(result.PowerIntoAntennaDbm);
        Assert.Equal(["sites/ferry-house/fit-outs/eaves/radio/power"], result.MissingToSend);
        Assert.NotNull(result.RequiredDbm);
        Assert.Contains(result.Findings, finding => finding.Code == "conducted-power-unknown");
    }

    [Fact]
    public void A_gain_that_the_array_formula_gives_is_not_missing()
    {
        StationChainResult result = StationChain.Compute(Input with
        {
            Antenna = Input.Antenna with { GainDbi = null, Pattern = PatternKind.CollinearArray, Elements = 4 },
        });

        Assert.Empty(result.MissingToSend);
        Assert.DoesNotContain(result.Findings, finding => finding.Code == "antenna-gain-unknown");
        Assert.Contains(result.Assumptions, assumption => assumption.Code == "antenna-gain-from-array");
    }

    [Fact]
    public void An_unknown_line_makes_both_directions_unknown()
    {
        StationChainResult result = StationChain.Compute(Input with { Feed = [new FeedLine("p/feed/0", "rg-999", Estimate.Exactly(5))] });

        Assert.Null(result.PowerIntoAntennaDbm);
        Assert.Null(result.RequiredDbm);
        Assert.Equal(["p/feed/0"], result.MissingToSend);
        Assert.Equal(["p/feed/0"], result.MissingToReceive);
    }

    /// <summary>By hand: a floor of −112 dBm at the radio and a limit of −20 dB: −132 dBm there, −130 dBm before 2 dB of feed; noise figure and external noise have no say.</summary>
    [Fact]
    public void A_measured_noise_floor_overrides_every_computed_noise()
    {
        StationChainResult result = StationChain.Compute(Input with
        {
            Radio = Input.Radio with { MeasuredNoiseFloorDbm = Estimate.PlusMinus(-112, 1) },
            ExternalNoiseFigureDb = 20,
        });

        Assert.Equal(-130, result.RequiredDbm!.Value.Median, 1e-9);
        Assert.Equal(-131, result.RequiredDbm.Value.Low, 1e-9);
        Assert.Null(result.SensitivityLedger);
    }

    /// <summary>By hand: 6 dB of receiver behind 2 dB of feed is 8 dB (6.310); external 10 dB above kT0B: 10 + 6.310 − 1 = 15.310, 11.850 dB.</summary>
    [Fact]
    public void Noise_from_outside_raises_the_wanted_level()
    {
        double quiet = StationChain.Compute(Input).RequiredDbm!.Value.Median;
        StationChainResult loud = StationChain.Compute(Input with { ExternalNoiseFigureDb = 10 });

        Assert.Equal(11.850 - 8, loud.RequiredDbm!.Value.Median - quiet, 0.001);
        Assert.Equal(11.850 - 8, Assert.Single(loud.RequiredLedger!.Lines, line => line.Code == "external-noise").Value, 0.001);
    }

    [Fact]
    public void Surroundings_count_only_where_the_recommendation_has_a_figure()
    {
        StationChainInput at868 = Input with { ExternalNoiseFigureDb = null, NoiseEnvironment = NoiseEnvironment.Residential };
        StationChainInput at169 = at868 with { Modem = at868.Modem with { FrequencyHz = 169.4e6 } };

        Assert.Contains(StationChain.Compute(at868).Findings, finding => finding.Code == "external-noise-unknown");
        Assert.DoesNotContain(StationChain.Compute(at169).Findings, finding => finding.Code == "external-noise-unknown");
    }

    /// <summary>
    /// By hand: 62 dBm EIRP at 791 MHz, 300 m: free space 79.95 dB; 8 dBi and the test line's loss at 791 MHz. Against a blocking figure
    /// of −30 dBm the level of about −12 dBm fails; against 0 dBm it keeps 12 dB.
    /// </summary>
    [Theory]
    [InlineData(-30.0, Verdict.Fails)]
    [InlineData(-10.0, Verdict.Tight)]
    [InlineData(0.0, Verdict.Ok)]
    [InlineData(null, Verdict.Unknown)]
    public void A_nearby_transmitter_is_held_against_the_blocking_figure(double? blockingDbm, Verdict verdict)
    {
        StationChainResult result = StationChain.Compute(Near(new("p/nearby/mast", 791e6, 62, 300), blockingDbm));

        NearbyTransmitterResult nearby = Assert.Single(result.NearbyTransmitters);
        double lineDb = 20 * Catalogue.LineType("ten")!.DbPer100Metres(791e6) / 100;
        Assert.Equal(62 - 79.95 + 8 - lineDb, nearby.Ledger!.Total, 0.01);
        Assert.Equal(verdict, nearby.Finding.Verdict);
        Assert.Contains(nearby.Finding, result.Findings);
    }

    [Fact]
    public void A_blocking_figure_for_a_wider_offset_does_not_clear_a_closer_transmitter()
    {
        StationChainInput input = Near(new("p/nearby/mast", 866e6, 20, 300), 0);
        StationChainResult result = StationChain.Compute(input with { Radio = input.Radio with { BlockingOffsetHz = 10e6 } });

        Assert.Equal(Verdict.Unknown, result.NearbyTransmitters[0].Finding.Verdict);
        Assert.Contains("10 MHz away", result.NearbyTransmitters[0].Finding.Details["doubt"], StringComparison.Ordinal);
    }

    [Fact]
    public void A_filter_of_unknown_rejection_leaves_a_failing_level_unknown()
    {
        StationChainInput input = Near(new("p/nearby/mast", 791e6, 62, 300), -30);
        StationChainResult result = StationChain.Compute(input with { Feed = [.. input.Feed, new LossyPart("p/feed/1", LossyPartKind.Filter, 1, null)] });

        Assert.Equal(Verdict.Unknown, result.NearbyTransmitters[0].Finding.Verdict);
    }

    /// <summary>2·D²/λ by hand: 0.6 m at 915 MHz is 2.1975 m.</summary>
    [Fact]
    public void The_far_field_begins_where_the_textbooks_put_it() =>
        Assert.Equal(2.1975, NearbyTransmitters.NearFieldMetres(0.6, 915e6), 0.0005);

    [Fact]
    public void The_range_of_every_input_widens_the_result_and_never_turns_it_round() =>
        Gen.Select(Gen.Double[0, 3], Gen.Double[0, 3], Gen.Double[0, 20], Gen.Double[-5, 25]).Sample((power, figure, metres, external) =>
        {
            StationChainResult result = StationChain.Compute(Input with
            {
                Radio = new() { ConductedPowerDbm = Estimate.PlusMinus(14, power), NoiseFigureDb = Estimate.PlusMinus(6, figure) },
                Feed = [new FeedLine("p/feed/0", "ten", Estimate.Between(20 - metres, 20 + metres))],
                ExternalNoiseFigureDb = external,
            });
            return result.PowerIntoAntennaDbm!.Value.HalfRange >= power - 1e-9
                && result.RequiredDbm!.Value.Low <= result.RequiredDbm.Value.Median
                && Math.Abs(result.RequiredLedger!.Total - result.RequiredDbm.Value.Median) < 1e-9
                && Math.Abs(result.TransmitLedger!.Total - result.PowerIntoAntennaDbm.Value.Median) < 1e-9;
        });

    [Fact]
    public void An_invalid_setting_is_misuse() =>
        Assert.Throws<ArgumentException>(() => StationChain.Compute(Input with { Modem = Input.Modem with { SpreadingFactor = 3 } }));

    private static StationChainInput Near(NearbyEmitter emitter, double? blockingDbm) => Input with
    {
        Radio = Input.Radio with { BlockingDbm = blockingDbm },
        NearbyTransmitters = [emitter],
    };
}
