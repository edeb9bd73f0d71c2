using System.IO.Compression;
using System.Text;
using Mastwright.Evidence;
using Mastwright.Records.Import;
using Mastwright.Records.Store;

namespace Mastwright.Tests.Records.Import;

public sealed class DelimitedImportTests
{
    private const string Mapping = """
        records: 1
        time: {column: when, written: iso-8601, zone: utc, resolution: 1 s, ahead-of-utc: 2 s}
        receiver: {column: at}
        originator: {column: from}
        last-sender: {column: from}
        level: {column: level, unit: dBm}
        signal-to-noise: {column: ratio, unit: dB}
        frequency: {text: "868.1", unit: MHz}
        """;

    [Fact]
    public void Fields_are_decoded_and_the_rest_is_kept_as_it_is()
    {
        (ReceptionRecord[] records, ImportCount count, _) = Import("when,at,from,level,ratio,note\n2026-01-02T03:04:05.5+01:00,ferry,holm,-118,-3.5,\"a, \"\"b\"\"\"\n");
        Assert.Equal(1, count.Added);
        Assert.Equal(
            new ReceptionRecord
            {
                // 2026-01-02T02:04:05.5Z; by `date -u -d 2026-01-02T02:04:05Z +%s`.
                TimeMicroseconds = 1_767_319_445_500_000, TimeResolutionMicroseconds = 1_000_000, TimeText = "2026-01-02T03:04:05.5+01:00", ClockOffsetMicroseconds = 2_000_000,
                Receiver = "ferry", Originator = "holm", LastSender = "holm", LevelDbm = -118, SnrDb = -3.5, FrequencyHz = 868_100_000, OtherFields = "{\"note\":\"a, \\\"b\\\"\"}",
            },
            Assert.Single(records));
    }

    [Fact]
    public void A_file_twice_or_overlapping_adds_only_what_is_new_and_keeps_two_alike_in_a_second_apart()
    {
        const string Row = "2026-01-02T03:04:05Z,ferry,holm,-118,-3.5\n";
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        Assert.Equal(2, Into(store, file, "when,at,from,level,ratio\n" + Row + Row).Added);
        Assert.Equal(0, Into(store, file, "when,at,from,level,ratio\n" + Row + Row).Added);
        Assert.Equal(2, Into(store, file, "when,at,from,level,ratio\n" + Row + Row + Row + Row.Replace("-118", "-117", StringComparison.Ordinal)).Added);
    }

    [Fact]
    public void Rows_that_are_no_records_are_counted_by_reason_and_kept_as_they_were()
    {
        const string Text = "when,at,from,level,ratio\n2026-01-02T03:04:05Z,ferry,holm,NaN,1\n2026-02-30T03:04:05Z,ferry,holm,-1,1\n,ferry,holm,-1,1\n"
            + "2026-01-02T03:04:05Z,,holm,-1,1\n\n2026-01-02T03:04\n2026-01-02T03:04:05Z,f\uFFFDrry,holm,-1,1\n2026-01-02T03:04:06Z,ferry,holm,-1,1";
        (ReceptionRecord[] records, ImportCount count, string rejected) = Import(Text);
        Assert.Single(records);
        Assert.Equal(7, count.Rows);
        Assert.Equal(
            """
            file,line,reason,row
            "rows.csv",2,"level is not a finite number","2026-01-02T03:04:05Z,ferry,holm,NaN,1"
            "rows.csv",3,"the time is not written as iso-8601","2026-02-30T03:04:05Z,ferry,holm,-1,1"
            "rows.csv",4,"the time is empty",",ferry,holm,-1,1"
            "rows.csv",5,"the receiver is empty","2026-01-02T03:04:05Z,,holm,-1,1"
            "rows.csv",7,"the row has not the 5 cells of the header","2026-01-02T03:04"
            "rows.csv",8,"the row is not UTF-8 text","2026-01-02T03:04:05Z,f�rry,holm,-1,1"

            """,
            rejected);
    }

