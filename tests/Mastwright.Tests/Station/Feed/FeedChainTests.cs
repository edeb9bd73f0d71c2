using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station;
using Mastwright.Station.Feed;

namespace Mastwright.Tests.Station.Feed;

public sealed class FeedChainTests
{
    internal const double FrequencyHz = 869.525e6;

    /// <summary>RG-213 by the two-way radio training guide (24.90 dB/100 m at 868 MHz); a line of exactly 10 dB/100 m at every frequency used here.</summary>
    internal static StationCatalogue Catalogue { get; } = new(
        [
            new("rg-213", "RG-213/U", AttenuationFitTests.Points([50, 150, 450, 850], [4.9, 8.9, 16.3, 24.7]), 20, "two-way radio training guide"),
            new("ten", "ten", AttenuationFitTests.Points([FrequencyHz / 4e6, FrequencyHz / 1e6], [5, 10]), 20, "made up for the test"),
        ],
        [
            new("connector", Estimate.Of(0.05, 0.1, 0.15), "common practice"),
            new("filter", Estimate.Of(1, 2, 3), "common practice"),
            new("amplifier-bypass", Estimate.Of(0.5, 1, 1.5), "common practice"),
        ],
        []);

    [Fact]
    public void Line_and_connectors_add_up_part_by_part()
    {
        FeedResult feed = Compute([Ten(20), new LossyPart("p/feed/1", LossyPartKind.Connector, 2, null)]);

        Assert.Equal(2.2, feed.PassiveLossDb!.Value.Median, 1e-9);
        Assert.Equal(2.1, feed.PassiveLossDb.Value.Low, 1e-9);
        Assert.Equal(2.3, feed.PassiveLossDb.Value.High, 1e-9);
        Assert.Equal(-2.2, feed.ReceiveGainDb!.Value.Median, 1e-9);
        Assert.Contains(feed.Assumptions, assumption => assumption.Code == "part-loss-connector");
        Assert.Contains(feed.Assumptions, assumption => assumption.Code == "line-temperature");

        (Ledger ledger, Estimate power) = feed.Transmit(Estimate.Exactly(22), "plan")!.Value;
        Assert.Equal(19.8, power.Median, 1e-9);
        Assert.Equal(["conducted-power", "feed-1-line", "feed-2-connector"], ledger.Lines.Select(line => line.Code));
    }

    /// <summary>Attenuation of the guide's RG-213 at 868 MHz, 24.90 dB/100 m, over 14 m.</summary>
    [Fact]
    public void Loss_of_a_line_follows_its_published_table()
    {
        FeedResult feed = FeedChain.Compute([new FeedLine("p/feed/0", "rg-213", Estimate.Exactly(14))], null, 868e6, Catalogue, "p");

        Assert.Equal(0.14 * 24.90, feed.PassiveLossDb!.Value.Median, 0.001);
        Assert.Contains(feed.Assumptions, assumption => assumption.Code == "line-attenuation-extrapolated");
        Assert.Equal(Verdict.Tight, Assert.Single(feed.Findings, finding => finding.Code == "feed-loss").Verdict);
    }

    [Fact]
    public void An_unknown_line_type_makes_the_feed_unknown_and_names_the_known_ones()
    {
        FeedResult feed = Compute([new FeedLine("p/feed/0", "rg-999", Estimate.Exactly(5))]);

        Assert.Null(feed.PassiveLossDb);
        Assert.Null(feed.Transmit(Estimate.Exactly(14), "plan"));
        Finding finding = Assert.Single(feed.Findings);
        Assert.Equal("line-type-unknown", finding.Code);
        Assert.Equal("p/feed/0", finding.Subject);
        Assert.Contains("rg-213", finding.Details["known"], StringComparison.Ordinal);
    }

    /// <summary>By hand: 22 dBm − 2 dB + 10 dB would be 30 dBm; the amplifier stops at 27 dBm; 1 dB of line follows.</summary>
    [Fact]
    public void A_transmit_amplifier_is_held_to_its_most_and_the_ledger_shows_it()
    {
        FeedResult feed = Compute([Ten(20), Amplifier(receive: null, noise: null, transmit: 10, most: 27), Ten(10)]);

        (Ledger ledger, Estimate power) = feed.Transmit(Estimate.PlusMinus(22, 1), "plan")!.Value;

        Assert.Equal(26, power.Median, 1e-9);
        Assert.Equal(26, power.High, 1e-9);
        Assert.Equal(26, power.Low, 1e-9);
        Assert.Equal(7, ledger.Lines[2].Value, 1e-9);
        Assert.Contains("27 dBm", ledger.Lines[2].Note, StringComparison.Ordinal);
    }

    /// <summary>By hand: see NoiseCascadeTests; the amplifier stands at the antenna, 3 dB of line behind it.</summary>
    [Fact]
    public void Receiving_meets_the_parts_from_the_antenna_down()
    {
        FeedResult feed = Compute([Ten(30), Amplifier(receive: 20, noise: 1, transmit: null, most: null)]);

        Assert.Equal(1.2332, feed.SystemNoiseFigureDb(Estimate.Exactly(6))!.Value.Median, 1e-4);
        Assert.Equal(17, feed.ReceiveGainDb!.Value.Median, 1e-9);

        // Sending, the same amplifier is bypassed with the catalogue's 1 dB.
        Assert.Equal(14 - 3 - 1, feed.Transmit(Estimate.Exactly(14), "plan")!.Value.PowerDbm.Median, 1e-9);
    }

