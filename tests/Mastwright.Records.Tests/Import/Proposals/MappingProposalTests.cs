using System.Text;
using Mastwright.Records.Import;
using Mastwright.Records.Import.Proposals;

namespace Mastwright.Tests.Records.Import.Proposals;

public sealed class MappingProposalTests
{
    [Fact]
    public void Columns_units_and_clock_of_delimited_text_are_found()
    {
        string mapping = Of("Time;rxStation;from;RSSI;snr_db;freqMHz;SF;hops;note\n1700000000;ferry;holm;-118;-3.5;869.525;11;1;a\n1700000060;ferry;holm;-117;-3;869.525;11;;b\n", out MappingPreview preview);
        Assert.Contains("separator: ';'", mapping, StringComparison.Ordinal);
        Assert.Contains("time: {column: Time, written: unix-seconds, resolution: 1 s}", mapping, StringComparison.Ordinal);
        Assert.Contains("receiver: {column: rxStation}", mapping, StringComparison.Ordinal);
        Assert.Contains("frequency: {column: freqMHz, unit: MHz}", mapping, StringComparison.Ordinal);
        Assert.Contains("# Kept as they are: note", mapping, StringComparison.Ordinal);
        Assert.Equal([(-118.0, -3.5, 869_525_000.0, 11, 1), (-117, -3, 869_525_000, 11, -1)], preview.Records.Select(one => (one.LevelDbm!.Value, one.SnrDb!.Value, one.FrequencyHz!.Value, one.SpreadingFactor!.Value, one.HopsTaken ?? -1)));
    }

    [Theory]
    [InlineData("""{"ANSWER":[{"at":"2026-01-02T03:04:05.25Z","from":"holm","rx":{"level":-118}}]}""", "within: '$.ANSWER'", "path: '$.rx.level'")]
    [InlineData("""[{"at":"2026-01-02T03:04:05.25Z","from":"holm","rx":{"level":-118}}]""", "form: json", "path: '$.rx.level'")]
    [InlineData("""{"at":"2026-01-02T03:04:05.25Z","from":"holm","heard":[{"gateway":"ferry","rssi":-118}]}""", "each: '$.heard'", "path: '@.rssi'")]
    [InlineData("[2026-01-02 03:04:05.25] from: holm, rssi: -118\nboot\n", "form: lines", "group: rssi")]
    public void Other_forms_are_told_and_what_is_proposed_reads_them(string text, params string[] parts)
    {
        string mapping = Of(text, out MappingPreview preview);
        Assert.All(parts, part => Assert.Contains(part, mapping, StringComparison.Ordinal));
        Assert.Equal("", preview.Problem);

        // date -u -d 2026-01-02T03:04:05Z +%s
        Assert.Equal((1_767_323_045_250_000, "holm", -118.0), (preview.Records[0].TimeMicroseconds, preview.Records[0].Originator, preview.Records[0].LevelDbm));
    }

    [Fact]
    public void The_open_measurement_from_the_mast_is_read_by_what_is_proposed_for_it()
    {
        using FileStream stream = File.OpenRead(TestPlaces.Reference("measured", "mast-to-city", "eynard_mast_to_grenoble_2023-06_2023-09.csv.gz"));
        (string mapping, string beginning) = MappingProposal.Of("mast.csv.gz", stream);
        MappingPreview preview = MappingPreview.Of(mapping, beginning);
        Assert.Equal(10, preview.Records.Count);
        Assert.Empty(preview.Rejected);
        Assert.Equal(("G01", "1151", -118.0, -1.0, 868_500_000.0), (preview.Records[0].Receiver, preview.Records[0].PacketId, preview.Records[0].LevelDbm, preview.Records[0].SnrDb, preview.Records[0].FrequencyHz));
    }

    [Fact]
    public void A_time_that_is_missing_is_said_and_not_made_up()
    {
        string mapping = Of("gateway,rssi_dbm\nG01,-118\n", out MappingPreview preview);
        Assert.Contains("# No time was found", mapping, StringComparison.Ordinal);
        Assert.Contains("say where the time is", preview.Problem, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("records: 1\nnetwork: skerrin\n")]
    [InlineData("{}")]
    [InlineData("1,2\n3,4\n")]
    public void Nothing_is_proposed_for_what_holds_no_receptions(string text) =>
        Assert.Contains("x.txt", Assert.Throws<MappingException>(() => MappingProposal.Of("x.txt", new MemoryStream(Encoding.UTF8.GetBytes(text)))).Message, StringComparison.Ordinal);

    private static string Of(string text, out MappingPreview preview)
    {
        (string mapping, string beginning) = MappingProposal.Of("rows.txt", new MemoryStream(Encoding.UTF8.GetBytes(text)));
        preview = MappingPreview.Of(mapping, beginning);
        return mapping;
    }
}