    [Fact]
    public void A_byte_order_mark_other_line_ends_and_gzip_make_no_difference()
    {
        const string Text = "when,at,from,level,ratio\r\n2026-01-02T03:04:05Z,ferry,holm,-118,-3.5\r\n";
        using MemoryStream packed = new();
        using (GZipStream zip = new(packed, CompressionMode.Compress, leaveOpen: true))
        {
            zip.Write([0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Text)]);
        }

        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        Assert.Equal(1, Into(store, file, Text).Added);
        ImportCount again = Into(store, file, new MemoryStream(packed.ToArray()));
        Assert.Equal((1L, 1L, 0L), (again.Rows, again.AlreadyThere, again.Added));
    }

    [Fact]
    public void A_cell_that_never_ends_stops_the_import_with_a_clear_word_and_keeps_what_came_before()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        string text = "when,at,from,level,ratio\n2026-01-02T03:04:05Z,ferry,holm,-118,-3.5\n\"" + new string('x', 17_000_000);
        Assert.Contains("does not end", Assert.Throws<MappingException>(() => Into(store, file, text)).Message, StringComparison.Ordinal);
        Assert.Equal(1, store.Count("skerrin"));
    }

    [Theory]
    [InlineData("when,at,from,level\n", "there is no column 'ratio'")]
    [InlineData("when,at,from,level,ratio,at\n", "there are several columns 'at'")]
    [InlineData("", "there is no row")]
    public void A_file_that_does_not_fit_the_mapping_is_refused(string text, string words) =>
        Assert.Contains(words, Assert.Throws<MappingException>(() => Import(text)).Message, StringComparison.Ordinal);

    /// <summary>CampusIoT/datasets, SaintEynard: 93,435 receptions at 11 receivers, by the README beside the data.</summary>
    [Fact]
    public void The_open_measurement_from_the_mast_comes_in_by_its_mapping()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        using FileStream data = File.OpenRead(TestPlaces.Reference("measured", "mast-to-city", "eynard_mast_to_grenoble_2023-06_2023-09.csv.gz"));
        ImportCount count = Into(store, file, data, "mast-to-city.yaml");
        Assert.Equal(93_435, count.Rows);
        Assert.Equal((93_435L, 0L), (count.Added, count.AlreadyThere));
        Assert.Equal(93_435, store.Count("skerrin"));
        IReadOnlyList<StoredRecord> all = store.ReadAfter("skerrin", 0, 100_000);
        Assert.Equal(11, all.Select(one => one.Record.Receiver).Distinct(StringComparer.Ordinal).Count());
        Assert.All(all, one => Assert.InRange(one.Record.SignalPowerDbm!.Value, -160, -40));
    }

    /// <summary>emanueleg/lora-rssi: 2,029 hours, 8 nodes, by the README beside the data.</summary>
    [Fact]
    public void The_open_measurement_of_the_vineyard_comes_in_by_its_mapping()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        string path = TestPlaces.Reference("measured", "vineyard", "combined_hourly_data.csv");
        using FileStream data = File.OpenRead(path);
        ImportCount count = Into(store, file, data, "vineyard.yaml");
        Assert.Equal(2029, count.Rows);
        Assert.Equal(2029 * 8, count.Added + count.NotHeard);

        // Node 6 about −5.9 dB near 2020-12-02 and +7.9 dB near 2020-12-24 (README): the mean between the two dates against the mean before.
        // The data go down over some days, not at once, hence the tolerance.
        ReceptionRecord[] node = [.. store.ReadAfter("skerrin", 0, 20_000).Select(one => one.Record).Where(one => one.Originator == "node-06")];
        double Mean(long from, long to) => node.Where(one => one.TimeMicroseconds >= from && one.TimeMicroseconds < to).Average(one => one.LevelDbm!.Value);
        Assert.Equal(-5.9, Mean(Day(12, 2), Day(12, 24)) - Mean(Day(11, 1), Day(12, 2)), 1.0);
    }

    private static long Day(int month, int day) => (long)(new DateTime(2020, month, day, 0, 0, 0, DateTimeKind.Utc) - DateTime.UnixEpoch).TotalMicroseconds;

    private static (ReceptionRecord[] Records, ImportCount Count, string Rejected) Import(string text) => ImportRun.Of(Mapping, text);

    private static ImportCount Into(SqliteRecordStore store, StoreFile file, string text) => ImportRun.Into(store, file, Mapping, Encoding.UTF8.GetBytes(text)).Count;

    private static ImportCount Into(SqliteRecordStore store, StoreFile file, Stream data, string? mapping = null)
    {
        if (mapping is null)
        {
            return ImportRun.Into(store, file, Mapping, data).Count;
        }

        RecordImport import = ImportRun.Into(store, file, File.ReadAllText(Path.Combine(TestPlaces.Repository, "data", "mappings", mapping)), data);
        Assert.False(File.Exists(file.Beside("rejected.csv")), "nothing is rejected");
        return import.Count;
    }
}
