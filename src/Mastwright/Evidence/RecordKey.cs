using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Mastwright.Evidence;

/// <summary>What makes two records the same reception: equal keys inside one network are one record.</summary>
/// <param name="StepMicroseconds">The record's time, rounded down to its source's resolution, in microseconds since 1970 UTC.</param>
/// <param name="Hash">64 bits over the other fields of the identity; it only has to tell apart what was heard in one step of time.</param>
/// <remarks>
/// <para>The identity is over decoded fields, never over the bytes of a source, so that a live feed and a later file of the same packets merge:</para>
/// <list type="number">
/// <item>time at the source's resolution (sources that are to merge are mapped with the same resolution, the coarsest of them);</item>
/// <item>receiver, last sender and originator, by the source's addresses; unknown is a value of its own;</item>
/// <item>frequency in whole Hz;</item>
/// <item>the packet's number;</item>
/// <item>without a packet number, and where one address stands for several receiving antennas that hear the same packet: level and
/// signal-to-noise ratio in steps of 0.01 dB, and the count of records that are equal in all of this within one source, from zero.</item>
/// </list>
/// <para>
/// Not in it: hops, modem settings, other fields. The hash is the first eight bytes, big-endian, of SHA-256 over those fields in
/// the order receiver, last sender, originator, frequency, packet number (where there is one), level, ratio, count (where they count). A text is one byte 1, its length in
/// UTF-8 bytes as four bytes and the bytes; a number is one byte 2 and eight bytes; unknown is one byte 0. All numbers are
/// little-endian. This is a stored format: it does not change. The default value is the key of no record.
/// </para>
/// </remarks>
public readonly record struct RecordKey(long StepMicroseconds, long Hash)
{
    private const int UsualBytes = 512;

    /// <summary>The key of a record.</summary>
    /// <param name="record">The record.</param>
    /// <param name="sameBefore">
    /// How many records with the same key at zero came before it from the same source, zero or more. Counts only where the level does.
    /// </param>
    /// <param name="antennasShareAddress">Whether the level counts beside a packet number too.</param>
    /// <exception cref="ArgumentOutOfRangeException">The count is negative.</exception>
    public static RecordKey Of(ReceptionRecord record, int sameBefore = 0, bool antennasShareAddress = false)
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentOutOfRangeException.ThrowIfNegative(sameBefore);
        int most = 64 + MostBytes(record.Receiver) + MostBytes(record.LastSender) + MostBytes(record.Originator) + MostBytes(record.PacketId);
        Span<byte> bytes = most <= UsualBytes ? stackalloc byte[UsualBytes] : new byte[most];
        int length = WriteText(bytes, record.Receiver);
        length += WriteText(bytes[length..], record.LastSender);
        length += WriteText(bytes[length..], record.Originator);
        length += WriteNumber(bytes[length..], record.FrequencyHz, 1);
        if (record.PacketId is not null)
        {
            length += WriteText(bytes[length..], record.PacketId);
        }

        if (record.PacketId is null || antennasShareAddress)
        {
            length += WriteNumber(bytes[length..], record.LevelDbm, 100);
            length += WriteNumber(bytes[length..], record.SnrDb, 100);
            length += WriteNumber(bytes[length..], sameBefore, 1);
        }

        return new RecordKey(StepOf(record.TimeMicroseconds, record.TimeResolutionMicroseconds), HashOf(bytes[..length]));
    }

    /// <summary>
    /// The key of what a station tells of itself: its time at the source's resolution, and a hash over station, battery, supply, temperature, channel
    /// use and transmission in steps of 0.000001. Two that differ in one of these are two; one report that several receivers passed on is one.
    /// </summary>
    /// <param name="record">The record.</param>
    public static RecordKey Of(TelemetryRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        Span<byte> bytes = new byte[64 + MostBytes(record.Station)];
        int length = WriteText(bytes, record.Station);
        foreach (double? value in new[] { record.BatteryVolts, record.SupplyVolts, record.TemperatureCelsius, record.ChannelUseRatio, record.TransmitRatio })
        {
            length += WriteNumber(bytes[length..], value, 1e6);
        }

        return new(StepOf(record.TimeMicroseconds, record.TimeResolutionMicroseconds), HashOf(bytes[..length]));
    }

    /// <summary>The text form in the invariant culture, as "1687514517000000/9f0c…".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{StepMicroseconds}/{Hash:x16}");

    private static long StepOf(long time, long step)
    {
        long past = time % step;
        // Rounded down before 1970 too: a clock that was never set must not fold two steps around zero into one.
        return time - (past < 0 ? past + step : past);
    }

    private static long HashOf(ReadOnlySpan<byte> bytes)
    {
        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(bytes, hash);
        return BinaryPrimitives.ReadInt64BigEndian(hash);
    }

    private static int MostBytes(string? text) => 5 + (text is null ? 0 : Encoding.UTF8.GetMaxByteCount(text.Length));

    private static int WriteText(Span<byte> bytes, string? text)
    {
        if (text is null)
        {
            bytes[0] = 0;
            return 1;
        }

        bytes[0] = 1;
        int length = Encoding.UTF8.GetBytes(text, bytes[5..]);
        BinaryPrimitives.WriteInt32LittleEndian(bytes[1..], length);
        return 5 + length;
    }

    private static int WriteNumber(Span<byte> bytes, double? value, double stepsPerUnit)
    {
        if (value is null)
        {
            bytes[0] = 0;
            return 1;
        }

        bytes[0] = 2;
        BinaryPrimitives.WriteInt64LittleEndian(bytes[1..], (long)Math.Round(value.Value * stepsPerUnit, MidpointRounding.AwayFromZero));
        return 9;
    }
}
