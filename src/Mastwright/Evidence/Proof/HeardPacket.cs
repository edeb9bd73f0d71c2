namespace Mastwright.Evidence.Proof;

/// <summary>One reception as the proof sees it: numbers alone, stations by their place in a list.</summary>
/// <param name="TimeMicroseconds">When, in microseconds since 1970 UTC.</param>
/// <param name="LastSender">Whose transmission it was; −1 when unknown.</param>
/// <param name="Originator">Who made the packet; −1 when unknown.</param>
/// <param name="SignalPowerDbm">Signal power in dBm; NaN when unknown.</param>
/// <param name="SnrDb">Signal-to-noise ratio in dB; NaN when unknown.</param>
/// <param name="Hops">How many times it was passed on before; −1 when unknown.</param>
/// <param name="Counter">The packet's number where it is a whole number; −1 when not.</param>
/// <param name="SpreadingFactor">Spreading factor; 0 when unknown.</param>
public readonly record struct HeardPacket(
    long TimeMicroseconds, int LastSender, int Originator, double SignalPowerDbm, double SnrDb, int Hops, long Counter, int SpreadingFactor)
{
    /// <summary>A record as the proof sees it.</summary>
    /// <param name="record">The record.</param>
    /// <param name="station">The place in the list for an address.</param>
    public static HeardPacket Of(ReceptionRecord record, Func<string, int> station)
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(station);
        return new(
            record.TimeMicroseconds - (record.ClockOffsetMicroseconds ?? 0),
            record.LastSender is { } sender ? station(sender) : -1,
            record.Originator is { } originator ? station(originator) : -1,
            record.SignalPowerDbm ?? double.NaN,
            record.LastSender is null ? double.NaN : record.SnrDb ?? double.NaN,
            record.HopsTaken ?? -1,
            CounterOf(record.PacketId),
            record.SpreadingFactor ?? 0);
    }

    /// <summary>The number in the text of a packet's number; −1 when it is no whole number below 2^62.</summary>
    public static long CounterOf(string? text) =>
        long.TryParse(text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out long number) && number < 1L << 62 ? number : -1;
}
