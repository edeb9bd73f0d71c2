using System.Data.Common;
using Mastwright.Evidence;

namespace Mastwright.Records.Store;

/// <summary>Makes records of rows.</summary>
internal static class ReceptionRows
{
    /// <summary>The columns of a record, and the tables that they are of.</summary>
    internal const string Select = """
        SELECT r.ingest, r.time_microseconds, r.time_resolution_microseconds, r.time_text, r.clock_offset_microseconds,
               heard.address, made.address, sent.address, r.level_dbm, r.snr_db, r.level_is_signal_power, r.hops_taken, r.hop_limit,
               r.frequency_hz, r.bandwidth_hz, r.spreading_factor, r.packet_id, r.other_fields, r.step_microseconds, r.hash
        FROM reception r
        JOIN station heard ON heard.network = r.network AND heard.station = r.receiver
        LEFT JOIN station made ON made.network = r.network AND made.station = r.originator
        LEFT JOIN station sent ON sent.network = r.network AND sent.station = r.last_sender
        """;

    /// <summary>What follows a number.</summary>
    internal const string After = Select + """

        WHERE r.network = (SELECT network FROM network WHERE name = @network) AND r.ingest > @ingest
        ORDER BY r.ingest LIMIT @most
        """;

    internal static StoredRecord Record(DbDataReader row) => new(row.GetInt64(0), new()
    {
        TimeMicroseconds = row.GetInt64(1),
        TimeResolutionMicroseconds = row.GetInt64(2),
        TimeText = row.TextOrNull(3),
        ClockOffsetMicroseconds = row.LongOrNull(4),
        Receiver = row.GetString(5),
        Originator = row.TextOrNull(6),
        LastSender = row.TextOrNull(7),
        LevelDbm = row.DoubleOrNull(8),
        SnrDb = row.DoubleOrNull(9),
        LevelIsSignalPower = row.GetInt64(10) != 0,
        HopsTaken = row.WholeOrNull(11),
        HopLimit = row.WholeOrNull(12),
        FrequencyHz = row.DoubleOrNull(13),
        BandwidthHz = row.DoubleOrNull(14),
        SpreadingFactor = row.WholeOrNull(15),
        PacketId = row.TextOrNull(16),
        OtherFields = row.TextOrNull(17),
    });
}