    [Fact]
    public void A_receive_amplifier_of_unknown_noise_makes_the_noise_unknown()
    {
        FeedResult feed = Compute([Amplifier(receive: 20, noise: null, transmit: 20, most: 27)]);

        Assert.Null(feed.SystemNoiseFigureDb(Estimate.Exactly(6)));
        Assert.Contains(feed.Findings, finding => finding is { Code: "amplifier-noise-unknown", Verdict: Verdict.Unknown });
    }

    /// <summary>Handbook row: 3 dB of line and an antenna of VSWR 3 show as VSWR 1.669 at the radio (MismatchTests); mismatch loss 1.2494 dB.</summary>
    [Fact]
    public void A_good_reading_at_the_radio_shows_the_bad_antenna_behind_the_line()
    {
        double reading = Mismatch.ReturnLossDbFromVswr(3) + 6;
        FeedResult feed = Compute([Ten(30)], new(reading, AtAntenna: false));

        Assert.Equal(Mismatch.ReturnLossDbFromVswr(3), feed.AntennaReturnLossDb!.Value.Median, 1e-9);
        Assert.Equal(-3 - 1.2494, feed.ReceiveGainDb!.Value.Median, 5e-5);
        Assert.Equal(Verdict.Tight, Assert.Single(feed.Findings, finding => finding.Code == "antenna-match").Verdict);
    }

    [Fact]
    public void A_reading_that_no_antenna_can_give_is_a_finding()
    {
        FeedResult feed = Compute([Ten(60)], new(10, AtAntenna: false));

        Finding finding = Assert.Single(feed.Findings, finding => finding.Code == "mismatch-impossible");
        Assert.Equal(Verdict.Fails, finding.Verdict);
        Assert.True(finding.Value!.Value.Median >= 1);
        Assert.Equal(-6, feed.ReceiveGainDb!.Value.Median, 1e-9);
    }

    /// <summary>By hand: 3 dB of feed, give or take 3, leave 8 dB at the radio as 2 dB at the antenna, between −4 (which cannot be) and 8; the low end stops at 0.5 dB.</summary>
    [Fact]
    public void A_vague_feed_carries_a_reading_to_a_range_that_can_be()
    {
        FeedResult feed = Compute([new FeedLine("p/feed/0", "ten", Estimate.PlusMinus(30, 30))], new(8, AtAntenna: false));

        Assert.Equal(0.5, feed.AntennaReturnLossDb!.Value.Low, 1e-9);
        Assert.Equal(2, feed.AntennaReturnLossDb.Value.Median, 1e-9);
        Assert.Equal(8, feed.AntennaReturnLossDb.Value.High, 1e-9);
        Assert.Equal(Verdict.Unknown, Assert.Single(feed.Findings, finding => finding.Code == "antenna-match").Verdict);
    }

    [Fact]
    public void A_reading_at_the_antenna_is_taken_as_it_is()
    {
        FeedResult feed = Compute([Ten(60)], new(14, AtAntenna: true));

        Assert.Equal(14, feed.AntennaReturnLossDb!.Value.Median);
        Assert.Equal(Verdict.Ok, Assert.Single(feed.Findings, finding => finding.Code == "antenna-match").Verdict);
    }

    [Fact]
    public void A_reading_through_an_amplifier_says_nothing_of_the_antenna()
    {
        FeedResult feed = Compute([Amplifier(receive: 20, noise: 1, transmit: 10, most: 27), Ten(10)], new(14, AtAntenna: false));

        Assert.Null(feed.AntennaReturnLossDb);
        Assert.Contains(feed.Findings, finding => finding.Code == "mismatch-behind-amplifier");
    }

    [Fact]
    public void A_longer_line_never_brings_more_power_nor_less_noise() =>
        Gen.Select(Gen.Double[0, 100], Gen.Double[0, 50]).Sample((metres, more) =>
        {
            FeedResult near = Compute([Ten(metres)]);
            FeedResult far = Compute([Ten(metres + more)]);
            return far.Transmit(Estimate.Exactly(14), "")!.Value.PowerDbm.Median <= near.Transmit(Estimate.Exactly(14), "")!.Value.PowerDbm.Median
                && far.SystemNoiseFigureDb(Estimate.Exactly(6))!.Value.Median >= near.SystemNoiseFigureDb(Estimate.Exactly(6))!.Value.Median - 1e-9;
        });

    [Fact]
    public void An_empty_feed_changes_nothing()
    {
        FeedResult feed = Compute([]);

        Assert.Equal(0, feed.PassiveLossDb!.Value.Median);
        Assert.Equal(14, feed.Transmit(Estimate.Exactly(14), "")!.Value.PowerDbm.Median);
        Assert.Equal(6, feed.SystemNoiseFigureDb(Estimate.Exactly(6))!.Value.Median, 1e-12);
        Assert.Empty(feed.Findings);
    }

    internal static FeedLine Ten(double metres) => new("p/feed/0", "ten", Estimate.Exactly(metres));

    internal static FeedAmplifier Amplifier(double? receive, double? noise, double? transmit, double? most) =>
        new("p/feed/9", "amplifier", Exactly(receive), noise, Exactly(transmit), Exactly(most), null);

    private static Estimate? Exactly(double? value) => value is { } number ? Estimate.Exactly(number) : null;

    private static FeedResult Compute(ImmutableArray<FeedPart> parts, MismatchReading? mismatch = null) =>
        FeedChain.Compute(parts, mismatch, FrequencyHz, Catalogue, "p");
}
