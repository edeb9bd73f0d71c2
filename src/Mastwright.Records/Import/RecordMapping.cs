using System.Globalization;
using Mastwright.Quantities;
using YamlDotNet.Core;
using YamlDotNet.Serialization;
using YamlDotNet.Serialization.NamingConventions;

namespace Mastwright.Records.Import;

/// <summary>Says where each field of a record is in a source's own output: read from a mapping file and checked.</summary>
public sealed class RecordMapping
{
    private const int MostCharacters = 1 << 20;

    private static readonly string[] FrequencyUnits = ["Hz", "kHz", "MHz", "GHz"];

    private RecordMapping(MappingText read, char separator, FieldsText[] rows)
    {
        Network = read.Network;
        AntennasShareAddress = read.AntennasShareAddress;
        Separator = separator;
        Rows = rows;
        SeveralInARow = read.Rows is { Count: > 0 };
    }

    /// <summary>The network that the mapping names for its records; null when it names none.</summary>
    public string? Network { get; }

    /// <summary>Whether level and ratio tell receptions of one packet at one receiver apart.</summary>
    internal bool AntennasShareAddress { get; }

    /// <summary>What separates the cells of a row.</summary>
    internal char Separator { get; }

    /// <summary>For each record that a row may hold, where its fields are.</summary>
    internal FieldsText[] Rows { get; }

    /// <summary>Whether a row holds several receptions, of which some may be empty.</summary>
    internal bool SeveralInARow { get; }

    /// <summary>Reads a mapping.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="name">The file's name, for the messages.</param>
    /// <exception cref="MappingException">It is no mapping; the message says where and what would be right.</exception>
    public static RecordMapping Parse(string text, string name)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > MostCharacters)
        {
            throw new MappingException($"{name}: longer than a mapping file may be (1 MiB)");
        }

        try
        {
            MappingText read = new DeserializerBuilder().WithNamingConvention(HyphenatedNamingConvention.Instance).WithDuplicateKeyChecking().Build()
                .Deserialize<MappingText>(text) ?? throw new MappingException($"{name}: the file is empty; it begins with 'records: 1'");
            return Checked(read, name);
        }
        catch (YamlException fault)
        {
            string cause = (fault.InnerException?.Message ?? fault.Message).Split(" not found on type", 2)[0];
            string words = cause.StartsWith("Property ", StringComparison.Ordinal) ? string.Concat("the key ", cause.AsSpan(9), " is not known here") : cause;
            throw new MappingException(string.Create(CultureInfo.InvariantCulture, $"{name}:{fault.Start.Line}:{fault.Start.Column}: {words}"), fault);
        }
    }

    private static RecordMapping Checked(MappingText read, string name)
    {
        Require(read.Records == 1, name, "records", "the file begins with 'records: 1', the version of its form");
        string separator = read.Separator switch { null => ",", "tab" => "\t", { } given => given };
        Require(separator.Length == 1 && separator[0] is ',' or ';' or '\t' or '|' or ' ', name, "separator", "write ',', ';', '|', ' ' or tab");
        FieldsText[] rows = read.Rows is { Count: > 0 } several ? [.. several.Select(own => Over(own, read))] : [read];
        foreach (FieldsText row in rows)
        {
            Check(row, name);
        }

        return new(read, separator[0], rows);
    }

    private static void Check(FieldsText row, string name)
    {
        Require(row.Time is { Column: not null }, name, "time", "say in which column the time is: 'time: {column: NAME, written: iso-8601, zone: utc, resolution: 1 s}'");
        Require(row.Receiver is not null, name, "receiver", "say who heard the packet: 'receiver: {column: NAME}' or 'receiver: {text: ADDRESS}'");
        TimeText time = row.Time!;
        Require(time.Written is "iso-8601" or "unix-seconds" or "unix-milliseconds" or "unix-microseconds", name, "time/written", "write iso-8601, unix-seconds, unix-milliseconds or unix-microseconds");
        Require(time.Zone is null or "utc", name, "time/zone", "only utc can stand for a zone that the times do not name");
        Require(Microseconds(time.Resolution) > 0, name, "time/resolution", "write the step of the source's clock, such as '1 s' or '1 ms'");
        Require(time.AheadOfUtc is null || Microseconds(time.AheadOfUtc) is not null, name, "time/ahead-of-utc", "write a time, such as '2 s'");
        Units(row.Level, name, "level", "dBm");
        Units(row.SignalToNoise, name, "signal-to-noise", "dB");
        Units(row.Frequency, name, "frequency", FrequencyUnits);
        Units(row.Bandwidth, name, "bandwidth", FrequencyUnits);
        foreach ((string key, FieldText? field) in row.All())
        {
            Require(field is null || (field.Column is null) != (field.Text is null), name, key, "write either 'column: NAME' or 'text: VALUE'");
            Require(key is "level" || field?.NoiseRemoved != true, name, key + "/noise-removed", "only a level can have it");
        }
    }

    /// <summary>A length of time in whole microseconds; null when it is none.</summary>
    internal static long? Microseconds(string? text) =>
        text is not null && Quantity.TryParse(text, Dimension.Time, out Estimate time, out _) ? (long)Math.Round(time.Median * 1e6) : null;

    private static void Units(FieldText? field, string name, string key, params string[] units) =>
        Require(field is null || units.Contains(field.Unit, StringComparer.Ordinal), name, key + "/unit", "write the unit: " + string.Join(", ", units));

    private static void Require(bool right, string name, string key, string wanted)
    {
        if (!right)
        {
            throw new MappingException($"{name} {key}: {wanted}");
        }
    }

    private static FieldsText Over(FieldsText own, FieldsText shared) => new()
    {
        Time = own.Time ?? shared.Time,
        Receiver = own.Receiver ?? shared.Receiver,
        Originator = own.Originator ?? shared.Originator,
        LastSender = own.LastSender ?? shared.LastSender,
        PacketNumber = own.PacketNumber ?? shared.PacketNumber,
        Level = own.Level ?? shared.Level,
        SignalToNoise = own.SignalToNoise ?? shared.SignalToNoise,
        Frequency = own.Frequency ?? shared.Frequency,
        Bandwidth = own.Bandwidth ?? shared.Bandwidth,
        SpreadingFactor = own.SpreadingFactor ?? shared.SpreadingFactor,
        HopsTaken = own.HopsTaken ?? shared.HopsTaken,
        HopLimit = own.HopLimit ?? shared.HopLimit,
    };
}
