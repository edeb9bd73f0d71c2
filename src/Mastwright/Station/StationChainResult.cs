using System.Collections.Immutable;
using Mastwright.Findings;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Station.Feed;
using Mastwright.Station.Radio;

namespace Mastwright.Station;

/// <summary>A station as the link budget sees it: what it puts into its antenna and what it needs to hear there.</summary>
/// <remarks>A null is unknown: <see cref="MissingToSend"/> and <see cref="MissingToReceive"/> say what is missing.</remarks>
public sealed record StationChainResult
{
    /// <summary>The feed.</summary>
    public required FeedResult Feed { get; init; }

    /// <summary>The antenna's gain by direction.</summary>
    public required AntennaPattern Pattern { get; init; }

    /// <summary>From the radio's power to the power into the antenna, in dBm.</summary>
    public Ledger? TransmitLedger { get; init; }

    /// <summary>Power into the antenna, in dBm: what its terminals take, mismatch counted.</summary>
    public Estimate? PowerIntoAntennaDbm { get; init; }

    /// <summary>EIRP and ERP along the main beam.</summary>
    public RadiatedPower? RadiatedPower { get; init; }

    /// <summary>How the level at the antenna's terminals comes about at which a packet is just received, in dBm.</summary>
    public Ledger? RequiredLedger { get; init; }

    /// <summary>That level in dBm.</summary>
    public Estimate? RequiredDbm { get; init; }

    /// <summary>Sensitivity at the radio's own connector without feed and external noise, in dBm, as a data sheet would state it.</summary>
    public Ledger? SensitivityLedger { get; init; }

    /// <summary>Levels of nearby transmitters at the receiver's input.</summary>
    public ImmutableArray<NearbyTransmitterResult> NearbyTransmitters { get; init; } = [];

    /// <summary>Plan paths of what is missing for sending.</summary>
    public ImmutableArray<string> MissingToSend { get; init; } = [];

    /// <summary>Plan paths of what is missing for receiving.</summary>
    public ImmutableArray<string> MissingToReceive { get; init; } = [];

    /// <summary>What was assumed, in the order in which it was used.</summary>
    public ImmutableArray<Assumption> Assumptions { get; init; } = [];

    /// <summary>Every judgement on radio, feed and antenna.</summary>
    public ImmutableArray<Finding> Findings { get; init; } = [];
}
