using Mastwright.Quantities;

namespace Mastwright.Storage.Plans;

/// <summary>Keys of the modem setting.</summary>
internal static class ModemKeys
{
    internal static readonly KeyShape Frequency = new("frequency", new QuantityShape(Dimension.Frequency, 30e6, 6e9, "869.525 MHz"), "Carrier frequency.", Required: true);
    internal static readonly KeyShape Bandwidth = new("bandwidth", new QuantityShape(Dimension.Frequency, 1e3, 2e6, "125 kHz"), "Signal bandwidth, or receiver bandwidth for frequency-shift keying.", Required: true);
    internal static readonly KeyShape Modulation = new("modulation", new ChoiceShape("chirp-spread-spectrum", "frequency-shift-keying"), "Without it chirp spread spectrum.");
    internal static readonly KeyShape SpreadingFactor = new("spreading-factor", new WholeShape(5, 12), "Required for chirp spread spectrum.");
    internal static readonly KeyShape CodingRate = new("coding-rate", new FormShape("^\\s*4/[5-8]\\s*$", "4/5, 4/6, 4/7 or 4/8"), "Coding rate; without it 4/5.");
    internal static readonly KeyShape BitRate = new("bit-rate", new QuantityShape(Dimension.BitRate, 1, 2e6, "4.8 kbit/s"), "Required for frequency-shift keying; at most the bandwidth in Hz.");
    internal static readonly KeyShape Preamble = new("preamble", new WholeShape(6, 524_280), "Preamble in symbols (chirp, 6 to 65535) or bits (frequency-shift keying, 8 to 524280); without it 8.");
    internal static readonly KeyShape Payload = new("payload", new QuantityShape(Dimension.Data, 0, 255, "40 B"), "Bytes that the modem sends in a packet, headers of the layers above included.", Required: true);
    internal static readonly KeyShape Header = new("header", new YesNoShape(), "Whether the modem sends its own header; without it yes.");
    internal static readonly KeyShape Checksum = new("checksum", new YesNoShape(), "Whether the modem appends a checksum; without it yes.");

    internal static readonly KeyShape OccupiedBandwidth = new("occupied-bandwidth", new QuantityShape(Dimension.Frequency, 1, 10e6, "118 kHz"), "Occupied bandwidth as measured: 99 % of the power.");
    internal static readonly KeyShape SixDecibelBandwidth = new("six-decibel-bandwidth", new QuantityShape(Dimension.Frequency, 1, 10e6, "510 kHz"), "Bandwidth as measured at 6 dB below the peak (47 CFR 15.247(a)(2)).");
    internal static readonly KeyShape PoliteAccess = new("polite-access", new YesNoShape(), "Whether the radio listens before it talks and keeps the pauses of EN 300 220-2; without it no.");

    internal static readonly KeyShape HoppingChannels = new("channels", new WholeShape(2, 1000), "Number of frequencies, used evenly.", Required: true);
    internal static readonly KeyShape HoppingLowest = new("lowest", new QuantityShape(Dimension.Frequency, 30e6, 6e9, "902.3 MHz"), "Lowest carrier.", Required: true);
    internal static readonly KeyShape HoppingHighest = new("highest", new QuantityShape(Dimension.Frequency, 30e6, 6e9, "914.9 MHz"), "Highest carrier.", Required: true);
    internal static readonly KeyShape HoppingDwell = new("dwell", new QuantityShape(Dimension.Time, 1e-6, 3600, "0.37 s"), "The most time on one frequency within the period of the rule.");
    internal static readonly KeyShape HoppingWithinPacket = new("within-packet", new YesNoShape(), "Whether the radio changes frequency within a packet; without it no.");
    internal static readonly MappingShape HoppingShape = new("hopping", HoppingChannels, HoppingLowest, HoppingHighest, HoppingDwell, HoppingWithinPacket);
    internal static readonly KeyShape Hopping = new("hopping", HoppingShape, "How the radio hops; leave out when it stays on one frequency.");

    internal static readonly MappingShape Shape = new(
        "modem", Frequency, Bandwidth, Modulation, SpreadingFactor, CodingRate, BitRate, Preamble, Payload, Header, Checksum, OccupiedBandwidth, SixDecibelBandwidth, Hopping, PoliteAccess);
}
