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

    private readonly SqliteConnection connection;
    private readonly SqliteStatement insert;

    internal SqliteInsertion(SqliteConnection connection)
    {
        this.connection = connection;
        // The first and the third and fourth value stand twice in it, so all are written by their numbers.
        insert = new(
            connection,
            $"INSERT INTO reception ({string.Join(", ", Columns)}) SELECT {string.Join(", ", Columns.Index().Select(column => $"?{column.Index + 1}"))} " +
            "WHERE NOT EXISTS (SELECT 1 FROM compacted_key WHERE network = ?1 AND step_microseconds = ?3 AND hash = ?4) " +
            "ON CONFLICT (network, step_microseconds, hash) DO NOTHING");
    }

    public void Dispose() => insert.Dispose();

    /// <summary>Adds what is not there yet; tells how many records were new and the network's last ingest number.</summary>
    internal (int Added, long LastIngest) Run(DbTransaction transaction, long network, SqlStations stations, IReadOnlyList<KeyedRecord> batch)
    {
        long before = connection.Number(transaction, "SELECT last_ingest FROM network WHERE network = @network", ("@network", network));
        long last = before;
        foreach (KeyedRecord one in batch)
        {
            // The number is taken under the write lock and only by a row that is new: it rises in commit order, without gaps.
            Fill(transaction, network, stations, last + 1, one);
            last += insert.Run();
        }

        if (last > before)
        {
            connection.Execute(transaction, "UPDATE network SET last_ingest = @last WHERE network = @network", ("@last", last), ("@network", network));
        }

        return ((int)(last - before), last);
    }

    private void Fill(DbTransaction transaction, long network, SqlStations stations, long ingest, KeyedRecord one)
    {
        ReceptionRecord record = one.Record;
        insert.Set(1, network);
        insert.Set(2, ingest);
        insert.Set(3, one.Key.StepMicroseconds);
        insert.Set(4, one.Key.Hash);
        insert.Set(5, record.TimeMicroseconds);
        insert.Set(6, record.TimeResolutionMicroseconds);
        insert.Set(7, record.TimeText);
        insert.Set(8, record.ClockOffsetMicroseconds);
        insert.Set(9, stations.Of(transaction, network, record.Receiver));
        insert.Set(10, record.Originator is { } made ? stations.Of(transaction, network, made) : (long?)null);
        insert.Set(11, record.LastSender is { } sent ? stations.Of(transaction, network, sent) : (long?)null);
        insert.Set(12, record.LevelDbm);
        insert.Set(13, record.SnrDb);
        insert.Set(14, record.LevelIsSignalPower ? 1L : 0L);
        insert.Set(15, record.HopsTaken);
        insert.Set(16, record.HopLimit);
        insert.Set(17, record.FrequencyHz);
        insert.Set(18, record.BandwidthHz);
        insert.Set(19, record.SpreadingFactor);
        insert.Set(20, record.PacketId);
        insert.Set(21, record.OtherFields);
    }
}
