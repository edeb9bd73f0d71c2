using System.Data.Common;
using Mastwright.Evidence;

namespace Mastwright.Records.Store;

/// <summary>Turns old records into summaries, a piece in a transaction, and reads them.</summary>
internal static class SummaryRows
{
    /// <summary>So many records at once: a transaction stays well below a quarter of a second.</summary>
    internal const int Piece = 4096;

    internal const string Read = """
        SELECT h.hour_microseconds, heard.address, made.address, sent.address, h.frequency_hz, h.bandwidth_hz, h.spreading_factor, h.hops_taken, h.records,
               h.first_microseconds, h.last_microseconds, h.level_records, h.level_sum_dbm, h.level_least_dbm, h.level_most_dbm, h.snr_records, h.snr_sum_db,
               h.power_records, h.power_sum_dbm
        FROM hour_summary h
        JOIN station heard ON heard.network = h.network AND heard.station = h.receiver
        LEFT JOIN station made ON made.network = h.network AND made.station = h.originator
        LEFT JOIN station sent ON sent.network = h.network AND sent.station = h.last_sender
        WHERE h.network = (SELECT network FROM network WHERE name = @network)
        ORDER BY h.hour_microseconds, heard.address, sent.address, made.address, h.frequency_hz, h.bandwidth_hz, h.spreading_factor, h.hops_taken
        """;

    private const string Oldest = ReceptionRows.Select + """

        WHERE r.network = @network AND r.step_microseconds < @before
        ORDER BY r.step_microseconds, r.hash LIMIT @most
        """;

    private const string Add = """
        INSERT INTO hour_summary (network, hour_microseconds, receiver, originator, last_sender, frequency_hz, bandwidth_hz, spreading_factor, hops_taken, records,
            first_microseconds, last_microseconds, level_records, level_sum_dbm, level_least_dbm, level_most_dbm, snr_records, snr_sum_db, power_records, power_sum_dbm)
        VALUES (@network, @hour, @receiver, @originator, @sender, @frequency, @bandwidth, @factor, @hops, @records,
            @first, @last, @levels, @levelsum, @least, @greatest, @snrs, @snrsum, @powers, @powersum)
        ON CONFLICT (network, hour_microseconds, receiver, originator, last_sender, frequency_hz, bandwidth_hz, spreading_factor, hops_taken) DO UPDATE SET
            records = hour_summary.records + excluded.records,
            first_microseconds = CASE WHEN excluded.first_microseconds < hour_summary.first_microseconds THEN excluded.first_microseconds ELSE hour_summary.first_microseconds END,
            last_microseconds = CASE WHEN excluded.last_microseconds > hour_summary.last_microseconds THEN excluded.last_microseconds ELSE hour_summary.last_microseconds END,
            level_records = hour_summary.level_records + excluded.level_records,
            level_sum_dbm = hour_summary.level_sum_dbm + excluded.level_sum_dbm,
            level_least_dbm = CASE WHEN hour_summary.level_least_dbm IS NULL OR excluded.level_least_dbm < hour_summary.level_least_dbm THEN excluded.level_least_dbm ELSE hour_summary.level_least_dbm END,
            level_most_dbm = CASE WHEN hour_summary.level_most_dbm IS NULL OR excluded.level_most_dbm > hour_summary.level_most_dbm THEN excluded.level_most_dbm ELSE hour_summary.level_most_dbm END,
            snr_records = hour_summary.snr_records + excluded.snr_records,
            snr_sum_db = hour_summary.snr_sum_db + excluded.snr_sum_db,
            power_records = hour_summary.power_records + excluded.power_records,
            power_sum_dbm = hour_summary.power_sum_dbm + excluded.power_sum_dbm
        """;

    private const string UpTo = "network = @network AND (step_microseconds, hash) <= (@step, @hash)";

    /// <summary>Turns the oldest records before a time into summaries; tells how many. The network is locked by the transaction.</summary>
    internal static int Compact(DbConnection connection, DbTransaction transaction, long network, SqlStations stations, long beforeMicroseconds)
    {
        List<(ReceptionRecord Record, long Step, long Hash)> oldest = connection.Rows(
            transaction, row => (ReceptionRows.Record(row).Record, row.GetInt64(18), row.GetInt64(19)), Oldest, ("@network", network), ("@before", beforeMicroseconds), ("@most", (long)Piece));
        if (oldest.Count == 0)
        {
            return 0;
        }

        foreach (HourSummary summary in HourSummary.Of(oldest.Select(one => one.Record)))
        {
            connection.Execute(transaction, Add, Values(network, summary, address => address is null ? 0 : stations.Of(transaction, network, address)));
        }

        (_, long step, long hash) = oldest[^1];
        connection.Execute(
            transaction, "INSERT INTO compacted_key (network, step_microseconds, hash) SELECT network, step_microseconds, hash FROM reception WHERE " + UpTo, ("@network", network), ("@step", step), ("@hash", hash));
        connection.Execute(transaction, "DELETE FROM reception WHERE " + UpTo, ("@network", network), ("@step", step), ("@hash", hash));
        return oldest.Count;
    }

    internal static HourSummary Record(DbDataReader row) => new()
    {
        HourMicroseconds = row.GetInt64(0),
        Receiver = row.GetString(1),
        Originator = row.TextOrNull(2),
        LastSender = row.TextOrNull(3),
        FrequencyHz = row.GetInt64(4) is > 0 and long frequency ? frequency : null,
        BandwidthHz = row.GetInt64(5) is > 0 and long bandwidth ? bandwidth : null,
        SpreadingFactor = row.GetInt64(6) is > 0 and long factor ? (int)factor : null,
        HopsTaken = row.GetInt64(7) is >= 0 and long hops ? (int)hops : null,
        Records = row.GetInt64(8),
        FirstMicroseconds = row.GetInt64(9),
        LastMicroseconds = row.GetInt64(10),
        Level = (row.GetInt64(11), row.GetDouble(12)),
        LeastLevelDbm = row.DoubleOrNull(13),
        MostLevelDbm = row.DoubleOrNull(14),
        Snr = (row.GetInt64(15), row.GetDouble(16)),
        Power = (row.GetInt64(17), row.GetDouble(18)),
    };

    private static (string Name, object? Value)[] Values(long network, HourSummary summary, Func<string?, long> station) =>
    [
        ("@network", network), ("@hour", summary.HourMicroseconds), ("@receiver", station(summary.Receiver)), ("@originator", station(summary.Originator)), ("@sender", station(summary.LastSender)),
        ("@frequency", summary.FrequencyHz ?? 0), ("@bandwidth", summary.BandwidthHz ?? 0), ("@factor", (long)(summary.SpreadingFactor ?? 0)), ("@hops", (long)(summary.HopsTaken ?? -1)),
        ("@records", summary.Records), ("@first", summary.FirstMicroseconds), ("@last", summary.LastMicroseconds), ("@levels", summary.Level.Records), ("@levelsum", summary.Level.Sum),
        ("@least", summary.LeastLevelDbm), ("@greatest", summary.MostLevelDbm), ("@snrs", summary.Snr.Records), ("@snrsum", summary.Snr.Sum), ("@powers", summary.Power.Records), ("@powersum", summary.Power.Sum),
    ];
}
