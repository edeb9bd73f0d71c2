using System.Text;
using Mastwright.Evidence;
using Mastwright.Records.Import;
using Mastwright.Records.Store;

namespace Mastwright.Tests.Records.Import;

public sealed class JsonImportTests
{
    private const string Mapping = """
        records: 1
        form: json
        time: {path: $.at, written: unix-milliseconds, resolution: 1 s}
        receiver: {path: "$.me['node-name']"}
        last-sender: {path: "$.path[-1]"}
        level: {path: $.radio.level, unit: dBm}
        signal-to-noise: {path: $.radio.snr, unit: dB}
        packet-number: {path: $.id}
        """;

    private const string One = """{"at":1700000000250,"me":{"node-name":"ferry","height":3},"path":["holm","tarn"],"radio":{"level":-118.5,"snr":-3},"id":4294967295,"text":"å"}""";

    private static readonly ReceptionRecord Read = new()
    {
        TimeMicroseconds = 1_700_000_000_250_000, TimeResolutionMicroseconds = 1_000_000, TimeText = "1700000000250", Receiver = "ferry", LastSender = "tarn",
        LevelDbm = -118.5, SnrDb = -3, PacketId = "4294967295", OtherFields = """{"me":{"height":3},"path":["holm"],"text":"å"}""",
    };

    [Theory]
    [InlineData(One)]
    [InlineData("\uFEFF\n" + One + "\r\n")]
    [InlineData("[" + One + "]")]
    [InlineData("\n [\n" + One + "\n]\n")]
    public void A_value_a_line_and_an_array_give_the_same_record_and_the_rest_is_kept(string text)
    {
        (ReceptionRecord[] records, ImportCount count, string rejected) = ImportRun.Of(Mapping, text);
        Assert.Equal("", rejected);
        Assert.Equal(1, count.Added);
        Assert.Equal(Read, Assert.Single(records));
    }

