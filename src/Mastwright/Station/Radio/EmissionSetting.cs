namespace Mastwright.Station.Radio;

/// <summary>What the law asks of a signal beyond the modem's own setting. A null is "nobody said".</summary>
public sealed record EmissionSetting
{
    /// <summary>Occupied bandwidth as measured (99 % of the power), in hertz.</summary>
    public double? OccupiedHz { get; init; }

    /// <summary>Bandwidth as measured at 6 dB below the peak, in hertz.</summary>
    public double? SixDecibelHz { get; init; }

    /// <summary>How the radio hops; null when it stays on one frequency.</summary>
    public HoppingSetting? Hopping { get; init; }

    /// <summary>Whether the radio listens before it talks and keeps the pauses that polite access asks for.</summary>
    public bool Polite { get; init; }
}

/// <summary>How a radio hops.</summary>
/// <param name="Channels">Number of frequencies that it uses evenly: 2 or more.</param>
/// <param name="LowestHz">Lowest carrier in hertz.</param>
/// <param name="HighestHz">Highest carrier in hertz, above the lowest.</param>
/// <param name="DwellSeconds">The most time on one frequency in the rule's period, in seconds; null when nobody said.</param>
/// <param name="WithinPacket">Whether it changes frequency within a packet, so that it may stay on one for less than a packet takes.</param>
public sealed record HoppingSetting(int Channels, double LowestHz, double HighestHz, double? DwellSeconds = null, bool WithinPacket = false);
