using Mastwright.Records.Store;
using Parquet;
using Parquet.Schema;

namespace Mastwright.Records.Export;

/// <summary>Apache Parquet: the same columns, in row groups of up to a hundred thousand records.</summary>
internal sealed class ParquetColumns : ExportWriter
{
    private const int Group = 100_000;

    private static readonly (DataField Field, Func<ParquetRowGroupWriter, DataField, List<StoredRecord>, Task> Write)[] Fields =
    [
        Of<long>("ingest", one => one.Ingest),
        Of<long>("time_microseconds", one => one.Record.TimeMicroseconds),
        Of<long>("time_resolution_microseconds", one => one.Record.TimeResolutionMicroseconds),
        Text("time_text", one => one.Record.TimeText),
        OrNull<long>("clock_offset_microseconds", one => one.Record.ClockOffsetMicroseconds),
        Text("receiver", one => one.Record.Receiver),
        Text("originator", one => one.Record.Originator),
        Text("last_sender", one => one.Record.LastSender),
        OrNull<double>("level_dbm", one => one.Record.LevelDbm),
        OrNull<double>("snr_db", one => one.Record.SnrDb),
        Of<bool>("level_is_signal_power", one => one.Record.LevelIsSignalPower),
        OrNull<int>("hops_taken", one => one.Record.HopsTaken),
        OrNull<int>("hop_limit", one => one.Record.HopLimit),
        OrNull<double>("frequency_hz", one => one.Record.FrequencyHz),
        OrNull<double>("bandwidth_hz", one => one.Record.BandwidthHz),
        OrNull<int>("spreading_factor", one => one.Record.SpreadingFactor),
        Text("packet_number", one => one.Record.PacketId),
        Text("other_fields", one => one.Record.OtherFields),
    ];

    private readonly ParquetWriter writer;
    private readonly List<StoredRecord> waiting = [];

    internal ParquetColumns(Stream stream) => writer = ParquetWriter.CreateAsync(new ParquetSchema(Fields.Select(one => one.Field)), stream).GetAwaiter().GetResult();

    /// <inheritdoc/>
    public override void Dispose() => writer.DisposeAsync().AsTask().GetAwaiter().GetResult();

    internal override void Write(IReadOnlyList<StoredRecord> records)
    {
        waiting.AddRange(records);
        if (waiting.Count >= Group)
        {
            Flush();
        }
    }

    internal override void End()
    {
        if (waiting.Count > 0)
        {
            Flush();
        }
    }

    private void Flush() => FlushAsync().GetAwaiter().GetResult();

    private async Task FlushAsync()
    {
        using ParquetRowGroupWriter group = writer.CreateRowGroup();
        foreach ((DataField field, Func<ParquetRowGroupWriter, DataField, List<StoredRecord>, Task> write) in Fields)
        {
            await write(group, field, waiting).ConfigureAwait(false);
        }

        group.CompleteValidate();
        waiting.Clear();
    }

    private static (DataField Field, Func<ParquetRowGroupWriter, DataField, List<StoredRecord>, Task> Write) Of<T>(string name, Func<StoredRecord, T> value)
        where T : struct =>
        (new DataField(name, typeof(T), isNullable: false), (group, field, records) => group.WriteAsync<T>(field, records.Select(value).ToArray()));

    private static (DataField Field, Func<ParquetRowGroupWriter, DataField, List<StoredRecord>, Task> Write) OrNull<T>(string name, Func<StoredRecord, T?> value)
        where T : struct =>
        (new DataField(name, typeof(T), isNullable: true), (group, field, records) => group.WriteAsync<T>(field, records.Select(value).ToArray()));

    private static (DataField Field, Func<ParquetRowGroupWriter, DataField, List<StoredRecord>, Task> Write) Text(string name, Func<StoredRecord, string?> value) =>
        (new DataField(name, typeof(string), isNullable: true), (group, field, records) => group.WriteAsync(field, records.Select(value).ToArray()!));
}
