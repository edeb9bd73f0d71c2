using System.Runtime.InteropServices;
using Microsoft.Data.Sqlite;

namespace Mastwright.Records.Store.Columns;

/// <summary>Reads a period of a large store through its copy by columns, and what the copy does not hold yet from the store.</summary>
internal static class ColumnReading
{
    /// <summary>Hands on every reception of the period that one of the addresses made or heard, in the order of their times; of equal times as they came in.</summary>
    /// <returns>False, with nothing handed on, where the network is small or no copy can be kept.</returns>
    internal static bool TryRead(
        SqliteConnection store, string place, string network, long columnsFrom, IReadOnlySet<string> addresses, long from, long to, PeriodVisitor visit)
    {
        List<ColumnRow> rows = [];
        string[] names;
        try
        {
            List<(long Number, long Last)> known = store.Rows(row => (row.GetInt64(0), row.GetInt64(1)), "SELECT network, last_ingest FROM network WHERE name = @name", ("@name", network));
            if (known is not [var (number, last)] || last < columnsFrom)
            {
                return false;
            }

            names = Names(store, number);
            HashSet<int> own = [.. names.Index().Where(one => one.Item is { } address && addresses.Contains(address)).Select(one => one.Index)];
            using ColumnFile copy = ColumnFile.Open(place);
            long covered = copy.Refresh(store, number);
            copy.Read(number, own, from, to, rows);
            ReadRest(store, number, covered, own, from, to, rows);
        }
        catch (SqliteException fault)
        {
            Forget(place, fault);
            return false;
        }
        catch (InvalidDataException)
        {
            Forget(place, null);
            return false;
        }

        foreach (int at in Order(rows))
        {
            visit(CollectionsMarshal.AsSpan(rows)[at].ToPeriodRow(names));
        }

        return true;
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

    private static void ReadRest(SqliteConnection store, long network, long covered, HashSet<int> own, long from, long to, List<ColumnRow> rows)
    {
        using SqliteStatement rest = new(store, $"SELECT {ColumnRow.Fields} FROM reception WHERE network = ?1 AND ingest > ?2 ORDER BY ingest");
        rest.Set(1, network);
        rest.Set(2, covered);
        while (rest.Next())
        {
            ColumnRow row = ColumnRow.Of(rest);
            if (row.TimeMicroseconds >= from && row.TimeMicroseconds < to && (own.Contains(row.Receiver) || own.Contains(row.LastSender)))
            {
                rows.Add(row);
            }
        }
    }

    /// <summary>The places of the rows by time, those of one time in the order in which they stand.</summary>
    private static int[] Order(List<ColumnRow> rows)
    {
        long[] times = new long[rows.Count];
        int[] order = new int[rows.Count];
        bool isInOrder = true;
        for (int row = 0; row < times.Length; row++)
        {
            order[row] = row;
            times[row] = CollectionsMarshal.AsSpan(rows)[row].TimeMicroseconds;
            isInOrder &= row == 0 || times[row] >= times[row - 1];
        }

        if (isInOrder)
        {
            return order;
        }

        Array.Sort(times, order);
        for (int start = 0; start < times.Length;)
        {
            int end = start + 1;
            while (end < times.Length && times[end] == times[start])
            {
                end++;
            }

            order.AsSpan(start, end - start).Sort();
            start = end;
        }

        return order;
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
