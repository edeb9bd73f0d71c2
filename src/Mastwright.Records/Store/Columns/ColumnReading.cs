using System.Buffers;
using System.Collections.Concurrent;
using Microsoft.Data.Sqlite;

namespace Mastwright.Records.Store.Columns;

/// <summary>Reads a period of a large store through its copy by columns, and what the copy does not hold yet from the store.</summary>
/// <remarks>One thread takes pieces apart and puts them in order while the other hands rows on: half of the work is on either side.</remarks>
internal static class ColumnReading
{
    private const int BatchesAhead = 4;

    /// <summary>Hands on every reception of the period that one of the addresses made or heard, in the order of their times; of equal times as they came in.</summary>
    /// <returns>False, with nothing handed on, where the network is small or no copy can be kept.</returns>
    /// <exception cref="RecordStoreException">The copy turned out to be damaged half way; it was deleted.</exception>
    internal static bool TryRead(
        SqliteConnection store, string place, string network, long columnsFrom, IReadOnlySet<string> addresses, long from, long to, PeriodVisitor visit)
    {
        bool isAny = false;
        try
        {
            List<(long Number, long Last)> known = store.Rows(row => (row.GetInt64(0), row.GetInt64(1)), "SELECT network, last_ingest FROM network WHERE name = @name", ("@name", network));
            if (known is not [var (number, last)] || last < columnsFrom)
            {
                return false;
            }

            using ColumnFile copy = ColumnFile.Open(place);
            copy.Refresh(store, number);
            using IDisposable held = copy.Hold(number, out long covered);
            List<ColumnRow> rest = Rest(store, number, covered, from, to);

            // After the rows, so that no row is of a station that the list does not have yet.
            string[] names = Names(store, number);
            bool[] own = [.. names.Select(address => address is not null && addresses.Contains(address))];
            rest.RemoveAll(row => !own[row.Receiver] && !own[row.LastSender]);
            using BlockingCollection<(PeriodRow[] Rows, int Count)> batches = new(BatchesAhead);
            using CancellationTokenSource stop = new();
            Task reading = Task.Run(() => Read(copy, number, own, from, to, rest, names, batches, stop.Token));
            try
            {
                foreach ((PeriodRow[] rows, int count) in batches.GetConsumingEnumerable())
                {
                    isAny = true;
                    for (int row = 0; row < count; row++)
                    {
                        visit(rows[row]);
                    }

                    ArrayPool<PeriodRow>.Shared.Return(rows);
                }
            }
            finally
            {
                stop.Cancel();
                ((IAsyncResult)reading).AsyncWaitHandle.WaitOne();
            }

            reading.GetAwaiter().GetResult();
            return true;
        }
        catch (Exception fault) when (fault is SqliteException or InvalidDataException)
        {
            Forget(place, fault as SqliteException);
            return isAny
                ? throw new RecordStoreException($"{ColumnFile.PathOf(place)}: this copy of the store was damaged and is deleted; it is derived, so nothing is lost: ask again", fault)
                : false;
        }
    }

    private static void Read(
        ColumnFile copy, long network, bool[] own, long from, long to, List<ColumnRow> rest, string[] names, BlockingCollection<(PeriodRow[] Rows, int Count)> batches, CancellationToken stop)
    {
        try
        {
            OrderedRows ordered = new(names, (rows, count) => batches.Add((rows, count), stop));
            long earliest = rest.Count == 0 ? long.MaxValue : rest.Min(row => row.TimeMicroseconds);
            copy.Read(network, own, from, to, ordered.Add, next => ordered.Advance(Math.Min(next, Math.Min(earliest, long.MaxValue - 1))));
            rest.ForEach(ordered.Add);
            ordered.Advance(long.MaxValue);
        }
        catch (OperationCanceledException)
        {
            // Who takes the rows has stopped, and tells why.
        }
        finally
        {
            batches.CompleteAdding();
        }
    }

    private static string[] Names(SqliteConnection store, long network)
    {
        List<(long Station, string Address)> all = store.Rows(row => (row.GetInt64(0), row.GetString(1)), "SELECT station, address FROM station WHERE network = @network", ("@network", network));
        string[] names = new string[all.Count == 0 ? 1 : all.Max(one => one.Station) + 1];
        foreach ((long station, string address) in all)
        {
            names[station] = address;
        }

        return names;
    }

    private static List<ColumnRow> Rest(SqliteConnection store, long network, long covered, long from, long to)
    {
        List<ColumnRow> rows = [];
        using SqliteStatement rest = new(store, $"SELECT {ColumnRow.Fields} FROM reception WHERE network = ?1 AND ingest > ?2 ORDER BY ingest");
        rest.Set(1, network);
        rest.Set(2, covered);
        while (rest.Next())
        {
            ColumnRow row = ColumnRow.Of(rest);
            if (row.TimeMicroseconds >= from && row.TimeMicroseconds < to)
            {
                rows.Add(row);
            }
        }

        return rows;
    }

    /// <summary>A copy that is damaged, or another program's file, is of no use: it goes, and the next reading makes it anew.</summary>
    private static void Forget(string place, SqliteException? fault)
    {
        // 11: damaged; 26: no file of SQLite (sqlite.org/rescode.html, from memory).
        if (fault is null or { SqliteErrorCode: 11 or 26 })
        {
            try
            {
                foreach (string tail in (string[])["", "-wal", "-shm"])
                {
                    File.Delete(ColumnFile.PathOf(place) + tail);
                }
            }
            catch (Exception refused) when (refused is IOException or UnauthorizedAccessException)
            {
                // The store itself is read in its place.
            }
        }
    }
}
