using Mastwright.Quantities;

namespace Mastwright.Station.Feed;

/// <summary>One part of a feed with its numbers found: what it does to a signal either way.</summary>
public sealed record FeedStage
{
    /// <summary>Stable name of its ledger line.</summary>
    public required string Code { get; init; }

    /// <summary>What a person reads.</summary>
    public required string Label { get; init; }

    /// <summary>Gain from radio to antenna in dB: negative for a loss; null when unknown.</summary>
    public required Estimate? TransmitGainDb { get; init; }

    /// <summary>Gain from antenna to radio in dB: negative for a loss; null when unknown.</summary>
    public required Estimate? ReceiveGainDb { get; init; }

    /// <summary>The most that comes out towards the antenna, in dBm; null where nothing limits it.</summary>
    public Estimate? TransmitMaximumDbm { get; init; }

    /// <summary>Whether it amplifies in the receive direction.</summary>
    public bool AmplifiesReception { get; init; }

    /// <summary>Whether it amplifies in the transmit direction.</summary>
    public bool AmplifiesTransmission { get; init; }

    /// <summary>Noise figure of the receive amplifier in dB; null when unknown, and not used for a part that only loses (its loss is its noise figure).</summary>
    public double? AmplifierNoiseFigureDb { get; init; }

    /// <summary>Where its numbers come from.</summary>
    public required string Source { get; init; }

    /// <summary>How they came about.</summary>
    public string Note { get; init; } = "";
}
