namespace Mastwright.Station.Radio;

/// <summary>How the modem is set: what both ends of a link must share.</summary>
public sealed record ModemSetting
{
    /// <summary>Carrier frequency in hertz, greater than zero.</summary>
    public required double FrequencyHz { get; init; }

    /// <summary>Signal bandwidth in hertz, greater than zero (receiver bandwidth for frequency-shift keying).</summary>
    public required double BandwidthHz { get; init; }

    /// <summary>Kind of modulation.</summary>
    public Modulation Modulation { get; init; }

    /// <summary>Spreading factor, 5 to 12; not used for frequency-shift keying.</summary>
    public int SpreadingFactor { get; init; }

    /// <summary>Second number of the coding rate 4/n: 5 to 8; not used for frequency-shift keying.</summary>
    public int CodingRateDenominator { get; init; } = 5;

    /// <summary>Bits per second for frequency-shift keying; not used for chirp spread spectrum.</summary>
    public double BitRate { get; init; }

    /// <summary>Preamble length: symbols for chirp spread spectrum, bits for frequency-shift keying.</summary>
    public int PreambleLength { get; init; } = 8;

    /// <summary>Bytes that the modem sends in a packet, headers of the layers above included: 0 to 255.</summary>
    public int PayloadBytes { get; init; }

    /// <summary>Whether the modem sends its own header.</summary>
    public bool ExplicitHeader { get; init; } = true;

    /// <summary>Whether the modem appends a checksum.</summary>
    public bool Checksum { get; init; } = true;

    /// <summary>What the law asks of the signal beyond this.</summary>
    public EmissionSetting Emission { get; init; } = new();
}
