using System.Text;
using Mastwright.Evidence;
using Mastwright.Records.Import;
using Mastwright.Records.Store;

namespace Mastwright.Tests.Records.Import;

public sealed class PatternImportTests
{
    private const string Mapping = """
        records: 1
        form: lines
        pattern: '^\[(?<when>[^]]+)\] heard (?<from>\S+) at (?<level>-?[0-9.]+|NaN) dBm( snr (?<snr>-?[0-9.]+))?(?<rest>.*)$'
        time: {group: when, written: iso-8601, zone: utc, resolution: 1 s}
        receiver: {text: ferry}
        last-sender: {group: from}
        level: {group: level, unit: dBm}
        signal-to-noise: {group: snr, unit: dB}
        """;

    private const string One = "[2026-01-02 03:04:05] heard holm at -118.5 dBm snr -3 port 1";

    [Fact]
    public void What_stands_around_the_part_that_the_pattern_takes_is_kept()
    {
        string mapping = Mapping.Replace("'^", "'", StringComparison.Ordinal).Replace("(?<rest>.*)$", "", StringComparison.Ordinal);
        ReceptionRecord record = Assert.Single(ImportRun.Of(mapping, "radio 2: " + One).Records);
        Assert.Equal("{\"text-before\":\"radio 2:\",\"text-after\":\"port 1\"}", record.OtherFields);
        Assert.Null(Assert.Single(ImportRun.Of(mapping, One.Replace(" port 1", "  ", StringComparison.Ordinal)).Records).OtherFields);
    }

    [Fact]
    public void Named_groups_are_the_fields_and_other_groups_are_kept()
    {
        (ReceptionRecord[] records, _, string rejected) = ImportRun.Of(Mapping, "\n" + One + "\r\n[2026-01-02 03:04:06] heard holm at -117 dBm");
        Assert.Equal("", rejected);
        Assert.Equal(
            [
                new()
                {
                    // By `date -u -d 2026-01-02T03:04:05Z +%s`.
                    TimeMicroseconds = 1_767_323_045_000_000, TimeResolutionMicroseconds = 1_000_000, TimeText = "2026-01-02 03:04:05", Receiver = "ferry", LastSender = "holm",
                    LevelDbm = -118.5, SnrDb = -3, OtherFields = "{\"rest\":\" port 1\"}",
                },
                new()
                {
                    TimeMicroseconds = 1_767_323_046_000_000, TimeResolutionMicroseconds = 1_000_000, TimeText = "2026-01-02 03:04:06", Receiver = "ferry", LastSender = "holm",
                    LevelDbm = -117, OtherFields = "{\"rest\":\"\"}",
                },
            ],
            records);
    }

    [Fact]
    public void Other_lines_other_encodings_and_no_numbers_are_kept_beside_byte_by_byte()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        // The second line is of ISO 8859-1: å is the byte E5, which UTF-8 has only before others.
        byte[] bytes = [.. Encoding.UTF8.GetBytes("boot\n"), .. Encoding.Latin1.GetBytes(One.Replace("holm", "tårn", StringComparison.Ordinal)), .. Encoding.UTF8.GetBytes("\n" + One.Replace("-118.5", "NaN", StringComparison.Ordinal) + "\n" + One)];
        ImportCount count = ImportRun.Into(store, file, Mapping, bytes).Count;
        Assert.Equal((4L, 1L), (count.Rows, count.Added));
        Assert.Equal(
            $"""
            file,line,reason,row
            "rows.csv",1,"the line does not fit the pattern","boot"
            "rows.csv",2,"the row is not UTF-8 text","{One.Replace("holm", "t\uFFFDE5rn", StringComparison.Ordinal)}"
            "rows.csv",3,"level is not a finite number","{One.Replace("-118.5", "NaN", StringComparison.Ordinal)}"

            """,
            ImportRun.Rejected(file));
    }

    [Fact]
    public void A_gigabyte_without_an_end_is_refused_after_little_of_it_is_read()
    {
        using StoreFile file = new();
        using SqliteRecordStore store = SqliteRecordStore.Open(file.Path);
        using EndlessText text = new(One + "\n");
        Assert.Contains("line 2 has more than 1048576", Assert.Throws<MappingException>(() => ImportRun.Into(store, file, Mapping, text)).Message, StringComparison.Ordinal);
        Assert.InRange(text.Given, 1 << 20, 4 << 20);
        Assert.Equal(1, store.Count("skerrin"));
    }

    [Theory]
    [InlineData("(?<when>", "pattern:")]
    [InlineData("(?<when>a)(?=b)", "pattern:")]
    public void A_pattern_that_is_none_is_said_so(string pattern, string words) => Assert.Contains(
        words,
        Assert.Throws<MappingException>(() => RecordMapping.Parse($"records: 1\nform: lines\npattern: '{pattern}'\ntime: {{group: when, written: unix-seconds, resolution: 1 s}}\nreceiver: {{text: a}}\n", "m.yaml")).Message,
        StringComparison.Ordinal);

    [Fact]
    public void A_group_that_the_pattern_has_not_is_said_with_those_it_has() => Assert.Contains(
        "no group 'sender', where the mapping has last-sender; its groups are 'when', 'from', 'level', 'snr', 'rest'",
        Assert.Throws<MappingException>(() => ImportRun.Of(Mapping.Replace("group: from", "group: sender", StringComparison.Ordinal), One)).Message,
        StringComparison.Ordinal);
}
