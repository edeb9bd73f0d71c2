using System.Data.Common;
using Mastwright.Evidence;
using Npgsql;

namespace Mastwright.Records.Store;

/// <summary>Adds a batch in one statement: an array for each column, numbered as far as the record is new.</summary>
internal static class PostgresInsertion
{
    private static readonly Column[] Columns =
    [
        Column.Of<long?>("step_microseconds", row => row.Key.StepMicroseconds),
        Column.Of<long?>("hash", row => row.Key.Hash),
        Column.Of<long?>("time_microseconds", row => row.Record.TimeMicroseconds),
        Column.Of<long?>("time_resolution_microseconds", row => row.Record.TimeResolutionMicroseconds),
        Column.Of<string?>("time_text", row => row.Record.TimeText),
        Column.Of<long?>("clock_offset_microseconds", row => row.Record.ClockOffsetMicroseconds),
        Column.Of<long?>("receiver", row => row.Receiver),
        Column.Of<long?>("originator", row => row.Originator),
        Column.Of<long?>("last_sender", row => row.LastSender),
        Column.Of<double?>("level_dbm", row => row.Record.LevelDbm),
        Column.Of<double?>("snr_db", row => row.Record.SnrDb),
        Column.Of<long?>("level_is_signal_power", row => row.Record.LevelIsSignalPower ? 1L : 0L),
        Column.Of<long?>("hops_taken", row => row.Record.HopsTaken),
        Column.Of<long?>("hop_limit", row => row.Record.HopLimit),
        Column.Of<double?>("frequency_hz", row => row.Record.FrequencyHz),
        Column.Of<double?>("bandwidth_hz", row => row.Record.BandwidthHz),
        Column.Of<long?>("spreading_factor", row => row.Record.SpreadingFactor),
        Column.Of<string?>("packet_id", row => row.Record.PacketId),
        Column.Of<string?>("other_fields", row => row.Record.OtherFields),
    ];

    private static readonly string Names = string.Join(", ", Columns.Select(column => column.Name));

    // Of records that are twice in the batch the first counts. The network's row is locked: nobody else numbers at the same time.
    // What is there is asked for row by row, by the index: as a join, a planner without statistics of a new table reads all of it for each batch.
    private static readonly string Sql =
        $"""
        INSERT INTO reception (network, ingest, {Names})
        SELECT @network, @before + row_number() OVER (ORDER BY place), {Names} FROM (
            SELECT DISTINCT ON (step_microseconds, hash) * FROM unnest({string.Join(", ", Columns.Select(column => "@" + column.Name))})
                WITH ORDINALITY AS given ({Names}, place)
            WHERE (SELECT 1 FROM reception there
                WHERE there.network = @network AND there.step_microseconds = given.step_microseconds AND there.hash = given.hash LIMIT 1) IS NULL
            AND (SELECT 1 FROM compacted_key gone
                WHERE gone.network = @network AND gone.step_microseconds = given.step_microseconds AND gone.hash = given.hash LIMIT 1) IS NULL
            ORDER BY step_microseconds, hash, place) fresh
        """;

    /// <summary>Adds what is not there yet; tells how many records were new.</summary>
    internal static int Run(NpgsqlConnection connection, NpgsqlTransaction transaction, long network, long before, SqlStations stations, IReadOnlyList<KeyedRecord> batch)
    {
        Row[] rows = [.. batch.Select(one => new Row(
            one.Record,
            one.Key,
            stations.Of(transaction, network, one.Record.Receiver),
            Station(transaction, network, stations, one.Record.Originator),
            Station(transaction, network, stations, one.Record.LastSender)))];
        using DbCommand command = connection.Command(transaction, Sql, ("@network", network), ("@before", before));
        foreach (Column column in Columns)
        {
            command.Parameters.Add(column.Parameter(rows));
        }

        return command.ExecuteNonQuery();
    }

    private static long? Station(NpgsqlTransaction transaction, long network, SqlStations stations, string? address) =>
        address is null ? null : stations.Of(transaction, network, address);

    private sealed record Row(ReceptionRecord Record, RecordKey Key, long Receiver, long? Originator, long? LastSender);

    private sealed record Column(string Name, Func<Row[], NpgsqlParameter> Parameter)
    {
        internal static Column Of<T>(string name, Func<Row, T> value) => new(name, rows => new NpgsqlParameter<T[]>("@" + name, Array.ConvertAll(rows, row => value(row))));
    }
}
