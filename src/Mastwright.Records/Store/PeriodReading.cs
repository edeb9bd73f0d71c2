using System.Data.Common;
using Mastwright.Evidence;
using Mastwright.Evidence.Proof;

namespace Mastwright.Records.Store;

/// <summary>Reads the receptions of a period in the order of their times, slice by slice: no reading stays open for long.</summary>
internal sealed class PeriodReading(DbConnection connection, long network)
{
    private const long SliceMicroseconds = 86_400_000_000;

    // Times are off the stored step by less than this: the resolution of a source, and a clock known to be off.
    private const long SlackMicroseconds = 3_600_000_000;

    private const string Sql = """
        SELECT time_microseconds, clock_offset_microseconds, receiver, last_sender, originator, level_dbm, snr_db, level_is_signal_power,
               hops_taken, packet_id, spreading_factor
        FROM reception WHERE network = @network AND step_microseconds >= @from AND step_microseconds < @to
        ORDER BY step_microseconds, hash
        """;

    private readonly Dictionary<long, string> addresses = connection
        .Rows(row => (Number: row.GetInt64(0), Address: row.GetString(1)), "SELECT station, address FROM station WHERE network = @network", ("@network", network))
        .ToDictionary(pair => pair.Number, pair => pair.Address);

    /// <summary>Hands on every reception of the period that one of the addresses made or heard.</summary>
    internal void Read(IReadOnlySet<string> own, long from, long to, PeriodVisitor visit)
    {
        HashSet<long> stations = [.. addresses.Where(pair => own.Contains(pair.Value)).Select(pair => pair.Key)];
        for (long slice = from - SlackMicroseconds; slice < to + SlackMicroseconds; slice += SliceMicroseconds)
        {
            using DbCommand command = connection.Command(
                null, Sql, ("@network", network), ("@from", slice), ("@to", Math.Min(slice + SliceMicroseconds, to + SlackMicroseconds)));
            using DbDataReader row = command.ExecuteReader();
            while (row.Read())
            {
                long receiver = row.GetInt64(2);
                long? sender = row.LongOrNull(3);
                if (stations.Contains(receiver) || (sender is { } heard && stations.Contains(heard)))
                {
                    PeriodRow one = Row(row, receiver, sender);
                    if (one.TimeMicroseconds >= from && one.TimeMicroseconds < to)
                    {
                        visit(one);
                    }
                }
            }
        }
    }

    private PeriodRow Row(DbDataReader row, long receiver, long? sender)
    {
        double level = row.DoubleOrNull(5) ?? double.NaN;
        double snr = row.DoubleOrNull(6) ?? double.NaN;
        double power = sender is null ? double.NaN : row.GetInt64(7) != 0 ? level : SignalPower.Dbm(level, snr);
        return new(
            row.GetInt64(0) - (row.LongOrNull(1) ?? 0),
            addresses[receiver],
            sender is { } heard ? addresses[heard] : null,
            row.LongOrNull(4) is { } made ? addresses[made] : null,
            power,
            sender is null ? double.NaN : snr,
            (int)(row.LongOrNull(8) ?? -1),
            HeardPacket.CounterOf(row.TextOrNull(9)),
            (int)(row.LongOrNull(10) ?? 0));
    }
}
