using System.Collections.Immutable;

namespace Mastwright.Station.Radio;

/// <summary>What a kind of modem bears: a catalogue row.</summary>
public sealed record ModemRow
{
    /// <summary>Catalogue key, such as "chirp-sub-ghz".</summary>
    public required string Key { get; init; }

    /// <summary>Kind of modulation the row is for.</summary>
    public required Modulation Modulation { get; init; }

    /// <summary>Signal-to-noise ratio in the modem's bandwidth, in dB, at which the demodulator stops, by spreading factor.</summary>
    public ImmutableSortedDictionary<int, double> SnrLimitDb { get; init; } = ImmutableSortedDictionary<int, double>.Empty;

    /// <summary>Source of each of those limits, by spreading factor.</summary>
    public ImmutableSortedDictionary<int, string> SnrLimitSource { get; init; } = ImmutableSortedDictionary<int, string>.Empty;

    /// <summary>Bandwidths in hertz that modems of this kind can be set to; empty when any.</summary>
    public ImmutableArray<double> BandwidthsHz { get; init; } = [];

    /// <summary>Frequency error between the two ends that is borne, as a fraction of the bandwidth; null where the receiver's own width decides.</summary>
    public double? FrequencyToleranceFraction { get; init; }

    /// <summary>Bit error rate at which frequency-shift keying is said to work; null for chirp spread spectrum.</summary>
    public double? BitErrorRate { get; init; }

    /// <summary>What a real receiver needs above the theory of frequency-shift keying, in dB.</summary>
    public double ImplementationLossDb { get; init; }

    /// <summary>Source of the row: document and clause, "from memory" or "common practice".</summary>
    public required string Source { get; init; }
}
