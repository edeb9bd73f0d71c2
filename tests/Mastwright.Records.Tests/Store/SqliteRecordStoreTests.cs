using Mastwright.Evidence;
using Mastwright.Records.Store;
using Microsoft.Data.Sqlite;

namespace Mastwright.Tests.Records.Store;

public sealed class SqliteRecordStoreTests
{
    private static readonly ReceptionRecord Full = new()
    {
        TimeMicroseconds = 1_700_000_000_123_456, TimeResolutionMicroseconds = 1000, TimeText = "2023-11-14 22:13:20.123456", ClockOffsetMicroseconds = -250,
        Receiver = "ferry", Originator = "holm", LastSender = "tårn", LevelDbm = -118.25, SnrDb = -3.5, LevelIsSignalPower = true, HopsTaken = 1,
        HopLimit = 3, FrequencyHz = 869_525_000, BandwidthHz = 250_000, SpreadingFactor = 11, PacketId = "4294967295", OtherFields = "{\"battery\":3.9}",
    };

    private static readonly ReceptionRecord Bare = new() { TimeMicroseconds = -1, TimeResolutionMicroseconds = 1, Receiver = "ferry" };

    [Fact]
    public void What_is_added_comes_back_as_it_was()
    {
        using StoreFile file = new();
        using (SqliteRecordStore store = SqliteRecordStore.Open(file.Path))
        {
            store.Add("skerrin", Keyed(Full, Bare));
        }

        using SqliteRecordStore again = SqliteRecordStore.Open(file.Path);
        Assert.Equal([new(1, Full), new(2, Bare)], again.ReadAfter("skerrin", 0, 10));
        Assert.Equal([new(2, Bare)], again.ReadAfter("skerrin", 1, 10));
        Assert.Equal([new(1, Full)], again.ReadAfter("skerrin", 0, 1));
    }

    [Fact]
    public void The_same_record_twice_is_one_whoever_adds_it()
    {
        using StoreFile file = new();
        using SqliteRecordStore one = SqliteRecordStore.Open(file.Path);
        using SqliteRecordStore other = SqliteRecordStore.Open(file.Path);
        Assert.Equal((2, 1, 2L), Parts(one.Add("skerrin", Keyed(Full, Bare, Full))));
        Assert.Equal((1, 2, 3L), Parts(other.Add("skerrin", Keyed(Bare, Full with { PacketId = "8" }, Full))));
        Assert.Equal((0, 1, 3L), Parts(one.Add("skerrin", Keyed(Full with { PacketId = "8" }))));
        Assert.Equal(3, one.Count("skerrin"));
    }

    [Fact]
    public void Networks_know_nothing_of_each_other()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        store.Add("skerrin", Keyed(Bare, Full));
        Assert.Equal((1, 0, 1L), Parts(store.Add("mainland", Keyed(Full))));
        Assert.Equal([new(1, Full)], store.ReadAfter("mainland", 0, 10));
        Assert.Empty(store.ReadAfter("nowhere", 0, 10));
        Assert.Equal(0, store.Count("nowhere"));
    }

    [Fact]
    public void A_batch_that_fails_leaves_nothing_behind_and_mixes_up_no_station()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        store.Add("skerrin", Keyed(Bare));
        // The engine itself is made to refuse one row in the middle of a batch.
        Sql(file.Path, "CREATE TRIGGER refuse BEFORE INSERT ON reception WHEN NEW.packet_id = 'bad' BEGIN SELECT RAISE(ABORT, 'refused'); END");
        ReceptionRecord good = Bare with { Receiver = "new", PacketId = "good" };
        RecordStoreException fault = Assert.Throws<RecordStoreException>(() => store.Add("skerrin", Keyed(good, Bare with { PacketId = "bad" })));
        Assert.Contains(file.Path, fault.Message, StringComparison.Ordinal);
        Assert.Equal(1, store.Count("skerrin"));

        using SqliteRecordStore other = SqliteRecordStore.Open(file.Path);
        ReceptionRecord between = Bare with { Receiver = "another", PacketId = "1" };
        other.Add("skerrin", Keyed(between));
        store.Add("skerrin", Keyed(good));
        Assert.Equal([new(1, Bare), new(2, between), new(3, good)], store.ReadAfter("skerrin", 0, 10));
    }

    [Fact]
    public void A_file_of_something_else_is_left_alone()
    {
        using StoreFile file = new();
        Assert.Contains("no store of records", Assert.Throws<RecordStoreException>(() => SqliteRecordStore.Open(file.Write("notes.txt", new string('x', 5000)))).Message, StringComparison.Ordinal);
        Sql(file.Beside("other.sqlite"), "CREATE TABLE mine (a)");
        byte[] before = File.ReadAllBytes(file.Beside("other.sqlite"));
        Assert.Contains("no store of records", Assert.Throws<RecordStoreException>(() => SqliteRecordStore.Open(file.Beside("other.sqlite"))).Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(file.Beside("other.sqlite")));
    }

    [Fact]
    public void A_store_of_a_newer_program_and_a_missing_folder_are_said_to_be_so()
    {
        using StoreFile file = new();
        SqliteRecordStore.Open(file.Path).Dispose();
        Sql(file.Path, "PRAGMA user_version = 99");
        Assert.Contains("newer version", Assert.Throws<RecordStoreException>(() => SqliteRecordStore.Open(file.Path)).Message, StringComparison.Ordinal);
        Assert.Contains("folder must exist", Assert.Throws<RecordStoreException>(() => SqliteRecordStore.Open(file.Beside("no/such/r.sqlite"))).Message, StringComparison.Ordinal);
    }

    internal static KeyedRecord[] Keyed(params ReceptionRecord[] records) => [.. records.Select(record => new KeyedRecord(record, RecordKey.Of(record)))];

    private static (int Added, int AlreadyThere, long LastIngest) Parts(AddedBatch batch) => (batch.Added, batch.AlreadyThere, batch.LastIngest);

    private static void Sql(string path, string sql)
    {
        using SqliteConnection connection = new($"Data Source={path};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // Constants of these tests.
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }
}
