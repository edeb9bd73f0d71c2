using System.Collections.Immutable;
using Mastwright.Quantities;
using Mastwright.Station.Antenna;
using Mastwright.Station.Feed;
using Mastwright.Station.Radio;

namespace Mastwright.Station;

/// <summary>What a station's radio chain is computed from: a fit-out's parts and what is shared by all.</summary>
public sealed record StationChainInput
{
    /// <summary>Where in the plan the fit-out stands, such as "sites/ferry-house/fit-outs/eaves": places of findings and assumptions start with it.</summary>
    public required string PlanPath { get; init; }

    /// <summary>The antenna as mounted.</summary>
    public required AntennaFit Antenna { get; init; }

    /// <summary>The feed in order from radio to antenna.</summary>
    public ImmutableArray<FeedPart> Feed { get; init; } = [];

    /// <summary>A return loss that was measured or stated.</summary>
    public MismatchReading? Mismatch { get; init; }

    /// <summary>The radio.</summary>
    public RadioUnit Radio { get; init; } = new();

    /// <summary>The modem setting; must be valid (<see cref="ModemSettingCheck"/>).</summary>
    public required ModemSetting Modem { get; init; }

    /// <summary>Line types, losses and demodulation limits.</summary>
    public required StationCatalogue Catalogue { get; init; }

    /// <summary>External noise in dB above kT0B at the antenna, when the plan gives it.</summary>
    public double? ExternalNoiseFigureDb { get; init; }

    /// <summary>Surroundings, from which ITU-R P.372 gives external noise inside its frequency range; null when not given.</summary>
    public NoiseEnvironment? NoiseEnvironment { get; init; }

    /// <summary>Transmitters of others near the antenna.</summary>
    public ImmutableArray<NearbyEmitter> NearbyTransmitters { get; init; } = [];
}
