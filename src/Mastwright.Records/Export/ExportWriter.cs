using System.Globalization;
using Mastwright.Evidence;
using Mastwright.Records.Store;

namespace Mastwright.Records.Export;

/// <summary>Writes records in one form, piece by piece.</summary>
internal abstract class ExportWriter : IDisposable
{
    /// <summary>The columns of a record, with their values in the invariant culture; what is unknown is null.</summary>
    internal static readonly IReadOnlyList<(string Name, Func<StoredRecord, object?> Value)> Columns =
    [
        ("ingest", one => one.Ingest),
        ("time", one => UtcTime.Text(one.Record.TimeMicroseconds)),
        ("time_microseconds", one => one.Record.TimeMicroseconds),
        ("time_resolution_microseconds", one => one.Record.TimeResolutionMicroseconds),
        ("time_text", one => one.Record.TimeText),
        ("clock_offset_microseconds", one => one.Record.ClockOffsetMicroseconds),
        ("receiver", one => one.Record.Receiver),
        ("originator", one => one.Record.Originator),
        ("last_sender", one => one.Record.LastSender),
        ("level_dbm", one => one.Record.LevelDbm),
        ("snr_db", one => one.Record.SnrDb),
        ("level_is_signal_power", one => one.Record.LevelIsSignalPower),
        ("hops_taken", one => one.Record.HopsTaken),
        ("hop_limit", one => one.Record.HopLimit),
        ("frequency_hz", one => one.Record.FrequencyHz),
        ("bandwidth_hz", one => one.Record.BandwidthHz),
        ("spreading_factor", one => one.Record.SpreadingFactor),
        ("packet_number", one => one.Record.PacketId),
        ("other_fields", one => one.Record.OtherFields),
    ];

    /// <summary>Writes a piece.</summary>
    internal abstract void Write(IReadOnlyList<StoredRecord> records);

    /// <summary>Writes what comes after the last.</summary>
    internal abstract void End();

    /// <inheritdoc/>
    public abstract void Dispose();

    /// <summary>A value as text: numbers read back to the same bits.</summary>
    private protected static string Text(object? value) => value switch
    {
        null => "",
        bool truth => truth ? "true" : "false",
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        _ => Convert.ToString(value, CultureInfo.InvariantCulture)!,
    };
}
