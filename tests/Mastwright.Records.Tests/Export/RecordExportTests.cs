using System.Text;
using System.Text.Json;
using Mastwright.Evidence;
using Mastwright.Records.Export;
using Mastwright.Records.Store;
using Mastwright.Tests.Records.Store;
using Parquet;
using Parquet.Schema;

namespace Mastwright.Tests.Records.Export;

public sealed class RecordExportTests
{
    private static readonly Dictionary<string, StationPlace> Places = new(StringComparer.Ordinal) { ["ferry"] = new(179.5, -18), ["holm"] = new(-179.5, -17), ["tarn"] = new(179, -18) };

    private static readonly ReceptionRecord Full = new()
    {
        TimeMicroseconds = 1_700_000_000_123_456, TimeResolutionMicroseconds = 1000, TimeText = "", ClockOffsetMicroseconds = -250, Receiver = "ferry", Originator = "a,\"b\"", LastSender = "holm",
        LevelDbm = -118.1, SnrDb = -3.5, LevelIsSignalPower = true, HopsTaken = 1, HopLimit = 3, FrequencyHz = 869_525_000, BandwidthHz = 250_000, SpreadingFactor = 11, PacketId = "7",
        OtherFields = "{\"note\":\"å\"}",
    };

    private static readonly ReceptionRecord Bare = new() { TimeMicroseconds = 1_700_000_001_000_000, TimeResolutionMicroseconds = 1, Receiver = "tarn" };

    [Fact]
    public void Delimited_text_has_all_that_a_record_holds()
    {
        Assert.Equal(
            """"
            ingest,time,time_microseconds,time_resolution_microseconds,time_text,clock_offset_microseconds,receiver,originator,last_sender,level_dbm,snr_db,level_is_signal_power,hops_taken,hop_limit,frequency_hz,bandwidth_hz,spreading_factor,packet_number,other_fields
            1,2023-11-14T22:13:20.123456Z,1700000000123456,1000,"",-250,ferry,"a,""b""",holm,-118.1,-3.5,true,1,3,869525000,250000,11,7,"{""note"":""å""}"
            2,2023-11-14T22:13:21Z,1700000001000000,1,,,tarn,,,,,false,,,,,,,

            """",
            Encoding.UTF8.GetString(Exported(ExportForm.Csv)));
        Assert.DoesNotContain("\n1,", Encoding.UTF8.GetString(Exported(ExportForm.Csv, 1_700_000_001_000_000)), StringComparison.Ordinal);
    }

    /// <summary>RFC 7946, clause 3.1.9: a line that crosses the antimeridian is cut there; its example cuts at 180 and −180.</summary>
    [Fact]
    public void GeoJson_draws_a_line_from_sender_to_receiver_cut_at_the_antimeridian()
    {
        using JsonDocument document = JsonDocument.Parse(Exported(ExportForm.GeoJson));
        JsonElement[] features = [.. document.RootElement.GetProperty("features").EnumerateArray()];
        Assert.Equal("""{"type":"MultiLineString","coordinates":[[[-179.5,-17],[-180,-17.5]],[[180,-17.5],[179.5,-18]]]}""", features[0].GetProperty("geometry").GetRawText());
        Assert.Equal("å", features[0].GetProperty("properties").GetProperty("other_fields").GetProperty("note").GetString());
        Assert.Equal(-118.1, features[0].GetProperty("properties").GetProperty("level_dbm").GetDouble());
        Assert.Equal("""{"type":"Point","coordinates":[179,-18]}""", features[1].GetProperty("geometry").GetRawText());
        Assert.Equal(JsonValueKind.Null, features[1].GetProperty("properties").GetProperty("level_dbm").ValueKind);

        using JsonDocument placeless = JsonDocument.Parse(Exported(ExportForm.GeoJson, placed: false));
        Assert.Equal(JsonValueKind.Null, placeless.RootElement.GetProperty("features")[0].GetProperty("geometry").ValueKind);
    }

    [Fact]
    public async Task Parquet_holds_the_columns_with_what_is_unknown()
    {
        using MemoryStream stream = new(Exported(ExportForm.Parquet));
        Assert.Equal("PAR1", Encoding.ASCII.GetString(stream.ToArray()[^4..]));
        await using ParquetReader reader = await ParquetReader.CreateAsync(stream, cancellationToken: TestContext.Current.CancellationToken);
        using ParquetRowGroupReader group = reader.OpenRowGroupReader(0);
        Assert.Equal(2, group.RowCount);
        Assert.Equal(18, reader.Schema.DataFields.Length);
        DataField Field(string name) => reader.Schema.DataFields.Single(field => string.Equals(field.Name, name, StringComparison.Ordinal));
        double?[] levels = new double?[2];
        await group.ReadAsync<double>(Field("level_dbm"), levels, cancellationToken: TestContext.Current.CancellationToken);
        Assert.Equal([-118.1, null], levels);
        long[] times = new long[2];
        await group.ReadAsync<long>(Field("time_microseconds"), times, cancellationToken: TestContext.Current.CancellationToken);
        Assert.Equal([Full.TimeMicroseconds, Bare.TimeMicroseconds], times);
        string?[] senders = new string?[2];
        await group.ReadAsync(Field("last_sender"), senders!, cancellationToken: TestContext.Current.CancellationToken);
        Assert.Equal(["holm", null], senders);
    }

    private static byte[] Exported(ExportForm form, long from = long.MinValue, bool placed = true)
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        store.Add("skerrin", RecordStoreContract.Keyed(Full, Bare));
        using MemoryStream stream = new();
        RecordExport.Write(store, new("skerrin", from), form, stream, (address, _) => placed && Places.TryGetValue(address, out StationPlace place) ? place : null, null, TestContext.Current.CancellationToken);
        return stream.ToArray();
    }
}
