using System.Collections.Immutable;
using System.Globalization;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Station.Feed;

namespace Mastwright.Station.Radio;

/// <summary>The level that a nearby transmitter makes at the receiver's input, against what the receiver bears.</summary>
/// <remarks>
/// <para>Level = EIRP − free-space loss (Rec. ITU-R P.525) + gain of the main beam + feed. It is an upper bound: line of sight, main
/// beam, the antenna as good at the other frequency as at its own, filters with no more than their pass-band loss.</para>
/// <para>Nearer than 2·D²/λ or a wavelength the far-field formula does not hold; the finding says so and asks for 6 dB more.</para>
/// </remarks>
public static class NearbyTransmitters
{
    /// <summary>Margin in dB below which the finding is tight. Common practice.</summary>
    public const double WantedMarginDb = 6;

    /// <summary>Free-space loss in dB over a distance: 20·log10(4πd/λ), Rec. ITU-R P.525.</summary>
    public static double FreeSpaceLossDb(double distanceMetres, double frequencyHz) =>
        20 * Math.Log10(4 * Math.PI * distanceMetres * frequencyHz / AntennaFindings.SpeedOfLight);

    /// <summary>Distance in metres within which the antenna's far-field gain does not hold: the greater of 2·D²/λ and λ.</summary>
    /// <param name="antennaLengthMetres">Greatest size D of the antenna; null for half a wavelength.</param>
    /// <param name="frequencyHz">Frequency in hertz.</param>
    public static double NearFieldMetres(double? antennaLengthMetres, double frequencyHz)
    {
        double wavelength = AntennaFindings.SpeedOfLight / frequencyHz;
        double size = antennaLengthMetres ?? (wavelength / 2);
        return Math.Max(wavelength, 2 * size * size / wavelength);
    }

    /// <summary>The level and the judgement.</summary>
    /// <param name="emitter">The transmitter.</param>
    /// <param name="input">The station.</param>
    /// <param name="mainBeamDbi">Gain of the station's antenna in dBi; null when unknown.</param>
    public static NearbyTransmitterResult Judge(NearbyEmitter emitter, StationChainInput input, Estimate? mainBeamDbi)
    {
        ArgumentNullException.ThrowIfNull(emitter);
        ArgumentNullException.ThrowIfNull(input);
        FeedResult feed = FeedChain.Compute(input.Feed, null, emitter.FrequencyHz, input.Catalogue, input.PlanPath);
        Ledger? ledger = Level(emitter, mainBeamDbi, feed);
        Estimate? level = mainBeamDbi + feed.ReceiveGainDb + Estimate.Exactly(
            emitter.EirpDbm - FreeSpaceLossDb(emitter.DistanceMetres, emitter.FrequencyHz));
        bool near = emitter.DistanceMetres < NearFieldMetres(input.Antenna.LengthMetres, emitter.FrequencyHz);
        string doubt = Doubt(emitter, input);
        Verdict verdict = Judge(level, input.Radio.BlockingDbm, near);
        bool filtered = input.Feed.Any(part => part is LossyPart { Kind: LossyPartKind.Filter });
        if ((verdict == Verdict.Fails && filtered) || (verdict is Verdict.Ok or Verdict.Tight && doubt.Length > 0))
        {
            verdict = Verdict.Unknown;
        }

        Finding finding = new()
        {
            Code = "nearby-transmitter-blocking",
            Subject = emitter.PlanPath,
            Verdict = verdict,
            Quantity = "level at the receiver's input",
            Unit = "dBm",
            Value = level,
            Limit = input.Radio.BlockingDbm,
            Margin = input.Radio.BlockingDbm - level?.Median,
            Source = StationDefaults.Join(input.PlanPath, "radio"),
            Details = FindingDetails.Of(
                ("level", level is { } known ? Text($"{known.Median:0.0} dBm") : "unknown"),
                ("limit", input.Radio.BlockingDbm is { } limit ? Text($"{limit:0.0} dBm") : "unknown"),
                ("near", near ? "; it stands in the antenna's near field, so take the level as a rough figure" : ""),
                ("filter", filtered ? "; a filter's rejection at that frequency is not counted" : ""),
                ("doubt", doubt.Length > 0 ? " But " + doubt + "." : "")),
        };
        return new(finding, ledger);
    }

    private static Ledger? Level(NearbyEmitter emitter, Estimate? mainBeamDbi, FeedResult feed)
    {
        if (mainBeamDbi is not { } gain || feed.ReceiveLedger is not { } feedLedger)
        {
            return null;
        }

        ImmutableArray<LedgerLine> lines =
        [
            new("eirp", "radiated power of the transmitter", emitter.EirpDbm, emitter.PlanPath),
            new("free-space", "free space", -FreeSpaceLossDb(emitter.DistanceMetres, emitter.FrequencyHz), "Rec. ITU-R P.525",
                Text($"{emitter.DistanceMetres:0.#} m at {emitter.FrequencyHz / 1e6:0.###} MHz")),
            new("gain", "gain of the main beam", gain.Median, "plan", "the most that it can be in any direction"),
            .. feedLedger.Lines,
        ];
        return new("level of a nearby transmitter at the receiver's input", "dBm", lines);
    }

    /// <summary>Why the blocking figure may not speak for this transmitter; empty when it does.</summary>
    private static string Doubt(NearbyEmitter emitter, StationChainInput input)
    {
        double offset = Math.Abs(emitter.FrequencyHz - input.Modem.FrequencyHz);
        if (offset < input.Modem.BandwidthHz)
        {
            return "it sends in the receiver's own channel, where it interferes at any level";
        }

        return input.Radio.BlockingOffsetHz is { } given && offset < given
            ? Text($"the blocking figure is for {given / 1e6:0.###} MHz away and this is {offset / 1e6:0.###} MHz away")
            : "";
    }

    private static Verdict Judge(Estimate? level, double? limit, bool near)
    {
        if (level is not { } value || limit is not { } most)
        {
            return Verdict.Unknown;
        }

        if (value.Low > most)
        {
            return Verdict.Fails;
        }

        if (value.High > most)
        {
            return Verdict.Unknown;
        }

        return most - value.Median < (near ? 2 : 1) * WantedMarginDb ? Verdict.Tight : Verdict.Ok;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
