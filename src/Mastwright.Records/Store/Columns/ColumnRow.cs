using Mastwright.Evidence;
using Mastwright.Evidence.Proof;

namespace Mastwright.Records.Store.Columns;

/// <summary>What a proof needs of one reception, with stations by their numbers in the store.</summary>
internal readonly record struct ColumnRow
{
    /// <summary>What a row is read from: the columns in this order.</summary>
    internal const string Fields =
        "receiver, time_microseconds - coalesce(clock_offset_microseconds, 0), last_sender, originator, level_dbm, snr_db, level_is_signal_power, hops_taken, packet_id, spreading_factor, ingest, hash, step_microseconds";

    internal required long TimeMicroseconds { get; init; }

    internal required int Receiver { get; init; }

    /// <summary>0 where it is unknown.</summary>
    internal required int LastSender { get; init; }

    /// <summary>0 where it is unknown.</summary>
    internal required int Originator { get; init; }

    internal required double LevelDbm { get; init; }

    internal required double SnrDb { get; init; }

    internal required bool LevelIsSignalPower { get; init; }

    /// <summary>−1 where it is unknown.</summary>
    internal required int Hops { get; init; }

    /// <inheritdoc cref="HeardPacket.Counter"/>
    internal required long Counter { get; init; }

    internal required int SpreadingFactor { get; init; }

    /// <summary>The row that a statement over <see cref="Fields"/> stands at.</summary>
    internal static ColumnRow Of(SqliteStatement row) => new()
    {
        Receiver = (int)row.Whole(0),
        TimeMicroseconds = row.Whole(1),
        LastSender = (int)row.Whole(2),
        Originator = (int)row.Whole(3),
        LevelDbm = row.Real(4),
        SnrDb = row.Real(5),
        LevelIsSignalPower = row.Whole(6) != 0,
        Hops = row.IsNull(7) ? -1 : (int)row.Whole(7),
        Counter = HeardPacket.CounterOf(row.Text(8)),
        SpreadingFactor = (int)row.Whole(9),
    };

    /// <summary>The row as a reader of a period takes it.</summary>
    /// <param name="addresses">Addresses of the stations by their numbers.</param>
    internal PeriodRow ToPeriodRow(string[] addresses) => new(
        TimeMicroseconds,
        addresses[Receiver],
        LastSender == 0 ? null : addresses[LastSender],
        Originator == 0 ? null : addresses[Originator],
        LastSender == 0 ? double.NaN : LevelIsSignalPower ? LevelDbm : SignalPower.Dbm(LevelDbm, SnrDb),
        LastSender == 0 ? double.NaN : SnrDb,
        Hops,
        Counter,
        SpreadingFactor);
}
