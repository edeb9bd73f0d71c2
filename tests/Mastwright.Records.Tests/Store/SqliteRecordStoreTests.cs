using Mastwright.Evidence;
using Mastwright.Records.Store;
using Microsoft.Data.Sqlite;

namespace Mastwright.Tests.Records.Store;

public sealed class SqliteRecordStoreTests : RecordStoreContract
{
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

    [Fact]
    public void A_store_that_another_keeps_locked_is_said_to_be_so_and_takes_the_batch_afterwards()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path, patienceSeconds: 1);
        KeyedRecord[] batch = Keyed(new ReceptionRecord { TimeMicroseconds = 1, TimeResolutionMicroseconds = 1, Receiver = "ferry" });
        using (SqliteConnection other = new($"Data Source={file.Path};Pooling=False"))
        {
            other.Open();
            using SqliteTransaction held = other.BeginTransaction(deferred: false);
            RecordStoreException fault = Assert.Throws<RecordStoreException>(() => store.Add("skerrin", batch));
            Assert.Contains("kept the store locked", fault.Message, StringComparison.Ordinal);

            // Who reads does not wait.
            Assert.Equal(0, store.Count("skerrin"));
        }

        Assert.Equal(1, store.Add("skerrin", batch).Added);
    }

    /// <summary>A file that the first released form of the store wrote, with four receptions: Stored/version-1.sqlite.</summary>
    [Fact]
    public void A_store_of_the_first_version_is_brought_forward_with_all_it_holds()
    {
        using StoreFile file = new();
        File.Copy(Path.Combine(TestPlaces.Repository, "tests", "Mastwright.Records.Tests", "Store", "Stored", "version-1.sqlite"), file.Path);
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        IReadOnlyList<StoredRecord> all = store.ReadAfter("skerrin", 0, 10);
        Assert.Equal([1L, 2L, 3L, 4L], all.Select(one => one.Ingest));
        ReceptionRecord first = new()
        {
            // date -u -d 2026-01-02T03:04:05Z +%s
            TimeMicroseconds = 1_767_323_045_500_000, TimeResolutionMicroseconds = 1_000_000, TimeText = "2026-01-02T03:04:05.5Z", ClockOffsetMicroseconds = 2_000_000, Receiver = "ferry",
            Originator = "holm", LastSender = "holm", LevelDbm = -118.25, SnrDb = -3.5, HopsTaken = 0, FrequencyHz = 869_525_000, PacketId = "4294967295", OtherFields = "{\"note\":\"first\"}",
        };
        Assert.Equal(first, all[0].Record);
        Assert.Equal("t\u00E5rn", all[1].Record.LastSender);

        // The identity is a stored format too: what that version has taken is known again.
        Assert.Equal(0, store.Add("skerrin", Keyed(first)).Added);
        Assert.Empty(store.ReadLog("skerrin").All);
    }

    internal override StorePlace NewPlace() => new FilePlace();

    internal static void Sql(string path, string sql)
    {
        using SqliteConnection connection = new($"Data Source={path};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // Constants of these tests.
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }

    private sealed class FilePlace : StorePlace
    {
        private readonly StoreFile file = new();

        internal override string Name => file.Path;

        public override void Dispose() => file.Dispose();

        internal override RecordStore Open() => SqliteRecordStore.Open(file.Path);

        internal override void Refuse(string packetNumber) =>
            Sql(file.Path, $"CREATE TRIGGER refuse BEFORE INSERT ON reception WHEN NEW.packet_id = '{packetNumber}' BEGIN SELECT RAISE(ABORT, 'refused'); END");
    }
}
