using System.Data.Common;
using Mastwright.Evidence;
using Microsoft.Data.Sqlite;

namespace Mastwright.Records.Store;

/// <summary>The statements that add a batch, prepared once and used inside one write transaction after the other.</summary>
internal sealed class SqliteInsertion : IDisposable
{
    private static readonly string[] Columns =
    [
        "network", "ingest", "step_microseconds", "hash", "time_microseconds", "time_resolution_microseconds", "time_text",
        "clock_offset_microseconds", "receiver", "originator", "last_sender", "level_dbm", "snr_db", "level_is_signal_power", "hops_taken",
        "hop_limit", "frequency_hz", "bandwidth_hz", "spreading_factor", "packet_id", "other_fields",
    ];

    private readonly SqliteCommand insert;
    private readonly SqliteParameter[] values;

    internal SqliteInsertion(SqliteConnection connection)
    {
        insert = connection.CreateCommand();
#pragma warning disable CA2100 // Put together from the constant names above.
        insert.CommandText = $"INSERT INTO reception ({string.Join(", ", Columns)}) SELECT {string.Join(", ", Columns.Select(column => "@" + column))} " +
            "WHERE NOT EXISTS (SELECT 1 FROM compacted_key WHERE network = @network AND step_microseconds = @step_microseconds AND hash = @hash) " +
            "ON CONFLICT (network, step_microseconds, hash) DO NOTHING";
#pragma warning restore CA2100
        values = [.. Columns.Select(column => insert.Parameters.Add(new SqliteParameter("@" + column, null)))];
    }

    public void Dispose() => insert.Dispose();

    /// <summary>Adds what is not there yet; tells how many records were new and the network's last ingest number.</summary>
    internal (int Added, long LastIngest) Run(DbTransaction transaction, long network, SqlStations stations, IReadOnlyList<KeyedRecord> batch)
    {
        long before = insert.Connection!.Number(transaction, "SELECT last_ingest FROM network WHERE network = @network", ("@network", network));
        insert.Transaction = (SqliteTransaction)transaction;
        long last = before;
        foreach (KeyedRecord one in batch)
        {
            // The number is taken under the write lock and only by a row that is new: it rises in commit order, without gaps.
            Fill(transaction, network, stations, last + 1, one);
            last += insert.ExecuteNonQuery();
        }

        if (last > before)
        {
            insert.Connection!.Execute(transaction, "UPDATE network SET last_ingest = @last WHERE network = @network", ("@last", last), ("@network", network));
        }

        return ((int)(last - before), last);
    }

    private void Fill(DbTransaction transaction, long network, SqlStations stations, long ingest, KeyedRecord one)
    {
        ReceptionRecord record = one.Record;
        values[0].Value = network;
        values[1].Value = ingest;
        values[2].Value = one.Key.StepMicroseconds;
        values[3].Value = one.Key.Hash;
        values[4].Value = record.TimeMicroseconds;
        values[5].Value = record.TimeResolutionMicroseconds;
        values[6].Value = OrNull(record.TimeText);
        values[7].Value = OrNull(record.ClockOffsetMicroseconds);
        values[8].Value = stations.Of(transaction, network, record.Receiver);
        values[9].Value = record.Originator is { } made ? stations.Of(transaction, network, made) : DBNull.Value;
        values[10].Value = record.LastSender is { } sent ? stations.Of(transaction, network, sent) : DBNull.Value;
        values[11].Value = OrNull(record.LevelDbm);
        values[12].Value = OrNull(record.SnrDb);
        values[13].Value = record.LevelIsSignalPower ? 1L : 0L;
        values[14].Value = OrNull(record.HopsTaken);
        values[15].Value = OrNull(record.HopLimit);
        values[16].Value = OrNull(record.FrequencyHz);
        values[17].Value = OrNull(record.BandwidthHz);
        values[18].Value = OrNull(record.SpreadingFactor);
        values[19].Value = OrNull(record.PacketId);
        values[20].Value = OrNull(record.OtherFields);
    }

    private static object OrNull(object? value) => value ?? DBNull.Value;
}
