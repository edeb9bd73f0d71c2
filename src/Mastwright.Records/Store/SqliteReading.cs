using Mastwright.Evidence;
using Microsoft.Data.Sqlite;

namespace Mastwright.Records.Store;

/// <summary>Makes records of rows.</summary>
internal static class SqliteReading
{
    internal const string Sql = """
        SELECT r.ingest, r.time_microseconds, r.time_resolution_microseconds, r.time_text, r.clock_offset_microseconds,
               heard.address, made.address, sent.address, r.level_dbm, r.snr_db, r.level_is_signal_power, r.hops_taken, r.hop_limit,
               r.frequency_hz, r.bandwidth_hz, r.spreading_factor, r.packet_id, r.other_fields
        FROM reception r
        JOIN station heard ON heard.network = r.network AND heard.station = r.receiver
        LEFT JOIN station made ON made.network = r.network AND made.station = r.originator
        LEFT JOIN station sent ON sent.network = r.network AND sent.station = r.last_sender
        WHERE r.network = (SELECT network FROM network WHERE name = $network) AND r.ingest > $ingest
        ORDER BY r.ingest LIMIT $most
        """;

    internal static StoredRecord Record(SqliteDataReader row) => new(row.GetInt64(0), new()
    {
        TimeMicroseconds = row.GetInt64(1),
        TimeResolutionMicroseconds = row.GetInt64(2),
        TimeText = Text(row, 3),
        ClockOffsetMicroseconds = row.IsDBNull(4) ? null : row.GetInt64(4),
        Receiver = row.GetString(5),
        Originator = Text(row, 6),
        LastSender = Text(row, 7),
        LevelDbm = Number(row, 8),
        SnrDb = Number(row, 9),
        LevelIsSignalPower = row.GetInt64(10) != 0,
        HopsTaken = Whole(row, 11),
        HopLimit = Whole(row, 12),
        FrequencyHz = Number(row, 13),
        BandwidthHz = Number(row, 14),
        SpreadingFactor = Whole(row, 15),
        PacketId = Text(row, 16),
        OtherFields = Text(row, 17),
    });

    private static string? Text(SqliteDataReader row, int column) => row.IsDBNull(column) ? null : row.GetString(column);

    private static double? Number(SqliteDataReader row, int column) => row.IsDBNull(column) ? null : row.GetDouble(column);

    private static int? Whole(SqliteDataReader row, int column) => row.IsDBNull(column) ? null : row.GetInt32(column);
}
