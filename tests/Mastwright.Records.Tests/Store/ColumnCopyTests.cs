using Mastwright.Evidence;
using Mastwright.Records.Store;
using Mastwright.Records.Store.Columns;

namespace Mastwright.Tests.Records.Store;

/// <summary>A large store's copy by columns: what it gives is what the store holds, whatever happened to either.</summary>
public sealed class ColumnCopyTests
{
    private const string Network = "skerrin";
    private const int Rows = 90_000;
    private const long Second = 1_000_000;

    [Fact]
    public void A_period_is_the_same_through_the_copy_as_from_the_store()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = Filled(file, Rows);
        Same(store, ["n0"], 0, Rows);
        Same(store, ["n3", "n4"], Rows / 4, Rows / 2);
        Same(store, ["nobody"], 0, Rows);
        Assert.True(File.Exists(ColumnFile.PathOf(file.Path)));
        store.ColumnsFrom = 1;
        List<PeriodRow> rows = Period(store, ["n0"], 0, Rows);
        Assert.Equal(rows.Select(row => row.TimeMicroseconds), rows.Select(row => row.TimeMicroseconds).Order());
    }

    [Fact]
    public void What_comes_later_what_is_compacted_and_a_store_put_in_its_place_are_seen()
    {
        using StoreFile file = new();
        using (SqliteRecordStore store = Filled(file, Rows))
        {
            Same(store, ["n0"], 0, Rows);
            Add(store, Rows, 1000);
            Same(store, ["n0"], 0, Rows + 1000);
            while (store.Compact(Network, 1_780_000_000 * Second + (20_000 * Second)) > 0)
            {
            }

            Same(store, ["n0"], 0, Rows + 1000);
        }

        foreach (string old in Directory.EnumerateFiles(Path.GetDirectoryName(file.Path)!, Path.GetFileName(file.Path) + "*").Where(one => !one.Contains(".columns", StringComparison.Ordinal)))
        {
            File.Delete(old);
        }

        using SqliteRecordStore other = Filled(file, Rows + 5000, levelDbm: -70);
        Same(other, ["n0"], 0, Rows + 5000);
    }

    [Fact]
    public void A_damaged_copy_or_a_deleted_one_costs_nothing_but_time()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = Filled(file, 70_000);
        Same(store, ["n0"], 0, 70_000);
        string copy = ColumnFile.PathOf(file.Path);
        foreach (string tail in (string[])["-wal", "-shm"])
        {
            File.Delete(copy + tail);
        }

        File.WriteAllText(copy, new string('x', 300_000));
        Same(store, ["n0"], 0, 70_000);
        Same(store, ["n0"], 0, 70_000);
        File.Delete(copy);
        Directory.CreateDirectory(copy);
        Same(store, ["n0"], 0, 70_000);
    }

    /// <summary>Both readings of a period; equal times may come in another order, so rows are put in one order first.</summary>
    private static void Same(SqliteRecordStore store, string[] addresses, int from, int to)
    {
        store.ColumnsFrom = 1;
        List<PeriodRow> through = Period(store, addresses, from, to);
        store.ColumnsFrom = long.MaxValue;
        List<PeriodRow> direct = Period(store, addresses, from, to);
        Assert.Equal(InOrder(direct), InOrder(through));
        Assert.Equal(addresses[0] != "nobody", direct.Count > 0);
    }

    private static IEnumerable<PeriodRow> InOrder(List<PeriodRow> rows) =>
        rows.OrderBy(row => row.TimeMicroseconds).ThenBy(row => row.Counter).ThenBy(row => row.Receiver, StringComparer.Ordinal).ThenBy(row => row.LastSender, StringComparer.Ordinal);

    private static List<PeriodRow> Period(SqliteRecordStore store, string[] addresses, int from, int to)
    {
        List<PeriodRow> rows = [];
        store.ReadPeriod(Network, new HashSet<string>(addresses, StringComparer.Ordinal), (1_780_000_000 + from) * Second, (1_780_000_000 + to) * Second, (in PeriodRow row) => rows.Add(row));
        return rows;
    }

    private static SqliteRecordStore Filled(StoreFile file, int rows, double levelDbm = -100)
    {
        SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        Add(store, 0, rows, levelDbm);
        return store;
    }

    /// <summary>A record a second, some of them late, without a sender, a number or a level, or with a level that is no thousandth.</summary>
    private static void Add(SqliteRecordStore store, int first, int rows, double levelDbm = -100)
    {
        foreach (int[] chunk in Enumerable.Range(first, rows).Chunk(RecordStore.MostInOneBatch))
        {
            store.Add(Network, [.. chunk.Select(one =>
            {
                ReceptionRecord record = new()
                {
                    TimeMicroseconds = (1_780_000_000 + (one % 97 == 0 ? one - 40 : one)) * Second,
                    TimeResolutionMicroseconds = Second,
                    ClockOffsetMicroseconds = one % 11 == 0 ? 2 * Second : null,
                    Receiver = $"n{one % 3}",
                    LastSender = one % 13 == 0 ? null : $"n{one % 7}",
                    Originator = one % 17 == 0 ? null : $"n{one % 5}",
                    LevelDbm = one % 19 == 0 ? null : levelDbm - (one % 20) - (one >= first + (rows / 2) ? 1.0 / 3 : 0.25),
                    SnrDb = one % 23 == 0 ? null : (one % 14) / 2.0,
                    LevelIsSignalPower = one % 29 == 0,
                    HopsTaken = one % 31 == 0 ? null : one % 4,
                    SpreadingFactor = one % 37 == 0 ? null : 9,
                    PacketId = one % 41 == 0 ? "x" : one.ToString(System.Globalization.CultureInfo.InvariantCulture),
                };
                return new KeyedRecord(record, RecordKey.Of(record));
            })]);
        }
    }
}
