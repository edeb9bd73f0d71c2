using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Mastwright.Evidence;
using nietras.SeparatedValues;

namespace Mastwright.Records.Import;

/// <summary>Makes a record of one row by one set of fields.</summary>
internal sealed class RowDecoder
{
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly TimeText time;
    private readonly long resolutionMicroseconds;
    private readonly long? aheadMicroseconds;
    private readonly bool noiseRemoved;
    private readonly Dictionary<string, string>.AlternateLookup<ReadOnlySpan<char>> addresses;
    private readonly FieldReader when, receiver;
    private readonly FieldReader? originator, lastSender, packetNumber, level, ratio, frequency, bandwidth, factor, hopsTaken, hopLimit;
    private readonly (int Column, JsonEncodedText Name)[] others;
    private readonly ArrayBufferWriter<byte> buffer = new();

    internal RowDecoder(FieldsText fields, string[] header, bool[] taken, string file, Dictionary<string, string> addresses)
    {
        time = fields.Time!;
        resolutionMicroseconds = RecordMapping.Microseconds(time.Resolution)!.Value;
        aheadMicroseconds = RecordMapping.Microseconds(time.AheadOfUtc);
        noiseRemoved = fields.Level?.NoiseRemoved ?? false;
        this.addresses = addresses.GetAlternateLookup<ReadOnlySpan<char>>();
        FieldReader? Tied(string name, FieldText? field) => FieldReader.Of(name, field, header, file);
        when = Tied("time", time)!;
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
        others = [.. header.Index().Where(column => !taken[column.Index]).Select(column => (column.Index, JsonEncodedText.Encode(column.Item, Plain.Encoder)))];
    }

    /// <summary>Whether the row says anything of a level: of several receptions in a row, one that is empty was not heard.</summary>
    internal bool IsHeard(SepReader.Row row) => (level is not null && !level.Text(row).IsEmpty) || (ratio is not null && !ratio.Text(row).IsEmpty);

    /// <summary>The record, or null with the reason why the row is none.</summary>
    internal ReceptionRecord? Decode(SepReader.Row row, out string reason)
    {
        ReadOnlySpan<char> written = when.Text(row);
        ReadOnlySpan<char> heard = receiver.Text(row);
        reason = "";
        if (!TryTime(written, out long microseconds))
        {
            reason = written.IsEmpty ? "the time is empty" : $"the time is not written as {time.Written}{(time is { Written: "iso-8601", Zone: null } ? " with its zone" : "")}";
        }
        else if (heard.IsEmpty)
        {
            reason = "the receiver is empty";
        }
        else if (row.Span.Contains('\uFFFD'))
        {
            reason = "the row is not UTF-8 text";
        }

        double? levelDbm = Number(level, row, ref reason);
        double? snrDb = Number(ratio, row, ref reason);
        double? frequencyHz = Number(frequency, row, ref reason);
        double? bandwidthHz = Number(bandwidth, row, ref reason);
        int? spreadingFactor = Whole(factor, row, ref reason);
        int? taken = Whole(hopsTaken, row, ref reason);
        int? limit = Whole(hopLimit, row, ref reason);
        return reason.Length > 0 ? null : new()
        {
            TimeMicroseconds = microseconds,
            TimeResolutionMicroseconds = resolutionMicroseconds,
            TimeText = written.ToString(),
            ClockOffsetMicroseconds = aheadMicroseconds,
            Receiver = Address(heard)!,
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
            OtherFields = Others(row),
        };
    }

    private bool TryTime(ReadOnlySpan<char> written, out long microseconds) => time.Written switch
    {
        "unix-seconds" => ClockText.TryUnix(written, 1_000_000, out microseconds),
        "unix-milliseconds" => ClockText.TryUnix(written, 1000, out microseconds),
        "unix-microseconds" => ClockText.TryUnix(written, 1, out microseconds),
        _ => ClockText.TryIso(written, time.Zone is not null, out microseconds),
    };

    private static double? Number(FieldReader? field, SepReader.Row row, ref string reason)
    {
        double? value = null;
        if (field is not null && !field.TryNumber(row, out value) && reason.Length == 0)
        {
            reason = $"{field.Name} is not a finite number";
        }

        return value;
    }

    private static int? Whole(FieldReader? field, SepReader.Row row, ref string reason)
    {
        int? value = null;
        if (field is not null && !field.TryWhole(row, out value) && reason.Length == 0)
        {
            reason = $"{field.Name} is not a whole number";
        }

        return value;
    }

    private string? Address(FieldReader? field, SepReader.Row row) => field is null ? null : Address(field.Text(row));

    /// <summary>One string for each address, however many rows name it; a source with more addresses than fit makes new ones.</summary>
    private string? Address(ReadOnlySpan<char> text)
    {
        const int Most = 65_536;
        if (text.IsEmpty)
        {
            return null;
        }

        if (addresses.TryGetValue(text, out string? known))
        {
            return known;
        }

        string address = text.ToString();
        if (addresses.Dictionary.Count < Most)
        {
            addresses.Dictionary.Add(address, address);
        }

        return address;
    }

    private string? Others(SepReader.Row row)
    {
        if (others.Length == 0)
        {
            return null;
        }

        buffer.ResetWrittenCount();
        using Utf8JsonWriter writer = new(buffer, Plain);
        writer.WriteStartObject();
        foreach ((int column, JsonEncodedText name) in others)
        {
            ReadOnlySpan<char> cell = FieldReader.Cell(row[column].Span);
            if (!cell.IsEmpty)
            {
                writer.WriteString(name, cell);
            }
        }

        writer.WriteEndObject();
        writer.Flush();
        return Encoding.UTF8.GetString(buffer.WrittenSpan);
    }
}
