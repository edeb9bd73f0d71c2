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

public sealed class StationSentencesTests
{
    /// <summary>A station with as much wrong as one can have, so that nearly every finding of radio, feed and antenna comes up.</summary>
    private static ImmutableArray<Finding> Everything()
    {
        StationCatalogue catalogue = FeedChainTests.Catalogue.Overlay(SensitivityTests.Catalogue).Overlay(new(
            [new("misprint", "misprint", AttenuationFitTests.Points([50, 150, 450, 850], [10.8, 20.0, 25.5, 58.2]), 20, "made up")], [], []));
        StationChainInput bad = new()
        {
            PlanPath = "p",
            Antenna = AntennaPatternTests.Fit with
            {
                GainDbi = null,
                Pattern = PatternKind.CollinearArray,
                SideMountOffsetMetres = 0.1,
                AzimuthBeamwidthDegrees = 60,
            },
            Feed =
            [
                new FeedLine("p/feed/0", "rg-999", Estimate.Exactly(5)),
                new FeedLine("p/feed/1", "misprint", Estimate.Exactly(50)),
                new LossyPart("p/feed/2", LossyPartKind.SurgeArrester, 1, null),
                new FeedAmplifier("p/feed/3", "", Estimate.Exactly(20), null, Estimate.Exactly(10), null, null),
            ],
            Mismatch = new(12, AtAntenna: false),
            Modem = AirtimeTests.Chirp(5, 120, 5, 10),
            Catalogue = catalogue,
            NearbyTransmitters = [new("p/nearby-transmitters/mast", 791e6, 62, 0.3)],
        };
        StationChainInput plain = bad with
        {
            Antenna = AntennaPatternTests.Fit with { LengthMetres = 0.5 },
            Feed = [FeedChainTests.Ten(60)],
            Mismatch = new(10, AtAntenna: false),
            Radio = new() { ConductedPowerDbm = Estimate.Exactly(14) },
            Modem = AirtimeTests.Chirp(9, 125, 5, 10),
        };
        return
        [
            .. StationChain.Compute(bad).Findings,
            .. StationChain.Compute(plain).Findings,
            .. StationChain.Compute(plain with { Mismatch = new(5, AtAntenna: true) }).Findings,
            FrequencyError.Judge(plain.Modem, new(), new(), catalogue, "link"),
            ModemSettingCheck.BandwidthIsOffered(bad.Modem, catalogue, "modem")!,
            AntennaFindings.Direction(AntennaPattern.Of(plain.Antenna, 868e6, "p"), -30, double.NaN, "link"),
            PolarisationMismatch.Judge(Polarisation.Vertical, Polarisation.Horizontal, "link")!,
        ];
    }

    [Fact]
    public void Every_finding_of_radio_feed_and_antenna_has_its_sentences_filled()
    {
        ImmutableArray<Finding> findings = Everything();

        Assert.Equal(
            [
                "amplifier-limit-unknown", "amplifier-noise-unknown", "antenna-bearing-unknown", "antenna-direction", "antenna-gain-for-length",
                "antenna-gain-unknown", "antenna-match", "antenna-pattern-incomplete", "antenna-side-mount", "conducted-power-unknown",
                "demodulation-limit-unknown", "external-noise-unknown", "feed-loss", "frequency-error", "line-table-inconsistent",
                "line-type-unknown", "mismatch-behind-amplifier", "mismatch-impossible", "modem-bandwidth-unusual",
                "nearby-transmitter-blocking", "part-loss-unknown", "polarisation-differs",
            ],
            findings.Select(finding => finding.Code).Distinct().Order(StringComparer.Ordinal));
        Assert.All(findings, finding =>
        {
            Assert.Contains(finding.Code, FindingSentences.Codes);
            Assert.DoesNotContain('{', FindingSentences.Text(finding));
            Assert.DoesNotContain('{', FindingSentences.Advice(finding));
        });
    }
}
