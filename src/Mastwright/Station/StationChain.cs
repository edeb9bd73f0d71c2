using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Station.Feed;
using Mastwright.Station.Radio;

namespace Mastwright.Station;

/// <summary>Radio, feed and antenna of one fit-out, both directions, ready for a link budget.</summary>
public static class StationChain
{
    /// <summary>Computes the chain.</summary>
    /// <exception cref="ArgumentException">The modem setting is not valid; ask <see cref="ModemSettingCheck.TryValidate"/> first.</exception>
    public static StationChainResult Compute(StationChainInput input)
    {
        ArgumentNullException.ThrowIfNull(input);
        if (!ModemSettingCheck.TryValidate(input.Modem, out string problem))
        {
            throw new ArgumentException(problem, nameof(input));
        }

        double frequency = input.Modem.FrequencyHz;
        string antennaPath = StationDefaults.Join(input.PlanPath, "antenna");
        FeedResult feed = FeedChain.Compute(input.Feed, input.Mismatch, frequency, input.Catalogue, input.PlanPath);
        AntennaPattern pattern = AntennaPattern.Of(input.Antenna, frequency, antennaPath);
        List<Assumption> assumptions = [.. feed.Assumptions, .. pattern.Assumptions];
        List<Finding> findings = [.. feed.Findings, .. pattern.Findings];

        // A gain that the array formula gave is an assumption, not a gap.
        findings.AddRange(AntennaFindings.Review(input.Antenna, frequency, antennaPath)
            .Where(finding => finding.Code != "antenna-gain-unknown" || pattern.MainBeamDbi is null));

        StationChainResult sending = Send(input, feed, pattern, findings);
        StationChainResult both = Receive(input, sending, assumptions, findings);
        ImmutableArray<NearbyTransmitterResult> nearby =
            [.. input.NearbyTransmitters.Select(emitter => NearbyTransmitters.Judge(emitter, input, pattern.MainBeamDbi))];
        findings.AddRange(nearby.Select(result => result.Finding));
        return both with
        {
            NearbyTransmitters = nearby,
            Assumptions = [.. assumptions],
            Findings = [.. findings],
        };
    }

    private static StationChainResult Send(StationChainInput input, FeedResult feed, AntennaPattern pattern, List<Finding> findings)
    {
        string powerPath = StationDefaults.Join(input.PlanPath, "radio/power");
        List<string> missing = FeedGaps(feed, pattern, input.PlanPath);
        StationChainResult result = new() { Feed = feed, Pattern = pattern };
        if (input.Radio.ConductedPowerDbm is not { } conducted)
        {
            findings.Add(Finding.Unknown("conducted-power-unknown", powerPath, "conducted power", ("missing", powerPath)) with { Unit = "dBm" });
            return result with { MissingToSend = [powerPath, .. missing] };
        }

        if (feed.Transmit(conducted, powerPath) is not { } sent)
        {
            return result with { MissingToSend = [.. missing] };
        }

        return result with
        {
            MissingToSend = [.. missing],
            TransmitLedger = sent.Ledger,
            PowerIntoAntennaDbm = sent.PowerDbm,
            RadiatedPower = pattern.MainBeamDbi is { } gain
                ? RadiatedPower.Compute(sent.PowerDbm, sent.Ledger.Lines, gain, StationDefaults.Join(input.PlanPath, "antenna/gain"))
                : null,
        };
    }

    private static StationChainResult Receive(
        StationChainInput input, StationChainResult result, List<Assumption> assumptions, List<Finding> findings)
    {
        FeedResult feed = result.Feed;
        List<string> missing = FeedGaps(feed, result.Pattern, input.PlanPath);
        string radioPath = StationDefaults.Join(input.PlanPath, "radio");
        if (Demodulation.SnrLimit(input.Modem, input.Radio, input.Catalogue) is not { } limit)
        {
            string path = radioPath + "/snr-limits";
            findings.Add(Finding.Unknown("demodulation-limit-unknown", radioPath, "demodulation limit", ("missing", path)) with { Unit = "dB" });
            return result with { MissingToReceive = [path, .. missing] };
        }

        RequiredLevel? required;
        Ledger? sensitivity = null;
        if (input.Radio.MeasuredNoiseFloorDbm is { } floor)
        {
            required = RequiredLevel.FromMeasuredFloor(floor, radioPath + "/noise-floor", feed, limit);
        }
        else
        {
            (Estimate figure, string source) = NoiseFigure(input, assumptions);
            (double external, string externalSource) = External(input, assumptions, findings);
            sensitivity = Sensitivity.Compute(input.Modem.BandwidthHz, figure.Median, source, limit);
            required = RequiredLevel.FromNoiseFigures(input.Modem.BandwidthHz, figure, source, feed, external, externalSource, limit);
            missing.AddRange(feed.Findings.Where(finding => finding.Code == "amplifier-noise-unknown").Select(finding => finding.Subject + "/noise-figure"));
        }

        return result with
        {
            MissingToReceive = [.. missing],
            SensitivityLedger = sensitivity,
            RequiredLedger = required?.Ledger,
            RequiredDbm = required?.LevelDbm,
        };
    }

    private static (Estimate FigureDb, string Source) NoiseFigure(StationChainInput input, List<Assumption> assumptions)
    {
        if (input.Radio.NoiseFigureDb is { } given)
        {
            return (given, StationDefaults.Join(input.PlanPath, "radio/noise-figure"));
        }

        assumptions.Add(StationDefaults.NoiseFigure(input.PlanPath));
        return (Estimate.Exactly(StationDefaults.NoiseFigureDb), "assumed, common practice");
    }

    private static (double FigureDb, string Source) External(StationChainInput input, List<Assumption> assumptions, List<Finding> findings)
    {
        if (input.ExternalNoiseFigureDb is { } given)
        {
            return (given, "plan");
        }

        if (input.NoiseEnvironment is { } surroundings
            && ExternalNoise.ManMadeFigureDb(surroundings, input.Modem.FrequencyHz) is { } figure)
        {
            return (figure, $"Rec. ITU-R P.372, man-made noise, {ExternalNoise.Word(surroundings)}, constants from memory");
        }

        assumptions.Add(new("external-noise", "no noise from outside beyond an antenna at 290 K", "assumed", "air/external-noise"));
        findings.Add(Finding.Unknown("external-noise-unknown", input.PlanPath, "noise from outside", ("missing", ExternalNoise.IsInRange(input.Modem.FrequencyHz)
            ? "the plan gives neither air/external-noise nor air/noise-environment, from which ITU-R P.372 has a figure"
            : string.Create(CultureInfo.InvariantCulture, $"{ExternalNoise.RangeText}; at {input.Modem.FrequencyHz / 1e6:0.###} MHz it has to be measured"))) with { Unit = "dB above kT0B" });
        return (0, "assumed");
    }

    private static List<string> FeedGaps(FeedResult feed, AntennaPattern pattern, string planPath)
    {
        List<string> gaps = [.. feed.Findings
            .Where(finding => finding.Code is "line-type-unknown" or "part-loss-unknown")
            .Select(finding => finding.Subject)];
        if (pattern.MainBeamDbi is null)
        {
            gaps.Add(StationDefaults.Join(planPath, "antenna/gain"));
        }

        return gaps;
    }
}