    [Fact]
    public void An_array_inside_a_document_is_found_past_others_of_its_name()
    {
        string mapping = Mapping.Replace("form: json", "form: json\nwithin: $.answer.items", StringComparison.Ordinal);
        const string Text = """{"items":[1],"deep":{"answer":{"items":[2]}},"answer":{"count":1,"x":[{"items":[3]}],"items":[ONE]},"after":[4]}""";
        (ReceptionRecord[] records, _, string rejected) = ImportRun.Of(mapping, Text.Replace("ONE", One, StringComparison.Ordinal));
        Assert.Equal("", rejected);
        Assert.Equal(Read, Assert.Single(records));
        Assert.Contains("'within'", Assert.Throws<MappingException>(() => ImportRun.Of(mapping, """{"answer":{"item":[]}}""")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_receiver_of_one_packet_is_a_record_of_its_own()
    {
        const string Several = """
            records: 1
            form: json
            each: $.heard
            time: {path: $.at, written: iso-8601, resolution: 1 ms}
            receiver: {path: "@.by"}
            originator: {path: $.from}
            level: {path: "@.level", unit: dBm}
            """;
        (ReceptionRecord[] records, _, string rejected) = ImportRun.Of(
            Several, """{"at":"2026-01-02T03:04:05Z","from":"holm","port":1,"heard":[{"by":"ferry","level":-100,"ant":2},{"by":"tarn","level":"-101.5"},{"level":1}]}""");
        Assert.Equal([("ferry", -100.0, """{"port":1,"each":{"ant":2}}"""), ("tarn", -101.5, """{"port":1,"each":{}}""")], records.Select(one => (one.Receiver, one.LevelDbm!.Value, one.OtherFields!)));
        Assert.Contains("the receiver is empty", rejected, StringComparison.Ordinal);
    }

    [Fact]
    public void Half_lines_and_what_is_no_JSON_are_kept_beside_and_the_rest_goes_on()
    {
        string text = string.Join('\n', One[..^20], One.Replace("-118.5", "NaN", StringComparison.Ordinal), "17", One.Replace("-118.5", "\"NaN\"", StringComparison.Ordinal), One);
        (ReceptionRecord[] records, ImportCount count, string rejected) = ImportRun.Of(Mapping, text);
        Assert.Equal(Read, Assert.Single(records));
        Assert.Equal(5, count.Rows);
        Assert.Equal(
            [
                "\"rows.csv\",1,\"the row is not JSON, or only a part of it\"",
                "\"rows.csv\",2,\"the row is not JSON, which knows neither NaN nor Infinity as a number\"",
                "\"rows.csv\",3,\"the row is not a JSON object\"",
                "\"rows.csv\",4,\"level is not a finite number\"",
            ],
            rejected.Split('\n')[1..^1].Select(line => string.Join(',', line.Split("\",\"")[0] + "\"")));
    }

    [Fact]
    public void An_array_that_breaks_off_says_where_and_keeps_what_came_before()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        byte[] half = Encoding.UTF8.GetBytes("[\n" + One + ",\n" + One[..^5]);
        Assert.Contains("from line 2 on", Assert.Throws<MappingException>(() => ImportRun.Into(store, file, Mapping, half)).Message, StringComparison.Ordinal);
        Assert.Equal(1, store.Count("skerrin"));
    }

    [Theory]
    [InlineData(One + "\n")]
    [InlineData("[" + One + ",")]
    public void A_gigabyte_without_an_end_is_refused_after_little_of_it_is_read(string beginning)
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        using EndlessText text = new(beginning + "\"");
        Assert.Contains("more than 1048576", Assert.Throws<MappingException>(() => ImportRun.Into(store, file, Mapping, text)).Message, StringComparison.Ordinal);
        Assert.InRange(text.Given, 1 << 20, 4 << 20);
        Assert.Equal(1, store.Count("skerrin"));
    }

    [Fact]
    public void Small_pieces_and_many_rows_make_no_difference()
    {
        StringBuilder text = new("[");
        for (int row = 0; row < 3000; row++)
        {
            text.Append(row == 0 ? "" : ",").Append(One.Replace("4294967295", $"{row}", StringComparison.Ordinal)).Append(new string(' ', row % 40));
        }

        (_, ImportCount count, _) = ImportRun.Of(Mapping, text.Append(']').ToString());
        Assert.Equal(3000, count.Added);
    }

    [Fact]
    public void A_place_that_no_row_has_is_told()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        RecordImport import = ImportRun.Into(store, file, Mapping.Replace("$.radio.snr", "$.radio.ratio", StringComparison.Ordinal), Encoding.UTF8.GetBytes(One));
        Assert.Equal(["rows.csv: signal-to-noise ($.radio.ratio)"], import.NeverThere);
    }

    /// <summary>RFC 9535, table 4 (name selector) and clause 2.3.3.3 (index selector): the values that its examples give.</summary>
    [Theory]
    [InlineData("""{"o": {"j j": {"k.k": 3}}}""", "$.o['j j']['k.k']", "3")]
    [InlineData("""{"o": {"j j": {"k.k": 3}}}""", "$.o[\"j j\"][\"k.k\"]", "3")]
    [InlineData("""{"'": {"@": 2}}""", "$[\"'\"][\"@\"]", "2")]
    [InlineData("""["a","b"]""", "$[1]", "\"b\"")]
    [InlineData("""["a","b"]""", "$[-2]", "\"a\"")]
    public void Places_are_those_of_RFC_9535(string json, string place, string value)
    {
        using System.Text.Json.JsonDocument document = System.Text.Json.JsonDocument.Parse(json);
        Assert.Equal(value, JsonPlace.Parse(place)!.Find(document.RootElement)!.Value.GetRawText());
    }

    [Theory]
    [InlineData("level")]
    [InlineData("$.")]
    [InlineData("$.a-b")]
    [InlineData("$.1")]
    [InlineData("$..a")]
    [InlineData("$[*]")]
    [InlineData("$['a'")]
    [InlineData("$[1")]
    public void Other_texts_are_no_places(string text) => Assert.Null(JsonPlace.Parse(text));
}
