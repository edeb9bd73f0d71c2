using Mastwright.Quantities;

namespace Mastwright.Station.Feed;

/// <summary>One part of the feed between radio and antenna.</summary>
/// <param name="PlanPath">Where in the plan it stands, for ledgers and findings.</param>
public abstract record FeedPart(string PlanPath);

/// <summary>A length of coaxial line of a catalogue type.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="LineType">Catalogue key of the line type, such as "rg-213".</param>
/// <param name="LengthMetres">Length in metres, with its precision: zero or more.</param>
/// <param name="TemperatureCelsius">Temperature of the line; null for the catalogue's reference temperature, listed as assumed.</param>
public sealed record FeedLine(string PlanPath, string LineType, Estimate LengthMetres, double? TemperatureCelsius = null) : FeedPart(PlanPath);

/// <summary>A part that only loses: connectors, adapters, a surge arrester, a filter, a splitter.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Count">How many of them in a row: 1 or more.</param>
/// <param name="LossDb">Insertion loss of one, in dB; null for the catalogue's figure for its kind, listed as assumed.</param>
/// <param name="Name">What the plan calls it; may be empty.</param>
public sealed record LossyPart(string PlanPath, LossyPartKind Kind, int Count, Estimate? LossDb, string Name = "") : FeedPart(PlanPath);

/// <summary>Kinds of parts that only lose.</summary>
public enum LossyPartKind
{
    /// <summary>A mated pair of connectors.</summary>
    Connector,

    /// <summary>An adapter between connector families.</summary>
    Adapter,

    /// <summary>A coaxial surge arrester.</summary>
    SurgeArrester,

    /// <summary>A filter.</summary>
    Filter,

    /// <summary>A power splitter or coupler.</summary>
    Splitter,
}

/// <summary>An amplifier in the feed.</summary>
/// <param name="PlanPath">Where in the plan it stands.</param>
/// <param name="Name">What the plan calls it; may be empty.</param>
/// <param name="ReceiveGainDb">Gain towards the radio when receiving, in dB; null when it does not amplify reception.</param>
/// <param name="ReceiveNoiseFigureDb">Noise figure of the receive amplifier, in dB; null when unknown.</param>
/// <param name="TransmitGainDb">Gain towards the antenna when sending, in dB; null when it does not amplify transmission.</param>
/// <param name="TransmitMaximumDbm">The most it puts out, in dBm; null when unknown.</param>
/// <param name="BypassLossDb">Loss in the direction that it does not amplify, in dB; null for unknown.</param>
public sealed record FeedAmplifier(
    string PlanPath,
    string Name,
    Estimate? ReceiveGainDb,
    double? ReceiveNoiseFigureDb,
    Estimate? TransmitGainDb,
    Estimate? TransmitMaximumDbm,
    double? BypassLossDb) : FeedPart(PlanPath);
