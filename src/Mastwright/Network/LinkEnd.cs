using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;

namespace Mastwright.Network;

/// <summary>One end of a link as the budget sees it. A null is "nobody said": the budget then comes out unknown and says so.</summary>
public sealed record LinkEnd
{
    /// <summary>Plan path or pair of keys, such as "ferry-house/net-loft".</summary>
    public required string Subject { get; init; }

    /// <summary>Name to speak of it by.</summary>
    public required string Name { get; init; }

    /// <summary>Power into the antenna, in dBm.</summary>
    public Estimate? PowerIntoAntennaDbm { get; init; }

    /// <summary>Lines, in dB and dBm, that sum to the median of <see cref="PowerIntoAntennaDbm"/>: the radio and each part of the feed.</summary>
    public ImmutableArray<LedgerLine> TransmitLines { get; init; } = [];

    /// <summary>EIRP and ERP along the main beam; null when power or gain is unknown.</summary>
    public RadiatedPower? Radiated { get; init; }

    /// <summary>Antenna gain towards the other end, in dBi.</summary>
    public Estimate? GainDbi { get; init; }

    /// <summary>Where the gain comes from.</summary>
    public string GainSource { get; init; } = "";

    /// <summary>How the gain towards the other end came about, such as the elevation angle and the pattern.</summary>
    public string GainNote { get; init; } = "";

    /// <summary>Level in dBm at the antenna's connector at which a packet is just received.</summary>
    public Estimate? RequiredDbm { get; init; }

    /// <summary>How the required level came about.</summary>
    public Ledger? RequiredLedger { get; init; }

    /// <summary>Plan paths of what is missing for sending.</summary>
    public ImmutableArray<string> MissingToSend { get; init; } = [];

    /// <summary>Plan paths of what is missing for receiving.</summary>
    public ImmutableArray<string> MissingToReceive { get; init; } = [];
}
