using System.Globalization;
using System.Text.RegularExpressions;
using YamlDotNet.Core;
using YamlDotNet.Serialization;
using YamlDotNet.Serialization.NamingConventions;

namespace Mastwright.Records.Import;

/// <summary>Says where each field of a record is in a source's own output: read from a mapping file and checked.</summary>
public sealed class RecordMapping
{
    private const int MostCharacters = 1 << 20;

    internal RecordMapping(MappingText read)
    {
        Network = read.Network;
        IsTelemetry = read.Holds is "telemetry";
        AntennasShareAddress = read.AntennasShareAddress;
        Rows = read.Rows is { Count: > 0 } several ? [.. several.Select(own => Over(own, read))] : [read];
        SeveralInARow = read.Rows is { Count: > 0 };
    }

    /// <summary>The network that the mapping names for its records; null when it names none.</summary>
    public string? Network { get; }

    /// <summary>Whether the records are what stations tell of themselves, and no receptions.</summary>
    public bool IsTelemetry { get; }

    /// <summary>Whether level and ratio tell receptions of one packet at one receiver apart.</summary>
    internal bool AntennasShareAddress { get; }

    /// <summary>What the source is.</summary>
    internal SourceForm Form { get; init; }

    /// <summary>What separates the cells of a row.</summary>
    internal char Separator { get; init; }

    /// <summary>What takes a line apart; null where the source is no lines.</summary>
    internal Regex? Pattern { get; init; }

    /// <summary>Where in a JSON text the array of rows is; null for the text's own value.</summary>
    internal JsonPlace? Within { get; init; }

    /// <summary>Where in a value of JSON the array of receptions is; null where the value is one.</summary>
    internal JsonPlace? Each { get; init; }

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
            return MappingCheck.Checked(read, name);
        }
        catch (YamlException fault)
        {
            string cause = (fault.InnerException?.Message ?? fault.Message).Split(" not found on type", 2)[0];
            string words = cause.StartsWith("Property ", StringComparison.Ordinal) ? string.Concat("the key ", cause.AsSpan(9), " is not known here") : cause;
            throw new MappingException(string.Create(CultureInfo.InvariantCulture, $"{name}:{fault.Start.Line}:{fault.Start.Column}: {words}"), fault);
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
        Station = own.Station ?? shared.Station,
        Battery = own.Battery ?? shared.Battery,
        Supply = own.Supply ?? shared.Supply,
        Temperature = own.Temperature ?? shared.Temperature,
        ChannelUse = own.ChannelUse ?? shared.ChannelUse,
        Transmission = own.Transmission ?? shared.Transmission,
    };
}

/// <summary>The forms that a source may have.</summary>
internal enum SourceForm
{
    /// <summary>Cells between separators; the first row names the columns.</summary>
    Delimited,

    /// <summary>A value of JSON a line, or an array of them.</summary>
    Json,

    /// <summary>Lines of plain text.</summary>
    Lines,
}
