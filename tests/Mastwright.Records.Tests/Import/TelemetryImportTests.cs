using System.IO.Compression;
using System.Text;
using Mastwright.Evidence;
using Mastwright.Records.Export;
using Mastwright.Records.Import;
using Mastwright.Records.Store;

namespace Mastwright.Tests.Records.Import;

public sealed class TelemetryImportTests
{
    private const string Mapping = """
        records: 1
        holds: telemetry
        time: {column: t, written: unix-seconds, resolution: 1 s}
        station: {column: who}
        battery: {column: bat, unit: mV}
        supply: {column: sup, unit: V}
        temperature: {column: temp, unit: °C}
        channel-use: {column: use, unit: "%"}
        transmission: {column: tx, unit: "1"}
        """;

    [Fact]
    public void What_stations_tell_is_read_in_its_units_once()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        byte[] text = Encoding.UTF8.GetBytes("t,who,bat,sup,temp,use,tx,up\n1700000000,ferry,3900,18.5,-4,12.5,0.01,9\n1700000000,ferry,,,,,,10\n1700000001,ferry,,,,101,,\n1700000002,,3900,,,,,\n1700000003,ferry,NaN,,,,,\n");
        ImportCount count = ImportRun.Into(store, file, Mapping, text).Count;
        Assert.Equal((5L, 1L, 0L, 1L), (count.Rows, count.Added, count.AlreadyThere, count.NotHeard));
        ImportCount again = ImportRun.Into(store, file, Mapping, text).Count;
        Assert.Equal((0L, 1L), (again.Added, again.AlreadyThere));
        Assert.Equal(
            [
                new()
                {
                    TimeMicroseconds = 1_700_000_000_000_000, TimeResolutionMicroseconds = 1_000_000, TimeText = "1700000000", Station = "ferry", BatteryVolts = 3.9, SupplyVolts = 18.5,
                    TemperatureCelsius = -4, ChannelUseRatio = 0.125, TransmitRatio = 0.01, OtherFields = "{\"up\":\"9\"}",
                },
            ],
            store.ReadTelemetry("skerrin", "ferry", 0, long.MaxValue));
        Assert.Equal(
            "time,time_text,clock_ahead_s,station,battery_v,supply_v,temperature_c,channel_use_ratio,transmit_ratio,other_fields\n2023-11-14T22:13:20Z,1700000000,,ferry,3.9,18.5,-4,0.125,0.01,\"{\"\"up\"\":\"\"9\"\"}\"\n",
            TelemetryText.Of(store.ReadTelemetry("skerrin", 0, long.MaxValue)));
        string rejected = ImportRun.Rejected(file);
        Assert.Contains("channel-use is no part of the time", rejected, StringComparison.Ordinal);
        Assert.Contains("the station is empty", rejected, StringComparison.Ordinal);
        Assert.Contains("battery is not a finite number", rejected, StringComparison.Ordinal);
        Assert.Equal(0, store.Count("skerrin"));
    }

    [Theory]
    [InlineData("level: {column: a, unit: dBm}", "holds: telemetry has")]
    [InlineData("battery: {column: a}", "battery/unit: write the unit: V, mV")]
    [InlineData("", "battery: say where at least one")]
    public void A_mapping_of_telemetry_has_only_its_own_fields(string line, string words) => Assert.Contains(
        words,
        Assert.Throws<MappingException>(() => RecordMapping.Parse("records: 1\nholds: telemetry\ntime: {column: t, written: unix-seconds, resolution: 1 s}\nstation: {column: s}\n" + (line.StartsWith('b') ? "" : line.Length > 0 ? "supply: {column: s, unit: V}\n" : "") + line + "\n", "m.yaml")).Message,
        StringComparison.Ordinal);

    /// <summary>CampusIoT/datasets, SaintEynard: several receivers pass on each frame, which tells the temperature of the box and the voltage of the battery once (README beside the data).</summary>
    [Fact]
    public void A_report_that_several_receivers_passed_on_is_one()
    {
        const int Rows = 5000;
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        using FileStream packed = File.OpenRead(TestPlaces.Reference("measured", "mast-to-city", "eynard_mast_to_grenoble_2023-06_2023-09.csv.gz"));
        using StreamReader data = new(new GZipStream(packed, CompressionMode.Decompress));
        string[] lines = [.. Enumerable.Range(0, Rows + 1).Select(_ => data.ReadLine()!)];
        string mapping = File.ReadAllText(Path.Combine(TestPlaces.Repository, "data", "mappings", "mast-to-city-telemetry.yaml"));
        ImportCount count = ImportRun.Into(store, file, mapping, Encoding.UTF8.GetBytes(string.Join('\n', lines))).Count;
        (string Time, string Temperature, string Voltage)[] told = [.. lines[1..].Select(line => line.Split(',')).Select(cells => (cells[0], cells[11], cells[13])).Where(one => one is not (_, "", ""))];
        Assert.Equal((Rows, Rows - told.Length), (count.Rows, count.NotHeard));
        Assert.Equal("", ImportRun.Rejected(file));

        // Counted apart: the different times, temperatures and voltages among the rows.
        int different = told.Distinct().Count();
        Assert.Equal(different, count.Added);
        Assert.Equal(different, store.ReadTelemetry("skerrin", "mast-node", 0, long.MaxValue).Count);
        Assert.InRange(different, 1, Rows / 3);
    }
}
