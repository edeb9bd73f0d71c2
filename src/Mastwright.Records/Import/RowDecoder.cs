using Mastwright.Evidence;

namespace Mastwright.Records.Import;

/// <summary>Makes a record of one row by one set of fields.</summary>
internal sealed class RowDecoder
{
    private readonly TimeReader time;
    private readonly bool noiseRemoved;
    private readonly AddressBook addresses;
    private readonly FieldReader receiver;
    private readonly FieldReader? originator, lastSender, packetNumber, level, ratio, frequency, bandwidth, factor, hopsTaken, hopLimit;
    private readonly OtherFields others = new();

    internal RowDecoder(FieldsText fields, SourcePlaces places, AddressBook addresses, SourceClock clock)
    {
        noiseRemoved = fields.Level?.NoiseRemoved ?? false;
        this.addresses = addresses;
        FieldReader? Tied(string name, FieldText? field) => FieldReader.Of(name, field, places);
        time = new(fields.Time!, places, clock);
        receiver = Tied("receiver", fields.Receiver)!;
        originator = Tied("originator", fields.Originator);
        lastSender = Tied("last-sender", fields.LastSender);
        packetNumber = Tied("packet-number", fields.PacketNumber);
        level = Tied("level", fields.Level);
        ratio = Tied("signal-to-noise", fields.SignalToNoise);
        frequency = Tied("frequency", fields.Frequency);
        bandwidth = Tied("bandwidth", fields.Bandwidth);
        factor = Tied("spreading-factor", fields.SpreadingFactor);
        hopsTaken = Tied("hops-taken", fields.HopsTaken);
        hopLimit = Tied("hop-limit", fields.HopLimit);
    }

    /// <summary>Whether the row says anything of a level: of several receptions in a row, one that is empty was not heard.</summary>
    internal bool IsHeard<TRow>(TRow row)
        where TRow : ISourceRow, allows ref struct => (level is not null && !level.Text(row).IsEmpty) || (ratio is not null && !ratio.Text(row).IsEmpty);

    /// <summary>The record, or null with the reason why the row is none.</summary>
    internal ReceptionRecord? Decode<TRow>(TRow row, out string reason)
        where TRow : ISourceRow, allows ref struct
    {
        ReadOnlySpan<char> heard = receiver.Text(row);
        long microseconds = time.Read(row, out reason);
        if (reason.Length == 0 && heard.IsEmpty)
        {
            reason = "the receiver is empty";
        }

        double? levelDbm = level?.Number(row, ref reason);
        double? snrDb = ratio?.Number(row, ref reason);
        double? frequencyHz = frequency?.Number(row, ref reason);
        double? bandwidthHz = bandwidth?.Number(row, ref reason);
        int? spreadingFactor = factor?.Whole(row, ref reason);
        int? taken = hopsTaken?.Whole(row, ref reason);
        int? limit = hopLimit?.Whole(row, ref reason);
        return reason.Length > 0 ? null : new()
        {
            TimeMicroseconds = microseconds,
            TimeResolutionMicroseconds = time.ResolutionMicroseconds,
            TimeText = time.Text(row).ToString(),
            ClockOffsetMicroseconds = time.AheadMicroseconds,
            Receiver = addresses.Of(heard)!,
            Originator = Address(originator, row),
            LastSender = Address(lastSender, row),
            LevelDbm = levelDbm,
            SnrDb = snrDb,
            LevelIsSignalPower = noiseRemoved && levelDbm is not null,
            HopsTaken = taken,
            HopLimit = limit,
            FrequencyHz = frequencyHz,
            BandwidthHz = bandwidthHz,
            SpreadingFactor = spreadingFactor,
            PacketId = packetNumber is not null && packetNumber.Text(row) is { IsEmpty: false } number ? number.ToString() : null,
            OtherFields = others.Of(row),
        };
    }

    private string? Address<TRow>(FieldReader? field, TRow row)
        where TRow : ISourceRow, allows ref struct => field is null ? null : addresses.Of(field.Text(row));
}
