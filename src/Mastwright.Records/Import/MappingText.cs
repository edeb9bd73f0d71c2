namespace Mastwright.Records.Import;

/// <summary>A mapping file as it is written; null is what it does not say.</summary>
internal sealed class MappingText : FieldsText
{
    /// <summary>Version of the form: 1.</summary>
    public int Records { get; set; }

    /// <summary>The network that the records are of, where the command names no other.</summary>
    public string? Network { get; set; }

    /// <summary>What the records are: receptions (where it is not said) or telemetry.</summary>
    public string? Holds { get; set; }

    /// <summary>What the source is: delimited (where it is not said), json or lines.</summary>
    public string? Form { get; set; }

    /// <summary>Of lines: the pattern whose named groups the fields are.</summary>
    public string? Pattern { get; set; }

    /// <summary>Of JSON: where the values of one document are, each of which is a row; the path of an array.</summary>
    public string? Within { get; set; }

    /// <summary>Of JSON: where in a value the receptions are, each of which is a row; the path of an array.</summary>
    public string? Each { get; set; }

    /// <summary>What separates the cells; a comma where it is not said.</summary>
    public string? Separator { get; set; }

    /// <summary>Whether one receiver's address stands for several antennas that each hear the same packet.</summary>
    public bool AntennasShareAddress { get; set; }

    /// <summary>For files that hold several receptions a row: what each of them has of its own.</summary>
    public List<FieldsText>? Rows { get; set; }
}

/// <summary>Where each field of a record is.</summary>
internal class FieldsText
{
    public TimeText? Time { get; set; }

    public FieldText? Receiver { get; set; }

    public FieldText? Originator { get; set; }

    public FieldText? LastSender { get; set; }

    public FieldText? PacketNumber { get; set; }

    public FieldText? Level { get; set; }

    public FieldText? SignalToNoise { get; set; }

    public FieldText? Frequency { get; set; }

    public FieldText? Bandwidth { get; set; }

    public FieldText? SpreadingFactor { get; set; }

    public FieldText? HopsTaken { get; set; }

    public FieldText? HopLimit { get; set; }

    public FieldText? Station { get; set; }

    public FieldText? Battery { get; set; }

    public FieldText? Supply { get; set; }

    public FieldText? Temperature { get; set; }

    public FieldText? ChannelUse { get; set; }

    public FieldText? Transmission { get; set; }

    /// <summary>All of them, with the key that each has in the file.</summary>
    internal IEnumerable<(string Key, FieldText? Field)> All() =>
    [
        ("time", Time), ("receiver", Receiver), ("originator", Originator), ("last-sender", LastSender), ("packet-number", PacketNumber),
        ("level", Level), ("signal-to-noise", SignalToNoise), ("frequency", Frequency), ("bandwidth", Bandwidth),
        ("spreading-factor", SpreadingFactor), ("hops-taken", HopsTaken), ("hop-limit", HopLimit),
        .. Told(),
    ];

    /// <summary>Those of telemetry alone.</summary>
    internal IEnumerable<(string Key, FieldText? Field)> Told() =>
    [
        ("station", Station), ("battery", Battery), ("supply", Supply), ("temperature", Temperature), ("channel-use", ChannelUse), ("transmission", Transmission),
    ];
}

/// <summary>Where one field is: a column, a path in JSON, a named group, or the same text in every record.</summary>
internal class FieldText
{
    public string? Column { get; set; }

    public string? Path { get; set; }

    public string? Group { get; set; }

    public string? Text { get; set; }

    public string? Unit { get; set; }

    /// <summary>Of a level: whether the source has already taken the noise out of it.</summary>
    public bool NoiseRemoved { get; set; }
}

/// <summary>Where the time is, and which clock it is of.</summary>
internal sealed class TimeText : FieldText
{
    /// <summary>How it is written: iso-8601, unix-seconds, unix-milliseconds or unix-microseconds.</summary>
    public string? Written { get; set; }

    /// <summary>The zone of an ISO 8601 time that names none: utc, or a name of the time zone database such as Europe/Oslo.</summary>
    public string? Zone { get; set; }

    /// <summary>The step of the source's clock, such as '1 s'.</summary>
    public string? Resolution { get; set; }

    /// <summary>What the source's clock is known to be ahead of UTC, such as '2 s'.</summary>
    public string? AheadOfUtc { get; set; }
}
